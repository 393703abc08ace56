import type { Photo } from '../../../src/geometry/index.ts'

/** Usual steps of light and of colour at quality 50 (ITU-T T.81, 1992, tables K.1 and K.2), row by row. */
const LIGHT = [
  [16, 11, 10, 16, 24, 40, 51, 61],
  [12, 12, 14, 19, 26, 58, 60, 55],
  [14, 13, 16, 24, 40, 57, 69, 56],
  [14, 17, 22, 29, 51, 87, 80, 62],
  [18, 22, 37, 56, 68, 109, 103, 77],
  [24, 35, 55, 64, 81, 104, 113, 92],
  [49, 64, 78, 87, 103, 121, 120, 101],
  [72, 92, 95, 98, 112, 100, 103, 99],
].flat()
const COLOUR = [
  [17, 18, 24, 47, 99, 99, 99, 99],
  [18, 21, 26, 66, 99, 99, 99, 99],
  [24, 26, 56, 99, 99, 99, 99, 99],
  [47, 66, 99, 99, 99, 99, 99, 99],
  ...Array.from({ length: 4 }, () => Array<number>(8).fill(99)),
].flat()

/** Cosines of T.81, A.3.3: frequency by place. */
const WAVES = Array.from({ length: 8 }, (_, f) =>
  Array.from({ length: 8 }, (_, x) => (f === 0 ? Math.SQRT1_2 : 1) * 0.5 * Math.cos(((2 * x + 1) * f * Math.PI) / 16)),
)

/** Each block of eight by eight taken apart into waves, those rounded to their steps, and put together again. */
const inBlocks = (plane: Float64Array, width: number, height: number, steps: readonly number[]): void => {
  const [block, half] = [new Float64Array(64), new Float64Array(64)]
  const turn = (from: Float64Array, to: Float64Array, back: boolean): void => {
    for (let r = 0; r < 8; r++)
      for (let i = 0; i < 8; i++) {
        let sum = 0
        for (let k = 0; k < 8; k++) sum += from[r * 8 + k]! * (back ? WAVES[k]![i]! : WAVES[i]![k]!)
        to[i * 8 + r] = sum
      }
  }
  for (let y0 = 0; y0 < height; y0 += 8)
    for (let x0 = 0; x0 < width; x0 += 8) {
      for (let i = 0; i < 64; i++)
        block[i] = plane[Math.min(height - 1, y0 + (i >> 3)) * width + Math.min(width - 1, x0 + (i & 7))]!
      turn(block, half, false)
      turn(half, block, false)
      for (let i = 0; i < 64; i++) block[i] = Math.round(block[i]! / steps[i]!) * steps[i]!
      turn(block, half, true)
      turn(half, block, true)
      for (let i = 0; i < 64; i++)
        if (y0 + (i >> 3) < height && x0 + (i & 7) < width) plane[(y0 + (i >> 3)) * width + x0 + (i & 7)] = block[i]!
    }
}

/**
 * A photo as it comes out of a JPEG of a quality (50–100, steps scaled as libjpeg's `jpeg_quality_scaling` does), its colour
 * kept at half the size each way; in blocks that begin at the upper left, or, for a photo that lies on its side in the
 * file, at the upper right. Code of the tests alone.
 */
export const throughJpeg = ({ rgba, width, height }: Photo, quality: number, onItsSide: boolean): Photo => {
  const scale = 2 - quality / 50
  const stepsBy = (table: readonly number[]) => table.map((q) => Math.max(1, Math.floor(q * scale + 0.5)))
  const [w, h] = onItsSide ? [height, width] : [width, height]
  const place = (x: number, y: number): number => (onItsSide ? x * width + (width - 1 - y) : y * width + x) * 4
  const [halfW, halfH] = [Math.ceil(w / 2), Math.ceil(h / 2)]
  const light = new Float64Array(w * h)
  const blue = new Float64Array(halfW * halfH)
  const red = new Float64Array(halfW * halfH)
  for (let y = 0; y < h; y++)
    for (let x = 0; x < w; x++) {
      const i = place(x, y)
      const [r, g, b] = [rgba[i]!, rgba[i + 1]!, rgba[i + 2]!]
      const l = 0.299 * r + 0.587 * g + 0.114 * b
      const k = (y >> 1) * halfW + (x >> 1)
      const share = (x === w - 1 && w % 2 ? 1 : 0.5) * (y === h - 1 && h % 2 ? 1 : 0.5)
      light[y * w + x] = l - 128
      blue[k]! += ((b - l) / 1.772) * share
      red[k]! += ((r - l) / 1.402) * share
    }
  inBlocks(light, w, h, stepsBy(LIGHT))
  inBlocks(blue, halfW, halfH, stepsBy(COLOUR))
  inBlocks(red, halfW, halfH, stepsBy(COLOUR))
  const out = new Uint8ClampedArray(rgba.length).fill(255)
  for (let y = 0; y < h; y++)
    for (let x = 0; x < w; x++) {
      const k = (y >> 1) * halfW + (x >> 1)
      const [l, b, r] = [light[y * w + x]! + 128, blue[k]!, red[k]!]
      out.set([l + 1.402 * r, l - 0.344136 * b - 0.714136 * r, l + 1.772 * b], place(x, y))
    }
  return { rgba: out, width, height }
}
