import { FACE, FACE_HEIGHT } from './guests.ts'

/** The face opposite as a small picture: a row is one word, its lowest row first; bit c is column c from the left. */
export const COLUMNS = 32
export const ROWS = 48
export const FACE_PIXELS = COLUMNS * ROWS

/** Where one looks from and how: everything in the frame of one way round, x right, y away, z up from the rim, mm. */
export interface Look {
  /** From the axis to the eye, mm. */
  distance: number
  /** Height of the eye over the rim, mm. */
  eye: number
  /** Pixels across and up of one unit at distance 1 from the eye; the face is twice the distance away. */
  across: number
  upward: number
}

export const lookFrom = (distance: number, eye: number): Look => ({
  distance,
  eye,
  across: (2 * distance * COLUMNS) / FACE.width,
  upward: (2 * distance * ROWS) / FACE_HEIGHT,
})

const EYE_ROW = (FACE.chin * ROWS) / FACE_HEIGHT

/** What is nearer to the eye than this is not painted, mm. Ours: no one sits with a flower there. */
const NEAREST = 50

const fill = (rows: Int32Array, at: number, r: number, left: number, right: number): void => {
  const c0 = Math.max(0, Math.ceil(left - 0.5))
  const c1 = Math.min(COLUMNS - 1, Math.floor(right - 0.5))
  if (c0 <= c1) rows[at + r]! |= (0xffffffff >>> (COLUMNS - 1 - (c1 - c0))) << c0
}

/** One level stretch of a row (its middle), from–to in mm at the face. */
export const coverStretch = (rows: Int32Array, at: number, r: number, from: number, to: number): void =>
  fill(rows, at, r, (from / FACE.width + 0.5) * COLUMNS, (to / FACE.width + 0.5) * COLUMNS)

/** Height of a row's middle over the eye, mm at the face. */
export const heightOfRow = (r: number): number => ((r + 0.5) * FACE_HEIGHT) / ROWS - FACE.chin

/**
 * Covers with an ellipsoid, exactly as the eye sees it: `m` is its centre x, y, z and its second moments xx, xy, xz, yy,
 * yz, zz, in the frame of the way round. The planes through the eye that touch it satisfy nᵀ(ccᵀ − S)n = 0 (c the centre
 * from the eye, S the moments), which is the dual of the seen ellipse (Hartley and Zisserman, Multiple View Geometry, 2nd
 * ed. 2004, section 8.3): centre and moments of the ellipse follow by dividing by the entry of the depth.
 */
export const coverEllipsoid = (rows: Int32Array, at: number, l: Look, m: Float64Array): void => {
  const x = m[0]!
  const y = m[1]! + l.distance
  const z = m[2]! - l.eye
  const f = y * y - m[6]!
  if (y < NEAREST || !(f > NEAREST * NEAREST)) return
  const u = (x * y - m[4]!) / f
  const v = (z * y - m[7]!) / f
  const ku = l.across
  const kv = l.upward
  const vv = (v * v - (z * z - m[8]!) / f) * kv * kv
  if (!(vv > 0)) return
  const uu = (u * u - (x * x - m[3]!) / f) * ku * ku
  const uv = (u * v - (x * z - m[5]!) / f) * ku * kv
  const det = uu * vv - uv * uv
  if (!(det > 0)) return
  const cu = u * ku + COLUMNS / 2
  const cv = v * kv + EYE_ROW
  const reach = Math.sqrt(vv)
  const r0 = Math.max(0, Math.ceil(cv - reach - 0.5))
  const r1 = Math.min(ROWS - 1, Math.floor(cv + reach - 0.5))
  const lean = uv / vv
  const wide = Math.sqrt(det / vv)
  for (let r = r0; r <= r1; r++) {
    const d = r + 0.5 - cv
    const left = 1 - (d * d) / vv
    if (left <= 0) continue
    const half = wide * Math.sqrt(left)
    const mid = cu + lean * d
    fill(rows, at, r, mid - half, mid + half)
  }
}

/**
 * Covers with a capsule from a to b: each end a disc of the size that its ball has in the middle of the picture, and all
 * between. `m` is a x, y, z and b x, y, z, in the frame of the way round.
 */
export const coverCapsule = (rows: Int32Array, at: number, l: Look, m: Float64Array, radius: number): void => {
  const ya = m[1]! + l.distance
  const yb = m[4]! + l.distance
  if (ya < NEAREST || yb < NEAREST) return
  const ku = l.across
  const kv = l.upward
  const ax = (m[0]! / ya) * ku + COLUMNS / 2
  const az = ((m[2]! - l.eye) / ya) * kv + EYE_ROW
  const vx = (m[3]! / yb) * ku + COLUMNS / 2 - ax
  const vz = ((m[5]! - l.eye) / yb) * kv + EYE_ROW - az
  // A pixel is square within one in a hundred.
  const k = (ku + kv) / 2
  const ra = (radius / ya) * k
  const rb = (radius / yb) * k
  const most = Math.max(ra, rb)
  const r0 = Math.max(0, Math.ceil(Math.min(az, az + vz) - most - 0.5))
  const r1 = Math.min(ROWS - 1, Math.floor(Math.max(az, az + vz) + most - 0.5))
  const long2 = vx * vx + vz * vz
  const per = long2 > 0 ? 1 / long2 : 0
  for (let r = r0; r <= r1; r++) {
    const z = r + 0.5 - az
    // The piece of the line that can reach this row bounds the pixels to be looked at.
    let s = 0
    let t = 1
    if (Math.abs(vz) > 1e-9) {
      const p = (z - most) / vz
      const q = (z + most) / vz
      s = Math.min(1, Math.max(0, Math.min(p, q)))
      t = Math.max(0, Math.min(1, Math.max(p, q)))
    }
    const c0 = Math.max(0, Math.ceil(ax + Math.min(s * vx, t * vx) - most - 0.5))
    const c1 = Math.min(COLUMNS - 1, Math.floor(ax + Math.max(s * vx, t * vx) + most - 0.5))
    for (let c = c0; c <= c1; c++) {
      const x = c + 0.5 - ax
      const along = Math.min(1, Math.max(0, (x * vx + z * vz) * per))
      const thick = ra + along * (rb - ra)
      if ((x - along * vx) ** 2 + (z - along * vz) ** 2 <= thick * thick) rows[at + r]! |= 1 << c
    }
  }
}

/** How many bits are set. */
export const bitsIn = (rows: Int32Array, from: number, to: number): number => {
  let sum = 0
  for (let i = from; i < to; i++) {
    // Bits counted side by side (Warren, Hacker's Delight, 2nd ed. 2012, section 5-1).
    let w = rows[i]!
    w = (w - ((w >>> 1) & 0x55555555)) | 0
    w = (w & 0x33333333) + ((w >>> 2) & 0x33333333)
    sum += Math.imul((w + (w >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24
  }
  return sum
}
