import { apply, type Triple } from './matrix.ts'
import { hexOfLinear, LINEAR_TO_XYZ, type Linear, linearOf, XYZ_TO_LINEAR } from './srgb.ts'

/** CIELAB for D65 and the 2° observer: L 0–100, a (green − … red +), b (blue − … yellow +). */
export type Lab = [L: number, a: number, b: number]

// CIE 15:2004, in the exact fractions of the later editions.
const EPSILON = 216 / 24389
const KAPPA = 24389 / 27
/** White is whatever linear 1, 1, 1 is, so that greys have no chroma at all. */
const WHITE: Triple = apply(LINEAR_TO_XYZ, [1, 1, 1])

const f = (t: number): number => (t > EPSILON ? Math.cbrt(t) : (KAPPA * t + 16) / 116)
const unf = (t: number): number => (t ** 3 > EPSILON ? t ** 3 : (116 * t - 16) / KAPPA)

/**
 * Linear sRGB to CIELAB. Written out here because chroma-js rounds the white point and is off by up to 0.011,
 * which is more than the published harmony values allow.
 */
export const labOfLinear = (linear: Readonly<Linear>): Lab => {
  const [x, y, z] = apply(LINEAR_TO_XYZ, linear)
  const [fx, fy, fz] = [f(x / WHITE[0]), f(y / WHITE[1]), f(z / WHITE[2])]
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)]
}

/** #rrggbb to CIELAB. Throws a RangeError for anything else. */
export const labOf = (hex: string): Lab => labOfLinear(linearOf(hex))

/** CIELAB to #rrggbb; what lies outside sRGB is clipped channel by channel. */
export const hexOf = ([L, a, b]: Readonly<Lab>): string => {
  const fy = (L + 16) / 116
  const xyz: Triple = [WHITE[0] * unf(fy + a / 500), WHITE[1] * unf(fy), WHITE[2] * unf(fy - b / 200)]
  return hexOfLinear(apply(XYZ_TO_LINEAR, xyz))
}

/** Chroma and hue angle in degrees, 0 ≤ h < 360; a grey has hue 0. */
export const chromaHueOf = (lab: Readonly<Lab>): { chroma: number; hue: number } => {
  const a = lab[1]
  const b = lab[2]
  const degrees = (Math.atan2(b, a) * 180) / Math.PI
  return { chroma: Math.sqrt(a * a + b * b), hue: degrees < 0 ? (degrees + 360) % 360 : degrees }
}
