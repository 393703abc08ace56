import { type Half, type Months, seasonIn, seasonsOf, type When } from './season.ts'

const NAMES = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
]
export const monthName = (month: number): string => NAMES[month - 1] ?? ''

/** Months as people say them, over the end of the year too: `November–February`, `May`, `all year`. */
export const monthsText = (months: readonly number[]): string => {
  if (months.length === 12) return 'all year'
  const has = new Set(months)
  const before = (month: number): number => ((month + 10) % 12) + 1
  const after = (month: number): number => (month % 12) + 1
  const firsts = months.filter((month) => !has.has(before(month)))
  return firsts
    .map((first) => {
      let last = first
      while (has.has(after(last))) last = after(last)
      return first === last ? monthName(first) : `${monthName(first)}–${monthName(last)}`
    })
    .join(', ')
}

const tradeText = ({ months }: Months): string =>
  months.length === 12 ? 'all year in the trade' : `to be had ${monthsText(months)}`

/** All that is known of a plant's months: `all year in the trade; most of it May–September`; null where nothing is. */
export const seasonText = (plant: string, half: Half): string | null => {
  const seasons = seasonsOf(plant, half)
  if (!seasons) return null
  return `${tradeText(seasons.trade)}${seasons.peak ? `; most of it ${monthsText(seasons.peak.months)}` : ''}`
}

/** How a plant stands in a month, in words: `out of season in October; to be had November–August, most of it April–June`. */
export const seasonWords = (plant: string, when: When): string => {
  const seasons = seasonsOf(plant, when.half)
  const month = monthName(when.month)
  if (!seasons) return 'not known'
  const { trade, peak } = seasons
  const most = peak ? `most of it ${monthsText(peak.months)}` : ''
  const then = (before: string, mark: string): string => (most ? `${before}${mark} ${most}` : before)
  switch (seasonIn(plant, when)) {
    case 'in season':
      return `in season in ${month}`
    case 'to be had':
      return then(trade.months.length === 12 ? tradeText(trade) : `to be had in ${month}`, ';')
    case 'out':
      return then(`out of season in ${month}; ${tradeText(trade)}`, ',')
    case 'unusual':
      return then(`not usual in ${month}; ${tradeText(trade)}`, ',')
    case 'not known':
      return 'not known'
  }
}

/** Where the months are from, each named once, and that they were moved where they were. */
export const seasonSource = (plant: string, half: Half): string => {
  const seasons = seasonsOf(plant, half)
  if (!seasons) return 'no months were found'
  const { trade, peak } = seasons
  const from = [...new Set([trade, ...(peak ? [peak] : [])].flatMap((m) => m.source.split('; ')))].join('; ')
  const moved = half === 'south' && (peak !== null || trade.months.length < 12)
  return moved ? `${from}; by half a year for the south: ours` : from
}
