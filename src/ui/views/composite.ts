import type { Picture, Sprite } from '../../drawing/index.ts'

const NOTHING = -1e9

/**
 * Writes what is seen of a sprite, when its origin stands at pixel (x, y) of a picture at depth z, into `out`: pixels
 * behind the picture's are left clear. Allocates nothing.
 * @param out packed pixels, rows of `stride`, at least the sprite's size
 * @param hidden owners of the picture that count as not there (the stems that are moving)
 */
export const writeVisible = (
  base: Picture | null,
  sprite: Sprite,
  x: number,
  y: number,
  z: number,
  out: Uint32Array,
  stride: number,
  hidden: ReadonlySet<number>,
): void => {
  const pixels = new Uint32Array(sprite.rgba.buffer, sprite.rgba.byteOffset, sprite.width * sprite.height)
  const left = x + sprite.left
  const top = y + sprite.top
  const some = hidden.size > 0
  for (let row = 0; row < sprite.height; row++) {
    const by = top + row
    const inRows = base !== null && by >= 0 && by < base.height
    let i = row * sprite.width
    let o = row * stride
    for (let column = 0; column < sprite.width; column++, i++, o++) {
      const colour = pixels[i]!
      if (colour >>> 24 === 0) {
        out[o] = 0
        continue
      }
      const bx = left + column
      let before = NOTHING
      if (inRows && bx >= 0 && bx < base.width) {
        const b = by * base.width + bx
        if (!some || !hidden.has(base.owner[b]!)) before = base.depth[b]!
      }
      out[o] = sprite.depth[i]! + z >= before ? colour : 0
    }
  }
}
