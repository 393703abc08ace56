import { counted, type Draft } from './draft.ts'
import type { Load, Work } from './load.ts'
import { REASONS } from './reasons.ts'

const firstDay = ({ stems }: Work): number => Math.max(...stems.keys())

/** Designs that stand finished or begun on a day before the event's and have nothing placed in them on it. */
const standing = ({ works }: Load, day: number): Work[] =>
  works.filter((w) => w.stems.size > 0 && firstDay(w) > day && !w.stems.has(day))

const draftOf = (key: string, works: readonly Work[], minutes: number): Draft => {
  const pieces = works.reduce((n, w) => n + w.copies, 0)
  return {
    key,
    kind: 'water',
    title: `Top up the water of ${counted(pieces, 'piece')}`,
    hand_min: pieces * minutes,
    steps: [
      `${works.map((w) => `${w.copies} × ${w.title}`).join(', ')}: every cut end stays under water; what hangs is taken out.`,
    ],
    reasons: REASONS.water,
  }
}

/**
 * Topping up on a day before the event's what stands from a day before that; null where placing looks after it, or nothing stands.
 * @param day days before, from 1
 */
export const waterDraft = (day: number, load: Load, minutes: number): Draft | null => {
  const works = standing(load, day)
  return works.length > 0 ? draftOf(`water-${day}`, works, minutes) : null
}

/** Topping up at the venue, a day or more after the event began. @param day days after, from 1 */
export const waterAfterDraft = (day: number, { works }: Load, minutes: number): Draft =>
  draftOf(`water-after-${day}`, works, minutes)
