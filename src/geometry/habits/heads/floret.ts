import type { Point3 } from '../../../arrangement/index.ts'
import type { Tissue } from '../../types.ts'
import { addFace, addVertex, type Builder, makeRoom, nextPart } from '../builder.ts'
import { at, type Frame, TAU, turned, unit } from '../vector.ts'

/**
 * A tiny flower of kite-shaped petals in one part: `size` is its radius, `lift` how far the tips rise (share of size),
 * `broad` the half width of a petal over the share of the circle it may take.
 */
export const addFloret = (
  b: Builder,
  f: Frame,
  size: number,
  petals: number,
  lift: number,
  broad: number,
  tissue: Tissue,
  eye?: Tissue | undefined,
): void => {
  const part = nextPart(b)
  makeRoom(b, 1 + 3 * petals + 4, 2 * petals + 2)
  const normal = (a: number): Point3 => unit(turned(f, -0.5 * lift * Math.cos(a), -0.5 * lift * Math.sin(a), 1))
  const centre = addVertex(b, f.o, f.w, 0.1, 0.5)
  const half = (TAU / petals / 2) * broad
  for (let i = 0; i < petals; i++) {
    const a = (i / petals) * TAU
    const place = (turn: number, r: number, up: number): Point3 =>
      at(f, r * Math.cos(turn) * size, r * Math.sin(turn) * size, up * size)
    const left = addVertex(b, place(a - half, 0.68, lift * 0.6), normal(a - half), 0.6, 0.1)
    const tip = addVertex(b, place(a, 1, lift), normal(a), 1, 0.5)
    const right = addVertex(b, place(a + half, 0.68, lift * 0.6), normal(a + half), 0.6, 0.9)
    addFace(b, centre, left, tip, part, tissue)
    addFace(b, centre, tip, right, part, tissue)
  }
  if (!eye) return
  const other = nextPart(b)
  const z = 0.16 * size
  const corner = [0, 1, 2, 3].map((i) => {
    const a = (i * TAU) / 4
    return addVertex(b, at(f, 0.22 * size * Math.cos(a), 0.22 * size * Math.sin(a), z), f.w, 0.5, 0.5)
  })
  addFace(b, corner[0]!, corner[1]!, corner[2]!, other, eye)
  addFace(b, corner[0]!, corner[2]!, corner[3]!, other, eye)
}
