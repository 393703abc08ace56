import { PART_STRIDE } from './parts.ts'

/** Pixels of a picture. Row 0 is the lowest; the middle of the width is x = 0. */
export interface Grid {
  width: number
  height: number
  /** mm of one pixel. */
  mm: number
  /** Row whose lower edge is at "up" = 0. */
  zeroRow: number
}

/** Owner of the vessel's pixels; 0 is nothing, else stem's number × 4 + kind + 1. */
export const VESSEL_PIXEL = 65535
export const ownerCode = (stem: number, kind: number): number => stem * 4 + kind + 1
export const stemOf = (owner: number): number => (owner - 1) >> 2

export const EMPTY_DEPTH = -1e9

/**
 * One picture. With `back` the same is seen from behind as well (a picture from the opposite side is its mirror image;
 * it is kept unmirrored), depth toward the eye in both. `mass` is 1 where a bloom or leaf is, hidden or not.
 */
export interface Layer {
  owner: Uint16Array
  depth: Float32Array
  back: { owner: Uint16Array; depth: Float32Array } | null
  mass: Uint8Array | null
}

export const createLayer = (size: number, back: boolean, mass: boolean): Layer => ({
  owner: new Uint16Array(size),
  depth: new Float32Array(size).fill(EMPTY_DEPTH),
  back: back ? { owner: new Uint16Array(size), depth: new Float32Array(size).fill(EMPTY_DEPTH) } : null,
  mass: mass ? new Uint8Array(size) : null,
})

export const clearLayer = (layer: Layer): void => {
  layer.owner.fill(0)
  layer.depth.fill(EMPTY_DEPTH)
  layer.back?.owner.fill(0)
  layer.back?.depth.fill(EMPTY_DEPTH)
  layer.mass?.fill(0)
}

export const copyLayer = (from: Layer, to: Layer): void => {
  to.owner.set(from.owner)
  to.depth.set(from.depth)
  if (from.back && to.back) {
    to.back.owner.set(from.back.owner)
    to.back.depth.set(from.back.depth)
  }
  if (from.mass && to.mass) to.mass.set(from.mass)
}

/** Directions to the right, up the picture and toward the eye, unit vectors; a view's own (view.ts) or `typedAxes` of them. */
export interface Axes {
  right: ArrayLike<number>
  up: ArrayLike<number>
  toward: ArrayLike<number>
}

/** The same as typed arrays: of plain ones, some with fractions and some without, each number that is read is boxed. */
export const typedAxes = ({ right, up, toward }: Axes): Axes => ({
  right: Float64Array.from(right),
  up: Float64Array.from(up),
  toward: Float64Array.from(toward),
})

