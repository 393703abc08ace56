import {
  PART_STRIDE,
  preparedParts,
  type Resolved,
  reachAlong,
  shownHalfWidth,
  standinsOf,
  widestSection,
} from '../../geometry/index.ts'
import { tipOf } from '../paint.ts'
import type { Place } from './types.ts'

/** Directions in which a footprint is known: even, 5° apart; a round one is right within 0.1 % (1 − cos 2.5°). Ours. */
const DIRECTIONS = 72
const COS = Array.from({ length: DIRECTIONS }, (_, i) => Math.cos((2 * Math.PI * i) / DIRECTIONS))
const SIN = Array.from({ length: DIRECTIONS }, (_, i) => Math.sin((2 * Math.PI * i) / DIRECTIONS))
/** In parts, the number of a bare stem. */
const BARE = 2

/** How far plants and vessel reach over the table in each direction, mm from the vessel's axis. */
export type Footprint = readonly number[]

export const footprintOf = ({ stems, vessel }: Resolved): Footprint => {
  const widest = widestSection(vessel)
  const reach = COS.map((c, i) => shownHalfWidth(vessel, widest, c, SIN[i]!))
  for (const stem of stems) {
    const parts = preparedParts(standinsOf(stem), tipOf(stem))
    for (let o = 0; o < parts.length; o += PART_STRIDE) {
      if (parts[o + 1] === BARE) continue
      for (let i = 0; i < DIRECTIONS; i++) {
        const far = reachAlong(parts, o, [COS[i]!, SIN[i]!, 0])[1]
        if (far > reach[i]!) reach[i] = far
      }
    }
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
