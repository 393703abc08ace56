import type { EventPlan } from '../event/index.ts'
import { later, type Moment } from './clock.ts'
import { counted, type Draft, timed } from './draft.ts'
import type { Load } from './load.ts'
import { bindDraft, placeDraft } from './pieces.ts'
import { REASONS } from './reasons.ts'
import { arriveDraft, conditionDraft } from './supply.ts'
import type { Task } from './types.ts'

/** Minutes before the event by which everything stands in its place. Ours. */
const EARLY_min = 60

/** A task of the event's day: how long it takes by the clock, and how long nothing may begin after it. */
interface Leg extends Draft {
  minutes: number
  wait?: number
}

/** One before another, up to an hour before the event begins. */
const backFrom = (event: Moment, legs: readonly Leg[], people: number): Task[] => {
  let at = later(event, -EARLY_min)
  const tasks: Task[] = []
  for (const { minutes, wait = 0, ...draft } of [...legs].reverse()) {
    const end = later(at, -wait)
    const start = later(end, -minutes)
    tasks.unshift(timed(draft, 0, start, end, people))
    at = start
  }
  return tasks
}

/** The day itself, backwards: what comes and goes in on the day, packing, the road, setting. The drive takes as long for any hands. */
export const lastDay = (event: Moment, load: Load, plan: EventPlan, nameOf: (plant: string) => string): Task[] => {
  const { people, drive, minutes } = plan.work
  const byHands = (draft: Draft): Leg => ({ ...draft, minutes: (draft.hand_min ?? 0) / people })
  const today = load.arriving.filter((a) => a.arrive === 0)
  const titles = new Map(load.works.map((w) => [w.design, w.title]))
  const legs: Leg[] = []
  if (today.length > 0) {
    const water_h = Math.max(...today.map((a) => a.water_h[0]))
    legs.push(byHands(arriveDraft(0, today)), {
      ...byHands(conditionDraft(0, today, plan, nameOf)),
      wait: water_h * 60,
    })
  }
  if (load.plants.has(0)) legs.push(byHands(placeDraft(0, load, plan, nameOf)))
  const bind = bindDraft(0, load)
  if (bind) legs.push(byHands(bind))
  legs.push(
    byHands({
      key: 'pack',
      kind: 'pack',
      title: `Top up, check and pack ${counted(load.vessels, 'piece')}`,
      hand_min: load.vessels * minutes.packing,
      steps: [
        'Top up or, for the road, lower the water to about a third; look each over from all sides.',
        'Label each, brace each, keep them upright; lift with a straight back, in small loads.',
      ],
      reasons: REASONS.pack,
    }),
    {
      key: 'carry',
      kind: 'carry',
      title: 'Carry them there',
      steps: [`${counted(drive, 'minute')} on the road, in one load; each further load is there and back again.`],
      reasons: REASONS.carry,
      minutes: drive,
    },
    byHands({
      key: 'set',
      kind: 'set',
      title: 'Set them in their places',
      hand_min: load.vessels * minutes.setting,
      steps: [
        ...plan.parts.map((p) =>
          [`${p.copies} × ${titles.get(p.design) ?? p.design}`, p.place].filter(Boolean).join(': '),
        ),
        'Top up, turn the best side to the guests, tip each a little to see that it stands, keep flames clear.',
      ],
      reasons: REASONS.set,
    }),
  )
  return backFrom(event, legs, people)
}
