import { dangerOf } from '../catalogue/index.ts'
import type { EventPlan } from '../event/index.ts'
import { localDay, type Moment, weekdayWords } from './clock.ts'
import { handsAt, whoWords } from './crew.ts'
import { costWords } from './deliveries.ts'
import { NOBODY, wholeDays } from './draft.ts'
import type { Load } from './load.ts'
import { trialDraft } from './pieces.ts'
import { REASONS } from './reasons.ts'
import type { Task } from './types.ts'

/** Days before on which it is ordered, at the latest too, and on which all is settled. Common practice; see reasons.ts. */
const BOOK = 30
const SETTLE = 14

/** What is done weeks before. */
export const far = (event: Moment, load: Load, { work }: EventPlan): Task[] => {
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
