import { type Mesh, viewAxes } from '../geometry/index.ts'
import type { ViewAngle } from './types.ts'

/** Nothing is there. */
export const EMPTY_DEPTH = -1e9

/** Slivers of less than this, square subpixels, cover no centre but by rounding. Ours. */
const LEAST_AREA = 1e-4

/**
 * What the eye meets first in every subpixel: which triangle, and how near. Material, place on the petal and normal
 * are worked out later, from the triangle, only where it is seen.
 */
export interface Raster {
  /** Subpixels; row 0 is the top. */
  width: number
  height: number
  /** Upper left corner in subpixels from the origin of the mesh, y downward. */
  left: number
  top: number
  /** Toward the viewer, mm; EMPTY_DEPTH where nothing is. */
  depth: Float32Array
  /** Index of the triangle; -1 where nothing is. */
  triangle: Int32Array
  /** For every row the columns between which something may be: first, one past the last; equal where nothing is. */
  from: Int32Array
  to: Int32Array
  /** Vertices in subpixels of this raster. */
  sx: Float32Array
  sy: Float32Array
}

/** What is painted into: nothing anywhere, as long as nobody works at it. */
interface Ground {
  depth: Float32Array
  triangle: Int32Array
}

/** More than two are not at work at once: what moves, and what stands. Larger ones are not kept: 32 MB. Ours. */
const MOST_SPARE = 2
const MOST_KEPT = 4 * 1024 * 1024
// Nine tenths of a stem's rectangle are empty: to make and fill a new ground each time takes as long as painting on it.
const spare: Ground[] = []

const groundFor = (size: number): Ground => {
  const at = spare.findIndex(({ depth }) => depth.length >= size)
  if (at >= 0) return spare.splice(at, 1)[0]!
  // None is large enough: the smallest makes room for this one.
  if (spare.length === MOST_SPARE) spare.splice(spare[0]!.depth.length < spare[1]!.depth.length ? 0 : 1, 1)
  return { depth: new Float32Array(size).fill(EMPTY_DEPTH), triangle: new Int32Array(size).fill(-1) }
}
const grounds = new WeakMap<Raster, Ground>()

/** Hands a raster's memory on to the next one. It must not be looked at any more. */
export const giveBack = (raster: Raster): void => {
  const ground = grounds.get(raster)
  if (!ground || spare.length === MOST_SPARE || ground.depth.length > MOST_KEPT) return
  grounds.delete(raster)
  const { width, height, from, to } = raster
  for (let y = 0, row = 0; y < height; y++, row += width) {
    ground.depth.fill(EMPTY_DEPTH, row + from[y]!, row + to[y]!)
    ground.triangle.fill(-1, row + from[y]!, row + to[y]!)
  }
  spare.push(ground)
}

/** Subpixels in front of and beyond these (view mm) are taken away: the front right quarter of a half section. */
export interface Cut {
  right: number
  toward: number
}

/**
 * Draws triangles into a depth buffer cut to their own bounds.
 * @param subpixels per mm
 * @param margin empty subpixels kept on every side, at least 1
 * @param multiple width, height, left and top are made multiples of this
 * @param cut see Cut; left out, nothing is taken away
 */