// Of two at a pixel the nearer one stays; at the same depth the higher owner, so that the order of painting does not
// matter. Written out in both loops below, which run over a million times a frame.
/** One ellipsoid of prepared parts (parts.ts), at parts[o]; `mass` is null for what is none. */
export const splatEllipsoid = (
  layer: Layer,
  grid: Grid,
  axes: Axes,
  p: Float64Array,
  o: number,
  code: number,
  mass: Uint8Array | null,
): void => {
  const { right: e, up: f, toward: g } = axes
  const { width, height, mm, zeroRow } = grid
  const x = p[o + 2]!
  const y = p[o + 3]!
  const z = p[o + 4]!
  const xx = p[o + 5]!
  const xy = p[o + 6]!
  const xz = p[o + 7]!
  const yy = p[o + 8]!
  const yz = p[o + 9]!
  const zz = p[o + 10]!
  const fx = xx * f[0]! + xy * f[1]! + xz * f[2]!
  const fy = xy * f[0]! + yy * f[1]! + yz * f[2]!
  const fz = xz * f[0]! + yz * f[1]! + zz * f[2]!
  const suu = f[0]! * fx + f[1]! * fy + f[2]! * fz
  if (!(suu > 0)) return
  const reach = Math.sqrt(suu)
  const perMm = 1 / mm
  const cu = x * f[0]! + y * f[1]! + z * f[2]!
  // `| 0` keeps rows and columns whole numbers for the compiler; without it the loops below count in doubles.
  const r0 = Math.max(0, Math.ceil((cu - reach) * perMm + zeroRow - 0.5) | 0)
  const r1 = Math.min(height - 1, Math.floor((cu + reach) * perMm + zeroRow - 0.5) | 0)
  if (r0 > r1) return
  const ex = xx * e[0]! + xy * e[1]! + xz * e[2]!
  const ey = xy * e[0]! + yy * e[1]! + yz * e[2]!
  const ez = xz * e[0]! + yz * e[1]! + zz * e[2]!
  const sxx = e[0]! * ex + e[1]! * ey + e[2]! * ez
  const sxu = f[0]! * ex + f[1]! * ey + f[2]! * ez
  const gx = xx * g[0]! + xy * g[1]! + xz * g[2]!
  const gy = xy * g[0]! + yy * g[1]! + yz * g[2]!
  const gz = xz * g[0]! + yz * g[1]! + zz * g[2]!
  const sxt = e[0]! * gx + e[1]! * gy + e[2]! * gz
  const sut = f[0]! * gx + f[1]! * gy + f[2]! * gz
  const stt = g[0]! * gx + g[1]! * gy + g[2]! * gz
  const det = sxx * suu - sxu * sxu
  if (!(det > 1e-9 * sxx * suu)) return
  const px = (sxt * suu - sut * sxu) / det
  const pu = (sut * sxx - sxt * sxu) / det
  const bulge = Math.sqrt(Math.max(0, stt - px * sxt - pu * sut))
  const wide = Math.sqrt(det / suu)
  const lean = sxu / suu
  const cx = x * e[0]! + y * e[1]! + z * e[2]!
  const ct = x * g[0]! + y * g[1]! + z * g[2]!
  const mid = width / 2 - 0.5
  const { owner, depth, back } = layer
  const backOwner = back ? back.owner : null
  const backDepth = back ? back.depth : null
  const perTall = 1 / suu
  const perWide = mm / wide
  const step = px * mm
  for (let r = r0; r <= r1; r++) {
    const du = (r + 0.5 - zeroRow) * mm - cu
    const left = 1 - du * du * perTall
    if (left <= 0) continue
    const root = Math.sqrt(left)
    const xc = cx + lean * du
    const hw = wide * root
    const c0 = Math.max(0, Math.ceil((xc - hw) * perMm + mid) | 0)
    const c1 = Math.min(width - 1, Math.floor((xc + hw) * perMm + mid) | 0)
    if (c0 > c1) continue
    const row = r * width
    const high = bulge * root
    const end = row + c1
    if (mass) for (let i = row + c0; i <= end; i++) mass[i] = 1
    // Along the span everything is linear but the root: q runs from edge to edge, the plane leans by px.
    const per = perWide / root
    const q0 = (c0 - mid - xc * perMm) * per
    const flat0 = ct + pu * du + px * ((c0 - mid) * mm - cx)
    for (let i = row + c0, k = 0; i <= end; i++, k++) {
      const q = q0 + k * per
      const w = 1 - q * q
      const rise = w > 0 ? high * Math.sqrt(w) : 0
      const flat = flat0 + k * step
      const near = Math.fround(flat + rise)
      const there = depth[i]!
      if (near >= there && (near > there || code > owner[i]!)) {
        depth[i] = near
        owner[i] = code
      }
      if (backDepth !== null) {
        const far = Math.fround(rise - flat)
        const behind = backDepth[i]!
        if (far >= behind && (far > behind || code > backOwner![i]!)) {
          backDepth[i] = far
          backOwner![i] = code
        }
      }
    }
  }
}

