import { chromaHueOf, type Lab } from './lab.ts'

/** `harmony` is the sum of its three parts: chroma-and-hue difference, lightness, hue. Larger is more harmonious. */
export interface Harmony {
  harmony: number
  chroma: number
  lightness: number
  hue: number
}

const sinDeg = (degrees: number): number => Math.sin((degrees * Math.PI) / 180)

/** Math.tanh by one exponential, within 2e-16 of it and several times quicker: it is asked three times for every pair. */
const tanh = (x: number): number => 1 - 2 / (Math.exp(2 * x) + 1)

/** H_SY: what one colour's own hue brings to any pair. */
export const ownHue = (lab: Readonly<Lab>): number => {
  const { chroma, hue } = chromaHueOf(lab)
  const gate = 0.5 + 0.5 * tanh(-2 + 0.5 * chroma)
  const wave = -0.08 - 0.14 * sinDeg(hue + 50) - 0.07 * sinDeg(2 * hue + 90)
  const x = (90 - hue) / 10
  const yellow = ((0.22 * lab[0] - 12.8) / 10) * Math.exp(x - Math.exp(x))
  return gate * (wave + yellow)
}

/**
 * Harmony of two colours in CIELAB D65: about −1.3 (jarring) … 1.6 (quiet) inside sRGB, where 0.25 is a grey with itself.
 * Ou & Luo, "A colour harmony model for two-colour combinations", Color Res. Appl. 31(3):191–204 (2006).
 */
export const twoColourHarmony = (first: Readonly<Lab>, second: Readonly<Lab>): Harmony =>
  pairHarmony(first, second, ownHue(first) + ownHue(second))

/** The same where both colours' own hues are known already; `hue` is their sum. */
const pairHarmony = (first: Readonly<Lab>, second: Readonly<Lab>, hue: number): Harmony => {
  const parts = new Float64Array(2)
  pairParts(first, second, parts)
  const chroma = parts[0]!
  const lightness = parts[1]!
  return { harmony: chroma + lightness + hue, chroma, lightness, hue }
}

/** What hue has no part in, written to `out`: chroma-and-hue difference, then lightness. For many pairs at once. */
export const pairParts = (first: Readonly<Lab>, second: Readonly<Lab>, out: Float64Array): void => {
  const dC =
    Math.sqrt(first[1] * first[1] + first[2] * first[2]) - Math.sqrt(second[1] * second[1] + second[2] * second[2])
  // The metric hue difference, squared; rounding may leave it a hair under zero.
  const dH2 = Math.max(0, (first[1] - second[1]) ** 2 + (first[2] - second[2]) ** 2 - dC ** 2)
  out[0] = 0.04 + 0.53 * tanh(0.8 - 0.045 * Math.sqrt(dH2 + (dC / 1.46) ** 2))
  const sum = 0.28 + 0.54 * tanh(-3.88 + 0.029 * (first[0] + second[0]))
  const step = 0.14 + 0.15 * tanh(-2 + 0.2 * Math.abs(first[0] - second[0]))
  out[1] = sum + step
}

/**
 * Percentiles of mean pair harmony over human-made palettes, by number of colours: the palettes of O'Donovan, Agarwala &
 * Hertzmann, "Color compatibility from large datasets", ACM TOG 30(4):63 (2011), 10,743 of five colours and their
 * sub-palettes. Statistics only; the ratings themselves are not shipped.
 */
const PERCENT = [5, 10, 25, 50, 75, 90, 95] as const
const PERCENTILES: Record<2 | 3 | 4 | 5, readonly number[]> = {
  2: [-0.734, -0.624, -0.387, -0.037, 0.373, 0.767, 0.993],
  3: [-0.605, -0.507, -0.304, -0.02, 0.301, 0.609, 0.789],
  4: [-0.545, -0.451, -0.265, -0.013, 0.268, 0.538, 0.702],
  5: [-0.509, -0.417, -0.237, -0.008, 0.248, 0.492, 0.649],
}

/**
 * Where a harmony stands among human-made palettes of `colours` colours: 0 (vivid) … 100 (quiet), straight lines between
 * the published percentiles; the outer lines run on to 0 and 100 and stop there (ours). Fewer than 2 colours count as 2,
 * more than 5 as 5. Show it in bands of 25, never with decimals: no formula tells a good palette from a bad one surely.
 */
export const harmonyScale = (harmony: number, colours: number): number => {
  const n = (colours >= 5 ? 5 : colours >= 4 ? 4 : colours >= 3 ? 3 : 2) as 2 | 3 | 4 | 5
  const at = PERCENTILES[n]
  let i = 0
  while (i < at.length - 2 && harmony > (at[i + 1] as number)) i += 1
  const [x0, x1] = [at[i] as number, at[i + 1] as number]
  const [y0, y1] = [PERCENT[i] as number, PERCENT[i + 1] as number]
  return Math.min(100, Math.max(0, y0 + ((harmony - x0) / (x1 - x0)) * (y1 - y0)))
}
