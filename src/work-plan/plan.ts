import type { EventPlan } from '../event/index.ts'
import type { Order } from '../stem-list/index.ts'
import { after } from './after.ts'
import { clashesOf } from './clashes.ts'
import { dayBefore, type Moment, minutesOfDay, momentOf, onFive, onFiveDown, upToFive } from './clock.ts'
import { clockMinutes, inTurn, whoWords } from './crew.ts'
import { type Draft, NOBODY, placedInDay, wholeDays } from './draft.ts'
import { far } from './far.ts'
import { lastDay, lastLegs } from './last-day.ts'
import { type About, type Load, loadOf } from './load.ts'
import { bindDraft, placeDraft, vesselsDraft } from './pieces.ts'
import { arriveDraft, byArrival, conditionDraft, openDraft } from './supply.ts'
import { EVENING } from './timing.ts'
import { tooLong } from './too-long.ts'
import type { Plan, Task } from './types.ts'
import { waterDraft } from './water.ts'

/** Vessels are prepared two to three days before (common practice). */
const VESSELS = 2

/** What goes in on the evening before: so late that it is done when the day's work ends, and after its hours in water. */
const eveningDrafts = (load: Load, plan: EventPlan, nameOf: (plant: string) => string): Draft[] => {
  const { work } = plan
  const place = placeDraft(EVENING, load, plan, nameOf)
  const bind = bindDraft(EVENING, load, work.minutes.binding)
  // The day begins on five minutes.
  const there = minutesOfDay(work.to) - onFive(minutesOfDay(work.from))
  const takes = clockMinutes(place, work) + (bind ? clockMinutes(bind, work) : 0)
  const justIn = load.arriving.filter((a) => a.place === EVENING && a.arrive === 1)
  const water_h = Math.max(0, ...justIn.map((a) => a.water_h[0]))
  const late = { ...place, from_min: onFiveDown(Math.max(0, there - takes)) }
  return [
    { ...late, ...(justIn.length > 0 ? { rests: { key: 'condition-1', min: water_h * 60 } } : {}) },
    ...(bind ? [bind] : []),
  ]
}

/** The work of the days before the event's own, in its order. Days before → tasks. */
const draftsOf = (load: Load, plan: EventPlan, nameOf: (plant: string) => string): Map<number, Draft[]> => {
  const { minutes } = plan.work
  const days = new Map<number, Draft[]>()
  const on = (day: number, ...drafts: (Draft | null)[]): void =>
    void days.set(day, [...(days.get(day) ?? []), ...drafts.filter((d) => d !== null)])
  const placed = [...load.plants.keys()].filter((day) => day > 0).sort((a, b) => b - a)
  const firstIn = Math.max(1, ...load.arriving.map((a) => a.arrive))
  for (let day = Math.max(0, ...placed) - 1; day > 0; day--) {
    const water = waterDraft(day, load, minutes.watering)
    if (water) on(day, water)
  }
  for (const [day, arriving] of byArrival(load.arriving))
    if (day > 0) on(day, arriveDraft(day, arriving, minutes.receiving), conditionDraft(day, arriving, plan, nameOf))
  on(Math.max(Math.min(VESSELS, firstIn), ...placed.map(Math.ceil)), vesselsDraft(load, minutes.vessel))
  for (const day of placed)
    if (day !== EVENING) on(day, placeDraft(day, load, plan, nameOf), bindDraft(day, load, minutes.binding))
  if (load.plants.has(EVENING)) on(1, ...eveningDrafts(load, plan, nameOf))
  return days
}

const before = (event: Moment, days: ReadonlyMap<number, Draft[]>, { work }: EventPlan): Task[] =>
  [...days].flatMap(([day, drafts]) =>
    placedInDay(upToFive(dayBefore(event, day, work.from)), day, inTurn(drafts, work), (hands) =>
      whoWords(hands, work),
    ),
  )

/** What only waits. */
const waits = (event: Moment, load: Load): Task[] =>
  [...byArrival(load.arriving)].flatMap(([day, arriving]) => {
    const opening = arriving.filter((a) => a.opens > 0 && a.arrive > a.place)
    if (opening.length === 0) return []
    return [
      wholeDays(event, day, openDraft(day, opening), NOBODY, Math.floor(Math.min(...opening.map((a) => a.place))) + 1),
    ]
  })

const dayOf = (t: Task): number => Date.parse(t.start.slice(0, 10))
const hourOf = (t: Task): number => t.span_ms?.[0] ?? Number.MAX_VALUE

/** By day, then by hour; on each day what takes no certain hour comes last. */
const inOrder = (a: Task, b: Task): number => dayOf(a) - dayOf(b) || hourOf(a) - hourOf(b)

/**
 * The plan of work backwards from the event's date and time: what is done on which day, by whom, and why; and what in it will
 * not go. Times stand on five minutes. An event without a date or without anything to place has no tasks.
 * @throws RangeError for a date or a zone that can't be read
 */
export const planOf = (plan: EventPlan, order: Order, about: About): Plan => {
  if (!plan.date || order.lines.length === 0) return { tasks: [], clashes: [] }
  const event = momentOf(plan.date, plan.zone)
  const load = loadOf(order, plan, about)
  const days = draftsOf(load, plan, about.nameOf)
  const legs = lastLegs(load, plan, about.nameOf)
  const tasks = [
    ...far(event, load, plan),
    ...before(event, days, plan),
    ...waits(event, load),
    ...lastDay(event, legs, plan.work),
    ...after(event, load, plan),
  ].sort(inOrder)
  const clashes = [...tooLong(order, about.nameOf), ...clashesOf(tasks, load, plan, event, { days, legs })]
  return { tasks, clashes }
}
