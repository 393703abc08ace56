import { type Builder, TISSUE_NUMBER } from '../builder.ts'
import type { HeadOrgan } from '../organs.ts'
import { dot, randomFrom, sub } from '../vector.ts'
import { HEADS } from './index.ts'

const DIRECTIONS = 8
const COS = Array.from({ length: DIRECTIONS }, (_, i) => Math.cos((i * Math.PI) / DIRECTIONS))
const SIN = Array.from({ length: DIRECTIONS }, (_, i) => Math.sin((i * Math.PI) / DIRECTIONS))

/** Mean width of the faces from `firstFace` on, seen along w: the mean over 8 directions. Bare stems left out. */
const meanWidth = (b: Builder, firstFace: number, { f }: HeadOrgan): number => {
  const least = new Float64Array(DIRECTIONS).fill(Number.POSITIVE_INFINITY)
  const most = new Float64Array(DIRECTIONS).fill(Number.NEGATIVE_INFINITY)
  const P = b.positions
  let any = false
  for (let t = 3 * firstFace; t < 3 * b.faces; t++) {
    const tissue = b.tissues[Math.floor(t / 3)]
    if (tissue === TISSUE_NUMBER.stem || tissue === TISSUE_NUMBER.bark) continue
    const i = 3 * b.triangles[t]!
    const d = sub([P[i]!, P[i + 1]!, P[i + 2]!], f.o)
    const x = dot(d, f.u)
    const y = dot(d, f.v)
    any = true
    for (let k = 0; k < DIRECTIONS; k++) {
      const s = x * COS[k]! + y * SIN[k]!
      if (s < least[k]!) least[k] = s
      if (s > most[k]!) most[k] = s
    }
  }
  if (!any) return 0
  let sum = 0
  for (let k = 0; k < DIRECTIONS; k++) sum += most[k]! - least[k]!
  return sum / DIRECTIONS
}

/**
 * Lay a head so that, seen face on, it is `size` mm across (mean width over directions) however its petals turned out.
 * Returns by how much it had to grow.
 */
export const addHead = (b: Builder, head: HeadOrgan): number => {
  const make = HEADS[head.kind] ?? HEADS.rosette!
  const firstFace = b.faces
  const first = b.vertices
  const { f, size, open, shape, small } = head
  make(b, f, size, { open, shape, small, random: randomFrom(head.seed) })
  const width = meanWidth(b, firstFace, head)
  if (width < 1e-6) return 1
  const k = size / width
  for (let i = 3 * first; i < 3 * b.vertices; i += 3) {
    for (let c = 0; c < 3; c++) b.positions[i + c] = f.o[c]! + (b.positions[i + c]! - f.o[c]!) * k
  }
  return k
}