export const rasterise = (
  mesh: Mesh,
  angle: ViewAngle,
  subpixels: number,
  margin: number,
  multiple: number,
  cut?: Cut,
): Raster => {
  const { positions, triangles } = mesh
  const { right, up, toward } = viewAxes(angle)
  const [rx, ry, rz] = right
  const [ux, uy, uz] = up
  const [tx, ty, tz] = toward
  const vertices = positions.length / 3
  const sx = new Float32Array(vertices)
  const sy = new Float32Array(vertices)
  const sz = new Float32Array(vertices)
  let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity]
  for (let i = 0, k = 0; i < vertices; i++, k += 3) {
    const x = positions[k]!
    const y = positions[k + 1]!
    const z = positions[k + 2]!
    const X = (x * rx + y * ry + z * rz) * subpixels
    const Y = -(x * ux + y * uy + z * uz) * subpixels
    sx[i] = X
    sy[i] = Y
    sz[i] = x * tx + y * ty + z * tz
    if (X < x0) x0 = X
    if (X > x1) x1 = X
    if (Y < y0) y0 = Y
    if (Y > y1) y1 = Y
  }
  if (vertices === 0) [x0, x1, y0, y1] = [0, 0, 0, 0]
  const down = (v: number): number => Math.floor(v / multiple) * multiple
  const left = down(Math.floor(x0) - margin)
  const top = down(Math.floor(y0) - margin)
  const width = -down(-(Math.ceil(x1) + margin)) - left
  const height = -down(-(Math.ceil(y1) + margin)) - top
  for (let i = 0; i < vertices; i++) {
    sx[i] = sx[i]! - left
    sy[i] = sy[i]! - top
  }
  const ground = groundFor(width * height)
  const depth = ground.depth.subarray(0, width * height)
  const triangle = ground.triangle.subarray(0, width * height)
  const from = new Int32Array(height).fill(width)
  const to = new Int32Array(height)
  const cutX = cut ? cut.right * subpixels - left : Infinity
  const cutZ = cut ? cut.toward : Infinity

  for (let t = 0, k = 0; k < triangles.length; t++, k += 3) {
    const a = triangles[k]!
    const b = triangles[k + 1]!
    const c = triangles[k + 2]!
    const ax = sx[a]!
    const ay = sy[a]!
    const bx = sx[b]!
    const by = sy[b]!
    const cx = sx[c]!
    const cy = sy[c]!
    const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay)
    if (area < LEAST_AREA && area > -LEAST_AREA) continue
    const fromX = Math.ceil(Math.min(ax, bx, cx) - 0.5)
    const toX = Math.floor(Math.max(ax, bx, cx) - 0.5)
    const fromY = Math.ceil(Math.min(ay, by, cy) - 0.5)
    const toY = Math.floor(Math.max(ay, by, cy) - 0.5)
    if (fromX > toX || fromY > toY) continue
    const inverse = 1 / area
    // Weights of a and b, and the depth, are linear in x and y: value at the first centre, then steps.
    const waX = (by - cy) * inverse
    const waY = (cx - bx) * inverse
    const wbX = (cy - ay) * inverse
    const wbY = (ax - cx) * inverse
    const px = fromX + 0.5
    const py = fromY + 0.5
    let waRow = ((bx - px) * (cy - py) - (cx - px) * (by - py)) * inverse
    let wbRow = ((cx - px) * (ay - py) - (ax - px) * (cy - py)) * inverse
    const za = sz[a]! - sz[c]!
    const zb = sz[b]! - sz[c]!
    const zc = sz[c]!
    for (let y = fromY; y <= toY; y++) {
      let wa = waRow
      let wb = wbRow
      let i = y * width + fromX
      // A row meets a triangle in one piece: past its end there is no more of it.
      let met = false
      if (fromX < from[y]!) from[y] = fromX
      if (toX >= to[y]!) to[y] = toX + 1
      for (let x = fromX; x <= toX; x++, i++) {
        if (wa >= -1e-6 && wb >= -1e-6 && wa + wb <= 1.000001) {
          const z = zc + wa * za + wb * zb
          met = true
          if (z > depth[i]! && !(x + 0.5 > cutX && z > cutZ)) {
            depth[i] = z
            triangle[i] = t
          }
        } else if (met) break
        wa += waX
        wb += wbX
      }
      waRow += waY
      wbRow += wbY
    }
  }
  for (let y = 0; y < height; y++) if (from[y]! > to[y]!) from[y] = to[y]!
  const raster = { width, height, left, top, depth, triangle, from, to, sx, sy }
  grounds.set(raster, ground)
  return raster
}
