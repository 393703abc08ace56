import type { Point3 } from '../../arrangement/index.ts'
import { KINDS, type Kind, STANDIN_STRIDE } from '../types.ts'
import { leafAxes } from './leaf.ts'
import { frameAt } from './line.ts'
import type { Layout } from './organs.ts'
import { along, at, scale } from './vector.ts'

const kindNumber = (kind: Kind): number => KINDS.indexOf(kind)

export const ellipsoid = (to: number[], kind: Kind, o: Point3, a: Point3, b: Point3, c: Point3): void => {
  to.push(0, kindNumber(kind), ...o, ...a, ...b, ...c)
}
export const capsule = (to: number[], a: Point3, b: Point3, r: number): void => {
  to.push(1, kindNumber('stem'), ...a, ...b, r, 0, 0, 0, 0, 0)
}

/** The stand-ins of a layout, packed. */
export const standinsOf = (layout: Layout): Float32Array => {
  const out: number[] = []
  const { line, stem } = layout
  const n = 8
  for (let i = 0; i < n; i++) {
    const [s0, s1] = [(stem.until * i) / n, (stem.until * (i + 1)) / n]
    capsule(out, frameAt(line, s0).o, frameAt(line, s1).o, stem.r0 + ((stem.r1 - stem.r0) * (i + 0.5)) / n)
  }
  for (const leaf of layout.leaves) {
    const [d, s, face] = leafAxes(leaf)
    const half = (leaf.length * (1 - leaf.stalk)) / 2
    const o = along(along(leaf.o, d, leaf.length * leaf.stalk + half), [0, 0, -1], (leaf.droop * leaf.length) / 8)
    ellipsoid(out, 'leaf', o, scale(d, half), scale(s, leaf.width / 2), scale(face, 0.3 + leaf.width * 0.03))
  }
  for (const { f, size } of layout.heads) {
    ellipsoid(
      out,
      'bloom',
      at(f, 0, 0, size * 0.1),
      scale(f.u, size / 2),
      scale(f.v, size / 2),
      scale(f.w, size * 0.22),
    )
  }
  for (const rope of layout.ropes) {
    for (let i = 0; i < 4; i++) {
      const f = frameAt(line, rope.from + ((rope.to - rope.from) * (i + 0.5)) / 4)
      const r = (rope.width / 2) * (1 - 0.2 * i)
      ellipsoid(out, 'bloom', f.o, scale(f.u, r), scale(f.v, r), scale(f.w, (rope.to - rope.from) / 7))
    }
  }
  const packed = new Float32Array(out)
  if (packed.length % STANDIN_STRIDE !== 0) throw new Error('a stand-in is not as long as it should be')
  return packed
}
