import { isOutside } from './bands.ts'
import type { ReadingResult } from './types.ts'

// What an edit may cost, in one place. All the numbers are ours.

/** An edit must lift its own reading by this much, points. */
export const LIFT = 0.5
/** And lowers no other reading by more than this, points. */
export const HARM = 2
/** One that harms more is offered only as a trade, which says what it costs: it lifts its own reading by at least this, points, */
export const TRADE = 10
/** and by so many times what all others together lose. */
export const TIMES = 3

const held = ({ because }: ReadingResult) => (because ? [because.main, ...because.others] : [])

/** Is a value that was as wanted no longer so? */
export const leavesBand = (before: ReadingResult, after: ReadingResult): boolean =>
  held(before).some(({ key, value, band }) => {
    const now = band && !isOutside(value, band) ? held(after).find((h) => h.key === key) : undefined
    return !!now?.band && isOutside(now.value, now.band)
  })

/**
 * May a reading lose more than HARM for what another one gains? Not where that brings it out of a band in which it was,
 * nor under where the one that is helped stood before.
 * @param own score of the reading that is helped, before
 * @param gain points that it gains
 * @param lost points that all others lose, this one among them
 */
export const mayTrade = (
  own: number,
  gain: number,
  lost: number,
  before: ReadingResult,
  after: ReadingResult,
): boolean => gain >= TRADE && gain >= TIMES * lost && (after.score ?? 0) >= own && !leavesBand(before, after)
