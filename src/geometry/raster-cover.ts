import { PART_STRIDE } from './parts.ts'
import { type Axes, type Grid, type Layer, ownerCode, splatCapsule, splatEllipsoid } from './raster.ts'

/**
 * Paints parts into a picture from above in which only what stands over the plane z = 0 counts, and only whether a pixel
 * is covered, not by whom. The layer's depth holds that plane. An ellipsoid that is wholly over the plane is filled row
 * by row without asking for depth, the rest goes the long way; the pixels with an owner are the same either way.
 */
export const coverParts = (layer: Layer, grid: Grid, axes: Axes, parts: Float64Array, stem: number): void => {
  const { width, height, mm, zeroRow } = grid
  const [e, f] = [axes.right, axes.up]
  const [e0, e1, e2, f0, f1, f2] = [e[0], e[1], e[2], f[0], f[1], f[2]]
  const mid = width / 2 - 0.5
  const { owner } = layer
  const [right, top] = [(width / 2) * mm, (height - zeroRow) * mm]
  const bottom = -zeroRow * mm
  for (let o = 0; o < parts.length; o += PART_STRIDE) {
    const code = ownerCode(stem, parts[o + 1]!)
    if (parts[o] === 1) {
      splatCapsule(layer, grid, axes, parts, o, code)
      continue
    }
    const [x, y, z] = [parts[o + 2]!, parts[o + 3]!, parts[o + 4]!]
    const [xx, xy, xz] = [parts[o + 5]!, parts[o + 6]!, parts[o + 7]!]
    const [yy, yz, zz] = [parts[o + 8]!, parts[o + 9]!, parts[o + 10]!]
    // Nothing reaches farther than the root of the sum of the half axes' squares.
    const reach = Math.sqrt(xx + yy + zz)
    const cx = x * e0 + y * e1 + z * e2
    const cu = x * f0 + y * f1 + z * f2
    if (Math.abs(cx) > right + reach || cu > top + reach || cu < bottom - reach) continue
    if (z < 0 || z * z < zz) {
      splatEllipsoid(layer, grid, axes, parts, o, code)
      continue
    }
    const fx = xx * f0 + xy * f1 + xz * f2
    const fy = xy * f0 + yy * f1 + yz * f2
    const fz = xz * f0 + yz * f1 + zz * f2
    const suu = f0 * fx + f1 * fy + f2 * fz
    if (!(suu > 0)) continue
    const sxu = e0 * fx + e1 * fy + e2 * fz
    const sxx = e0 * (xx * e0 + 2 * xy * e1 + 2 * xz * e2) + e1 * (yy * e1 + 2 * yz * e2) + e2 * e2 * zz
    const det = sxx * suu - sxu * sxu
    if (!(det > 1e-9 * sxx * suu)) continue
    const tall = Math.sqrt(suu)
    const wide = Math.sqrt(det / suu)
    const r1 = Math.min(height - 1, Math.floor((cu + tall) / mm + zeroRow - 0.5))
    for (let r = Math.max(0, Math.ceil((cu - tall) / mm + zeroRow - 0.5)); r <= r1; r++) {
      const du = (r + 0.5 - zeroRow) * mm - cu
      const left = 1 - (du * du) / suu
      if (left <= 0) continue
      const hw = wide * Math.sqrt(left)
      const xc = cx + (sxu / suu) * du
      const c0 = Math.max(0, Math.ceil((xc - hw) / mm + mid))
      const c1 = Math.min(width - 1, Math.floor((xc + hw) / mm + mid))
      for (let i = r * width + c0; i <= r * width + c1; i++) owner[i] = code
    }
  }
}
