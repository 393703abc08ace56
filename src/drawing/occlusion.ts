import { EMPTY_DEPTH, type Raster } from './raster.ts'

/**
 * How much of the sky a place loses, 0 open … about 0.9 deep inside, on a grid of half the raster's width; known only where the
 * raster holds something. The value of column x in row y is `values[rows[y] + x]`.
 */
export interface Occlusion {
  rows: Int32Array
  values: Float32Array
}

/** Radii of the samples in mm, their weights, and the range beyond which what is nearer shades less, mm. Ours. */
const RINGS: [radius: number, weight: number][] = [
  [3, 0.55],
  [11, 0.45],
]
const RANGE = 40
/** What stands above shades most, what stands below least (light from the upper left). Ours. */
const weightOf = (dx: number, dy: number): number => (dy < 0 ? 1.25 : dx < 0 ? 1.05 : 0.8)

/** Room to work in, clear between two calls: depths that are all empty, and zeros. */
let depths = new Float32Array(0)
let sums = new Float32Array(0)
const roomFor = (size: number): void => {
  if (depths.length >= size) return
  depths = new Float32Array(size).fill(EMPTY_DEPTH)
  sums = new Float32Array(size)
}

/** 16 depth samples about each place, smoothed over its neighbours of like depth. `raster` sides must be even. */
export const occlude = (raster: Raster, subpixels: number): Occlusion => {
  const width = raster.width >> 1
  const height = raster.height >> 1
  roomFor(width * height)
  const depth = depths
  const raw = sums
  const from = new Int32Array(height)
  const to = new Int32Array(height)
  const { depth: d, width: W } = raster
  for (let y = 0; y < height; y++) {
    const first = Math.min(raster.from[2 * y]!, raster.from[2 * y + 1]!) >> 1
    const last = (Math.max(raster.to[2 * y]!, raster.to[2 * y + 1]!) + 1) >> 1
    from[y] = Math.max(1, first)
    to[y] = Math.min(width - 1, last)
    for (let x = first; x < last; x++) {
      const i = 2 * y * W + 2 * x
      depth[y * width + x] = Math.max(d[i]!, d[i + 1]!, d[i + W]!, d[i + W + 1]!)
    }
  }
  const scale = subpixels / 2
  for (const [radius, weight] of RINGS) {
    const least = radius * 0.25
    const steepness = 1 / (radius * 0.9)
    for (let q = 0; q < 8; q++) {
      const a = (q * Math.PI) / 4 + 0.3
      const dx = Math.round(Math.cos(a) * radius * scale)
      const dy = Math.round(Math.sin(a) * radius * scale)
      const share = (weight * weightOf(dx, dy)) / 8
      const y1 = Math.min(height, height - dy)
      for (let y = Math.max(0, -dy); y < y1; y++) {
        // Only where both the place and its sample may hold something.
        const x0 = Math.max(from[y]!, from[y + dy]! - dx)
        const x1 = Math.min(to[y]!, to[y + dy]! - dx)
        for (let x = x0, i = y * width + x0, j = (y + dy) * width + x0 + dx; x < x1; x++, i++, j++) {
          const z = depth[i]!
          const nearer = depth[j]! - z
          if (nearer <= least || z < -1e8) continue
          const steep = (nearer - least) * steepness
          const far = nearer > RANGE ? Math.max(0.35, 2 - nearer / RANGE) : 1
          raw[i] = raw[i]! + share * Math.min(1, steep) * far
        }
      }
    }
  }
  const rows = new Int32Array(height)
  let held = 0
  for (let y = 1; y < height - 1; y++) {
    rows[y] = held - from[y]!
    held += Math.max(0, to[y]! - from[y]!)
  }
  const values = new Float32Array(held)
  for (let y = 1; y < height - 1; y++)
    for (let x = from[y]!; x < to[y]!; x++) {
      const i = y * width + x
      const z = depth[i]!
      if (z < -1e8) continue
      let sum = 0
      let count = 0
      for (let row = i - width; row <= i + width; row += width)
        for (let j = row - 1; j <= row + 1; j++) {
          const gap = depth[j]! - z
          if (gap > 4 || gap < -4) continue
          sum += raw[j]!
          count++
        }
      values[rows[y]! + x] = Math.min(0.9, sum / count)
    }
  for (let y = 0, row = 0; y < height; y++, row += width) {
    const first = Math.min(raster.from[2 * y]!, raster.from[2 * y + 1]!) >> 1
    const last = (Math.max(raster.to[2 * y]!, raster.to[2 * y + 1]!) + 1) >> 1
    depth.fill(EMPTY_DEPTH, row + first, row + last)
    raw.fill(0, row + first, row + last)
  }
  return { rows, values }
}
