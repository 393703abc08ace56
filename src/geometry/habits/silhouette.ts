import type { Point3 } from '../../arrangement/index.ts'
import { type Builder, TISSUE_NUMBER } from './builder.ts'

/** A small raster to measure outlines: `size` × `size` points over a square of half width `half` mm round the middle. */
export interface Raster {
  size: number
  mask: Uint8Array
}
export const newRaster = (size: number): Raster => ({ size, mask: new Uint8Array(size * size) })

export interface Eye {
  right: Point3
  up: Point3
}

/** Looking at an upright head: `facing` degrees between its axis and the eye, `roll` radians round the axis. */
export const eyeAt = (facing: number, roll: number): Eye => {
  const a = (facing * Math.PI) / 180
  const [c, s] = [Math.cos(roll), Math.sin(roll)]
  return { right: [-s, c, 0], up: [-Math.cos(a) * c, -Math.cos(a) * s, Math.sin(a)] }
}

/** How many points a mesh covers (bare stem left out); `rows`, if given, gets each row's first, last and count. */
export const coverMesh = (
  { size: SIZE, mask }: Raster,
  b: Pick<Builder, 'positions' | 'triangles' | 'tissues' | 'vertices' | 'faces'>,
  { right, up }: Eye,
  middle: Point3,
  half: number,
  rows?: Int32Array,
): number => {
  mask.fill(0)
  const k = SIZE / (2 * half)
  const P = b.positions
  const x = new Float32Array(b.vertices)
  const y = new Float32Array(b.vertices)
  for (let i = 0; i < b.vertices; i++) {
    const dx = P[3 * i]! - middle[0]
    const dy = P[3 * i + 1]! - middle[1]
    const dz = P[3 * i + 2]! - middle[2]
    x[i] = (dx * right[0] + dy * right[1] + dz * right[2] + half) * k - 0.5
    y[i] = (dx * up[0] + dy * up[1] + dz * up[2] + half) * k - 0.5
  }
  for (let t = 0; t < b.faces; t++) {
    if (b.tissues[t] === TISSUE_NUMBER.stem || b.tissues[t] === TISSUE_NUMBER.bark) continue
    const [i, j, l] = [b.triangles[3 * t]!, b.triangles[3 * t + 1]!, b.triangles[3 * t + 2]!]
    fillTriangle(mask, SIZE, x[i]!, y[i]!, x[j]!, y[j]!, x[l]!, y[l]!)
  }
  let count = 0
  for (let r = 0; r < SIZE; r++) {
    let [first, last, n] = [-1, -1, 0]
    for (let c = 0; c < SIZE; c++) {
      if (mask[r * SIZE + c] === 0) continue
      if (first < 0) first = c
      last = c
      n++
    }
    count += n
    if (rows) {
      rows[3 * r] = first
      rows[3 * r + 1] = last
      rows[3 * r + 2] = n
    }
  }
  return count
}

/** Fill the points whose middles lie in a triangle; its corners are first put in order of height. */
const fillTriangle = (
  mask: Uint8Array,
  size: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
): void => {
  if (by < ay) return fillTriangle(mask, size, bx, by, ax, ay, cx, cy)
  if (cy < by) return fillTriangle(mask, size, ax, ay, cx, cy, bx, by)
  const y1 = Math.min(size - 1, Math.floor(cy))
  const long = cy > ay ? (cx - ax) / (cy - ay) : 0
  const lower = by > ay ? (bx - ax) / (by - ay) : 0
  const upper = cy > by ? (cx - bx) / (cy - by) : 0
  for (let y = Math.max(0, Math.ceil(ay)); y <= y1; y++) {
    const p = ax + long * (y - ay)
    const q = y < by ? ax + lower * (y - ay) : bx + upper * (y - by)
    const to = Math.min(size - 1, Math.floor(Math.max(p, q)))
    for (let x = Math.max(0, Math.ceil(Math.min(p, q))); x <= to; x++) mask[y * size + x] = 1
  }
}

/** A ball drawn out along three directions: centre and three half-axis vectors. */
export interface Slab {
  o: Point3
  a: Point3
  b: Point3
  c: Point3
}

/** Most pieces that one row can hold. */
const DEEP = 128
const froms = new Float32Array(256 * DEEP)
const tills = new Float32Array(256 * DEEP)
const used = new Int16Array(256)

/** Keep the pieces of a row in order of their beginning. */
const putPiece = (row: number, from: number, till: number): void => {
  let n = used[row]!
  if (n >= DEEP) return
  used[row] = n + 1
  const first = row * DEEP
  while (n > 0 && froms[first + n - 1]! > from) {
    froms[first + n] = froms[first + n - 1]!
    tills[first + n] = tills[first + n - 1]!
    n--
  }
  froms[first + n] = from
  tills[first + n] = till
}

/** Area that ellipsoids cover together, in points of the raster; a row's pieces are joined exactly. */
export const coverSlabs = (
  size: number,
  slabs: readonly Slab[],
  { right, up }: Eye,
  middle: Point3,
  half: number,
): number => {
  used.fill(0, 0, size)
  const k = size / (2 * half)
  const [r0, r1, r2] = right
  const [u0, u1, u2] = up
  for (const { o, a, b, c } of slabs) {
    const dx = o[0] - middle[0]
    const dy = o[1] - middle[1]
    const dz = o[2] - middle[2]
    const cx = (dx * r0 + dy * r1 + dz * r2 + half) * k - 0.5
    const cy = (dx * u0 + dy * u1 + dz * u2 + half) * k - 0.5
    const ax = (a[0] * r0 + a[1] * r1 + a[2] * r2) * k
    const ay = (a[0] * u0 + a[1] * u1 + a[2] * u2) * k
    const bx = (b[0] * r0 + b[1] * r1 + b[2] * r2) * k
    const by = (b[0] * u0 + b[1] * u1 + b[2] * u2) * k
    const gx = (c[0] * r0 + c[1] * r1 + c[2] * r2) * k
    const gy = (c[0] * u0 + c[1] * u1 + c[2] * u2) * k
    const yy = ay * ay + by * by + gy * gy
    if (yy < 1e-9) continue
    const slope = (ax * ay + bx * by + gx * gy) / yy
    const wide = Math.sqrt(Math.max(0, ax * ax + bx * bx + gx * gx - slope * slope * yy))
    const reach = Math.sqrt(yy)
    const last = Math.min(size - 1, Math.floor(cy + reach))
    for (let y = Math.max(0, Math.ceil(cy - reach)); y <= last; y++) {
      const t = (y - cy) / reach
      const w = wide * Math.sqrt(Math.max(0, 1 - t * t))
      const m = cx + slope * (y - cy)
      putPiece(y, m - w, m + w)
    }
  }
  let sum = 0
  for (let y = 0; y < size; y++) {
    let end = Number.NEGATIVE_INFINITY
    const first = y * DEEP
    for (let i = first; i < first + used[y]!; i++) {
      const till = tills[i]!
      if (till <= end) continue
      sum += till - Math.max(froms[i]!, end)
      end = till
    }
  }
  return sum
}
