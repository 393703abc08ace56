import { type Lab, labOfLinear } from './lab.ts'
import { apply, diagonal, invert, type Matrix3, multiply, type Triple } from './matrix.ts'
import { hexOfLinear, LINEAR_TO_XYZ, type Linear, linearOf, XYZ_TO_LINEAR } from './srgb.ts'

/** The document's lights. */
export type LightName = 'daylight' | 'overcast' | 'warm-lamp' | 'candle'

/** CAT16. Li et al., Color Res. Appl. 42:703–718 (2017). */
const CAT16: Matrix3 = [0.401288, 0.650173, -0.051461, -0.250268, 1.204414, 0.045854, -0.002079, 0.048952, 0.953127]
const D65: readonly [number, number] = [0.3127, 0.329]

/**
 * White of each light (xy, 2° observer) and the luminance the eye is adapted to, cd/m².
 * Overcast: CIE D75. Warm lamp: CIE LED-B1, about 2700 K (CIE 15:2018). Candle: Planckian radiator of 1900 K; a flame's
 * 1850–1930 K is common practice. Luminance: a fifth of a white surface's at 1000, 300 and 15 lx (light levels: ours).
 */
const LIGHTS: Record<Exclude<LightName, 'daylight'>, { xy: readonly [number, number]; adapting: number }> = {
  overcast: { xy: [0.29903, 0.31488], adapting: 64 },
  'warm-lamp': { xy: [0.456, 0.4078], adapting: 20 },
  candle: { xy: [0.537781, 0.411201], adapting: 1 },
}

const whiteOf = ([x, y]: readonly [number, number]): Triple => [x / y, 1, (1 - x - y) / y]

/** How far the eye adapts, 0 not at all … 1 wholly, average surround (F = 1). CIECAM02, CIE 159:2004. `adapting` in cd/m². */
export const degreeOfAdaptation = (adapting: number): number => 1 - Math.exp((-adapting - 42) / 92) / 3.6

/**
 * What an eye adapted by `degree` (0–1) to a light of white `xy` sees of a colour given for D65: linear sRGB to linear
 * sRGB. Each CAT16 cone keeps the share of the light's cast that adaptation leaves. Composed here (ours) from published
 * parts; it knows nothing of spectra, so real blues and violets change more by candle than this shows.
 */
export const castMatrix = (xy: readonly [number, number], degree: number): Matrix3 => {
  const light = apply(CAT16, whiteOf(xy))
  const day = apply(CAT16, whiteOf(D65))
  const gain = (i: 0 | 1 | 2): number => degree + ((1 - degree) * light[i]) / day[i]
  const toCones = multiply(CAT16, LINEAR_TO_XYZ)
  return multiply(multiply(XYZ_TO_LINEAR, invert(CAT16)), multiply(diagonal(gain(0), gain(1), gain(2)), toCones))
}

const IDENTITY: Matrix3 = diagonal(1, 1, 1)

const matrixFor = (light: Exclude<LightName, 'daylight'>): Matrix3 => {
  const cast = castMatrix(LIGHTS[light].xy, degreeOfAdaptation(LIGHTS[light].adapting))
  // White must still fit the screen: its largest channel becomes 1.
  const most = Math.max(...apply(cast, [1, 1, 1]))
  return multiply(diagonal(1 / most, 1 / most, 1 / most), cast)
}

const MATRICES: Record<LightName, Matrix3> = {
  daylight: IDENTITY,
  overcast: matrixFor('overcast'),
  'warm-lamp': matrixFor('warm-lamp'),
  candle: matrixFor('candle'),
}

/** The nine numbers of a light, row by row, for whoever shades pixel by pixel: linear sRGB to linear sRGB. */
export const lightMatrix = (light: LightName): Matrix3 => MATRICES[light]

/** Linear light under a light, not clipped (see `castMatrix`); daylight changes nothing. */
export const linearUnderLight = (linear: Readonly<Linear>, light: LightName): Linear =>
  light === 'daylight' ? [...linear] : apply(MATRICES[light], linear)

/** A colour #rrggbb as the eye sees it under a light, clipped to the screen; daylight changes nothing. */
export const underLight = (hex: string, light: LightName): string =>
  light === 'daylight' ? hex : hexOfLinear(linearUnderLight(linearOf(hex), light))

/** The same as CIELAB, neither rounded to bytes nor clipped: for measuring. */
export const labUnderLight = (hex: string, light: LightName): Lab => labOfLinear(linearUnderLight(linearOf(hex), light))
