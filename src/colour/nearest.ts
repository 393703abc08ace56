import { deltaE2000 } from './difference.ts'
import { labOf } from './lab.ts'
import { SAME_COLOUR } from './merge.ts'

/** How near a colour that can be had is to the one that is wanted. */
export type Nearness = 'hardly to be told apart' | 'as one across a table' | 'a shade off' | 'a neighbour' | 'not near'

/**
 * ΔE00 under which each word holds. 1.8: half of those who looked closely still accepted the two as a match (Paravina, Ghinea,
 * Herrera et al., Color difference thresholds in dentistry, J Esthet Restor Dent 27 S1:S1–S9, 2015), rounded up to 2.
 * 5: one colour across a table, as in merging; 10 and 15: ours, 15 being where two colours are plainly two.
 */
export const NEARNESS: readonly [under: number, words: Nearness][] = [
  [2, 'hardly to be told apart'],
  [SAME_COLOUR, 'as one across a table'],
  [10, 'a shade off'],
  [15, 'a neighbour'],
]
/** From here on a colour counts as not to be had. */
export const NOT_NEAR = 15

/** Words for a colour difference, ΔE00. */
export const nearness = (apart: number): Nearness => NEARNESS.find(([under]) => apart < under)?.[1] ?? 'not near'

/** Offers by how near their colours are to the one wanted (#rrggbb), nearest first; equals stay in their order. */
export const nearestColours = <T extends { hex: string }>(
  wanted: string,
  offers: readonly T[],
): (T & { apart: number })[] => {
  const lab = labOf(wanted)
  return offers
    .map((offer) => ({ ...offer, apart: deltaE2000(lab, labOf(offer.hex)) }))
    .sort((p, q) => p.apart - q.apart)
}
