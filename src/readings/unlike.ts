import type { Resolved } from '../geometry/index.ts'
import { distance, distancesOf, offGrounds, ROOM } from './contrast.ts'
import type { Tones } from './tones.ts'

/** Lab distance over which two colours no longer pass for one another in a glance. Ours. */
const ALIKE = 25
/** What passes for the ground stands off the ground by half, as ground draws half (draw.ts). Ours. */
const BY_HALF = 0.5
/**
 * What a bloom loses where all the rest passes for its colour: not the whole, for size still tells it apart. Ours; the
 * examples of tests/unit/readings/prominence.test.ts hold from 0.65 to 0.75.
 */
const LOST = 0.7
const alike = (distance: number): number => Math.exp(-((distance / ALIKE) ** 2))

/** What depends on the colours alone, colour × colour or by colour; 0 is the ground. */
export interface Likeness {
  /** Lab distances, with cloth and room as the ground of all but the vessel, which stands on the cloth. */
  apart: Float64Array
  /** How far each passes for the other, 0–1. */
  alike: Float64Array
  /** How far each colour is figure, 0–1. */
  figure: Float64Array
}

/**
 * How far each colour is figure: a half for a leaf's, rising to 1 as a bloom's passes less for one. Greens are the ground on
 * which flowers are seen; so neither they nor a leaf-green bloom lead for standing off the cloth, ground off ground. Ours.
 */
const figureOf = ({ labs, ofCode }: Tones, vesselCode: number, likes: Float64Array): Float64Array => {
  const n = labs.length
  const figure = new Float64Array(n).fill(1)
  for (let code = 2; code < vesselCode; code += 4) {
    const leaf = ofCode[code]!
    for (let p = 1; p < n; p++)
      if (p !== ofCode[vesselCode]) figure[p] = Math.min(figure[p]!, 1 - BY_HALF * likes[p * n + leaf]!)
  }
  return figure
}

const beforeRoom = (apart: Float64Array, { labs }: Tones): Float64Array => {
  const n = labs.length
  const out = apart.slice()
  for (let p = 1; p < n - 1; p++) out[p * n] = offGrounds(apart[p * n]!, distance(labs[p]!, ROOM))
  return out
}

export const likenessOf = (tones: Tones, vesselCode: number): Likeness => {
  const apart = distancesOf(tones.labs)
  const likes = apart.map(alike)
  return { apart: beforeRoom(apart, tones), alike: likes, figure: figureOf(tones, vesselCode, likes) }
}

// By colour: areas of all and of the focal blooms, and how much of each passes for the colour.
const sums = [new Float64Array(256), new Float64Array(256), new Float64Array(256), new Float64Array(256)] as const

/**
 * Of a bloom: 1 less a part of the share of all other blooms, leaves and stems that are seen, by area, which passes for its
 * colour; several focal flowers are one group and do not count against each other. Of the vessel: how far it does not pass
 * for the cloth that it stands on. What is looked for is found the later, the more of the rest is like it: Duncan and
 * Humphreys, Visual search and stimulus similarity, Psychological Review 96(3), 1989. The numbers are ours.
 * @param pixels by owner code
 * @param out by owner code, 0–1
 */
export const unlikeness = (
  pixels: Float64Array,
  { labs, ofCode }: Tones,
  vesselCode: number,
  { alike: likes }: Likeness,
  { stems }: Resolved,
  out: Float64Array,
): void => {
  const n = labs.length
  const [areas, group, like, likeGroup] = sums
  for (const sum of sums) sum.fill(0)
  let all = 0
  let focal = 0
  for (let code = 1; code < vesselCode; code++) {
    const area = pixels[code]!
    areas[ofCode[code]!]! += area
    all += area
    if ((code - 1) % 4 !== 0 || stems[(code - 1) >> 2]!.role !== 'focal') continue
    group[ofCode[code]!]! += area
    focal += area
  }
  for (let p = 1; p < n; p++)
    for (let q = 1; q < n; q++) {
      like[p]! += areas[q]! * likes[p * n + q]!
      likeGroup[p]! += group[q]! * likes[p * n + q]!
    }
  // Leaves and bare stems are the ground, and are not looked for.
  out.fill(1)
  for (let i = 0; i < stems.length; i++) {
    const code = 4 * i + 1
    const tone = ofCode[code]!
    const own = stems[i]!.role === 'focal'
    const rest = all - (own ? focal : pixels[code]!)
    const passes = like[tone]! - (own ? likeGroup[tone]! : pixels[code]!)
    if (rest > 0) out[code] = Math.max(0, 1 - (LOST * passes) / rest)
  }
  out[vesselCode] = 1 - BY_HALF * likes[ofCode[vesselCode]! * n]!
}
