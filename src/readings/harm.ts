import type { ReadingResult } from './types.ts'

// What an edit may cost, in one place. All the numbers are ours.

/** An edit must lift its own reading by this much, points, */
const LIFT = 0.5
/** and by this share of what is missing, for less is not worth a hand; of a reading that is near nothing, by this share of what is there. */
const SHARE = 0.04
const SHARE_LOW = 0.2
/** And lowers no other reading by more than this, points. */
export const HARM = 2
/** One that harms more is offered only as a trade, which says what it costs: it lifts its own reading by at least this, points, */
export const TRADE = 10
/** and by so many times what all others together lose. */
const TIMES = 3
/** A reading is as wanted from here on, points; the page says so in these words. */
const AS_WANTED = 90

/** Is the gain of a reading enough to be advised? `before` is its score. */
export const lifts = (gain: number, before: number): boolean =>
  gain >= Math.max(LIFT, Math.min(SHARE * (100 - before), SHARE_LOW * before))

/**
 * May a reading lose more than HARM for what another one gains? Not where it was as wanted and then no longer is, nor
 * under where the one that is helped stood before.
 * @param own score of the reading that is helped, before
 * @param gain points that it gains
 * @param lost points that all others lose, this one among them
 */
export const mayTrade = (
  own: number,
  gain: number,
  lost: number,
  { score: before }: ReadingResult,
  { score: after }: ReadingResult,
): boolean =>
  before !== null &&
  after !== null &&
  gain >= TRADE &&
  gain >= TIMES * lost &&
  after >= own &&
  !(before >= AS_WANTED && after < AS_WANTED)
