import { dangerOf } from '../catalogue/index.ts'
import type { EventPlan } from '../event/index.ts'
import type { Order } from '../stem-list/index.ts'
import { clashesOf } from './clashes.ts'
import {
  dayBefore,
  daysUntil,
  later,
  localDay,
  type Moment,
  minutesOfDay,
  momentOf,
  onFiveDown,
  upToFive,
  weekdayWords,
} from './clock.ts'
import { clockMinutes, handsAt, inTurn, whoWords } from './crew.ts'
import { costWords } from './deliveries.ts'
import { type Draft, placedInDay, timed, wholeDays } from './draft.ts'
import { lastDay, lastLegs } from './last-day.ts'
import { type About, type Load, loadOf } from './load.ts'
import { bindDraft, placeDraft, trialDraft, vesselsDraft } from './pieces.ts'
import { REASONS } from './reasons.ts'
import { arriveDraft, byArrival, conditionDraft, openDraft } from './supply.ts'
import { EVENING } from './timing.ts'
import type { Plan, Task } from './types.ts'
import { waterAfterDraft, waterDraft } from './water.ts'

/** Days before on which it is ordered, at the latest too, and on which all is settled. Common practice; see reasons.ts. */
const BOOK = 30
const SETTLE = 14
/** Vessels are prepared two to three days before (common practice). */
const VESSELS = 2

const NOBODY = { hands: [], who: '' }

/** What is done weeks before. */
const far = (event: Moment, load: Load, { work }: EventPlan): Task[] => {
  const asked = load.arriving.filter((a) => a.lacks > 0 || (a.arrive > a.best && a.opens > 0))
  const forCats = load.arriving.filter((a) => dangerOf(a.plant).pets === 'emergency').map((a) => a.name)
  const trial = trialDraft(load, work.minutes)
  const hands = handsAt(trial, work)
  return [
    wholeDays(
      event,
      BOOK,
      {
        key: 'book',
        kind: 'book',
        title: 'Order the flowers',
        steps: [
          `By now; no later than ${weekdayWords(localDay(event.subtract({ days: SETTLE })))} without talking to the seller.`,
          ...(forCats.length > 0
            ? [
                `First ask the host whether a cat lives or visits where they will stand: if so, no ${forCats.join(', no ')}.`,
              ]
            : []),
          ...asked.map((a) => `${a.name} ${costWords(a)}.`),
        ],
        reasons: REASONS.book,
      },
      NOBODY,
    ),
    wholeDays(event, BOOK, trial, { hands, who: whoWords(hands, work) }),
    wholeDays(
      event,
      SETTLE,
      {
        key: 'settle',
        kind: 'settle',
        title: 'Settle numbers, vessels and the venue’s rules',
        steps: [
          'Count of each design, spare, who helps on which day.',
          'Vessels, what holds the stems, tape, labels and buckets: there, or ordered.',
          'What the venue allows: water, flames, wire, when its doors open and until when all must be out.',
        ],
        reasons: REASONS.settle,
      },
      NOBODY,
    ),
  ]
}

/** What goes in on the evening before: so late that it is done when the day's work ends, and after its hours in water. */
const eveningDrafts = (load: Load, plan: EventPlan, nameOf: (plant: string) => string): Draft[] => {
  const { work } = plan
  const place = placeDraft(EVENING, load, plan, nameOf)
  const bind = bindDraft(EVENING, load, work.minutes.binding)
  const there = minutesOfDay(work.to) - minutesOfDay(work.from)
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

/** From the event's beginning on: topping up in the mornings while it lasts, and taking down when it is over. */
const after = (event: Moment, load: Load, { hours, work }: EventPlan): Task[] => {
  const end = later(event, hours * 60)
  const at = (draft: Draft, day: number, from: Moment): Task => {
    const hands = handsAt(draft, work)
    return timed(draft, day, from, later(from, clockMinutes(draft, work)), { hands, who: whoWords(hands, work) })
  }
  const tasks: Task[] = []
  for (let day = 1; day <= -daysUntil(end, event); day++) {
    const morning = upToFive(dayBefore(event, -day, work.from))
    if (morning.epochMilliseconds < end.epochMilliseconds)
      tasks.push(at(waterAfterDraft(day, load, work.minutes.watering), -day, morning))
  }
  const clear: Draft = {
    key: 'clear',
    kind: 'clear',
    title: 'Take down',
    hand_min: load.vessels * work.minutes.setting,
    steps: ['Wire, pins and glass first, into a box; water out before anything is lifted.'],
    reasons: REASONS.clear,
  }
  return [...tasks, at(clear, daysUntil(end, event), upToFive(end))]
}

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
  return { tasks, clashes: clashesOf(tasks, load, plan, event, { days, legs }) }
}
