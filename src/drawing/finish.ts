import { type Picture, type Quality, VESSEL_OWNER } from './types.ts'

/** What is farthest goes this far toward the paper. Ours, by eye. */
const FADE = 0.12
const PAPER = 226
/** Behind a nearer outline the ink breaks off: so much paler, so wide (mm), if nearer by this (mm). Ours, an engraver's habit. */
const BREAK = 0.24
const BREAK_MM = 0.3
const BREAK_DEPTH = 5
/** Shade that one stem lays on another: radii of the samples, mm, and full strength. Ours. */
const SHADOW_RADII = [5, 14]
const SHADOW = 0.34
const CELL_MM = 1.8

const depthRange = ({ depth }: Picture): [number, number] => {
  let [low, high] = [Infinity, -Infinity]
  for (let i = 0; i < depth.length; i++) {
    const z = depth[i]!
    if (z < -1e8) continue
    if (z < low) low = z
    if (z > high) high = z
  }
  return [low, high]
}

/** A coarse grid: how much the nearer things of other owners about a place take of its light. */
interface Shadow {
  step: number
  width: number
  height: number
  values: Float32Array
  depth: Float32Array
}

/** Each cell becomes the mean of its neighbours of the same owner, so that no single sample shows. */
const smoothed = (values: Float32Array, owner: Uint16Array, width: number, height: number): Float32Array => {
  const out = new Float32Array(values.length)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const own = owner[y * width + x]!
      if (own === 0) continue
      let sum = 0
      let count = 0
      for (let cy = Math.max(0, y - 1); cy <= Math.min(height - 1, y + 1); cy++)
        for (let cx = Math.max(0, x - 1); cx <= Math.min(width - 1, x + 1); cx++) {
          if (owner[cy * width + cx] !== own) continue
          sum += values[cy * width + cx]!
          count++
        }
      out[y * width + x] = sum / count
    }
  return out
}

const shadowOf = (picture: Picture, scale: number): Shadow => {
  const step = Math.max(1, Math.round(CELL_MM * scale))
  const width = Math.ceil(picture.width / step)
  const height = Math.ceil(picture.height / step)
  const depth = new Float32Array(width * height)
  const owner = new Uint16Array(width * height)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const px = Math.min(picture.width - 1, x * step + (step >> 1))
      const py = Math.min(picture.height - 1, y * step + (step >> 1))
      depth[y * width + x] = picture.depth[py * picture.width + px]!
      owner[y * width + x] = picture.owner[py * picture.width + px]!
    }
  const values = new Float32Array(width * height)
  for (const radius of SHADOW_RADII)
    for (let q = 0; q < 8; q++) {
      const a = (q * Math.PI) / 4 + 0.3
      const dx = Math.round((Math.cos(a) * radius * scale) / step)
      const dy = Math.round((Math.sin(a) * radius * scale) / step)
      const weight = (dy < 0 ? 1.35 : dx < 0 ? 1.1 : 0.65) / (8 * SHADOW_RADII.length)
      for (let y = Math.max(0, -dy); y < Math.min(height, height - dy); y++)
        for (let x = Math.max(0, -dx); x < Math.min(width, width - dx); x++) {
          const i = y * width + x
          const j = i + dy * width + dx
          if (owner[j] === 0 || owner[i] === 0 || owner[i] === owner[j]) continue
          const gap = depth[j]! - depth[i]!
          if (gap < 1.5) continue
          values[i] = values[i]! + weight * Math.min(1, gap / radius) * (gap > 45 ? Math.max(0.3, 2 - gap / 45) : 1)
        }
    }
  return { step, width, height, values: smoothed(values, owner, width, height), depth }
}

/** The grid's value at a pixel, from the four cells about it that are about as deep. */
const shadowAt = (shadow: Shadow, x: number, y: number, z: number): number => {
  const fx = (x + 0.5) / shadow.step - 0.5
  const fy = (y + 0.5) / shadow.step - 0.5
  const x0 = Math.floor(fx)
  const y0 = Math.floor(fy)
  const { width, height, values, depth } = shadow
  let sum = 0
  let weights = 0
  for (let k = 0; k < 4; k++) {
    const cx = x0 + (k & 1)
    const cy = y0 + (k >> 1)
    if (cx < 0 || cy < 0 || cx >= width || cy >= height) continue
    const i = cy * width + cx
    const gap = depth[i]! - z
    if (gap > 7 || gap < -7) continue
    const weight = (1 - Math.abs(fx - cx)) * (1 - Math.abs(fy - cy)) + 1e-3
    sum += weight * values[i]!
    weights += weight
  }
  return weights > 0 ? sum / weights : 0
}

/** Is something nearer, of another owner, within `reach` pixels left, right, above or below? */
const isBehindEdge = (picture: Picture, i: number, x: number, y: number, reach: number): boolean => {
  const { width, height, owner, depth } = picture
  const own = owner[i]!
  for (let r = 1; r <= reach; r++) {
    const right = x + r < width ? i + r : i
    const left = x >= r ? i - r : i
    const below = y + r < height ? i + r * width : i
    const above = y >= r ? i - r * width : i
    if (owner[right] === own && owner[left] === own && owner[below] === own && owner[above] === own) continue
    const least = depth[i]! + BREAK_DEPTH
    // Where owners differ and one is nearer by so much; the depth of the same owner does not matter.
    if (owner[right] !== own && depth[right]! > least) return true
    if (owner[left] !== own && depth[left]! > least) return true
    if (owner[below] !== own && depth[below]! > least) return true
    if (owner[above] !== own && depth[above]! > least) return true
  }
  return false
}

/**
 * What the stems do to each other once they stand together: far ones go toward the paper, each breaks the ink of what it
 * hides, and (fine only) lays its shade there.
 */
export const finish = (picture: Picture, scale: number, quality: Quality): void => {
  const { width, height, rgba, depth, owner } = picture
  const packed = new Uint32Array(rgba.buffer, rgba.byteOffset, width * height)
  const [low, high] = depthRange(picture)
  const fade = FADE / Math.max(1e-6, high - low)
  const reach = Math.max(1, Math.min(3, Math.round(BREAK_MM * scale)))
  const shadow = quality === 'fine' ? shadowOf(picture, scale) : null
  // Shade is soft: one value serves a block of 2 × 2 pixels of one owner.
  const row = new Float32Array((width >> 1) + 1)
  const rowOwner = new Uint16Array((width >> 1) + 1)
  for (let y = 0, i = 0; y < height; y++) {
    if ((y & 1) === 0) rowOwner.fill(0)
    for (let x = 0; x < width; x++, i++) {
      const own = owner[i]!
      if (own === 0) continue
      const z = depth[i]!
      let keep = own === VESSEL_OWNER ? 1 : 1 - fade * (high - z)
      let dark = 1
      if (isBehindEdge(picture, i, x, y, reach)) keep *= 1 - BREAK
      else if (shadow) {
        const block = x >> 1
        if (rowOwner[block] !== own) {
          rowOwner[block] = own
          row[block] = 1 - SHADOW * Math.min(1, 1.6 * shadowAt(shadow, x, y, z))
        }
        dark = row[block]!
      }
      const add = (1 - keep) * PAPER + 0.5
      const by = dark * keep
      const colour = packed[i]!
      packed[i] =
        (((colour & 255) * by + add) |
          ((((colour >> 8) & 255) * by + add) << 8) |
          ((((colour >> 16) & 255) * by + add) << 16) |
          (colour & 0xff000000)) >>>
        0
    }
  }
}
