import type { EventPlan, Work } from '../event/index.ts'
import { downToFive, later, type Moment } from './clock.ts'
import { clockMinutes, handsAt, whoWords } from './crew.ts'
import { counted, type Draft, timed } from './draft.ts'
import { forTwo, heavySteps } from './lifting.ts'
import type { Load } from './load.ts'
import { bindDraft, placeDraft } from './pieces.ts'
import { REASONS } from './reasons.ts'
import { arriveDraft, conditionDraft } from './supply.ts'
import type { Task } from './types.ts'

/** Minutes before the event by which everything stands in its place. Ours. */
const EARLY_min = 60

/** A task of the event's day, and how long nothing may begin after it. */
export interface Leg extends Draft {
  wait_min?: number
}

/** The road, and what is done at both of its ends; without a road the pieces are made where they stand. */
const away = (load: Load, { parts, work }: EventPlan): Leg[] => {
  const { drive, minutes } = work
  const titles = new Map(load.works.map((w) => [w.design, w.title]))
  const heavy = heavySteps(load)
  const why = heavy.length > 0 ? REASONS.lifting : []
  const pack: Leg = {
    key: 'pack',
    kind: 'pack',
    title: `${drive > 0 ? 'Check and pack' : 'Top up and check'} ${counted(load.vessels, 'piece')}`,
    hand_min: load.vessels * minutes.packing,
    steps:
      drive > 0
        ? [
            'Look each over from all sides; for the road, lower the water to about a third.',
            'Label each, brace each, keep them upright; lift with a straight back, in small loads.',
            ...heavy,
          ]
        : ['Look each over from all sides, top up, label.', ...heavy],
    reasons: [...REASONS.pack, ...why],
  }
  const carry: Leg = {
    key: 'carry',
    kind: 'carry',
    title: 'Carry them there',
    steps: [
      `${counted(drive, 'minute')} on the road, in one load; each further load is there and back again.`,
      ...heavy,
    ],
    reasons: [...REASONS.carry, ...why],
    clock_min: drive,
    few: forTwo(load).length > 0 ? 2 : 1,
  }
  const set: Leg = {
    key: 'set',
    kind: 'set',
    title: 'Set them in their places',
    hand_min: load.vessels * minutes.setting,
    steps: [
      ...parts.map((p) => [`${p.copies} × ${titles.get(p.design) ?? p.design}`, p.place].filter(Boolean).join(': ')),
      'Top up to the full, turn the best side to the guests, tip each a little to see that it stands, keep flames clear.',
    ],
    reasons: REASONS.set,
  }
  return drive > 0 ? [pack, carry, set] : [pack, set]
}

/** What is done on the day itself, one after another: what comes and goes in on the day, packing, the road, setting. */
export const lastLegs = (load: Load, plan: EventPlan, nameOf: (plant: string) => string): Leg[] => {
  const today = load.arriving.filter((a) => a.arrive === 0)
  const bind = bindDraft(0, load, plan.work.minutes.binding)
  const water_h = Math.max(0, ...today.map((a) => a.water_h[0]))
  return [
    ...(today.length > 0
      ? [
          arriveDraft(0, today, plan.work.minutes.receiving),
          { ...conditionDraft(0, today, plan, nameOf), wait_min: water_h * 60 },
        ]
      : []),
    ...(load.plants.has(0) ? [placeDraft(0, load, plan, nameOf)] : []),
    ...(bind ? [bind] : []),
    ...away(load, plan),
  ]
}

/** How long the day's tasks take one after another, minutes. */
export const legMinutes = (legs: readonly Leg[], work: Work): number =>
  legs.reduce((n, leg) => n + clockMinutes(leg, work) + (leg.wait_min ?? 0), 0)

/** The day itself, backwards: one before another, up to an hour before the event begins. */
export const lastDay = (event: Moment, legs: readonly Leg[], work: Work): Task[] => {
  let at = downToFive(later(event, -EARLY_min))
  const tasks: Task[] = []
  for (const leg of [...legs].reverse()) {
    const end = later(at, -(leg.wait_min ?? 0))
    const start = later(end, -clockMinutes(leg, work))
    const hands = handsAt(leg, work)
    tasks.unshift(timed(leg, 0, start, end, { hands, who: whoWords(hands, work) }))
    at = start
  }
  return tasks
}
