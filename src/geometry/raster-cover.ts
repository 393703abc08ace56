import { PART_STRIDE } from './parts.ts'
import type { Axes, Grid } from './raster.ts'

/**
 * A picture from above of which only matters whether a pixel is covered. 64 columns: a row is two words of 32 bits, the
 * column c is bit c % 32 of word c / 32; 1 is covered. Signed words: unsigned ones are no small whole numbers to the compiler.
 */
export type Cover = Int32Array<ArrayBuffer>
export const COVER_WIDTH = 64
const WORDS = COVER_WIDTH / 32

export const createCover = (height: number): Cover => new Int32Array(height * WORDS)

/** Bits `from`…`to` of one word; columns outside the word are left out, none if there is none inside. */
const bits = (from: number, to: number): number => {
  if (to < 0 || from > 31 || from > to) return 0
  const low = Math.max(from, 0)
  const high = Math.min(to, 31)
  return (0xffffffff >>> (31 - (high - low))) << low
}

export const isCovered = (cover: Cover, column: number, row: number): boolean =>
  ((cover[row * WORDS + (column >> 5)]! >>> (column & 31)) & 1) === 1

/** Covers one pixel. */
export const coverPixel = (cover: Cover, column: number, row: number): void => {
  cover[row * WORDS + (column >> 5)]! |= 1 << (column & 31)
}

export const isFull = (cover: Cover): boolean => {
  for (let i = 0; i < cover.length; i++) if (cover[i] !== -1) return false
  return true
}

/** How many pixels are left uncovered. */
export const bareCount = (cover: Cover): number => {
  let bare = 0
  for (let i = 0; i < cover.length; i++) for (let w = ~cover[i]!; w !== 0; w &= w - 1) bare += 1
  return bare
}

/** An ellipsoid that is wholly over the plane z = 0: its rows are filled without asking how deep they lie. */
const isOver = (p: Float64Array, o: number): boolean => p[o] === 0 && p[o + 4]! >= 0 && p[o + 4]! ** 2 >= p[o + 10]!

/** Covers with one ellipsoid; `plane` asks of every pixel that its front surface is over the plane z = 0. */
const coverEllipsoid = (cover: Cover, grid: Grid, axes: Axes, p: Float64Array, o: number, plane: boolean): void => {
  const { height, mm, zeroRow } = grid
  const { right: e, up: f, toward: g } = axes
  const x = p[o + 2]!
  const y = p[o + 3]!
  const z = p[o + 4]!
  const xx = p[o + 5]!
  const xy = p[o + 6]!
  const xz = p[o + 7]!
  const yy = p[o + 8]!
  const yz = p[o + 9]!
  const zz = p[o + 10]!
  // Nothing reaches farther than the root of the sum of the half axes' squares.
  const reach = Math.sqrt(xx + yy + zz)
  if (plane && z < -reach) return
  const cx = x * e[0]! + y * e[1]! + z * e[2]!
  if (Math.abs(cx) > (COVER_WIDTH / 2) * mm + reach) return
  const cu = x * f[0]! + y * f[1]! + z * f[2]!
  if (cu > (height - zeroRow) * mm + reach || cu < -zeroRow * mm - reach) return
  const fx = xx * f[0]! + xy * f[1]! + xz * f[2]!
  const fy = xy * f[0]! + yy * f[1]! + yz * f[2]!
  const fz = xz * f[0]! + yz * f[1]! + zz * f[2]!
  const suu = f[0]! * fx + f[1]! * fy + f[2]! * fz
  if (!(suu > 0)) return
  const sxu = e[0]! * fx + e[1]! * fy + e[2]! * fz
  const ex = xx * e[0]! + xy * e[1]! + xz * e[2]!
  const ey = xy * e[0]! + yy * e[1]! + yz * e[2]!
  const ez = xz * e[0]! + yz * e[1]! + zz * e[2]!
  const sxx = e[0]! * ex + e[1]! * ey + e[2]! * ez
  const det = sxx * suu - sxu * sxu
  if (!(det > 1e-9 * sxx * suu)) return
  let pu = 0
  let px = 0
  let bulge = 0
  if (plane) {
    const sxt = g[0]! * ex + g[1]! * ey + g[2]! * ez
    const sut = g[0]! * fx + g[1]! * fy + g[2]! * fz
    const gx = xx * g[0]! + xy * g[1]! + xz * g[2]!
    const gy = xy * g[0]! + yy * g[1]! + yz * g[2]!
    const gz = xz * g[0]! + yz * g[1]! + zz * g[2]!
    px = (sxt * suu - sut * sxu) / det
    pu = (sut * sxx - sxt * sxu) / det
    const stt = g[0]! * gx + g[1]! * gy + g[2]! * gz
    bulge = Math.sqrt(Math.max(0, stt - px * sxt - pu * sut))
  }
  const ct = x * g[0]! + y * g[1]! + z * g[2]!
  const tall = Math.sqrt(suu)
  const wide = Math.sqrt(det / suu)
  const lean = sxu / suu
  const mid = COVER_WIDTH / 2 - 0.5
  const r0 = Math.max(0, Math.ceil((cu - tall) / mm + zeroRow - 0.5) | 0)
  const r1 = Math.min(height - 1, Math.floor((cu + tall) / mm + zeroRow - 0.5) | 0)
  for (let r = r0; r <= r1; r++) {
    const row = r * WORDS
    if ((cover[row]! & cover[row + 1]!) === -1) continue
    const u = (r + 0.5 - zeroRow) * mm
    const du = u - cu
    const left = 1 - (du * du) / suu
    if (left <= 0) continue
    const root = Math.sqrt(left)
    const hw = wide * root
    const xc = cx + lean * du
    const c0 = Math.ceil((xc - hw) / mm + mid) | 0
    const c1 = Math.floor((xc + hw) / mm + mid) | 0
    for (let k = 0; k < WORDS; k++) {
      let free = bits(c0 - 32 * k, c1 - 32 * k) & ~cover[row + k]!
      if (!plane) {
        cover[row + k]! |= free
        continue
      }
      for (; free !== 0; free &= free - 1) {
        const bit = free & ((~free + 1) | 0)
        const X = (32 * k + 31 - Math.clz32(bit) - mid) * mm
        const q = (X - xc) / hw
        const w = 1 - q * q
        const t = ct + pu * du + px * (X - cx) + (w > 0 ? bulge * root * Math.sqrt(w) : 0)
        if (t * g[2]! + u * f[2]! > 0) cover[row + k]! |= bit
      }
    }
  }
}

