import {
  PART_STRIDE,
  type Resolved,
  type ResolvedStem,
  type StemCurve,
  shownHalfWidth,
  widestSection,
} from '../../geometry/index.ts'
import { BARE, partsOf } from '../parts.ts'
import type { Place } from './types.ts'

/** Directions in which a footprint is known: even, 5° apart; a round one is right within 0.1 % (1 − cos 2.5°). Ours. */
const DIRECTIONS = 72
const COS = Array.from({ length: DIRECTIONS }, (_, i) => Math.cos((2 * Math.PI * i) / DIRECTIONS))
const SIN = Array.from({ length: DIRECTIONS }, (_, i) => Math.sin((2 * Math.PI * i) / DIRECTIONS))

/** How far plants and vessel reach over the table in each direction, mm from the vessel's axis. */
export type Footprint = ArrayLike<number>

// Everything that a stem's shape depends on comes with its curve: see geometry's resolve.ts.
const known = new WeakMap<StemCurve, Float64Array>()

/** One stem without its bare part: the outline of an ellipsoid from above is that of its level moments. */
const reachOfStem = (stem: ResolvedStem): Float64Array => {
  const before = known.get(stem.curve)
  if (before) return before
  const reach = new Float64Array(DIRECTIONS).fill(-Infinity)
  const parts = partsOf(stem)
  for (let o = 0; o < parts.length; o += PART_STRIDE) {
    if (parts[o + 1] === BARE) continue
    const rod = parts[o] === 1
    const [x, y] = [parts[o + 2]!, parts[o + 3]!]
    const [p, q, r] = [parts[o + 5]!, parts[o + 6]!, parts[o + 8]!]
    for (let i = 0; i < DIRECTIONS; i++) {
      const c = COS[i]!
      const s = SIN[i]!
      const middle = c * x + s * y
      const far = rod
        ? Math.max(middle, c * p + s * q) + r
        : middle + Math.sqrt(Math.max(0, c * c * p + 2 * c * s * q + s * s * r))
      if (far > reach[i]!) reach[i] = far
    }
  }
  known.set(stem.curve, reach)
  return reach
}

export const footprintOf = ({ stems, vessel }: Resolved): Footprint => {
  const widest = widestSection(vessel)
  const reach = Float64Array.from(COS, (c, i) => shownHalfWidth(vessel, widest, c, SIN[i]!))
  for (const stem of stems) {
    const own = reachOfStem(stem)
    for (let i = 0; i < DIRECTIONS; i++) if (own[i]! > reach[i]!) reach[i] = own[i]!
  }
  return reach
}

/**
 * From what hangs over the table (the convex outline of it) to a point, mm; negative under it. Right where a straight line
 * parts the two, a little short beyond a corner.
 */
export const clearOf = (footprint: Footprint, [x, y]: Place): number => {
  let clear = -Infinity
  for (let i = 0; i < DIRECTIONS; i++) clear = Math.max(clear, COS[i]! * x + SIN[i]! * y - footprint[i]!)
  return clear
}

/** How wide it is along the table's x, mm: twice the farther side, since it stands in the middle. */
export const widthAlong = (footprint: Footprint): number => 2 * Math.max(footprint[0]!, footprint[DIRECTIONS / 2]!)