/** One capsule of prepared parts, at parts[o]. */
export const splatCapsule = (
  layer: Layer,
  grid: Grid,
  axes: Axes,
  p: Float64Array,
  o: number,
  code: number,
  mass: Uint8Array | null,
): void => {
  const { right: e, up: f, toward: g } = axes
  const { width, height, mm, zeroRow } = grid
  const radius = p[o + 8]!
  // Written out: this runs some ten thousand times a frame, and small arrays would be made each time.
  const au = p[o + 2]! * f[0]! + p[o + 3]! * f[1]! + p[o + 4]! * f[2]!
  const vu = p[o + 5]! * f[0]! + p[o + 6]! * f[1]! + p[o + 7]! * f[2]! - au
  const r0 = Math.max(0, Math.ceil((Math.min(au, au + vu) - radius) / mm + zeroRow - 0.5) | 0)
  const r1 = Math.min(height - 1, Math.floor((Math.max(au, au + vu) + radius) / mm + zeroRow - 0.5) | 0)
  if (r0 > r1) return
  const ax = p[o + 2]! * e[0]! + p[o + 3]! * e[1]! + p[o + 4]! * e[2]!
  const vx = p[o + 5]! * e[0]! + p[o + 6]! * e[1]! + p[o + 7]! * e[2]! - ax
  const at = p[o + 2]! * g[0]! + p[o + 3]! * g[1]! + p[o + 4]! * g[2]!
  const vt = p[o + 5]! * g[0]! + p[o + 6]! * g[1]! + p[o + 7]! * g[2]! - at
  const long2 = vx * vx + vu * vu
  const per = long2 > 0 ? 1 / long2 : 0
  const mid = width / 2 - 0.5
  const { owner, depth, back } = layer
  const backOwner = back ? back.owner : null
  const backDepth = back ? back.depth : null
  const steep = vu > 1e-9 || vu < -1e-9 ? 1 / vu : 0
  const perMm = 1 / mm
  const radius2 = radius * radius
  for (let r = r0; r <= r1; r++) {
    const u = (r + 0.5 - zeroRow) * mm - au
    // The piece of the line that can reach this row bounds the pixels to be looked at.
    let xa = ax
    let xb = ax + vx
    if (steep !== 0) {
      const a = (u - radius) * steep
      const b = (u + radius) * steep
      xa = ax + (a < 0 ? 0 : Math.min(a, 1)) * vx
      xb = ax + (b < 0 ? 0 : Math.min(b, 1)) * vx
    }
    const c0 = Math.max(0, Math.ceil((Math.min(xa, xb) - radius) * perMm + mid) | 0)
    const c1 = Math.min(width - 1, Math.floor((Math.max(xa, xb) + radius) * perMm + mid) | 0)
    for (let c = c0; c <= c1; c++) {
      const dx = (c - mid) * mm - ax
      const along = (dx * vx + u * vu) * per
      const t = along < 0 ? 0 : Math.min(along, 1)
      const qx = dx - t * vx
      const qu = u - t * vu
      const d2 = radius2 - qx * qx - qu * qu
      if (d2 < 0) continue
      const rise = Math.sqrt(d2)
      const flat = at + t * vt
      const i = r * width + c
      const near = Math.fround(flat + rise)
      const there = depth[i]!
      if (near >= there && (near > there || code > owner[i]!)) {
        depth[i] = near
        owner[i] = code
      }
      if (backDepth !== null) {
        const far = Math.fround(rise - flat)
        const behind = backDepth[i]!
        if (far >= behind && (far > behind || code > backOwner![i]!)) {
          backDepth[i] = far
          backOwner![i] = code
        }
      }
      if (mass) mass[i] = 1
    }
  }
}

/**
 * Paints a stem's parts (see parts.ts) into a layer. A pixel is covered when its centre is. Ellipsoids are exact: one
 * span a row, front and back surface by the conditional formulas of a quadric; capsules are the sweep of a ball with
 * the depth of its middle line. Parts of kind `stem` (2) leave `mass` alone.
 */
export const splatParts = (layer: Layer, grid: Grid, axes: Axes, parts: Float64Array, stem: number): void => {
  for (let o = 0; o < parts.length; o += PART_STRIDE) {
    const kind = parts[o + 1]!
    const mass = kind === 2 ? null : layer.mass
    if (parts[o] === 1) splatCapsule(layer, grid, axes, parts, o, ownerCode(stem, kind), mass)
    else splatEllipsoid(layer, grid, axes, parts, o, ownerCode(stem, kind), mass)
  }
}
