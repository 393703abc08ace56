import { linearOfChannel, oklabOfLinear } from '../../colour/index.ts'
import type { Photo } from './types.ts'

/** Two colours nearer than this in Oklab are one: less than what a camera's own sharpening does to an edge. Ours. */
const LEAST_STEP = 0.02
/** A colour stands off from a wall when it lies so many times the wall's own unevenness away. Ours. */
const UNEVENNESS = 3.5
/** A cast shadow leaves at least this much of the wall's Oklab values, a sixth of its light. Ours. */
const DEEPEST_SHADOW = 0.55
/** On a wall as dark as this no shadow can be told, squared length in Oklab. Ours. */
const NO_SHADOW = 0.02
/** The ends of a row are two grounds, not one in falling light, when they lie so far apart in Oklab. Ours. */
const TWO_GROUNDS = 0.12

type Colour = readonly [l: number, a: number, b: number]

/**
 * Adds the sRGB bytes of a place (whole numbers are the middles of pixels) to `out`: the mean of its four neighbours by
 * nearness.
 */
export const sampleInto = ({ rgba, width, height }: Photo, x: number, y: number, out: Float64Array, at: number) => {
  const x0 = Math.max(0, Math.min(width - 2, Math.floor(x)))
  const y0 = Math.max(0, Math.min(height - 2, Math.floor(y)))
  const u = Math.max(0, Math.min(1, x - x0))
  const v = Math.max(0, Math.min(1, y - y0))
  const high = (y0 * width + x0) * 4
  const low = high + width * 4
  for (let c = 0; c < 3; c++)
    out[at + c]! +=
      (1 - v) * ((1 - u) * rgba[high + c]! + u * rgba[high + 4 + c]!) +
      v * ((1 - u) * rgba[low + c]! + u * rgba[low + 4 + c]!)
}

/** Mean sRGB bytes to Oklab, in place. */
export const toOklab = (row: Float64Array, samples: number): void => {
  for (let i = 0; i < row.length; i += 3) {
    const lab = oklabOfLinear([
      linearOfChannel(row[i]! / samples / 255),
      linearOfChannel(row[i + 1]! / samples / 255),
      linearOfChannel(row[i + 2]! / samples / 255),
    ])
    row.set(lab, i)
  }
}

export const median = (values: number[]): number => {
  const sorted = values.sort((a, b) => a - b)
  return sorted[sorted.length >> 1] ?? 0
}

/** The middle of the colours from pixel `from` up to `to`, channel by channel, so that a speck does not count. */
export const middleOf = (row: Float64Array, from: number, to: number): [number, number, number] => {
  const channel = (c: number): number =>
    median(Array.from({ length: Math.max(1, to - from) }, (_, i) => row[(from + i) * 3 + c]!))
  return [channel(0), channel(1), channel(2)]
}

export const distance = (row: Float64Array, i: number, l: number, a: number, b: number): number =>
  Math.hypot(row[i * 3]! - l, row[i * 3 + 1]! - a, row[i * 3 + 2]! - b)

/** From how far on a colour is another than the wall's: of a wall as uneven as this (usual distance from its middle). */
export const stepOf = (unevenness: number): number => Math.max(LEAST_STEP, UNEVENNESS * unevenness)

/**
 * Does a pixel belong to what stands before the wall? −1 as the wall, 1 surely not, 0 can't be told. A shadow takes light
 * alike from all channels, which scales L, a and b by one factor (Oklab is a cube root of linear light); so what is a
 * darker tone of the wall's own colour may be shadow or vessel, and only an edge can tell.
 */
const evidence = (row: Float64Array, i: number, [l, a, b]: Colour, step: number, shadows: boolean): number => {
  const off = Math.max(-1, Math.min(1, distance(row, i, l, a, b) / step - 1))
  if (off <= 0 || !shadows) return off
  const square = l * l + a * a + b * b
  if (square < NO_SHADOW) return off
  const tone = (row[i * 3]! * l + row[i * 3 + 1]! * a + row[i * 3 + 2]! * b) / square
  if (tone >= 1) return off
  const k = Math.max(DEEPEST_SHADOW, tone)
  return Math.min(off, Math.max(0, distance(row, i, k * l, k * a, k * b) / step - 1))
}

/**
 * The same against the ground of a row as it is at both of its ends: one shading into the other (`t` 0 at the first … 1 at
 * the last). Ends that differ much are two grounds, a wall and a table whose edge runs askew: then what is as either of
 * them is ground too.
 * @param shadows are darker tones of the ground held for what can't be told? Else for vessel.
 */
export const evidenceInRow = (
  row: Float64Array,
  i: number,
  [a, b]: readonly [Colour, Colour],
  t: number,
  step: number,
  shadows = true,
): number => {
  const mix: Colour = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t]
  const off = evidence(row, i, mix, step, shadows)
  if (off <= -1 || Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) < TWO_GROUNDS) return off
  return Math.min(off, evidence(row, i, a, step, shadows), evidence(row, i, b, step, shadows))
}
