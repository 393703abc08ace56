import { keepingOf } from '../catalogue/index.ts'
import type { EventPlan } from '../event/index.ts'
import { dayBefore, localDay, type Moment, minutesBetween, weekdayWords } from './clock.ts'
import { coolerClashes } from './cooler.ts'
import { counted } from './draft.ts'
import type { Load } from './load.ts'
import type { Clash, Task } from './types.ts'

const RECKONED = 'ours: reckoned from your minutes, hands and hours'

const hours = (minutes: number): string => `${(minutes / 60).toFixed(1)} h`
const hands = (people: number): string => (people === 1 ? 'one pair of hands' : `${people} pairs of hands`)
const keysOf = (tasks: readonly Task[]): string[] => tasks.map((t) => t.key)
const sum = (tasks: readonly Task[]): number => tasks.reduce((n, t) => n + t.hand_min, 0)

/** How many pairs of hands would do, or that none would. */
const wanted = (hand_min: number, there_min: number): string => {
  if (there_min <= 0) return 'No number of hands helps: begin earlier, or do more the day before.'
  // The hair keeps 18 h in 9 h from asking for a third.
  return `It wants ${hands(Math.ceil(hand_min / there_min - 1e-9))}.`
}

const busyOf = (tasks: readonly Task[]): Task[] =>
  tasks.filter((t) => t.hand_min > 0 && t.span_ms && t.kind !== 'clear')

/** A day before the event's whose work does not fit between the hours that the hands are there. */
const fullDays = (tasks: readonly Task[], { work }: EventPlan, event: Moment): Clash[] => {
  const busy = busyOf(tasks).filter((t) => t.daysBefore > 0)
  return [...new Set(busy.map((t) => t.daysBefore))].flatMap((day): Clash[] => {
    const mine = busy.filter((t) => t.daysBefore === day).sort((a, b) => b.hand_min - a.hand_min)
    const there = Math.max(0, minutesBetween(dayBefore(event, day, work.from), dayBefore(event, day, work.to)))
    const needed = sum(mine) / work.people
    if (needed <= there + 1e-9) return []
    const text = `${weekdayWords(mine[0]!.start)}: ${hours(needed)} of work do not fit into ${hours(there)} with ${hands(work.people)}. ${wanted(sum(mine), there)}`
    return [{ tasks: keysOf(mine), text, known: RECKONED }]
  })
}

/** What goes in on the day only for its night in water, and may stand in the piece from the evening before. */
const theEveningBefore = ({ arriving }: Load): string => {
  const those = arriving.filter((a) => a.place === 0 && a.arrive > 0 && (keepingOf(a.plant)?.placed_d?.most ?? 0) >= 1)
  if (those.length === 0) return ''
  const water_h = Math.max(...those.map((a) => a.water_h[0]))
  return ` ${those.map((a) => a.name).join(', ')} may go in on the evening before, after ${water_h} h in water.`
}

/** The last day's work, where it would have to begin before the hands are there. */
const earlyStart = (tasks: readonly Task[], load: Load, { work }: EventPlan, event: Moment): Clash[] => {
  const mine = tasks.filter((t) => t.daysBefore === 0 && t.span_ms && t.kind !== 'clear')
  const [start, end] = [mine[0]?.span_ms?.[0] ?? 0, mine.at(-1)?.span_ms?.[1] ?? 0]
  const opens = dayBefore(event, 0, work.from)
  const early = (opens.epochMilliseconds - start) / 60_000
  if (early <= 0) return []
  const whole = (end - start) / 60_000
  const fixed = whole - sum(mine) / work.people
  const there = (end - opens.epochMilliseconds) / 60_000 - fixed
  const text = `On the day itself work would have to begin at ${timeBeside(mine[0]!.start, localDay(event))}, ${hours(early)} before ${work.from}. ${wanted(sum(mine), there)}${theEveningBefore(load)}`
  return [{ tasks: keysOf(mine), text, known: RECKONED }]
}

