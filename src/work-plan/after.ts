import type { EventPlan } from '../event/index.ts'
import { dayBefore, daysUntil, later, type Moment, upToFive } from './clock.ts'
import { clockMinutes, handsAt, whoWords } from './crew.ts'
import { type Draft, timed } from './draft.ts'
import type { Load } from './load.ts'
import { REASONS } from './reasons.ts'
import type { Task } from './types.ts'
import { waterAfterDraft } from './water.ts'

/** What is taken down sooner than this after it would have been topped up is left as it is, minutes. Ours. */
const STAYS_min = 120

/** From the event's beginning on: topping up in the mornings while it lasts, and taking down when it is over. */
export const after = (event: Moment, load: Load, { hours, work }: EventPlan): Task[] => {
  const end = later(event, hours * 60)
  const at = (draft: Draft, day: number, from: Moment): Task => {
    const hands = handsAt(draft, work)
    return timed(draft, day, from, later(from, clockMinutes(draft, work)), { hands, who: whoWords(hands, work) })
  }
  const tasks: Task[] = []
  for (let day = 1; day <= -daysUntil(end, event); day++) {
    const water = at(
      waterAfterDraft(day, load, work.minutes.watering),
      -day,
      upToFive(dayBefore(event, -day, work.from)),
    )
    if (water.span_ms![1] + STAYS_min * 60_000 <= end.epochMilliseconds) tasks.push(water)
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
