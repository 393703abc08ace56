import { EMPTY_DEPTH } from './raster.ts'
import type { Frame, Picture, Sprite } from './types.ts'

/** An empty picture of a frame. */
export const emptyPicture = (frame: Frame): Picture => {
  const width = Math.max(1, Math.round((frame.right - frame.left) * frame.scale))
  const height = Math.max(1, Math.round((frame.top - frame.bottom) * frame.scale))
  return {
    width,
    height,
    rgba: new Uint8ClampedArray(4 * width * height),
    depth: new Float32Array(width * height).fill(EMPTY_DEPTH),
    owner: new Uint16Array(width * height),
  }
}

/** The pixel that a place of the view (right, up; mm) falls on. Sprites are laid with their origin there. */
export const pixelOf = (frame: Frame, right: number, up: number): [column: number, row: number] => [
  Math.round((right - frame.left) * frame.scale),
  Math.round((frame.top - up) * frame.scale),
]

/** What of `b` shows when it lies under `a`; packed colours, not premultiplied. */
export const over = (a: number, b: number): number => {
  const aa = a >>> 24
  const ba = b >>> 24
  if (aa === 255 || ba === 0) return a
  if (aa === 0) return b
  const wa = aa / 255
  const wb = (ba / 255) * (1 - wa)
  const w = wa + wb
  const blend = (shift: number): number =>
    ((((a >>> shift) & 255) * wa + ((b >>> shift) & 255) * wb) / w + 0.5) << shift
  // Shifts of a fraction drop the fraction, which rounds.
  return (blend(0) | blend(8) | blend(16) | (Math.round(255 * w) << 24)) >>> 0
}

/** From this much cover on, a pixel belongs to what covers it. */
const HALF = 128

// Of every row of a sprite the columns between which something is: most sprites are slender, and empty for the most part.
const spans = new WeakMap<Sprite, Int32Array>()
export const spansOf = (sprite: Sprite, packed: Uint32Array): Int32Array => {
  const known = spans.get(sprite)
  if (known) return known
  const { width, height } = sprite
  const made = new Int32Array(2 * height)
  for (let y = 0; y < height; y++) {
    let from = 0
    let to = width
    const row = y * width
    while (from < width && packed[row + from] === 0) from++
    while (to > from && packed[row + to - 1] === 0) to--
    made[2 * y] = from
    made[2 * y + 1] = to
  }
  spans.set(sprite, made)
  return made
}

/**
 * Lays a sprite into a picture by depth: over what is farther, under what is nearer.
 * @param x column of the sprite's origin in the picture, @param y row, @param z depth of its origin, mm
 * @param glass what is seen through: it takes a pixel only where nothing else is
 */
export const layIn = (
  picture: Picture,
  sprite: Sprite,
  x: number,
  y: number,
  z: number,
  owner: number,
  glass = false,
): void => {
  const left = x + sprite.left
  const top = y + sprite.top
  const fromX = Math.max(0, -left)
  const toX = Math.min(sprite.width, picture.width - left)
  const fromY = Math.max(0, -top)
  const toY = Math.min(sprite.height, picture.height - top)
  const from = new Uint32Array(sprite.rgba.buffer, sprite.rgba.byteOffset, sprite.width * sprite.height)
  const to = new Uint32Array(picture.rgba.buffer, picture.rgba.byteOffset, picture.width * picture.height)
  const { depth, owner: owners } = picture
  const held = spansOf(sprite, from)
  for (let row = fromY; row < toY; row++) {
    const first = Math.max(fromX, held[2 * row]!)
    const end = Math.min(toX, held[2 * row + 1]!)
    let i = row * sprite.width + first
    let o = (row + top) * picture.width + left + first
    for (let column = first; column < end; column++, i++, o++) {
      const colour = from[i]!
      if (colour === 0) continue
      const alpha = colour >>> 24
      if (alpha === 0) continue
      const near = sprite.depth[i]! + z
      const here = to[o]!
      if (near > depth[o]!) {
        to[o] = alpha === 255 ? colour : over(colour, here)
        if (glass ? owners[o] === 0 : alpha >= HALF || here === 0) {
          depth[o] = near
          owners[o] = owner
        }
      } else if (here >>> 24 < 255) to[o] = over(here, colour)
    }
  }
}
