import { keepingOf } from '../catalogue/index.ts'
import type { EventPlan } from '../event/index.ts'
import { dayBefore, type Moment, minutesBetween } from './clock.ts'
import type { Load } from './load.ts'
import type { Clash, Task } from './types.ts'

const hours = (minutes: number): string => `${(minutes / 60).toFixed(1)} h`

/** A day whose work does not fit between the hours that the hands are there. */
const fullDays = (tasks: readonly Task[], plan: EventPlan, event: Moment): Clash[] => {
  const busy = tasks.filter((t) => t.hand_min > 0 && t.span_ms)
  return [...new Set(busy.map((t) => t.daysBefore))].flatMap((day): Clash[] => {
    const mine = busy.filter((t) => t.daysBefore === day)
    const keys = mine.map((t) => t.key)
    const [from, to] = [dayBefore(event, day, plan.work.from), dayBefore(event, day, plan.work.to)]
    if (day === 0) {
      const first = mine.reduce((a, t) => ((t.span_ms?.[0] ?? 0) < (a.span_ms?.[0] ?? 0) ? t : a))
      const early = (from.epochMilliseconds - (first.span_ms?.[0] ?? 0)) / 60_000
      const text = `On the day itself work would have to begin at ${first.start.slice(11)}, ${hours(early)} before ${plan.work.from}: it wants more hands, or more done the day before.`
      return early > 0 ? [{ tasks: keys, text }] : []
    }
    const needed = mine.reduce((sum, t) => sum + t.hand_min, 0) / plan.work.people
    const there = Math.max(0, minutesBetween(from, to))
    const text = `${number(day)} before, ${hours(needed)} of work do not fit into ${hours(there)}, with ${plan.work.people === 1 ? 'one pair' : `${plan.work.people} pairs`} of hands.`
    return needed > there ? [{ tasks: keys, text }] : []
  })
}

const number = (days: number): string => `${days} ${days === 1 ? 'day' : 'days'}`

/** Flowers placed before they have stood in water long enough, or before they have come. */
const tooSoon = (load: Load): Clash[] =>
  load.arriving
    .filter((a) => a.arrive === a.place && a.water_h[0] > 0)
    .map((a) => ({
      tasks: [`arrive-${a.arrive}`, `place-${a.place}`],
      text: `${a.name} comes on the day it is placed: it wants ${a.water_h[0]} h in water first.`,
    }))

/** Two that can't share a cooler, one that it is too cold or too warm for, and more stems than it holds. */
const coolerClashes = (load: Load, plan: EventPlan): Clash[] => {
  const { cooler } = plan
  if (!cooler) return []
  const clashes: Clash[] = []
  for (const a of new Map(load.arriving.map((x) => [x.plant, x])).values()) {
    const cool = keepingOf(a.plant)?.cool_C
    if (!cool || (cooler.celsius >= cool.least && cooler.celsius <= cool.most)) continue
    clashes.push({
      tasks: [`arrive-${a.arrive}`],
      text: `${a.name} keeps at ${cool.least}–${cool.most} °C (${cool.source}): the cooler at ${cooler.celsius} °C is too ${cooler.celsius < cool.least ? 'cold' : 'warm'} for it.`,
    })
  }
  const days = [...new Set(load.arriving.map((a) => a.arrive))].sort((a, b) => b - a)
  for (const day of days) {
    const there = load.arriving.filter((a) => a.arrive >= day && a.place < day).reduce((n, a) => n + a.bought, 0)
    if (there > cooler.stems)
      clashes.push({
        tasks: [`arrive-${day}`],
        text: `${number(day)} before, ${there} stems wait and the cooler holds ${cooler.stems}.`,
      })
  }
  return clashes
}

/** Flowers that would fade before the event is over, or are not open in time. */
const doubtful = (load: Load): Clash[] =>
  load.arriving
    .filter((a) => a.doubts.length > 0)
    .map((a) => ({ tasks: [`arrive-${a.arrive}`], text: `${a.name}: ${a.doubts.join('; ')}.` }))

/** Whatever in the plan will not go as it stands, the fullest days first. */
export const clashesOf = (tasks: readonly Task[], load: Load, plan: EventPlan, event: Moment): Clash[] => {
  const all = [...fullDays(tasks, plan, event), ...tooSoon(load), ...coolerClashes(load, plan), ...doubtful(load)]
  return [...new Map(all.map((c) => [c.text, c])).values()]
}
