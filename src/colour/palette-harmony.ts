import { type Harmony, ownHue, pairHarmony } from './harmony.ts'
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

/**
 * Harmony of several colours: the mean of the two-colour model over all pairs, each weighted by the product of the two
 * visible areas: Σ pᵢ pⱼ CHᵢⱼ / Σ pᵢ pⱼ. Equal areas give the plain mean. One equation serves all pairs.
 * Averaging over pairs: Ou, Chong, Luo & Minchew, Color Res. Appl. 36:355–372 (2011), from memory; weighting by area: ours.
 * Give it the flowers only: foliage and vessel are ground, and the model was not made for ground.
 */
export const paletteHarmony = (items: readonly ColourArea[]): PaletteHarmony => {
  const groups = mergeColours(items)
  const mean: Harmony = { harmony: 0, chroma: 0, lightness: 0, hue: 0 }
  let weights = 0
  let worst = null as PaletteHarmony['worst']
  const hues = groups.map((g) => ownHue(g.lab))
  for (let i = 0; i < groups.length; i++)
    for (let j = i + 1; j < groups.length; j++) {
      const first = groups[i] as ColourGroup
      const second = groups[j] as ColourGroup
      const pair = pairHarmony(first.lab, second.lab, (hues[i] as number) + (hues[j] as number))
      const weight = first.share * second.share
      weights += weight
      mean.harmony += weight * pair.harmony
      mean.chroma += weight * pair.chroma
      mean.lightness += weight * pair.lightness
      mean.hue += weight * pair.hue
      if (!worst || pair.harmony < worst.harmony) worst = { first, second, harmony: pair.harmony }
    }
  if (weights <= 0) return { colours: groups.length, groups, mean: null, worst: null }
  for (const key of ['harmony', 'chroma', 'lightness', 'hue'] as const) mean[key] /= weights
  return { colours: groups.length, groups, mean, worst }
}
