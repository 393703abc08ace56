import type { Point3 } from '../../src/arrangement/index.ts'
import { type Builder, TISSUE_NUMBER } from '../../src/geometry/habits/builder.ts'
import { STANDIN_STRIDE } from '../../src/geometry/types.ts'

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

/** The picture is turned by so much, so that no upright blade falls between two columns. */
const [CT, ST] = [Math.cos(0.37), Math.sin(0.37)]
const mixed = (a: Point3, b: Point3, c: number, s: number): Point3 => [
  a[0] * c + b[0] * s,
  a[1] * c + b[1] * s,
  a[2] * c + b[2] * s,
]

/** Looking at an upright head: `facing` degrees between its axis and the eye, `roll` radians round the axis. */
export const eyeAt = (facing: number, roll: number): Eye => {
  const a = (facing * Math.PI) / 180
  const [c, s] = [Math.cos(roll), Math.sin(roll)]
  const right: Point3 = [-s, c, 0]
  const up: Point3 = [-Math.cos(a) * c, -Math.cos(a) * s, Math.sin(a)]
  return { right: mixed(right, up, CT, ST), up: mixed(up, right, CT, -ST) }
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
/** What lies beside is counted in every so many rows. */
const STEP = 4
const ROWS = 512
const froms = new Float32Array(ROWS * DEEP)
const tills = new Float32Array(ROWS * DEEP)
const used = new Int16Array(ROWS)

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

/** For each row, how many points before each column the last mesh covered: (size + 1) numbers a row. */
export const countsOf = ({ size, mask }: Raster): Uint16Array => {
  const out = new Uint16Array(size * (size + 1))
  for (let r = 0; r < size; r++) {
    for (let c = 0; c < size; c++) out[r * (size + 1) + c + 1] = out[r * (size + 1) + c]! + mask[r * size + c]!
  }
  return out
}

/** Area of an ellipse (`product` of its half axes) beyond a line at `t` half axes from its middle. */
const capOf = (t: number, product: number): number => {
  const u = Math.max(-1, Math.min(1, t))
  return product * (Math.acos(u) - u * Math.sqrt(1 - u * u))
}

/**
 * Area that stand-ins (packed, bare stems left out) cover together, in points of the raster (a row's pieces are joined
 * exactly), and about how much of it lies beside what the mesh covered. What reaches over the raster's edge counts too.
 */
export const coverStandins = (
  size: number,
  packed: Float32Array,
  { right, up }: Eye,
  middle: Point3,
  half: number,
  counts: Uint16Array,
): [area: number, beside: number] => {
  used.fill(0, 0, size)
  let outside = 0
  const k = size / (2 * half)
  const [r0, r1, r2] = right
  const [u0, u1, u2] = up
  const x = (i: number): number => (packed[i]! * r0 + packed[i + 1]! * r1 + packed[i + 2]! * r2) * k
  const y = (i: number): number => (packed[i]! * u0 + packed[i + 1]! * u1 + packed[i + 2]! * u2) * k
  const mx = (middle[0] * r0 + middle[1] * r1 + middle[2] * r2 - half) * k + 0.5
  const my = (middle[0] * u0 + middle[1] * u1 + middle[2] * u2 - half) * k + 0.5
  for (let i = 0; i < packed.length; i += STANDIN_STRIDE) {
    if (packed[i + 1] === 2) continue
    const cx = x(i + 2) - mx
    const cy = y(i + 2) - my
    if (packed[i] === 1) {
      coverCapsule(size, cx, cy, x(i + 5) - mx, y(i + 5) - my, packed[i + 8]! * k)
      continue
    }
    const [ax, bx, gx] = [x(i + 5), x(i + 8), x(i + 11)]
    const [ay, by, gy] = [y(i + 5), y(i + 8), y(i + 11)]
    const yy = ay * ay + by * by + gy * gy
    if (yy < 1e-9) continue
    const slope = (ax * ay + bx * by + gx * gy) / yy
    const wide = Math.sqrt(Math.max(0, ax * ax + bx * bx + gx * gx - slope * slope * yy))
    const reach = Math.sqrt(yy)
    const last = Math.min(size - 1, Math.floor(cy + reach))
    for (let row = Math.max(0, Math.ceil(cy - reach)); row <= last; row++) {
      const t = (row - cy) / reach
      const w = wide * Math.sqrt(Math.max(0, 1 - t * t))
      const m = cx + slope * (row - cy)
      putPiece(row, m - w, m + w)
    }
    outside += capOf((cy + 0.5) / reach, wide * reach) + capOf((size - 0.5 - cy) / reach, wide * reach)
  }
  let [sum, beside] = [outside, outside]
  for (let y = 0; y < size; y++) {
    let end = Number.NEGATIVE_INFINITY
    const first = y * DEEP
    const row = y * (size + 1)
    const before = (at: number): number => {
      const c = Math.max(0, Math.min(size, at + 0.5))
      const whole = Math.min(size - 1, Math.floor(c))
      return counts[row + whole]! + (c - whole) * (counts[row + whole + 1]! - counts[row + whole]!)
    }
    for (let i = first; i < first + used[y]!; i++) {
      const till = tills[i]!
      if (till <= end) continue
      const from = Math.max(froms[i]!, end)
      sum += till - from
      if (y % STEP === 0) beside += STEP * (till - from - before(till) + before(from))
      end = till
    }
  }
  return [sum, beside]
}

/** Rows of a strip with round ends: each is one piece. */
const coverCapsule = (size: number, ax: number, ay: number, bx: number, by: number, r: number): void => {
  const [dx, dy] = [bx - ax, by - ay]
  const long = Math.hypot(dx, dy) || 1e-9
  const [nx, ny] = [(-dy / long) * r, (dx / long) * r]
  const last = Math.min(size - 1, Math.floor(Math.max(ay, by) + r))
  for (let row = Math.max(0, Math.ceil(Math.min(ay, by) - r)); row <= last; row++) {
    let [from, till] = [Infinity, -Infinity]
    const see = (x: number): void => {
      from = Math.min(from, x)
      till = Math.max(till, x)
    }
    for (const [ex, ey] of [
      [ax, ay],
      [bx, by],
    ] as const) {
      const h2 = r * r - (row - ey) ** 2
      if (h2 >= 0) {
        see(ex - Math.sqrt(h2))
        see(ex + Math.sqrt(h2))
      }
    }
    for (const side of [1, -1]) {
      const t = Math.abs(dy) > 1e-9 ? (row - ay - side * ny) / dy : -1
      if (t >= 0 && t <= 1) see(ax + side * nx + t * dx)
    }
    if (till > from) putPiece(row, from, till)
  }
}
