import type { Mechanics } from '../arrangement/index.ts'
import type { EventPlan } from '../event/index.ts'
import type { Order } from '../stem-list/index.ts'
import { clashesOf } from './clashes.ts'
import { dayBefore, daysUntil, later, localDay, type Moment, momentOf, weekdayWords } from './clock.ts'
import { type Draft, inARow, timed, wholeDays } from './draft.ts'
import { lastDay } from './last-day.ts'
import { type Load, loadOf } from './load.ts'
import { bindDraft, placeDraft, trialDraft, vesselsDraft } from './pieces.ts'
import { REASONS } from './reasons.ts'
import { arriveDraft, byArrival, conditionDraft, openDraft } from './supply.ts'
import type { Plan, Task } from './types.ts'

/** Days before on which it is ordered, at the latest too, and on which all is settled. Common practice; see reasons.ts. */
const BOOK = 30
const SETTLE = 14
/** Vessels are prepared two to three days before (common practice). */
const VESSELS = 2

/** What is done weeks before. */
const far = (event: Moment, load: Load, plan: EventPlan): Task[] => {
  const open = load.arriving.filter((a) => a.openOnBuying)
  return [
    wholeDays(event, BOOK, {
      key: 'book',
      kind: 'book',
      title: 'Order the flowers',
      steps: [
        `By now; no later than ${weekdayWords(localDay(event.subtract({ days: SETTLE })))} without talking to the seller.`,
        ...(open.length > 0
          ? [`Ask for these further on, as open as you want them: ${open.map((a) => a.name).join(', ')}.`]
          : []),
      ],
      reasons: REASONS.book,
    }),
    wholeDays(event, BOOK, trialDraft(load, plan.work.minutes)),
    wholeDays(event, SETTLE, {
      key: 'settle',
      kind: 'settle',
      title: 'Settle numbers, vessels and the venue’s rules',
      steps: [
        'Count of each design, spare, who helps on which day.',
        'Vessels, what holds the stems, tape, labels and buckets: there, or ordered.',
        'What the venue allows: water, flames, wire, when its doors open and until when all must be out.',
      ],
      reasons: REASONS.settle,
    }),
  ]
}

const some = (draft: Draft | null): Draft[] => (draft ? [draft] : [])

/** The days before the event's own, each from the hour work begins, and what only waits. */
const before = (event: Moment, load: Load, plan: EventPlan, nameOf: (plant: string) => string): Task[] => {
  const { people, from, minutes } = plan.work
  const days = new Map<number, Draft[]>()
  const on = (day: number, ...drafts: Draft[]): void => void days.set(day, [...(days.get(day) ?? []), ...drafts])
  const waits: Task[] = []
  for (const [day, arriving] of byArrival(load.arriving)) {
    if (day > 0) on(day, arriveDraft(day, arriving), conditionDraft(day, arriving, plan, nameOf))
    const opening = arriving.filter((a) => a.opens > 0 && a.arrive > a.place)
    if (opening.length > 0)
      waits.push(wholeDays(event, day, openDraft(day, opening), Math.min(...opening.map((a) => a.place)) + 1))
  }
  on(Math.max(VESSELS, ...load.plants.keys()), vesselsDraft(load, minutes.vessel))
  for (const day of load.plants.keys())
    if (day > 0) on(day, placeDraft(day, load, plan, nameOf), ...some(bindDraft(day, load)))
  const work = [...days].flatMap(([day, drafts]) => inARow(dayBefore(event, day, from), day, drafts, people))
  return [...work, ...waits]
}

/** When it is over: from then on, by all hands. */
const clear = (event: Moment, load: Load, { hours, work }: EventPlan): Task => {
  const end = later(event, hours * 60)
  const hand_min = load.vessels * work.minutes.setting
  return timed(
    {
      key: 'clear',
      kind: 'clear',
      title: 'Take down',
      hand_min,
      steps: ['Wire, pins and glass first, into a box; water out before anything is lifted.'],
      reasons: REASONS.clear,
    },
    daysUntil(end, event),
    end,
    later(end, hand_min / work.people),
    work.people,
  )
}

const dayOf = (t: Task): number => Date.parse(t.start.slice(0, 10))
const hourOf = (t: Task): number => t.span_ms?.[0] ?? Number.MAX_VALUE

/** By day, then by hour; on each day what takes no certain hour comes last. */
const inOrder = (a: Task, b: Task): number => dayOf(a) - dayOf(b) || hourOf(a) - hourOf(b)

/**
 * The plan of work backwards from the event's date and time: what is done on which day, by how many hands, and why; and
 * what in it will not go. An event without a date or without anything to place has no tasks.
 * @param nameOf the name of a plant by its id
 * @param mechanicsOf what holds the stems of a design; undefined when there is none of that key
 * @param titleOf the title of a design; its key where there is none
 * @throws RangeError for a date or a zone that can't be read
 */
export const planOf = (
  plan: EventPlan,
  order: Order,
  nameOf: (plant: string) => string,
  mechanicsOf: (design: string) => Mechanics | undefined,
  titleOf?: (design: string) => string,
): Plan => {
  if (!plan.date || order.lines.length === 0) return { tasks: [], clashes: [] }
  const event = momentOf(plan.date, plan.zone)
  const load = loadOf(order, plan.parts, plan.hours, nameOf, mechanicsOf, titleOf)
  const last = lastDay(event, load, plan, nameOf)
  const tasks = [
    ...far(event, load, plan),
    ...before(event, load, plan, nameOf),
    ...last,
    clear(event, load, plan),
  ].sort(inOrder)
  return { tasks, clashes: clashesOf(tasks, load, plan, event) }
}
