import type { Vessel } from '../arrangement/index.ts'
import {
  areaOf,
  floorFraction,
  type HalfSection,
  heightFraction,
  innerSection,
  integrateHeights,
  outerSection,
  shownHalfWidth,
  waterlineZ,
} from './vessel.ts'

/** A body about the axis of the vessel: how large, and how high over the table its centre lies. */
export interface Body {
  volume_mm3: number
  /** mm over the table; 0 for an empty body. */
  centre_mm: number
}

const bodyOf = (vessel: Vessel, from: number, to: number, area: (f: number) => number): Body => {
  if (to <= from) return { volume_mm3: 0, centre_mm: 0 }
  const volume = integrateHeights(vessel, from, to, area)
  if (!(volume > 0)) return { volume_mm3: 0, centre_mm: 0 }
  const moment = integrateHeights(vessel, from, to, (f) => f * vessel.height * area(f))
  return { volume_mm3: volume, centre_mm: moment / volume }
}

/** The hollow up to a height (fraction), seen as filled. */
export const hollowTo = (vessel: Vessel, top: number): Body => {
  const floor = floorFraction(vessel)
  return bodyOf(vessel, floor, top, (f) => areaOf(vessel, innerSection(vessel, Math.max(f, floor))))
}

/** Walls and floor: all within the outside, less the hollow. */
export const shellOf = (vessel: Vessel): Body => {
  const all = bodyOf(vessel, 0, 1, (f) => areaOf(vessel, outerSection(vessel, f)))
  const hollow = hollowTo(vessel, 1)
  const volume = Math.max(0, all.volume_mm3 - hollow.volume_mm3)
  if (volume === 0) return { volume_mm3: 0, centre_mm: 0 }
  return {
    volume_mm3: volume,
    centre_mm: (all.volume_mm3 * all.centre_mm - hollow.volume_mm3 * hollow.centre_mm) / volume,
  }
}

/** The water, stems not taken off. */
export const waterOf = (vessel: Vessel): Body => hollowTo(vessel, heightFraction(vessel, waterlineZ(vessel)))

/**
 * Second moment of the water's surface about its middle, along (c, s), mm⁴: what makes water that can run less steady.
 * π a³ b / 4 for an ellipse, 4 a³ b / 3 for a rectangle, along a (any text on mechanics).
 */
export const surfaceMoment_mm4 = (vessel: Vessel, c: number, s: number): number => {
  const { a, b } = innerSection(vessel, heightFraction(vessel, waterlineZ(vessel)))
  const k = vessel.plan === 'rectangular' ? 4 / 3 : Math.PI / 4
  return k * a * b * (a * a * c * c + b * b * s * s)
}

const square = (v: number): number => (v > 0 ? v * v : 0)

/** Area of that part of a section which lies at least `from` mm along (c, s) from its middle, mm². */
export const areaBeyond = (vessel: Vessel, { a, b }: HalfSection, c: number, s: number, from: number): number => {
  const all = areaOf(vessel, { a, b })
  const reach = shownHalfWidth(vessel, { a, b }, c, s)
  if (from >= reach) return 0
  if (from <= -reach) return all
  if (vessel.plan !== 'rectangular') {
    // An ellipse is a circle drawn out: the same share of it is cut off.
    const q = from / reach
    return (all / Math.PI) * (Math.acos(q) - q * Math.sqrt(1 - q * q))
  }
  const [p, q] = [a * Math.abs(c), b * Math.abs(s)]
  const [long, short] = p > q ? [p, q] : [q, p]
  if (short < 1e-9 * long) return (all * (long - from)) / (2 * long)
  // The share of a sum of two even spreads, ±p and ±q, over `from`: differences of squares.
  const share =
    (square(p + q - from) - square(p - q - from) - square(q - p - from) + square(-p - q - from)) / (8 * p * q)
  return all * Math.min(1, Math.max(0, share))
}
