import { EXAMPLE_PRICES, findPlant, type Plant } from '../catalogue/index.ts'
import { isPack, MOST_PACKS, type Pack } from './packs.ts'
import type { PriceBook } from './types.ts'

/** Decimals of a currency's main unit (ISO 4217, as Intl knows them): 2 for EUR, 0 for JPY; 2 for what is no currency. */
export const minorDigits = (currency: string): number => {
  try {
    return new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2
  } catch {
    return 2
  }
}

/** Whole minor units (cents) to the main unit, the nearest number there is to it. */
export const toMain = (minor: number, currency: string): number => minor / 10 ** minorDigits(currency)

/** An amount in the main unit as text, `€ 12.50` as the language writes it; the code after it for what is no currency. */
export const formatMoney = (amount: number, currency: string, language = 'en'): string => {
  try {
    return new Intl.NumberFormat(language, { style: 'currency', currency }).format(amount)
  } catch {
    return `${amount.toFixed(2)} ${currency}`.trim()
  }
}

const priceIn = (book: PriceBook, plant: string): number | null => {
  const price = Object.hasOwn(book.perBunch, plant) ? book.perBunch[plant] : undefined
  return price !== undefined && Number.isSafeInteger(price) && price >= 0 ? price : null
}

const middleOf = (book: PriceBook): number => {
  const prices = Object.keys(book.perBunch)
    .map((plant) => priceIn(book, plant))
    .filter((p) => p !== null)
    .sort((a, b) => a - b)
  return prices[Math.floor(prices.length / 2)] ?? 0
}

export interface Price {
  /** Of a bunch (of a stem where no bunch size is known), whole minor units. */
  minor: number
  /** Not the person's own, but invented: it must say so. */
  example: boolean
}

/**
 * The price of a plant (its id): the person's own, else the example, else the middle one of the examples. An example keeps
 * its number of minor units in any currency (ours: it is invented anyway). An own price that is not a whole number from 0
 * up counts as none.
 */
export const priceOf = (plant: string, prices: PriceBook, examples: PriceBook = EXAMPLE_PRICES): Price => {
  const own = priceIn(prices, plant)
  if (own !== null) return { minor: own, example: false }
  return { minor: priceIn(examples, plant) ?? middleOf(examples), example: true }
}

/**
 * The packs a plant is sold in: the person's own, else one of the catalogue's bunch (a single stem where none is known) at
 * the price of priceOf.
 */
export const packsOf = (
  plant: Pick<Plant, 'id' | 'bunch'>,
  prices: PriceBook,
  examples: PriceBook = EXAMPLE_PRICES,
): { packs: Pack[]; example: boolean } => {
  const own = prices.packs && Object.hasOwn(prices.packs, plant.id) ? prices.packs[plant.id] : undefined
  if (own && own.length > 0 && own.length <= MOST_PACKS && own.every(isPack)) return { packs: own, example: false }
  const { minor, example } = priceOf(plant.id, prices, examples)
  return { packs: [{ stems: plant.bunch ? Math.max(1, Math.floor(plant.bunch.value)) : 1, minor }], example }
}

/** Of the plants of these lines, how many have a price that is invented: none, some or all of them, for words beside a total. */
export const inventedAmong = (lines: readonly { plant: string }[], prices: PriceBook): 'none' | 'some' | 'all' => {
  const examples = lines.filter(({ plant }) => packsOf(findPlant(plant) ?? { id: plant, bunch: null }, prices).example)
  if (examples.length === 0) return 'none'
  return examples.length === lines.length ? 'all' : 'some'
}
