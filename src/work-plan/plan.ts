import type { Mechanics } from '../arrangement/index.ts'
import type { EventPlan } from '../event/index.ts'
import type { Order } from '../stem-list/index.ts'
import { clashesOf } from './clashes.ts'
import { dayBefore, later, localDay, localText, type Moment, momentOf } from './clock.ts'
import { type Arriving, type Load, loadOf } from './load.ts'
import { REASONS } from './reasons.ts'
import type { Plan, Reason, Task, TaskKind } from './types.ts'

/** Days before on which it is ordered, at the latest too, and on which all is settled. Common practice; see reasons.ts. */
const BOOK = 30
const SETTLE = 14
/** Vessels are prepared two to three days before (common practice). */
const VESSELS = 2
/** Minutes before the event by which everything stands in its place. Ours. */
const EARLY_min = 60

const number = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`

interface Draft {
  key: string
  kind: TaskKind
  title: string
  hand_min?: number
  steps: string[]
  reasons: Reason[]
  plants?: string[]
}

const filled = (draft: Draft) => ({ hand_min: 0, plants: [], ...draft })

const timed = (draft: Draft, daysBefore: number, from: Moment, to: Moment, people: number): Task => ({
  ...filled(draft),
  daysBefore,
  start: localText(from),
  end: localText(to),
  span_ms: [from.epochMilliseconds, to.epochMilliseconds],
  people,
})

const wholeDay = (event: Moment, days: number, draft: Draft): Task => {
  const day = localDay(event.subtract({ days }))
  return { ...filled(draft), daysBefore: days, start: day, end: day, span_ms: null, people: 1 }
}

const arriveDraft = (day: number, arriving: readonly Arriving[]): Draft => ({
  key: `arrive-${day}`,
  kind: 'arrive',
  title: 'Flowers arrive',
  steps: arriving.map(
    (a) => `${a.name}: ${number(a.bought, 'stem', 'stems')}${a.doubts.length > 0 ? ` (${a.doubts.join('; ')})` : ''}`,
  ),
  reasons: REASONS.arrive,
  plants: [...new Set(arriving.map((a) => a.plant))],
})

const conditionDraft = (day: number, arriving: readonly Arriving[], minutes: number): Draft => {
  const least = Math.max(...arriving.map((a) => a.water_h[0]))
  const better = Math.max(...arriving.map((a) => a.water_h[1]))
  const stems = arriving.reduce((n, a) => n + a.bought, 0)
  return {
    key: `condition-${day}`,
    kind: 'condition',
    title: `Condition ${number(stems, 'stem', 'stems')}`,
    hand_min: stems * minutes,
    steps: [
      'Unpack, strip what would stand below the waterline, recut, stand in clean water with food by its packet.',
      `Leave them in water for ${least} h at least, better ${better} h, before anything else.`,
    ],
    reasons: REASONS.condition,
    plants: [...new Set(arriving.map((a) => a.plant))],
  }
}

const openDraft = (day: number, arriving: readonly Arriving[]): Draft => ({
  key: `open-${day}`,
  kind: 'open',
  title: 'Let them open',
  steps: arriving.map((a) => `${a.name}: up to ${number(a.opens, 'day', 'days')}`),
  reasons: REASONS.open,
  plants: [...new Set(arriving.map((a) => a.plant))],
})

const MECHANICS_STEPS: Record<Mechanics, string> = {
  netting: 'Cut and fold the netting, tape it down: gloves, its ends are sharp.',
  foam: 'Float the foam until it has sunk by itself, never push it under; fix it. Its dust irritates: no dry cutting.',
  'pin-holder': 'Fix the pin holder with putty on a dry base; the pins are sharp.',
  'tape-grid': 'Lay the tape grid over a dry rim.',
  none: 'Rinse the vessels.',
}

const PLACE_TITLES = ['Place what goes in last', 'Place the flowers', 'Green out, and place what lasts']
const PLACE_REASONS = [REASONS.placeOnDay, REASONS.placeBefore, REASONS.placeEarly]

const placeDraft = (day: number, load: Load, names: ReadonlyMap<string, string>, plan: EventPlan): Draft => {
  const { minutes } = plan.work
  const plants = [...(load.plantsPlaced.get(day) ?? [])]
  const stems = load.placed.get(day) ?? 0
  const pieces = load.pieces.get(day) ?? 0
  return {
    key: `place-${day}`,
    kind: 'place',
    title: PLACE_TITLES[day] ?? PLACE_TITLES[2]!,
    hand_min: stems * minutes.stem + pieces * minutes.piece,
    steps: [
      `${number(stems, 'stem', 'stems')} in ${number(pieces, 'piece', 'pieces')}: ${plants.map((p) => names.get(p) ?? p).join(', ')}.`,
      'Top up with water when done; keep cool and out of the sun.',
    ],
    reasons: PLACE_REASONS[day] ?? REASONS.placeEarly,
    plants,
  }
}

const groupByDay = (arriving: readonly Arriving[], of: (a: Arriving) => boolean): Map<number, Arriving[]> => {
  const days = new Map<number, Arriving[]>()
  for (const a of arriving) if (of(a)) days.set(a.arrive, [...(days.get(a.arrive) ?? []), a])
  return days
}

/** Tasks of a day one after another from the hour work begins, each by all hands. */
const inARow = (event: Moment, day: number, drafts: readonly Draft[], plan: EventPlan): Task[] => {
  let at = dayBefore(event, day, plan.work.from)
  return drafts.map((draft) => {
    const end = later(at, (draft.hand_min ?? 0) / plan.work.people)
    const task = timed(draft, day, at, end, plan.work.people)
    at = end
    return task
  })
}

/** Tasks of the event's day, one before another up to an hour before it begins; the drive takes the same time for any hands. */
const backFrom = (event: Moment, drafts: readonly (Draft & { minutes: number })[], plan: EventPlan): Task[] => {
  let at = later(event, -EARLY_min)
  const tasks: Task[] = []
  for (const { minutes, ...draft } of [...drafts].reverse()) {
    const start = later(at, -minutes)
    tasks.unshift(timed(draft, 0, start, at, plan.work.people))
    at = start
  }
  return tasks
}

/**
 * The plan of work backwards from the event's date and time: what is done on which day, by how many hands, and why; and
 * what in it will not go. An event without a date or without anything to place has no tasks.
 * @param nameOf the name of a plant by its id
 * @param mechanicsOf what holds the stems of a design; undefined when there is none of that key
 * @throws RangeError for a date or a zone that can't be read
 */
export const planOf = (
  plan: EventPlan,
  order: Order,
  nameOf: (plant: string) => string,
  mechanicsOf: (design: string) => Mechanics | undefined,
): Plan => {
  if (!plan.date || order.lines.length === 0) return { tasks: [], clashes: [] }
  const event = momentOf(plan.date, plan.zone)
  const load = loadOf(order, plan.parts, plan.hours, nameOf, mechanicsOf)
  const names = new Map(load.arriving.map((a) => [a.plant, a.name]))
  const { minutes, people } = plan.work
  const byHands = (draft: Draft): Draft & { minutes: number } => ({ ...draft, minutes: (draft.hand_min ?? 0) / people })

  const far: Task[] = [
    wholeDay(event, BOOK, {
      key: 'book',
      kind: 'book',
      title: 'Order the flowers',
      steps: [`Now, and no later than ${localDay(event.subtract({ days: SETTLE }))} without talking to the seller.`],
      reasons: REASONS.book,
    }),
    wholeDay(event, BOOK, {
      key: 'trial',
      kind: 'trial',
      title: 'Make one piece of each design and time it',
      hand_min: minutes.piece * plan.parts.length,
      steps: ['Put your own minutes in: every hour below follows from them.'],
      reasons: REASONS.trial,
    }),
    wholeDay(event, SETTLE, {
      key: 'settle',
      kind: 'settle',
      title: 'Settle numbers, vessels and the venue’s rules',
      steps: ['Count of each design, spare, vessels, what the venue allows: water, flames, wire, when its doors open.'],
      reasons: REASONS.settle,
    }),
  ]

  const days = new Map<number, Draft[]>()
  const on = (day: number, draft: Draft): void => void days.set(day, [...(days.get(day) ?? []), draft])
  for (const [day, arriving] of groupByDay(load.arriving, () => true)) {
    on(day, arriveDraft(day, arriving))
    on(day, conditionDraft(day, arriving, minutes.conditioning))
  }
  for (const [day, arriving] of groupByDay(load.arriving, (a) => a.opens > 0 && a.arrive > a.place))
    on(day, openDraft(day, arriving))
  on(Math.max(VESSELS, ...load.placed.keys()), {
    key: 'vessels',
    kind: 'vessels',
    title: `Prepare ${number(load.vessels, 'vessel', 'vessels')}`,
    hand_min: load.vessels * minutes.vessel,
    steps: [...load.mechanics].map((m) => MECHANICS_STEPS[m]),
    reasons: REASONS.vessels,
  })
  for (const day of load.placed.keys()) if (day > 0) on(day, placeDraft(day, load, names, plan))

  const before = [...days].filter(([day]) => day > 0).flatMap(([day, drafts]) => inARow(event, day, drafts, plan))
  const last: Draft[] = days.get(0) ?? []
  if (load.placed.has(0)) last.push(placeDraft(0, load, names, plan))
  const onDay = backFrom(
    event,
    [
      ...last.map(byHands),
      byHands({
        key: 'pack',
        kind: 'pack',
        title: `Top up, check and pack ${number(load.vessels, 'piece', 'pieces')}`,
        hand_min: load.vessels * minutes.packing,
        steps: ['Label each, brace each, keep them upright; lift with a straight back, in small loads.'],
        reasons: REASONS.pack,
      }),
      {
        key: 'carry',
        kind: 'carry',
        title: 'Carry them there',
        steps: [`${number(plan.work.drive, 'minute', 'minutes')} on the road.`],
        reasons: REASONS.carry,
        minutes: plan.work.drive,
      },
      byHands({
        key: 'set',
        kind: 'set',
        title: 'Set them in their places',
        hand_min: load.vessels * minutes.setting,
        steps: plan.parts.map((p) => `${p.copies} × ${p.place || 'where they belong'}`),
        reasons: REASONS.set,
      }),
    ],
    plan,
  )
  const end = later(event, plan.hours * 60)
  const clear = timed(
    {
      key: 'clear',
      kind: 'clear',
      title: 'Take down',
      steps: ['Wire, pins and glass first, into a box.'],
      reasons: REASONS.clear,
    },
    0,
    end,
    end,
    people,
  )
  const tasks = [...far, ...before, ...onDay, clear].sort(
    (a, b) => b.daysBefore - a.daysBefore || (a.span_ms?.[0] ?? 0) - (b.span_ms?.[0] ?? 0),
  )
  return { tasks, clashes: clashesOf(tasks, load, plan, event) }
}
