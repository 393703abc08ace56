import { counted } from './draft.ts'
import { type Timing, timingOf } from './timing.ts'

/** What it costs a plant to come on a day, gravest first: days off its own ranges, days to open that the slowest lack, days off its best. */
type Cost = readonly [harm: number, lacks: number, off: number]

const costOf = ({ sooner, later, lacks, arrive, best }: Timing): Cost => [
  sooner + later,
  lacks,
  Math.abs(arrive - best),
]

const HAIR = 1e-9

/** Below 0 where the first costs less. */
const compare = (a: readonly number[], b: readonly number[]): number => {
  for (let i = 0; i < a.length; i++) if (Math.abs(a[i]! - b[i]!) > HAIR) return a[i]! - b[i]!
  return 0
}

/** A plant as it does best among some days; of two that cost as much, the later. @param days before, at least one */
const bestAmong = (plant: string, hours: number, days: readonly number[]): Timing =>
  days
    .map((day) => timingOf(plant, hours, day))
    .reduce((best, next) => {
      const by = compare(costOf(next), costOf(best))
      return by < 0 || (by === 0 && next.arrive < best.arrive) ? next : best
    })

/**
 * When a plant comes: on the day that is settled for it, else on the best of those on which flowers can come.
 * @param hours that the flowers are to look well from the event's start
 */
export const settledTiming = (
  plant: string,
  hours: number,
  { days, of }: { days: readonly number[]; of: Readonly<Record<string, number>> },
): Timing => {
  const own = Object.hasOwn(of, plant) ? of[plant] : undefined
  if (own !== undefined) return timingOf(plant, hours, own)
  return days.length === 0 ? timingOf(plant, hours) : bestAmong(plant, hours, days)
}

/** All ways to take `count` of some things, each in their order. */
const choices = <T>(from: readonly T[], count: number): T[][] => {
  if (count === 0) return [[]]
  return from.flatMap((first, i) => choices(from.slice(i + 1), count - 1).map((rest) => [first, ...rest]))
}

/**
 * The days on which flowers come best if they come on so many at the most: of all choices the one that harms least, each plant
 * counting alike; then the one that leaves most time to open, then the one nearest to each plant's best day, then the fewer days. Ours.
 * @param plants ids
 * @param hours that the flowers are to look well from the event's start
 * @param count from 1
 * @param among days before the event to choose from
 * @returns those that are used, the earliest first
 */
export const bestDays = (
  plants: readonly string[],
  hours: number,
  count: number,
  among: readonly number[],
): number[] => {
  if (among.length === 0 || plants.length === 0) return []
  const days = [...new Set(among)].sort((a, b) => b - a)
  const all = choices(days, Math.min(count, days.length)).map((choice) => {
    const timings = plants.map((plant) => bestAmong(plant, hours, choice))
    const used = choice.filter((day) => timings.some((t) => t.arrive === day))
    const sum = (i: 0 | 1 | 2): number => timings.reduce((n, t) => n + costOf(t)[i], 0)
    return { used, cost: [sum(0), sum(1), sum(2), used.length] }
  })
  return all.reduce((best, next) => (compare(next.cost, best.cost) < 0 ? next : best)).used
}

const dayWords = (n: number): string => (n === 1 ? 'a day' : `${n} days`)

/** What is to be asked for, or minded, because of the day on which a plant comes; '' where there is nothing. */
export const costWords = ({ arrive, best, opens, lacks, shut, sooner, water_h }: Timing): string => {
  const early = arrive > best ? `comes ${dayWords(arrive - best)} early` : ''
  const late = arrive < best ? `comes ${dayWords(best - arrive)} later than best` : ''
  if (early && opens > 0) return `${early}: buy it tighter, and hold it in the cool once it is open`
  if (early) return sooner > 0 ? `${early}: as fresh as can be had, and kept cool` : `${early}, which it bears`
  if (lacks > 0) {
    const days = `has ${arrive} of up to ${counted(opens, 'day')} to open`
    return `${days}: ask for it ${shut > 0 || arrive === 0 ? 'as open as it is to be' : 'further on'}`
  }
  if (arrive === 0 && best > 0) return `comes on the day itself: ${water_h[0]} h in water before it is placed`
  return late && `${late}, which it bears`
}
