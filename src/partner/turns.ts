import { LEVELS, type Level } from './protocol.ts'

/** Degrees between the ways round that are painted, and of one press of a button. Ours. */
export const STEP = 7.5
export const PRESS = 15
/** Ways round are looked at ahead of the finger in these strides, degrees: few at first, so that soon there is something near. Ours. */
const STRIDES = [30, 15, STEP] as const
/** Flowers painted this near are better than masses at the right place, degrees: half of the widest stride. */
export const NEAR = STRIDES[0] / 2
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
  /** Which of the palettes, and from where. */
  which: number
  turn: number
  level: Level
}

/** What is looked at, and what is known of the painting so far. */
export interface Now {
  which: number
  turn: number
  /** How many palettes there are. */
  palettes: number
  /** A finger turns it. */
  moving: boolean
  /** Nothing is to be seen yet. */
  empty: boolean
  /** Steps to either side that get a quick look while the hand rests. */
  ahead: number
  /** Flowers have been painted once: from then on a glance at them takes no longer than masses. */
  built: boolean
  /** How well a way round is painted already. */
  has: (which: number, turn: number) => Level | null
}

const rankOf = (level: Level | null): number => (level ? LEVELS.indexOf(level) : -1)
const atLeast = (level: Level | null, least: Level): boolean => rankOf(level) >= LEVELS.indexOf(least)
/** Between two ways round, 0 to 180 degrees. */
const between = (a: number, b: number): number => 180 - Math.abs(180 - Math.abs(a - b))

/** Every way round, the wide strides first, of each stride the nearest to `turn` first. */
const allRound = (turn: number): number[] => {
  const stride = (at: number): number => STRIDES.findIndex((s) => at % s === 0)
  return Array.from({ length: 360 / STEP }, (_, i) => i * STEP).sort(
    (a, b) => stride(a) - stride(b) || between(a, turn) - between(b, turn) || a - b,
  )
}

/**
 * The way round that is shown for `turn`: the nearest where flowers are painted, itself at best; in masses only where those
 * are far off. Null where nothing of it is to be seen.
 */
export const shownFor = (turn: number, has: (turn: number) => Level | null): number | null => {
  for (let n = 0; n * STEP <= 180; n++) {
    if (n * STEP > NEAR && has(turn)) return turn
    for (const side of [n, -n]) {
      const at = snapped(turn + side * STEP)
      if (atLeast(has(at), 'glance')) return at
    }
  }
  return has(turn) ? turn : null
}

/**
 * What is to be painted next. Until flowers were painted once: masses, where nothing is there. Then a glance at them where
 * one turns it, a quick look, and at rest the flowers as they are. When that is there, a glance at the other palettes, then
 * glances all round, then quick looks to either side.
 * @returns null when all is done
 */
export const nextJob = ({ which, turn, palettes, moving, empty, ahead, built, has }: Now): Job | null => {
  const here = has(which, turn)
  const job = (level: Level): Job => ({ which, turn, level })
  if (!built && !here && (moving || empty)) return job('sketch')
  if (!atLeast(here, 'glance') && (moving || built)) return job('glance')
  if (!atLeast(here, 'draft')) return job('draft')
  if (!moving && !atLeast(here, 'fine')) return job('fine')
  if (!moving)
    for (let other = 0; other < palettes; other++)
      if (!atLeast(has(other, turn), 'glance')) return { which: other, turn, level: 'glance' }
  const bare = allRound(turn).find((at) => !atLeast(has(which, at), 'glance'))
  if (bare !== undefined) return { which, turn: bare, level: 'glance' }
  if (moving) return null
  for (let n = 1; n <= ahead; n++)
    for (const side of [n, -n]) {
      const at = snapped(turn + side * STEP)
      if (!atLeast(has(which, at), 'draft')) return { which, turn: at, level: 'draft' }
    }
  return null
}
