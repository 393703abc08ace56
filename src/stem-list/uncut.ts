import type { Plant } from '../catalogue/index.ts'
import { bunchesFor, type Order, type OrderChoices } from './order.ts'

export interface Uncut {
  stems: number
  /** Stems in the packs that would be bought. */
  bought: number
  /** Whole minor units. */
  minor: number
}

/**
 * What an order would come to if no stem were cut apart, a bought stem for each piece: its spare shares, packs and prices are
 * those of the order.
 * @param plantOf the plant of an id; a line of one that is not known is left out
 */
export const uncutOf = (
  { lines }: Order,
  choices: OrderChoices,
  plantOf: (id: string) => Plant | undefined,
): Map<string, Uncut> => {
  const all = new Map<string, Uncut>()
  for (const { plant: id, colour, pieces, spareShare } of lines) {
    const plant = plantOf(id)
    if (!plant) continue
    const { bought, minor } = bunchesFor(plant, pieces, spareShare, choices)
    all.set(`${id} ${colour}`, { stems: pieces, bought, minor })
  }
  return all
}
