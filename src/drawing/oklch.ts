import { type Oklch, oklchOf, oklchToLinear } from '../colour/index.ts'

/** Lightness 0–1, chroma 0–0.4, hue in degrees. */
export type Lch = Oklch
export const hexToLch = (hex: string): Lch => oklchOf(hex)

/** sRGB transfer function, IEC 61966-2-1, as a table of 4096 steps of linear light. */
const ENCODED = new Uint8ClampedArray(4097)
for (let i = 0; i <= 4096; i++) {
  const x = i / 4096
  ENCODED[i] = 255 * (x <= 0.0031308 ? 12.92 * x : 1.055 * x ** (1 / 2.4) - 0.055)
}
const encode = (x: number): number => ENCODED[x <= 0 ? 0 : x >= 1 ? 4096 : Math.round(x * 4096)]!

/** Room by which a channel may leave 0…1 before chroma is taken back. Ours. */
const SLACK = 0.004
const linear = new Float64Array(3)

const isShown = (lightness: number, chroma: number, hue: number): boolean => {
  oklchToLinear(lightness, chroma, hue, linear, 0)
  const [r, g, b] = [linear[0]!, linear[1]!, linear[2]!]
  return Math.min(r, g, b) >= -SLACK && Math.max(r, g, b) <= 1 + SLACK
}

/**
 * An OKLCH colour as packed sRGB bytes, red lowest (`r | g << 8 | b << 16`). Chroma is taken back where the screen
 * cannot show it, so that lightness and hue stay.
 */
export const packOklch = (lightness: number, chroma: number, hue: number): number => {
  let [most, least] = [Math.max(0, chroma), 0]
  let c = most
  // Halving: ten turns leave less than a thousandth of the chroma in doubt, which no eye tells.
  for (let turn = 0; turn < 10; turn++) {
    if (isShown(lightness, c, hue)) {
      if (turn === 0) break
      least = c
    } else most = c
    c = (least + most) / 2
  }
  oklchToLinear(lightness, c, hue, linear, 0)
  return encode(linear[0]!) | (encode(linear[1]!) << 8) | (encode(linear[2]!) << 16)
}
