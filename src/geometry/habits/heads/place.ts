import { type Builder, TISSUE_NUMBER } from '../builder.ts'
import type { HeadOrgan } from '../organs.ts'
import { lerp, randomFrom } from '../vector.ts'
import { HEADS } from './index.ts'

const DIRECTIONS = 8
const COS = Array.from({ length: DIRECTIONS }, (_, i) => Math.cos((i * Math.PI) / DIRECTIONS))
const SIN = Array.from({ length: DIRECTIONS }, (_, i) => Math.sin((i * Math.PI) / DIRECTIONS))

/** Mean width of what was laid from `first` vertex and face on, seen along w: over 8 directions, bare stems left out. */
const meanWidth = (b: Builder, first: number, firstFace: number, { f }: HeadOrgan): number => {
  const bare = new Uint8Array(b.vertices - first)
  for (let t = firstFace; t < b.faces; t++) {
    if (b.tissues[t] !== TISSUE_NUMBER.stem && b.tissues[t] !== TISSUE_NUMBER.bark) continue
    for (let j = 0; j < 3; j++) bare[b.triangles[3 * t + j]! - first] = 1
  }
  const least = new Float64Array(DIRECTIONS).fill(Number.POSITIVE_INFINITY)
  const most = new Float64Array(DIRECTIONS).fill(Number.NEGATIVE_INFINITY)
  const P = b.positions
  const { o, u, v } = f
  let any = false
  for (let i = first; i < b.vertices; i++) {
    if (bare[i - first] === 1) continue
    const dx = P[3 * i]! - o[0]
    const dy = P[3 * i + 1]! - o[1]
    const dz = P[3 * i + 2]! - o[2]
    const x = dx * u[0] + dy * u[1] + dz * u[2]
    const y = dx * v[0] + dy * v[1] + dz * v[2]
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
  make(b, f, size, { open: lerp(head.least ?? 0, 1, open), shape, small, random: randomFrom(head.seed) })
  const width = meanWidth(b, first, firstFace, head)
  if (width < 1e-6) return 1
  const k = size / width
  for (let i = 3 * first; i < 3 * b.vertices; i += 3) {
    for (let c = 0; c < 3; c++) b.positions[i + c] = f.o[c]! + (b.positions[i + c]! - f.o[c]!) * k
  }
  return k
}
