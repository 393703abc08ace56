import type { Plant } from '../catalogue/index.ts'
import { nearestColours } from '../colour/index.ts'

/** A flower is bought as the trade's colour that it is a shade off at most, ΔE00 (colour's nearest.ts: ours). */
const SHADE = 10

/** Of two colours: only a stem that was given just this swatch is meant as one, for the swatch shows one of the two. */
const TWO_COLOURED = 'bicolour'

/**
 * The word of the trade under which a plant in a colour (#rrggbb) is bought, of those that the catalogue names for it; null for
 * a flower that is near none of them. Greens go by the nearest whatever it is.
 */
export const tradeColour = (
  { formClass, colours }: Pick<Plant, 'formClass' | 'colours'>,
  hex: string,
): string | null => {
  const offers = colours.filter((c) => c.name !== TWO_COLOURED || c.hex.toLowerCase() === hex.toLowerCase())
  const [nearest] = nearestColours(hex, offers)
  return nearest && (formClass === 'foliage' || nearest.apart < SHADE) ? nearest.name : null
}
