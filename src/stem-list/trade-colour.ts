import type { Plant } from '../catalogue/index.ts'
import { nearestColours } from '../colour/index.ts'

/** A flower is bought as the trade's colour that it is a shade off at most, ΔE00 (colour's nearest.ts: ours). */
const SHADE = 10

/** Of two colours: only a stem that was given just this swatch is meant as one, for the swatch shows one of the two. */
const TWO_COLOURED = 'bicolour'

/** As far off as this a word of the trade still says more to a seller than a name of a hue: ours. */
const NEAR = 20

const nearestOf = ({ colours }: Pick<Plant, 'colours'>, hex: string): { name: string; apart: number } | undefined =>
  nearestColours(
    hex,
    colours.filter((c) => c.name !== TWO_COLOURED || c.hex.toLowerCase() === hex.toLowerCase()),
  )[0]

/** The word of the trade that a colour (#rrggbb) of a plant is nearest to, and not far from; null where all are far. */
export const nearestTrade = (plant: Pick<Plant, 'colours'>, hex: string): string | null => {
  const nearest = nearestOf(plant, hex)
  return nearest && nearest.apart < NEAR ? nearest.name : null
}

/**
 * The word of the trade under which a plant in a colour (#rrggbb) is bought, of those that the catalogue names for it; null for
 * a flower that is near none of them. Greens go by the nearest whatever it is.
 */
export const tradeColour = (plant: Pick<Plant, 'formClass' | 'colours'>, hex: string): string | null => {
  const nearest = nearestOf(plant, hex)
  return nearest && (plant.formClass === 'foliage' || nearest.apart < SHADE) ? nearest.name : null
}
