import { type Oklab, oklabOfLinear } from './oklab.ts'
import { decode } from './srgb.ts'

/** Pixels of nearly one colour. */
export interface ColourCell {
  /** Their mean. */
  oklab: Oklab
  pixels: number
  /** How many of them lie along the edge of the picture. */
  onEdge: number
}

/** Five bits a channel: two colours of one cell are hardly to be told apart, and of each cell the mean is kept. Ours. */
const BITS = 5
const DROP = 8 - BITS
/** The edge of a picture: so much of its shorter side, on each side. Ours. */
const EDGE = 0.04
/** Less opaque than this, a pixel shows mostly what is behind it. */
const OPAQUE = 128

/**
 * Counts the colours of a picture: sRGB bytes r, g, b, a, row by row, `width` × `height`. Sums are of whole numbers and the
 * cells come in the order of their colour, so the order of the pixels makes no difference but for `onEdge`. Pixels that are
 * mostly transparent are left out. Throws a RangeError where the bytes are not so many.
 */
export const countColours = (rgba: Uint8ClampedArray, width: number, height: number): ColourCell[] => {
  if (rgba.length !== width * height * 4)
    throw new RangeError(`expected ${width} × ${height} pixels of 4 bytes, got ${rgba.length} bytes`)
  const cells = 1 << (3 * BITS)
  const pixels = new Uint32Array(cells)
  const onEdge = new Uint32Array(cells)
  const sums = [new Uint32Array(cells), new Uint32Array(cells), new Uint32Array(cells)] as const
  const rim = Math.max(1, Math.round(Math.min(width, height) * EDGE))
  for (let i = 0, at = 0; at < rgba.length; i++, at += 4) {
    if (rgba[at + 3]! < OPAQUE) continue
    const [r, g, b] = [rgba[at]!, rgba[at + 1]!, rgba[at + 2]!]
    const cell = ((r >> DROP) << (2 * BITS)) | ((g >> DROP) << BITS) | (b >> DROP)
    pixels[cell]!++
    sums[0][cell]! += r
    sums[1][cell]! += g
    sums[2][cell]! += b
    const x = i % width
    const y = (i - x) / width
    if (x < rim || y < rim || x >= width - rim || y >= height - rim) onEdge[cell]!++
  }
  const found: ColourCell[] = []
  for (let cell = 0; cell < cells; cell++) {
    const n = pixels[cell]!
    if (n === 0) continue
    const mean = (k: 0 | 1 | 2): number => decode(sums[k][cell]! / n / 255)
    found.push({ oklab: oklabOfLinear([mean(0), mean(1), mean(2)]), pixels: n, onEdge: onEdge[cell]! })
  }
  return found
}
