import { LEVELS, type Level } from './protocol.ts'

/** Degrees between the ways round that are painted, and of one press of a button. Ours. */
export const STEP = 7.5
export const PRESS = 15
/** Steps to either side that are painted ahead while the hand rests. Ours. */
const AHEAD = 4
/** A full turn is two widths of the drawing: half a turn for a stroke across. Ours. */
const TURN_A_WIDTH = 180

/** The nearest way round that is painted, 0 to 352.5. */
export const snapped = (degrees: number): number => {
  const whole = Math.round(degrees / STEP) * STEP
  return (((whole % 360) + 360) % 360) + 0
}

/** Where a stroke across the drawing turns it to: what is near follows the finger. */
export const dragged = (from: number, by_px: number, width_px: number): number =>
  snapped(from + (by_px / Math.max(1, width_px)) * TURN_A_WIDTH)

const SIDES = [
  'the front',
  'the front left',
  'the left',
  'the back left',
  'behind',
  'the back right',
  'the right',
  'the front right',
] as const

/** `from the left`: where one looks from, in words; each eighth of the circle has its own. */
export const sideWords = (turn: number): string => `from ${SIDES[Math.round(turn / 45) % 8]}`

export interface Job {
  turn: number
  level: Level
}

/**
 * What is to be painted next. While it turns: masses, where nothing better is there. At rest: masses if nothing is to be
 * seen yet, then a quick look, then the flowers, then quick looks to either side, the nearest first.
 * @param has how well a way round is painted already
 * @returns null when all is done
 */
export const nextJob = (
  turn: number,
  moving: boolean,
  empty: boolean,
  has: (turn: number) => Level | null,
): Job | null => {
  const rank = (at: number): number => {
    const level = has(at)
    return level ? LEVELS.indexOf(level) : -1
  }
  const now = rank(turn)
  if (now < 0 && (moving || empty)) return { turn, level: 'sketch' }
  if (moving) return null
  if (now < 1) return { turn, level: 'draft' }
  if (now < 2) return { turn, level: 'fine' }
  for (let n = 1; n <= AHEAD; n++)
    for (const side of [n, -n]) {
      const at = snapped(turn + side * STEP)
      if (rank(at) < 1) return { turn: at, level: 'draft' }
    }
  return null
}