/** Covers with one capsule where its front surface is over the plane z = 0. */
const coverCapsule = (cover: Cover, grid: Grid, axes: Axes, p: Float64Array, o: number): void => {
  const { height, mm, zeroRow } = grid
  const { right: e, up: f, toward: g } = axes
  const radius = p[o + 8]!
  if (p[o + 4]! < -radius && p[o + 7]! < -radius) return
  const ax = p[o + 2]! * e[0]! + p[o + 3]! * e[1]! + p[o + 4]! * e[2]!
  const vx = p[o + 5]! * e[0]! + p[o + 6]! * e[1]! + p[o + 7]! * e[2]! - ax
  const edge = (COVER_WIDTH / 2) * mm + radius
  if ((ax > edge && ax + vx > edge) || (ax < -edge && ax + vx < -edge)) return
  const au = p[o + 2]! * f[0]! + p[o + 3]! * f[1]! + p[o + 4]! * f[2]!
  const vu = p[o + 5]! * f[0]! + p[o + 6]! * f[1]! + p[o + 7]! * f[2]! - au
  const r0 = Math.max(0, Math.ceil((Math.min(au, au + vu) - radius) / mm + zeroRow - 0.5) | 0)
  const r1 = Math.min(height - 1, Math.floor((Math.max(au, au + vu) + radius) / mm + zeroRow - 0.5) | 0)
  const at = p[o + 2]! * g[0]! + p[o + 3]! * g[1]! + p[o + 4]! * g[2]!
  const vt = p[o + 5]! * g[0]! + p[o + 6]! * g[1]! + p[o + 7]! * g[2]! - at
  const long2 = vx * vx + vu * vu
  const per = long2 > 0 ? 1 / long2 : 0
  const steep = Math.abs(vu) > 1e-9 ? 1 / vu : 0
  const mid = COVER_WIDTH / 2 - 0.5
  for (let r = r0; r <= r1; r++) {
    const row = r * WORDS
    if ((cover[row]! & cover[row + 1]!) === -1) continue
    const U = (r + 0.5 - zeroRow) * mm
    const u = U - au
    // The piece of the line that can reach this row bounds the pixels to be looked at.
    let xa = ax
    let xb = ax + vx
    if (steep !== 0) {
      xa = ax + Math.max(0, Math.min((u - radius) * steep, 1)) * vx
      xb = ax + Math.max(0, Math.min((u + radius) * steep, 1)) * vx
    }
    const c0 = Math.ceil((Math.min(xa, xb) - radius) / mm + mid) | 0
    const c1 = Math.floor((Math.max(xa, xb) + radius) / mm + mid) | 0
    for (let k = 0; k < WORDS; k++)
      for (let free = bits(c0 - 32 * k, c1 - 32 * k) & ~cover[row + k]!; free !== 0; free &= free - 1) {
        const bit = free & ((~free + 1) | 0)
        const dx = (32 * k + 31 - Math.clz32(bit) - mid) * mm - ax
        const t = Math.max(0, Math.min((dx * vx + u * vu) * per, 1))
        const qx = dx - t * vx
        const qu = u - t * vu
        const d2 = radius * radius - qx * qx - qu * qu
        if (d2 >= 0 && (at + t * vt + Math.sqrt(d2)) * g[2]! + U * f[2]! > 0) cover[row + k]! |= bit
      }
  }
}

/**
 * Covers with the parts (see parts.ts) that stand over the plane z = 0: a pixel counts where the front surface of a part
 * is over that plane. In two goes, so that whoever paints many stems can stop when all is covered: first `over`, the
 * ellipsoids that are wholly over the plane, quick; then, without `over`, all the rest.
 */
export const coverParts = (cover: Cover, grid: Grid, axes: Axes, parts: Float64Array, over: boolean): void => {
  for (let o = 0; o < parts.length; o += PART_STRIDE) {
    if (isOver(parts, o) !== over) continue
    if (parts[o] === 1) coverCapsule(cover, grid, axes, parts, o)
    else coverEllipsoid(cover, grid, axes, parts, o, !over)
  }
}
