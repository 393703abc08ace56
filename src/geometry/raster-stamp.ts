import { PART_STRIDE, reachAlong } from './parts.ts'
import { type Axes, EMPTY_DEPTH, type Grid, type Layer, ownerCode, splatParts } from './raster.ts'

/**
 * One stem's own picture, cut out row by row, to be put into layers again and again: what it hides of itself is settled,
 * and no surface is worked out anew. It gives, to the bit, what `splatParts` gives.
 */
export interface Stamp {
  /** Its lowest row; for each row the first column, and where in the lists below its pixels begin (one more for the end). */
  row: number
  column: Uint16Array
  start: Uint32Array
  /** Depth of front and back toward the eye in front and the one behind; −∞ where there is nothing. */
  near: Float32Array
  far: Float32Array | null
  /** Kind at the front in bits 0–1, at the back in bits 2–3, and 16 where there is mass. */
  kinds: Uint8Array
}

const FRONT = 3
const MASS = 16

/** Pixels that the parts can reach: columns from–to, rows from–to. */
const boundsOf = ({ width, height, mm, zeroRow }: Grid, { right, up }: Axes, parts: Float64Array): number[] => {
  let [left, end, low, high] = [width, -1, height, -1]
  for (let o = 0; o < parts.length; o += PART_STRIDE) {
    const [a, b] = reachAlong(parts, o, right)
    const [c, d] = reachAlong(parts, o, up)
    left = Math.min(left, Math.floor(a / mm + width / 2) - 1)
    end = Math.max(end, Math.ceil(b / mm + width / 2) + 1)
    low = Math.min(low, Math.floor(c / mm + zeroRow) - 1)
    high = Math.max(high, Math.ceil(d / mm + zeroRow) + 1)
  }
  return [Math.max(0, left), Math.min(width - 1, end), Math.max(0, low), Math.min(height - 1, high)]
}

/**
 * Paints a stem into an empty layer, cuts it out, and leaves the layer empty.
 * @param bench an empty layer of the grid's size, with what is wanted of back and mass
 */
export const cutStamp = (bench: Layer, grid: Grid, axes: Axes, parts: Float64Array): Stamp => {
  const { owner, depth, back, mass } = bench
  splatParts(bench, grid, axes, parts, 0)
  const [left, end, low, high] = boundsOf(grid, axes, parts) as [number, number, number, number]
  const rows = Math.max(0, high - low + 1)
  const column = new Uint16Array(rows)
  const start = new Uint32Array(rows + 1)
  for (let r = 0; r < rows; r++) {
    const row = (low + r) * grid.width
    let from = left
    let to = end
    while (from <= to && owner[row + from] === 0) from += 1
    while (to >= from && owner[row + to] === 0) to -= 1
    column[r] = from
    start[r + 1] = start[r]! + to - from + 1
  }
  const size = start[rows]!
  const near = new Float32Array(size).fill(Number.NEGATIVE_INFINITY)
  const far = back ? new Float32Array(size).fill(Number.NEGATIVE_INFINITY) : null
  const kinds = new Uint8Array(size)
  for (let r = 0; r < rows; r++) {
    let i = (low + r) * grid.width + column[r]!
    for (let k = start[r]!; k < start[r + 1]!; k++, i++) {
      if (owner[i] === 0) continue
      near[k] = depth[i]!
      kinds[k] = owner[i]! - 1
      if (mass?.[i] === 1) kinds[k]! |= MASS
      if (back) {
        far![k] = back.depth[i]!
        kinds[k]! |= (back.owner[i]! - 1) << 2
      }
    }
    const row = (low + r) * grid.width
    owner.fill(0, row + left, row + end + 1)
    depth.fill(EMPTY_DEPTH, row + left, row + end + 1)
    back?.owner.fill(0, row + left, row + end + 1)
    back?.depth.fill(EMPTY_DEPTH, row + left, row + end + 1)
    mass?.fill(0, row + left, row + end + 1)
  }
  return { row: low, column, start, near, far, kinds }
}

/** Puts a stem's stamp into a layer of the same grid, by the rule of `splatParts`: the nearer stays, of two alike the higher owner. */
export const putStamp = (layer: Layer, width: number, stamp: Stamp, stem: number): void => {
  const { column, start, near, far, kinds } = stamp
  const { owner, depth, back, mass } = layer
  const backOwner = back ? back.owner : null
  const backDepth = back ? back.depth : null
  const base = ownerCode(stem, 0)
  for (let r = 0; r < column.length; r++) {
    let i = (stamp.row + r) * width + column[r]!
    for (let k = start[r]!, end = start[r + 1]!; k < end; k++, i++) {
      const kind = kinds[k]!
      const front = near[k]!
      const there = depth[i]!
      const code = base + (kind & FRONT)
      if (front >= there && (front > there || code > owner[i]!)) {
        depth[i] = front
        owner[i] = code
      }
      if (mass !== null && kind >= MASS) mass[i] = 1
      if (backDepth === null) continue
      const behind = far![k]!
      const thereBack = backDepth[i]!
      const codeBack = base + ((kind >> 2) & FRONT)
      if (behind >= thereBack && (behind > thereBack || codeBack > backOwner![i]!)) {
        backDepth[i] = behind
        backOwner![i] = codeBack
      }
    }
  }
}
