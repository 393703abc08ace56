import { keepingOf } from '../catalogue/index.ts'
import type { EventPlan } from '../event/index.ts'
import { localDay, type Moment, weekdayWords } from './clock.ts'
import { coolerClashes } from './cooler.ts'
import { counted } from './draft.ts'
import { earlyStart, fullDays, overlaps, tooHeavy, type Undated } from './hands.ts'
import type { Load } from './load.ts'
import { outOfSeason } from './out-of-season.ts'
import { minuteWords } from './plan-text.ts'
import { placeKey } from './timing.ts'
import type { Clash, Task } from './types.ts'

const keysOf = (tasks: readonly Task[]): string[] => tasks.map((t) => t.key)

/** Flowers placed before they have stood in water for long enough. */
const tooSoon = (tasks: readonly Task[], { arriving }: Load): Clash[] => {
  const of = (key: string): [number, number] => tasks.find((t) => t.key === key)?.span_ms ?? [0, 0]
  return arriving.flatMap(({ arrive, first, name, water_h }): Clash[] => {
    const water = (of(placeKey(first))[0] - of(`condition-${arrive}`)[1]) / 3_600_000
    if (water >= water_h[0] - 1e-3) return []
    const text = `${name} would be placed ${water <= 0 ? 'before it has been in water at all' : `after ${minuteWords(water * 60)} in water`}; it wants ${water_h[0]} h.`
    return [{ tasks: [placeKey(first), `condition-${arrive}`], text, known: 'the catalogue’s care rows' }]
  })
}

/** Flowers that some sources would have faded before the event is over. */
const fading = ({ arriving }: Load): Clash[] =>
  arriving.flatMap(({ arrive, name, fades }): Clash[] => {
    if (!fades) return []
    const text = `${name} may be past its best: ${fades.days.toFixed(1)} days from the day it comes to the end, and some last only ${counted(fades.lasts.least, 'day')} in water.`
    return [{ tasks: [`arrive-${arrive}`], text, known: fades.lasts.source }]
  })

/** Flowers that come too late to open. */
const closed = ({ arriving }: Load): Clash[] =>
  arriving.flatMap(({ plant, arrive, name, shut }): Clash[] => {
    const opens = keepingOf(plant)?.opens_d
    if (!opens || shut === 0) return []
    const text = `${name} would still be closed: it needs ${opens.least === opens.most ? '' : 'at least '}${counted(opens.least, 'day')} to open and has ${arrive}. Buy it open, or have it sooner.`
    return [{ tasks: [`arrive-${arrive}`], text, known: opens.source }]
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
      mend: 'together' as const,
    }))
  if (all.length <= DELIVERIES) return sundays
  const text = `Flowers come on ${all.length} days (${all.map((t) => weekdayWords(t.start).split(' ')[0]).join(', ')}): settle with the seller which of these can be, or bring them together.`
  return [...sundays, { tasks: keysOf(all), text, known: 'ours', mend: 'together' }]
}

/** Whatever in the plan will not go as it stands: first what lacks hands, then what harms flowers. */
export const clashesOf = (
  tasks: readonly Task[],
  load: Load,
  plan: EventPlan,
  event: Moment,
  undated: Undated,
): Clash[] => {
  const full = fullDays(tasks, plan, event, undated)
  return [
    ...full,
    ...earlyStart(tasks, load, plan, event, undated),
    ...overlaps(tasks, plan, new Set(full.flatMap((c) => c.tasks))),
    ...tooHeavy(tasks, load),
    ...tooSoon(tasks, load),
    ...coolerClashes(load, plan, (days) => weekdayWords(localDay(event.subtract({ days })))),
    ...closed(load),
    ...outOfSeason(load, plan),
    ...fading(load),
    ...deliveries(tasks),
  ]
}
