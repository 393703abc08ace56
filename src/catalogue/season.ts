import listed from './seasons.json' with { type: 'json' }
import { cite } from './sources.ts'
import type { Standing } from './types.ts'

/** Which half of the earth: its seasons lie six months from those of the other. */
export type Half = 'north' | 'south'
/** A month, 1 to 12, on one half of the earth. */
export interface When {
  month: number
  half: Half
}

/** Months, 1 to 12 in the order of the year, with how well they are known. */
export interface Months {
  months: readonly number[]
  standing: Standing
  source: string
}

/** When a plant is to be had as a cut stem; null is not known. */
export interface Seasons {
  /** When the trade has it at all: from fields, from under glass or from afar; the longest that a source gives. */
  trade: Months
  /** When there is most of it, cut in fields or by the sources' own growers. */
  peak: Months | null
}

/** `all`, or ranges that may go over the end of the year, `11-2`, and codes of sources (sources.ts). */
type MonthRow = [string, string]
/**
 * Rows by plant, for the north (of the US, most; of Britain: FPA, FFF). FDI says `year round; peak season …`, CCFC lists
 * months that Californian growers have a flower, CSF when it is in season there. Where a source gives fewer months than
 * others, those are taken as when there is most of it; `summer and autumn` is read as June to November (ours).
 */
const ROWS = listed as unknown as Record<string, { trade: MonthRow; peak?: MonthRow }>

const YEAR = Array.from({ length: 12 }, (_, i) => i + 1)

const within = (month: number, range: string): boolean => {
  const [first, last] = range.split('-').map(Number) as [number, number]
  return first <= last ? first <= month && month <= last : month >= first || month <= last
}

const monthsOf = ([text, codes]: MonthRow): Months => ({
  months: text === 'all' ? YEAR : YEAR.filter((month) => within(month, text)),
  ...cite(codes),
})

/**
 * The same months half a year later: what is in season in May in the north is so in November in the south. Ours, for trade
 * months too: what is flown in from the other half may well be had besides.
 */
export const halfYearLater = (months: readonly number[]): number[] =>
  months.map((month) => ((month + 5) % 12) + 1).sort((a, b) => a - b)

const turned = (known: Months, half: Half): Months =>
  half === 'north' ? known : { ...known, months: halfYearLater(known.months) }

/** When a plant is to be had, by the months of one half of the earth; null where no months are known. */
export const seasonsOf = (plant: string, half: Half): Seasons | null => {
  const row = Object.hasOwn(ROWS, plant) ? ROWS[plant] : undefined
  if (!row) return null
  return { trade: turned(monthsOf(row.trade), half), peak: row.peak ? turned(monthsOf(row.peak), half) : null }
}

/**
 * `in season`: in its peak. `to be had`: the trade has it. `out`: a source or common practice gives all the months that it is
 * to be had, and this is none of them. `unusual`: the same, but those months are from memory.
 */
export type SeasonState = 'in season' | 'to be had' | 'out' | 'unusual' | 'not known'

/** How it stands with a plant in a month; what is not known is neither in nor out. */
export const seasonIn = (plant: string, when: When | null): SeasonState => {
  const seasons = when ? seasonsOf(plant, when.half) : null
  if (!when || !seasons) return 'not known'
  const { trade, peak } = seasons
  if (peak?.months.includes(when.month)) return 'in season'
  if (trade.months.includes(when.month)) return 'to be had'
  return trade.standing === 'source' || trade.standing === 'common practice' ? 'out' : 'unusual'
}
