import { type Harmony, ownHue, pairParts } from './harmony.ts'
import { type ColourArea, type ColourGroup, mergeColours } from './merge.ts'

export interface PaletteHarmony {
  /** Number of colours after merging. */
  colours: number
  /** Largest first. */
  groups: ColourGroup[]
  /** Mean over the pairs and its parts; null when there are fewer than two colours and so no pair. */
  mean: Harmony | null
  /** The pair that agrees least, with its own value; null when there is no pair. */
  worst: { first: ColourGroup; second: ColourGroup; harmony: number } | null
}

// Used again for every palette: each colour's own hue, one pair, and the sums of weights, harmony and its three parts.
let hues = new Float64Array(64)
const pair = new Float64Array(2)
const sums = new Float64Array(5)

/**
 * Harmony of several colours: the mean of the two-colour model over all pairs, each weighted by the product of the two
 * visible areas: Σ pᵢ pⱼ CHᵢⱼ / Σ pᵢ pⱼ. Equal areas give the plain mean. One equation serves all pairs.
 * Averaging over pairs: Ou, Chong, Luo & Minchew, Color Res. Appl. 36:355–372 (2011), from memory; weighting by area: ours.
 * Give it the flowers only: foliage and vessel are ground, and the model was not made for ground.
 */
export const paletteHarmony = (items: readonly ColourArea[]): PaletteHarmony => {
  const groups = mergeColours(items)
  const n = groups.length
  if (hues.length < n) hues = new Float64Array(2 * n)
  for (let i = 0; i < n; i++) hues[i] = ownHue(groups[i]!.lab)
  sums.fill(0)
  let least = Number.POSITIVE_INFINITY
  let first = -1
  let second = -1
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      pairParts(groups[i]!.lab, groups[j]!.lab, pair)
      const hue = hues[i]! + hues[j]!
      const harmony = pair[0]! + pair[1]! + hue
      const weight = groups[i]!.share * groups[j]!.share
      sums[0]! += weight
      sums[1]! += weight * harmony
      sums[2]! += weight * pair[0]!
      sums[3]! += weight * pair[1]!
      sums[4]! += weight * hue
      if (first >= 0 && harmony >= least) continue
      least = harmony
      first = i
      second = j
    }
  const weights = sums[0]!
  if (weights <= 0) return { colours: n, groups, mean: null, worst: null }
  return {
    colours: n,
    groups,
    mean: {
      harmony: sums[1]! / weights,
      chroma: sums[2]! / weights,
      lightness: sums[3]! / weights,
      hue: sums[4]! / weights,
    },
    worst: { first: groups[first]!, second: groups[second]!, harmony: least },
  }
}
