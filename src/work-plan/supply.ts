import { keepingOf } from '../catalogue/index.ts'
import type { EventPlan } from '../event/index.ts'
import { bearsCool, celsiusWords } from './cooler.ts'
import { counted, type Draft } from './draft.ts'
import type { Arriving } from './load.ts'
import { arrivalNotes, ethyleneSensitive } from './notes.ts'
import { REASONS } from './reasons.ts'

const names = (arriving: readonly Arriving[]): string => arriving.map((a) => a.name).join(', ')

const idsOf = (arriving: readonly Arriving[]): string[] => arriving.map((a) => a.plant)

/** Those that come on each day, by days before. */
export const byArrival = (arriving: readonly Arriving[]): Map<number, Arriving[]> => {
  const days = new Map<number, Arriving[]>()
  for (const a of arriving) days.set(a.arrive, [...(days.get(a.arrive) ?? []), a])
  return days
}

/** In what state it was asked for, where that is not the usual one. */
const askedWords = ({ lacks, arrive, best, opens }: Arriving): string => {
  if (lacks > 0) return ', further on, as asked for'
  return arrive > best && opens > 0 ? ', in tighter bud, as asked for' : ''
}

export const arriveDraft = (day: number, arriving: readonly Arriving[], minutes: number): Draft => ({
  key: `arrive-${day}`,
  kind: 'arrive',
  title: 'Take in the flowers',
  hand_min: minutes,
  few: 1,
  steps: [
    ...arriving.map((a) => `${a.name}: ${counted(a.bought, 'stem')}${askedWords(a)}`),
    'Count, look for broken and blind ones, and tell the seller today.',
  ],
  reasons: REASONS.arrive,
  plants: idsOf(arriving),
})

/** A cool room, where there is no cooler, °C. Ours. */
const COOL_ROOM_C = 10

/** Where they wait until they are placed: in the cooler, or without one. */
const keepSteps = (arriving: readonly Arriving[], cooler: EventPlan['cooler']): string[] => {
  const warm = arriving.filter((a) => bearsCool(a.plant, cooler?.celsius ?? COOL_ROOM_C) === 'cold')
  const cool = arriving.filter((a) => !warm.includes(a))
  const closed = cool.filter((a) => a.opens > 0)
  const where = cooler ? 'into the cooler' : 'into the coolest dark room there is, out of the draught,'
  const steps: string[] = []
  if (cool.length > 0)
    steps.push(
      `Then ${where} until they are placed${closed.length > 0 ? `; not yet, but once they are open: ${names(closed)}` : ''}.`,
    )
  if (warm.length > 0)
    steps.push(
      `Keep out of the cold: ${warm.map((a) => `${a.name} (${celsiusWords(keepingOf(a.plant)?.cool_C ?? null)})`).join(', ')}.`,
    )
  return steps
}

export const conditionDraft = (
  day: number,
  arriving: readonly Arriving[],
  plan: Pick<EventPlan, 'cooler' | 'work'>,
  nameOf: (plant: string) => string,
): Draft => {
  const least = Math.max(...arriving.map((a) => a.water_h[0]))
  const better = Math.max(...arriving.map((a) => a.water_h[1]))
  const stems = arriving.reduce((n, a) => n + a.bought, 0)
  const notes = arrivalNotes(idsOf(arriving), nameOf)
  const sensitive = ethyleneSensitive(idsOf(arriving))
  return {
    key: `condition-${day}`,
    kind: 'condition',
    title: `Condition ${counted(stems, 'stem')}`,
    hand_min: stems * plan.work.minutes.conditioning,
    after: [`arrive-${day}`],
    steps: [
      'Unpack, strip what would stand below the waterline, recut by 3 to 5 cm (1 to 2 in), stand in clean water with food by its packet.',
      `Leave them in water for ${least} h at least, better ${better} h, before anything else.`,
      ...notes.steps,
      ...keepSteps(arriving, plan.cooler),
      ...(sensitive.length > 0
        ? [`Away from fruit, fumes and fading flowers: ${sensitive.map(nameOf).join(', ')}.`]
        : []),
    ],
    reasons: [
      ...REASONS.condition,
      ...notes.reasons,
      ...REASONS.cool,
      ...(sensitive.length > 0 ? REASONS.ethylene : []),
    ],
    plants: idsOf(arriving),
  }
}

export const openDraft = (day: number, arriving: readonly Arriving[]): Draft => ({
  key: `open-${day}`,
  kind: 'open',
  title: 'Let them open',
  steps: [
    ...arriving.map(
      (a) =>
        `${a.name}: up to ${counted(a.opens, 'day')}; ${counted(Math.ceil(a.arrive - a.place), 'day')} until it is placed`,
    ),
    'Loosely, in the warm and light, in lukewarm water; look morning and evening, and cool what is open enough.',
  ],
  reasons: REASONS.open,
  plants: idsOf(arriving),
})
