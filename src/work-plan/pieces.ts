import type { Mechanics } from '../arrangement/index.ts'
import type { EventPlan } from '../event/index.ts'
import { counted, type Draft } from './draft.ts'
import { type Load, pieceTimes, placedOn, placedOn_min } from './load.ts'
import { REASONS } from './reasons.ts'
import { EVENING, placeKey } from './timing.ts'

const MECHANICS_STEPS: Record<Mechanics, string> = {
  netting: 'Cut and fold the netting, tape it down: gloves, its ends are sharp.',
  foam: 'Float the foam until it has sunk by itself, never push it under; fix it. Its dust irritates: no dry cutting.',
  'pin-holder': 'Fix the pin holder with putty on a dry base; the pins are sharp.',
  'tape-grid': 'Lay the tape grid over a dry rim.',
  none: 'Rinse the vessels.',
}

export const vesselsDraft = ({ works, vessels }: Load, minutes: number): Draft => ({
  key: 'vessels',
  kind: 'vessels',
  title: `Prepare ${counted(vessels, 'vessel')}`,
  hand_min: vessels * minutes,
  steps: [...new Set(works.flatMap((w) => (w.mechanics ? [MECHANICS_STEPS[w.mechanics]] : [])))],
  reasons: REASONS.vessels,
})

/** One piece of each design, from the empty vessel on. */
export const trialDraft = ({ works }: Load, minutes: EventPlan['work']['minutes']): Draft => ({
  key: 'trial',
  kind: 'trial',
  title: 'Make one piece of each design and time it',
  few: 1,
  hand_min: pieceTimes(works, minutes).reduce((sum, t) => sum + t.vessel_min + t.placing_min, 0),
  steps: [
    'Its flowers are not in the order: buy them apart, as few as one piece takes.',
    'Put in what each took: every hour below follows from it.',
  ],
  reasons: REASONS.trial,
})

const PLACE_TITLES = ['Place what goes in last', 'Place the flowers', 'Green out, and place what lasts']
const PLACE_REASONS = [REASONS.placeOnDay, REASONS.placeBefore, REASONS.placeEarly]

export const placeDraft = (
  day: number,
  load: Load,
  plan: Pick<EventPlan, 'work'>,
  nameOf: (plant: string) => string,
): Draft => {
  const plants = load.plants.get(day) ?? []
  const opened = load.arriving.filter((a) => a.opens > 0 && plants.includes(a.plant))
  const { stems, pieces } = placedOn(load.works, day)
  return {
    key: placeKey(day),
    kind: 'place',
    title: PLACE_TITLES[Math.floor(day)] ?? PLACE_TITLES[2]!,
    hand_min: placedOn_min(load.works, day, plan.work.minutes),
    after: ['vessels'],
    steps: [
      `${counted(stems, 'stem')} in ${counted(pieces, 'piece')}, in this order: ${plants.map(nameOf).join(', ')}.`,
      'Cut what goes in now to the lengths of the cut sheet, longest first.',
      ...load.works.flatMap(({ title, copies, stems: on }) =>
        on.has(day)
          ? [`${copies} × ${title}: ${counted(on.get(day)! / copies, 'stem')}${copies > 1 ? ' each' : ''}`]
          : [],
      ),
      ...(opened.length > 0
        ? [`Only once they are open, for packed close they stay closed: ${opened.map((a) => a.name).join(', ')}.`]
        : []),
      'Top up with water when done; keep cool and out of the sun.',
    ],
    reasons: [...(PLACE_REASONS[Math.floor(day)] ?? REASONS.placeEarly), ...REASONS.placeOrder],
    plants,
  }
}

/** Pieces that nothing holds, bound when their last stems go in on a day. */
export const bindDraft = (day: number, { works }: Load, minutes: number): Draft | null => {
  const bound = works.filter((w) => w.mechanics === 'none' && Math.min(...w.stems.keys()) === day)
  if (bound.length === 0) return null
  const pieces = bound.reduce((n, w) => n + w.copies, 0)
  return {
    key: day === EVENING ? 'bind-evening' : `bind-${day}`,
    kind: 'bind',
    after: [placeKey(day)],
    title: `Bind ${counted(pieces, 'piece')} that nothing else holds`,
    hand_min: pieces * minutes,
    steps: [
      'Where the neck does not hold them: take the stems in the hand in a spiral, bind where they cross, cut level, and set into the vessel.',
    ],
    reasons: REASONS.bind,
  }
}
