import { findPlant } from '../../catalogue/index.ts'
import type { EventPlan } from '../../event/index.ts'
import { formatMoney, nearestTrade, type Order, type OrderLine, toMain, tradeColour } from '../../stem-list/index.ts'
import { colourWords } from '../../telling/index.ts'
import { weekdayWords } from '../../work-plan/index.ts'
import { useColourWords } from '../palettes/use-names.ts'

const NO_PALETTE: ReadonlyMap<string, string> = new Map()

/**
 * A line's colour in words: the trade's word under which the plant is bought, or that which it is nearest to, where that is not
 * far; else the nearest of the published names, which no seller knows.
 * @param general a name for a #rrggbb
 */
export const lineColour = (
  { plant, colour }: Pick<OrderLine, 'plant' | 'colour'>,
  general: (hex: string) => string,
): string => {
  const row = findPlant(plant)
  if (!row) return general(colour)
  const word = tradeColour(row, colour)
  if (word) return word
  const near = nearestTrade(row, colour)
  return near ? `near ${near}` : colourWords(colour, row, NO_PALETTE, general)
}

export const useLineColour = (): ((line: Pick<OrderLine, 'plant' | 'colour'>) => string) => {
  const general = useColourWords()
  return (line) => lineColour(line, general)
}

/** Whole minor units as people write them. */
export const money = (minor: number, currency: string): string => formatMoney(toMain(minor, currency), currency)

/** `Saturday 9 October 2027, 17:00` of a local date and time; '' of none. */
export const whenWords = (date: string): string =>
  date === '' ? '' : `${weekdayWords(date)} ${date.slice(0, 4)}${date.length > 10 ? `, ${date.slice(11, 16)}` : ''}`

export interface BudgetWords {
  words: string
  /** What is left or over, as an amount; '' where it can't be told. */
  amount: string
  over: boolean
}

/** The budget against what the stems cost; null where there is none. One in another currency than the prices is held against nothing. */
export const budgetWords = (
  { budget, currency }: Pick<EventPlan, 'budget' | 'currency'>,
  { minor, currency: prices }: Pick<Order, 'minor' | 'currency'>,
): BudgetWords | null => {
  if (budget === null) return null
  const own = currency || prices
  if (own !== prices)
    return {
      words: `The budget is ${money(budget, own)}, the prices are in ${prices}: not compared`,
      amount: '',
      over: false,
    }
  const over = minor > budget
  const words = `${over ? 'Over the' : 'Left of the'} budget of ${money(budget, prices)}`
  return { words, amount: money(Math.abs(budget - minor), prices), over }
}

export const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`

/** Ids of the plants of an order, each once, in the order in which they first come. */
export const plantsOf = (lines: readonly Pick<OrderLine, 'plant'>[]): string[] => [
  ...new Set(lines.map((l) => l.plant)),
]

/** Lines of the same plant under one another, plants in the order in which they first come. */
export const byPlant = <T extends { plant: string }>(lines: readonly T[]): T[] => {
  const groups = new Map<string, T[]>()
  for (const line of lines) groups.set(line.plant, [...(groups.get(line.plant) ?? []), line])
  return [...groups.values()].flat()
}

export const lineKey = ({ plant, colour }: Pick<OrderLine, 'plant' | 'colour'>): string => `${plant} ${colour}`
