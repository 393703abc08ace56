import { findPlant, type Plant } from '../catalogue/index.ts'
import type { CsvRow } from './csv.ts'
import { packsOf } from './money.ts'
import type { Pack } from './packs.ts'
import { readMoney } from './read-money.ts'

/** Columns of a price book as it is written. */
export const HEAD = ['plant', 'name', 'stems in it', 'price', 'currency', 'whose'] as const
const NEEDED = ['plant', 'stems in it', 'price'] as const
const MOST_STEMS = 1000

/** A size and a price as the person has it. */
export interface PriceRow extends Pack {
  line: number
  id: string
  currency: string
  /** Marked `example`, though it is not what the example says. */
  example: boolean
}

/** Where the columns are, by their names; and how many there are, on which line. */
export interface Columns {
  at: Record<(typeof HEAD)[number], number>
  count: number
  line: number
}

/** The columns of a price book's first row, in any order, or why they can't be told. */
export const columnsOf = (row: CsvRow | undefined): Columns | { problem: string } => {
  const names = (row?.cells ?? []).map((cell) => cell.toLowerCase())
  const line = row?.line ?? 1
  if (row?.broken) return { problem: `line ${line}: ${row.broken}` }
  const missing = NEEDED.filter((name) => !names.includes(name))
  if (missing.length > 0)
    return {
      problem: `line ${line}: expected the columns plant, stems in it, price; got no ${missing.join(', no ')}`,
    }
  const twice = HEAD.find((name) => names.indexOf(name) !== names.lastIndexOf(name))
  if (twice) return { problem: `line ${line}: expected one column ${twice}, got two` }
  const at = Object.fromEntries(HEAD.map((name) => [name, names.indexOf(name)])) as Columns['at']
  return { at, count: names.length, line }
}

/** `line 3`, `line 3 and line 5`. */
export const whichLines = (rows: readonly { line: number }[]): string =>
  rows.map(({ line }) => `line ${line}`).join(' and ')

/** Does ISO 4217, as this browser knows it, have this code? */
const isCurrency = (code: string): boolean =>
  /^[A-Z]{3}$/.test(code) && Intl.supportedValuesOf('currency').includes(code)

const stemsIn = (text: string): number | null => {
  const found = /^(\d{1,4})(?:[.,]0{1,2})?$/.exec(text)
  const stems = Number(found?.[1])
  return stems >= 1 && stems <= MOST_STEMS ? stems : null
}

/** One of the two that a figure such as `1,234` may be. */
const eitherWords = (text: string): string => {
  const [whole, after] = text.split(/[.,]/) as [string, string]
  return `which may be ${whole}.${after} or ${whole}${after}`
}

const isExample = (plant: Plant, { stems, minor }: Pack, currency: string): boolean =>
  packsOf(plant, { currency, perBunch: {} }).packs.some((pack) => pack.stems === stems && pack.minor === minor)

/**
 * A row of a price book, what is wrong with it in words, or null for one that only repeats an example.
 * @param given what stands between the cells, and the currency where a row names none
 */
export const readPriceRow = (
  row: CsvRow,
  { at, count, line }: Columns,
  given: { delimiter: string; currency: string },
): PriceRow | string | null => {
  if (row.broken) return row.broken
  const cell = (name: (typeof HEAD)[number]): string => row.cells[at[name]] ?? ''
  // Spreadsheets fill up rows with empty cells.
  const cells = row.cells.findLastIndex((text) => text !== '') + 1
  if (cells > count)
    return `expected ${count} cells as in line ${line}, got ${cells}${given.delimiter === ',' ? ': a decimal comma has to stand in quotes, "18,80"' : ''}`
  const plant = findPlant(cell('plant'))
  if (!plant) return `expected the id of a plant, got "${cell('plant')}"`
  const stems = stemsIn(cell('stems in it'))
  if (stems === null) return `expected a whole number of stems from 1 to ${MOST_STEMS}, got "${cell('stems in it')}"`
  const currency = cell('currency') || given.currency
  if (currency !== given.currency && !isCurrency(currency))
    return `expected a currency such as EUR, in capitals, got "${currency}"`
  const whose = cell('whose').toLowerCase()
  if (/^\d/.test(whose)) return `expected mine or example, got "${whose}"`
  // Where semicolons part the cells the comma is free to be the decimal sign.
  const minor = readMoney(cell('price'), currency, given.delimiter === ';' ? ',' : '.')
  if (minor === null) return `expected a price in ${currency}, got "${cell('price')}"`
  if (minor === 'either')
    return `expected a price in ${currency}, got "${cell('price')}", ${eitherWords(cell('price'))}`
  const example = whose === 'example'
  if (example && isExample(plant, { stems, minor }, currency)) return null
  return { line: row.line, id: plant.id, stems, minor, currency, example }
}
