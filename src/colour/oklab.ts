import { invert, type Matrix3, multiply } from './matrix.ts'
import { LINEAR_TO_XYZ, type Linear, XYZ_TO_LINEAR } from './srgb.ts'

/** Oklab: L 0–1, a (green − … red +), b (blue − … yellow +). */
export type Oklab = [l: number, a: number, b: number]

/** XYZ to cone responses, and their cube roots to Oklab. Ottosson 2020, in the recalculated figures of CSS Color 4. */
const XYZ_TO_LMS: Matrix3 = [
  0.819022437996703, 0.3619062600528904, -0.1288737815209879, 0.0329836539323885, 0.9292868615863434,
  0.0361446663506424, 0.0481771893596242, 0.2642395317527308, 0.6335478284694309,
]
const LMS_TO_OKLAB: Matrix3 = [
  0.210454268309314, 0.7936177747023054, -0.0040720430116193, 1.9779985324311684, -2.42859224204858, 0.450593709617411,
  0.0259040424655478, 0.7827717124575296, -0.8086757549230774,
]
/** Oklab to the cube roots of the cone responses, and the cubes of these to linear sRGB. */
export const OKLAB_TO_ROOTS = invert(LMS_TO_OKLAB)
export const LMS_TO_LINEAR = multiply(XYZ_TO_LINEAR, invert(XYZ_TO_LMS))
const LINEAR_TO_LMS = multiply(XYZ_TO_LMS, LINEAR_TO_XYZ)

/** Linear sRGB to Oklab. */
export const oklabOfLinear = ([r, g, b]: Readonly<Linear>): Oklab => {
  const m = LINEAR_TO_LMS
  const l = Math.cbrt(m[0] * r + m[1] * g + m[2] * b)
  const c = Math.cbrt(m[3] * r + m[4] * g + m[5] * b)
  const s = Math.cbrt(m[6] * r + m[7] * g + m[8] * b)
  const n = LMS_TO_OKLAB
  return [n[0] * l + n[1] * c + n[2] * s, n[3] * l + n[4] * c + n[5] * s, n[6] * l + n[7] * c + n[8] * s]
}

/** Oklab to linear sRGB, not clipped. */
export const linearOfOklab = ([L, a, b]: Readonly<Oklab>): Linear => {
  const n = OKLAB_TO_ROOTS
  const l = (n[0] * L + n[1] * a + n[2] * b) ** 3
  const c = (n[3] * L + n[4] * a + n[5] * b) ** 3
  const s = (n[6] * L + n[7] * a + n[8] * b) ** 3
  const m = LMS_TO_LINEAR
  return [m[0] * l + m[1] * c + m[2] * s, m[3] * l + m[4] * c + m[5] * s, m[6] * l + m[7] * c + m[8] * s]
}
