import { findPlant, PLANTS, type Plant } from '../catalogue/index.ts'
import { csvRows, csvText } from './csv.ts'
import { minorDigits, packsOf } from './money.ts'
import { MOST_PACKS, type Pack } from './packs.ts'
import type { PriceBook } from './types.ts'

const HEAD = ['plant', 'name', 'stems in it', 'price', 'currency', 'whose']
/** Prices above this are taken for a slip, in main units. Ours. */
const MOST_PRICE = 100_000_000

/** Minor units as the digits of the main unit, `12.50`: exact, for no fraction is ever made. */
export const moneyDigits = (minor: number, currency: string): string => {
  const digits = minorDigits(currency)
  if (digits === 0) return String(minor)
  const text = String(minor).padStart(digits + 1, '0')
  return `${text.slice(0, -digits)}.${text.slice(-digits)}`
}

/** `12.50` or `12,5` to whole minor units; null for what is no price from 0 up or has more decimals than the currency. */
export const readMoney = (text: string, currency: string): number | null => {
  const found = /^(\d{1,12})(?:[.,](\d+))?$/.exec(text.trim())
  const digits = minorDigits(currency)
  if (!found || (found[2]?.length ?? 0) > digits) return null
  const minor = Number(`${found[1]}${(found[2] ?? '').padEnd(digits, '0')}`)
  return minor <= MOST_PRICE * 10 ** digits ? minor : null
}

/** The price book as CSV: a row for each size that a plant is sold in; what is invented says so. */
export const writePriceBook = (prices: PriceBook, plants: readonly Plant[] = PLANTS): string =>
  csvText([
    HEAD,
    ...plants.flatMap((plant) => {
      const { packs, example } = packsOf(plant, prices)
      return packs.map(({ stems, minor }) => [
        plant.id,
        plant.name,
        stems,
        moneyDigits(minor, prices.currency),
        prices.currency,
        example ? 'example' : 'mine',
      ])
    }),
  ])

export type PriceBookRead =
  | { ok: true; prices: PriceBook; rows: number; problems: string[] }
  | { ok: false; problems: string[] }

/**
 * Reads a price book. Rows marked `example` are passed over; of the others each wrong one is named with its line and left out.
 * Prices of plants that are not in the file stay as they were. Nothing is read of a file in more than one currency.
 */
export const readPriceBook = (text: string, before: PriceBook): PriceBookRead => {
  const [head, ...rows] = csvRows(text)
  const column = (name: string): number => head?.findIndex((cell) => cell.toLowerCase() === name) ?? -1
  const [plantAt, stemsAt, priceAt, currencyAt, whoseAt] = ['plant', 'stems in it', 'price', 'currency', 'whose'].map(
    column,
  ) as [number, number, number, number, number]
  const missing = HEAD.filter((name) => ['plant', 'stems in it', 'price'].includes(name) && column(name) < 0)
  if (missing.length > 0)
    return {
      ok: false,
      problems: [`line 1: expected the columns plant, stems in it, price; got no ${missing.join(', no ')}`],
    }
  const currencies = new Set(currencyAt < 0 ? [before.currency] : rows.map((row) => row[currencyAt] || before.currency))
  if (currencies.size > 1) return { ok: false, problems: [`expected one currency, got ${[...currencies].join(', ')}`] }
  const currency = [...currencies][0] ?? before.currency
  if (!/^[A-Z]{3}$/.test(currency))
    return { ok: false, problems: [`expected a currency such as EUR, got "${currency}"`] }
  const problems: string[] = []
  const found = new Map<string, Pack[]>()
  rows.forEach((row, i) => {
    if (whoseAt >= 0 && row[whoseAt]?.toLowerCase() === 'example') return
    const id = row[plantAt] ?? ''
    const stems = Number(row[stemsAt])
    const minor = readMoney(row[priceAt] ?? '', currency)
    const packs = found.get(id) ?? []
    const no = (words: string): void => void problems.push(`line ${i + 2}: ${words}`)
    if (!findPlant(id)) no(`expected the id of a plant, got "${id}"`)
    else if (!Number.isSafeInteger(stems) || stems < 1 || stems > 1000)
      no(`expected a whole number of stems from 1 to 1000, got "${row[stemsAt] ?? ''}"`)
    else if (minor === null) no(`expected a price in ${currency}, got "${row[priceAt] ?? ''}"`)
    else if (packs.length >= MOST_PACKS) no(`expected at most ${MOST_PACKS} sizes of one plant`)
    else found.set(id, [...packs, { stems, minor }])
  })
  if (found.size === 0 && problems.length > 0) return { ok: false, problems }
  const kept = currency === before.currency ? before : { perBunch: {}, packs: {} }
  const perBunch = Object.fromEntries(Object.entries(kept.perBunch).filter(([id]) => !found.has(id)))
  const prices = { currency, perBunch, packs: { ...kept.packs, ...Object.fromEntries(found) } }
  return { ok: true, prices, rows: found.size, problems }
}
