import { EXAMPLE_PRICES } from '../catalogue/index.ts'
import type { Resolved, ResolvedStem } from '../geometry/index.ts'
import { priceOf, toMain } from './money.ts'
import { colourKey, grouped, piecesOf } from './rows.ts'
import { fewestStems, lateralsPerStem } from './stems.ts'
import type { PriceBook, Purchase, PurchaseLine } from './types.ts'

/** No spare stems are asked for. */
const SPARE = 0

const lineOf = (stems: ResolvedStem[], copies: number, price: number): { line: PurchaseLine; minor: number } => {
  const first = stems[0] as ResolvedStem
  const plant = first.plant
  const needed = fewestStems(piecesOf(stems), lateralsPerStem(plant), copies)
  const bunchSize = plant.bunch ? Math.max(1, Math.floor(plant.bunch.value)) : null
  const bunches = bunchSize === null ? null : Math.ceil((needed + SPARE) / bunchSize)
  const bought = bunchSize === null || bunches === null ? needed + SPARE : bunches * bunchSize
  return {
    line: {
      plant: plant.id,
      colour: colourKey(first),
      pieces: stems.length * copies,
      stems: needed,
      spareStems: SPARE,
      bunchSize,
      bunches,
      leftover: bought - needed - SPARE,
      cost: 0,
    },
    minor: (bunches ?? bought) * price,
  }
}

/**
 * What to buy for `copies` arrangements: a line for each plant and colour (a bunch is bought once, whatever its stems are
 * used for), pieces and stems of all the copies together. Counted in whole minor units, so that the total is exactly the
 * sum of the lines; `cost` and `total` in the currency's main unit. Throws a RangeError unless copies is a whole number
 * from 1 up.
 */
export const purchase = (
  resolved: Resolved,
  copies: number,
  prices: PriceBook,
  examples: PriceBook = EXAMPLE_PRICES,
): Purchase => {
  if (!Number.isSafeInteger(copies) || copies < 1)
    throw new RangeError(`copies: expected a whole number from 1 up, got ${copies}`)
  const counted = grouped(resolved, (s) => `${s.plant.id} ${colourKey(s)}`).map((stems) =>
    lineOf(stems, copies, priceOf((stems[0] as ResolvedStem).plant.id, prices, examples).minor),
  )
  return {
    copies,
    currency: prices.currency,
    lines: counted.map(({ line, minor }) => ({ ...line, cost: toMain(minor, prices.currency) })),
    total: toMain(
      counted.reduce((sum, { minor }) => sum + minor, 0),
      prices.currency,
    ),
  }
}
