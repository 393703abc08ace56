// One file each, so that the page does not load the whole library.
import hex2rgb from 'chroma-js/src/io/hex/hex2rgb.js'
import rgb2hex from 'chroma-js/src/io/hex/rgb2hex.js'
import oklch2rgb from 'chroma-js/src/io/oklch/oklch2rgb.js'
import rgb2oklch from 'chroma-js/src/io/oklch/rgb2oklch.js'
import { LMS_TO_LINEAR, OKLAB_TO_ROOTS } from './oklab.ts'
import { isHex } from './srgb.ts'

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

const [, LA, LB, , MA, MB, , SA, SB] = OKLAB_TO_ROOTS
const [RL, RM, RS, GL, GM, GS, BL, BM, BS] = LMS_TO_LINEAR
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
