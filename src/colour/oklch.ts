// One file each, so that the page does not load the whole library.
import hex2rgb from 'chroma-js/src/io/hex/hex2rgb.js'
import rgb2hex from 'chroma-js/src/io/hex/rgb2hex.js'
import oklch2rgb from 'chroma-js/src/io/oklch/oklch2rgb.js'
import rgb2oklch from 'chroma-js/src/io/oklch/rgb2oklch.js'
import { invert, type Matrix3, multiply } from './matrix.ts'
import { isHex, XYZ_TO_LINEAR } from './srgb.ts'

/** Lightness 0–1, chroma (0 to about 0.32 in sRGB), hue in degrees 0 ≤ h < 360. */
export type Oklch = [l: number, c: number, h: number]

/** #rrggbb to OKLCH. A grey has chroma 0 and hue 0, never NaN. Throws a RangeError for anything else. */
export const oklchOf = (hex: string): Oklch => {
  if (!isHex(hex)) throw new RangeError(`expected a colour as #rrggbb, got "${hex}"`)
  const [l, c, h] = rgb2oklch(hex2rgb(hex).slice(0, 3))
  return Number.isFinite(h) ? [l, c, h] : [l, 0, 0]
}

/** OKLCH to #rrggbb; what lies outside sRGB is clipped channel by channel, as `oklchToLinear` leaves it to be. */
export const hexOfOklch = (l: number, c: number, h: number): string =>
  rgb2hex(oklch2rgb(l, c, h).map((v) => Math.min(255, Math.max(0, v))))

/** XYZ to cone responses, and their cube roots to Oklab. Ottosson 2020, in the recalculated figures of CSS Color 4. */
const XYZ_TO_LMS: Matrix3 = [
  0.819022437996703, 0.3619062600528904, -0.1288737815209879, 0.0329836539323885, 0.9292868615863434,
  0.0361446663506424, 0.0481771893596242, 0.2642395317527308, 0.6335478284694309,
]
const LMS_TO_OKLAB: Matrix3 = [
  0.210454268309314, 0.7936177747023054, -0.0040720430116193, 1.9779985324311684, -2.42859224204858, 0.450593709617411,
  0.0259040424655478, 0.7827717124575296, -0.8086757549230774,
]
const FROM_OKLAB = invert(LMS_TO_OKLAB)
const TO_LINEAR = multiply(XYZ_TO_LINEAR, invert(XYZ_TO_LMS))
const [, LA, LB, , MA, MB, , SA, SB] = FROM_OKLAB
const [RL, RM, RS, GL, GM, GS, BL, BM, BS] = TO_LINEAR
const RADIANS = Math.PI / 180

/**
 * OKLCH to linear sRGB, written to out[at … at + 2] and nothing allocated: for shading pixel by pixel.
 * l 0–1, h in degrees, any angle. Not clipped.
 */
export const oklchToLinear = (
  l: number,
  c: number,
  h: number,
  out: Float32Array | Float64Array | number[],
  at: number,
): void => {
  const a = c * Math.cos(h * RADIANS)
  const b = c * Math.sin(h * RADIANS)
  const lr = l + LA * a + LB * b
  const mr = l + MA * a + MB * b
  const sr = l + SA * a + SB * b
  const L = lr * lr * lr
  const M = mr * mr * mr
  const S = sr * sr * sr
  out[at] = RL * L + RM * M + RS * S
  out[at + 1] = GL * L + GM * M + GS * S
  out[at + 2] = BL * L + BM * M + BS * S
}
