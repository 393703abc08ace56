import type { Vessel } from '../arrangement/index.ts'
import { floorFraction, innerSection, integrateHeights, shownHalfWidth } from './vessel.ts'
import { areaBeyond, waterOf } from './vessel-body.ts'

/** The tilt at which water comes over the rim, degrees (90: it would not before lying down), and the way it tilts. */
export interface Spill {
  angle_deg: number
  /** Of the low side, degrees from the x axis toward y. */
  toward_deg: number
}

const DEGREE = Math.PI / 180
/** Halvings of the angle: to a ten-thousandth of a degree. */
const HALVINGS = 20

/** Water held when the vessel leans so far toward (c, s) that its surface touches the lowest point of the rim, mm³. */
export const heldWhenTilted = (vessel: Vessel, angle_deg: number, c: number, s: number): number => {
  const rim = shownHalfWidth(vessel, innerSection(vessel, 1), c, s)
  const floor = floorFraction(vessel)
  const slope = Math.tan(angle_deg * DEGREE)
  return integrateHeights(vessel, floor, 1, (f) => {
    const section = innerSection(vessel, Math.max(f, floor))
    const under = (1 - f) * vessel.height
    return areaBeyond(vessel, section, c, s, slope > 0 ? rim - under / slope : Number.NEGATIVE_INFINITY)
  })
}

const angleToward = (vessel: Vessel, water: number, c: number, s: number): number => {
  let [low, high] = [0, 90]
  if (heldWhenTilted(vessel, 89.99, c, s) >= water) return 90
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2
    if (heldWhenTilted(vessel, middle, c, s) > water) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** Ways tried in a quarter: the vessel is the same on all four. */
const WAYS = 7

const known = new WeakMap<Vessel, Spill | null>()

/**
 * At what tilt the water reaches the rim, in the worst way: the surface stays level and the volume the same. Null without
 * water. Round, oval and rectangular; a rectangle spills first over a corner.
 */
export const spillOf = (vessel: Vessel): Spill | null => {
  const before = known.get(vessel)
  if (before !== undefined) return before
  const water = waterOf(vessel).volume_mm3
  const { a, b } = innerSection(vessel, 1)
  let worst: Spill | null = null
  if (water > 0) {
    const round = vessel.plan !== 'rectangular' && Math.abs(a - b) < 1e-9
    const ways = round ? [0] : Array.from({ length: WAYS }, (_, i) => (90 * i) / (WAYS - 1))
    if (vessel.plan === 'rectangular') ways.push(Math.atan2(b, a) / DEGREE)
    for (const toward of ways) {
      const angle = angleToward(vessel, water, Math.cos(toward * DEGREE), Math.sin(toward * DEGREE))
      if (!worst || angle < worst.angle_deg) worst = { angle_deg: angle, toward_deg: toward }
    }
  }
  known.set(vessel, worst)
  return worst
}
