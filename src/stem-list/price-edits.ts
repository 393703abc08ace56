import type { Plant } from '../catalogue/index.ts'
import { minorDigits } from './money.ts'
import type { Pack } from './packs.ts'
import type { PriceBook } from './types.ts'

/** Sold by this many where nobody says otherwise: the catalogue's bunch, or by the stem. */
const usualSize = ({ bunch }: Pick<Plant, 'bunch'>): number => (bunch ? Math.max(1, Math.floor(bunch.value)) : 1)

const without = <T>(all: Readonly<Record<string, T>>, id: string): Record<string, T> =>
  Object.fromEntries(Object.entries(all).filter(([key]) => key !== id))

/**
 * The price book with these sizes and prices for a plant, in place of what it had. One pack of the catalogue's size stands as
 * the price of a bunch, others as packs, never both: so whoever edits either sees the other's price. No packs: the example
 * price holds again.
 */
export const withPacks = (prices: PriceBook, plant: Pick<Plant, 'id' | 'bunch'>, packs: readonly Pack[]): PriceBook => {
  const perBunch = without(prices.perBunch, plant.id)
  const others = without(prices.packs ?? {}, plant.id)
  const [only, ...more] = packs
  if (only && more.length === 0 && only.stems === usualSize(plant)) perBunch[plant.id] = only.minor
  else if (only) others[plant.id] = [...packs]
  return { currency: prices.currency, perBunch, packs: others }
}

/**
 * The same figures in another currency: 12.50 stays 12.50, rounded to what the currency has (13 yen); nothing is converted, for
 * there is no rate.
 */
export const inCurrency = (prices: PriceBook, currency: string): PriceBook => {
  const to = (minor: number): number => sameFigure(minor, prices.currency, currency)
  return {
    currency,
    perBunch: Object.fromEntries(Object.entries(prices.perBunch).map(([id, minor]) => [id, to(minor)])),
    packs: Object.fromEntries(
      Object.entries(prices.packs ?? {}).map(([id, packs]) => [
        id,
        packs.map(({ stems, minor }) => ({ stems, minor: to(minor) })),
      ]),
    ),
  }
}

/** Minor units that read as the same figure in another currency, rounded to a whole one. */
export const sameFigure = (minor: number, from: string, to: string): number =>
  Math.round(minor * 10 ** (minorDigits(to) - minorDigits(from)))
