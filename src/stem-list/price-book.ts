import { findPlant, PLANTS, type Plant } from '../catalogue/index.ts'
import { type CsvKind, csvText, inKind, readCsv } from './csv.ts'
import { minorDigits, packsOf } from './money.ts'
import { MOST_PACKS } from './packs.ts'
import { columnsOf, HEAD, type PriceRow, readPriceRow, whichLines } from './price-rows.ts'
import type { PriceBook } from './types.ts'

/** Minor units as the digits of the main unit, `12.50`: exact, for no fraction is ever made. */
export const moneyDigits = (minor: number, currency: string): string => {
  const digits = minorDigits(currency)
  if (digits === 0) return String(minor)
  const text = String(minor).padStart(digits + 1, '0')
  return `${text.slice(0, -digits)}.${text.slice(-digits)}`
}

/** The price book as CSV: a row for each size that a plant is sold in; what is invented says so. */
export const writePriceBook = (prices: PriceBook, kind: CsvKind = 'comma', plants: readonly Plant[] = PLANTS): string =>
  csvText(
    [
      [...HEAD],
      ...plants.flatMap((plant) => {
        const { packs, example } = packsOf(plant, prices)
        return packs.map(({ stems, minor }) => [
          plant.id,
          plant.name,
          stems,
          inKind(moneyDigits(minor, prices.currency), kind),
          prices.currency,
          example ? 'example' : 'mine',
        ])
      }),
    ],
    kind,
  )

export type PriceBookRead =
  | {
      ok: true
      prices: PriceBook
      /** Plants that get prices. */
      rows: number
      /** Lines marked `example` that say something else than the example, and so are taken for the person's own. */
      changed: number[]
      problems: string[]
    }
  | { ok: false; problems: string[] }

const nameOf = (id: string): string => findPlant(id)?.name ?? id

/** Two prices for one size, each pair of lines in words. */
const conflictsOf = (rows: readonly PriceRow[]): string[] =>
  rows.flatMap((row, i) => {
    const first = rows.slice(0, i).find((other) => other.stems === row.stems)
    if (!first || first.minor === row.minor) return []
    const prices = [first, row].map(({ minor, currency }) => moneyDigits(minor, currency)).join(' and ')
    return [`line ${first.line} and line ${row.line}: two prices for ${row.stems} of ${nameOf(row.id)}, ${prices}`]
  })

const byId = (rows: readonly PriceRow[]): PriceRow[][] => {
  const found = new Map<string, PriceRow[]>()
  for (const row of rows) found.set(row.id, [...(found.get(row.id) ?? []), row])
  return [...found.values()]
}

/** Each size of a plant once; a plant with two prices for one size, or with too many sizes, is left out with why. */
const plantsOf = (rows: readonly PriceRow[], problems: string[]): PriceRow[][] =>
  byId(rows).flatMap((all) => {
    const sizes = all.filter((row, i) => all.findIndex((other) => other.stems === row.stems) === i)
    const wrong = conflictsOf(all)
    if (sizes.length > MOST_PACKS)
      wrong.push(
        `${whichLines(sizes.slice(MOST_PACKS))}: expected at most ${MOST_PACKS} sizes of ${nameOf(all[0]!.id)}, got ${sizes.length}`,
      )
    problems.push(...wrong)
    return wrong.length > 0 ? [] : [sizes]
  })

/**
 * Reads a price book, by commas, semicolons or tabs. A row marked `example` that says what the example says is passed over; with
 * another price or size it is the person's own. Each wrong row is named with its line and left out, and so is a plant with two
 * prices for one size. Prices of plants that are not in the file stay as they were. Nothing is read of a file in more than one
 * currency.
 */
export const readPriceBook = (text: string, before: PriceBook): PriceBookRead => {
  const { rows, delimiter } = readCsv(text)
  const head = columnsOf(rows[0])
  if ('problem' in head) return { ok: false, problems: [head.problem] }
  const problems: string[] = []
  const own: PriceRow[] = []
  for (const row of rows.slice(1)) {
    const read = readPriceRow(row, head, { delimiter, currency: before.currency })
    if (typeof read === 'string') problems.push(`line ${row.line}: ${read}`)
    else if (read) own.push(read)
  }
  const [first] = own
  const currency = first?.currency ?? before.currency
  const mixed = own.filter((row) => row.currency !== currency)
  if (mixed.length > 0)
    return {
      ok: false,
      problems: [
        ...problems,
        ...mixed.map((row) => `line ${row.line}: expected ${currency} as in line ${first!.line}, got ${row.currency}`),
      ],
    }
  const taken = plantsOf(own, problems)
  if (taken.length === 0 && problems.length > 0) return { ok: false, problems }
  const found = Object.fromEntries(
    taken.map((sizes) => [sizes[0]!.id, sizes.map(({ stems, minor }) => ({ stems, minor }))]),
  )
  const kept = currency === before.currency ? before : { perBunch: {}, packs: {} }
  const perBunch = Object.fromEntries(Object.entries(kept.perBunch).filter(([id]) => !Object.hasOwn(found, id)))
  return {
    ok: true,
    prices: { currency, perBunch, packs: { ...kept.packs, ...found } },
    rows: taken.length,
    changed: taken
      .flat()
      .filter((row) => row.example)
      .map((row) => row.line),
    problems,
  }
}
