import { widestSection } from '../geometry/index.ts'
import { layIn, over, spansOf } from './compose.ts'
import { isInWater, type Lens, nothingSeen, seenInWater, WAYS } from './lens.ts'
import type { Frame, Picture, Sprite } from './types.ts'

// Written over for every pixel.
const here = nothingSeen()
const next = nothingSeen()

/** So many pixels are drawn out evenly. Ours. */
const PIECE = 8
/** Nearer than any two stems, mm. */
const CLOSE = 0.02

/** From this much cover on, a pixel belongs to what covers it. */
const HALF = 128
const columnOf = (frame: Frame, right: number): number => (right - frame.left) * frame.scale - 0.5

/** The first row of a sprite that may show something under water. */
const firstWet = (lens: Lens, frame: Frame, top: number): number => {
  const { a, b } = widestSection(lens.vessel)
  const up = lens.surface * lens.pitched[0] + Math.hypot(a, b) * lens.pitched[1]
  return Math.floor((frame.top - up) * frame.scale) - top
}

// A stem that stays where it is has the same rows over the water in every picture.
const tops = new WeakMap<Sprite, Sprite>()
const topOf = (sprite: Sprite, height: number): Sprite => {
  const known = tops.get(sprite)
  if (known?.height === height) return known
  const count = height * sprite.width
  const top = { ...sprite, height, rgba: sprite.rgba.subarray(0, 4 * count), depth: sprite.depth.subarray(0, count) }
  tops.set(sprite, top)
  return top
}

/**
 * layIn for what stands in a glass vessel: where it is in the water it is laid where it is seen through wall and surface, once or
 * twice, drawn out sideways as the lens draws it out. Its depths stay, so that stems still pass behind each other.
 * Nothing is allocated for a pixel.
 */
export const layInWater = (
  picture: Picture,
  frame: Frame,
  lens: Lens,
  sprite: Sprite,
  x: number,
  y: number,
  z: number,
  owner: number,
): void => {
  const left = x + sprite.left
  const top = y + sprite.top
  const dry = Math.min(sprite.height, Math.max(0, firstWet(lens, frame, top)))
  if (dry === sprite.height) return layIn(picture, sprite, x, y, z, owner)
  if (dry > 0) layIn(picture, topOf(sprite, dry), x, y, z, owner)
  const { scale } = frame
  const [cos, sin] = lens.pitched
  const from = new Uint32Array(sprite.rgba.buffer, sprite.rgba.byteOffset, sprite.width * sprite.height)
  const to = new Uint32Array(picture.rgba.buffer, picture.rgba.byteOffset, picture.width * picture.height)
  const held = spansOf(sprite, from)
  const put = (column: number, row: number, colour: number, near: number): void => {
    if (column < 0 || row < 0 || column >= picture.width || row >= picture.height) return
    const o = row * picture.width + column
    const alpha = colour >>> 24
    const under = to[o]!
    if (near > picture.depth[o]!) {
      to[o] = alpha === 255 ? colour : over(colour, under)
      if (alpha >= HALF || under === 0) {
        picture.depth[o] = near
        picture.owner[o] = owner
      }
    } else if (under >>> 24 < 255) to[o] = over(under, colour)
  }
  for (let row = dry; row < sprite.height; row++) {
    const up = frame.top - (top + row + 0.5) / scale
    const first = row * sprite.width
    const last = first + held[2 * row + 1]!
    let i = first + held[2 * row]!
    while (i < last) {
      if (from[i]! >>> 24 === 0) {
        i++
        continue
      }
      // What hangs together in a row is shown as flat, or its round edges would fray.
      let end = i
      let sum = 0
      for (; end < last && from[end]! >>> 24 > 0; end++) sum += sprite.depth[end]!
      const near = sum / (end - i) + z
      const away = up * sin - near * cos
      const height = up * cos + near * sin
      const edge = frame.left + (left - first) / scale
      const inWater = isInWater(lens, edge + (i + end) / 2 / scale, away, height)
      if (inWater) seenInWater(lens, edge + i / scale, away, height, here)
      if (!inWater) {
        for (; i < end; i++) put(left + i - first, top + row, from[i]!, sprite.depth[i]! + z)
        continue
      }
      const [runStart, runEnd] = [i, end]
      while (i < end) {
        const count = Math.min(PIECE, end - i)
        seenInWater(lens, edge + (i + count) / scale, away, height, next)
        for (let way = 0; way < 2 * WAYS; way += 2) {
          const start = columnOf(frame, here[way]!)
          const stop = columnOf(frame, next[way]!)
          const at = Math.floor((frame.top - next[way + 1]!) * scale)
          const step = count / (stop - start)
          // An edge lies between two pixels of the sprite: its cover is that of both.
          const low = i === runStart ? start - 0.5 / step : start
          const high = i + count === runEnd ? stop + 0.5 / step : stop
          // Comparing with NaN is false: what is not seen is not laid.
          for (let c = Math.ceil(low); c < high; c++) {
            const k = i + (c - start) * step - 0.5
            const k0 = Math.floor(k)
            const one = k0 < runStart ? 0 : from[k0]! >>> 24
            const two = k0 + 1 < runEnd ? from[k0 + 1]! >>> 24 : 0
            const cover = Math.round(one + (two - one) * (k - k0))
            if (cover === 0) continue
            const nearest = one > two ? k0 : k0 + 1
            const colour = ((from[nearest]! & 0xffffff) | (cover << 24)) >>> 0
            const depth = sprite.depth[nearest]! + z
            put(c, at, colour, depth)
            // Rows may be drawn apart as well: the next one lies over this, if there is one.
            if (sin > 0 && cover === 255) put(c, at + 1, colour, depth - CLOSE)
          }
        }
        here.set(next)
        i += count
      }
    }
  }
}
