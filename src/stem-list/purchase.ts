import { EXAMPLE_PRICES } from '../catalogue/index.ts'
import type { Resolved } from '../geometry/index.ts'
import { toMain } from './money.ts'
import { type OrderLine, orderOf } from './order.ts'
import type { PriceBook, Purchase, PurchaseLine } from './types.ts'

/** Bunches of one size say which; of two sizes, or by the stem, there is no one size. */
const bunchesOf = ({ packs }: OrderLine): Pick<PurchaseLine, 'bunchSize' | 'bunches'> => {
  const bunched = packs.filter((p) => p.stems > 1)
  return {
    bunchSize: bunched.length === 1 && packs.length === 1 ? bunched[0]!.stems : null,
    bunches: bunched.length > 0 ? bunched.reduce((sum, p) => sum + p.count, 0) : null,
  }
}

/** An order's line in the words of the list: `cost` in the currency's main unit. */
export const purchaseLine = (line: OrderLine, currency: string): PurchaseLine => ({
  plant: line.plant,
  colour: line.colour,
  pieces: line.pieces,
  stems: line.stems,
  spareStems: line.spareStems,
  ...bunchesOf(line),
  leftover: line.leftover,
  cost: toMain(line.minor, currency),
})

/**
 * What to buy for `copies` arrangements of one design; see orderOf. Counted in whole minor units, so that the total is exactly
 * the sum of the lines; `cost` and `total` in the currency's main unit. Throws a RangeError unless copies is a whole number
 * from 1 up.
 */
export const purchase = (
  resolved: Resolved,
  copies: number,
  prices: PriceBook,
  examples: PriceBook = EXAMPLE_PRICES,
): Purchase => {
  const order = orderOf([{ design: '', copies, resolved }], { prices, examples, shades: 'apart' })
  return {
    copies,
    currency: prices.currency,
    lines: order.lines.map((line) => purchaseLine(line, prices.currency)),
    total: toMain(order.minor, prices.currency),
  }
}