/** A time, with its day in front where that is not the day of the other. */
const timeBeside = (time: string, other: string): string =>
  `${time.slice(0, 10) === other.slice(0, 10) ? '' : `${weekdayWords(time)}, `}${time.slice(11)}`

/** Two tasks at one time: all hands are in each. Days that are too full by themselves are said to be so elsewhere. */
const overlaps = (tasks: readonly Task[], full: ReadonlySet<string>): Clash[] => {
  const busy = tasks.filter((t) => t.span_ms && (t.hand_min > 0 || t.kind === 'carry') && t.kind !== 'clear')
  return busy.flatMap((a, i): Clash[] => {
    // A second, for moments are rounded to seconds.
    const b = busy.slice(i + 1).find((t) => t.span_ms![0] < a.span_ms![1] - 1000 && t.span_ms![1] > a.span_ms![0])
    if (!b || full.has(a.key)) return []
    const all = a.people === 1 ? 'the one pair of hands' : `all ${hands(a.people)}`
    const text = `“${b.title}” begins at ${b.start.slice(11)} on ${weekdayWords(b.start)}, while “${a.title}” still takes ${all} until ${timeBeside(a.end, b.start)}.`
    return [{ tasks: [b.key, a.key], text, known: RECKONED }]
  })
}

/** Flowers placed before they have stood in water for long enough. */
const tooSoon = (tasks: readonly Task[], { arriving }: Load): Clash[] => {
  const of = (key: string): [number, number] => tasks.find((t) => t.key === key)?.span_ms ?? [0, 0]
  return arriving.flatMap(({ arrive, place, name, water_h }): Clash[] => {
    const water = (of(`place-${place}`)[0] - of(`condition-${arrive}`)[1]) / 3_600_000
    if (water >= water_h[0] - 1e-3) return []
    const text = `${name} would be placed ${water <= 0 ? 'before it has been in water at all' : `after ${water.toFixed(1)} h in water`}; it wants ${water_h[0]} h.`
    return [{ tasks: [`place-${place}`, `condition-${arrive}`], text, known: 'the catalogue’s care rows' }]
  })
}

/** Flowers that some sources would have faded before the event is over. */
const fading = ({ arriving }: Load): Clash[] =>
  arriving.flatMap(({ arrive, name, fades }): Clash[] => {
    if (!fades) return []
    const text = `${name} may be past its best: ${fades.days.toFixed(1)} days from the day it comes to the end, and some last only ${counted(fades.lasts.least, 'day')} in water.`
    return [{ tasks: [`arrive-${arrive}`], text, known: fades.lasts.source }]
  })

/** More deliveries than a seller may make. Ours. */
const DELIVERIES = 3

/** Deliveries: on a Sunday, on many days. */
const deliveries = (tasks: readonly Task[]): Clash[] => {
  const all = tasks.filter((t) => t.kind === 'arrive')
  const sundays = all
    .filter((t) => weekdayWords(t.start).startsWith('Sunday'))
    .map((t) => ({
      tasks: [t.key],
      text: `Flowers would come on ${weekdayWords(t.start)}: many sellers deliver nothing on a Sunday. Ask, or have them the day before.`,
      known: 'from memory',
    }))
  if (all.length <= DELIVERIES) return sundays
  const text = `Flowers come on ${all.length} days (${all.map((t) => weekdayWords(t.start).split(' ')[0]).join(', ')}): settle with the seller which of these can be, and what may come together.`
  return [...sundays, { tasks: keysOf(all), text, known: 'ours' }]
}

/** Whatever in the plan will not go as it stands: first what lacks hands, then what harms flowers. */
export const clashesOf = (tasks: readonly Task[], load: Load, plan: EventPlan, event: Moment): Clash[] => {
  const full = fullDays(tasks, plan, event)
  return [
    ...full,
    ...earlyStart(tasks, load, plan, event),
    ...overlaps(tasks, new Set(full.flatMap((c) => c.tasks))),
    ...tooSoon(tasks, load),
    ...coolerClashes(load, plan, (days) => weekdayWords(localDay(event.subtract({ days })))),
    ...fading(load),
    ...deliveries(tasks),
  ]
}
