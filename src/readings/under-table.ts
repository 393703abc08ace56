import type { Vessel } from '../arrangement/index.ts'
import { PART_STRIDE } from '../geometry/index.ts'
import type { Ready } from './extents.ts'

/** What dips into the cloth by less than this lies on the table, mm. Ours. */
export const LIES = 5
/** One that goes so much farther counts whole, one that goes less in part, mm. Ours. */
const WHOLE = 25

/** A stem made ready belongs to one vessel, and so to one table top. */
const known = new WeakMap<Ready, number>()

/**
 * How far a stem goes under the table top on which its vessel stands, mm; 0 where it does not. Blooms by their lower edge; a
 * leaf by its middle and a stalk by its axis, since a trail lies flat on a table.
 */
export const underTable_mm = (ready: Ready, { height }: Vessel): number => {
  const before = known.get(ready)
  if (before !== undefined) return before
  const { parts, low } = ready
  let lowest = 0
  if (low < -height)
    for (let o = 0; o < parts.length; o += PART_STRIDE) {
      const edge = parts[o + 1] === 0
      const z =
        parts[o] === 1
          ? Math.min(parts[o + 4]!, parts[o + 7]!) - (edge ? parts[o + 8]! : 0)
          : parts[o + 4]! - (edge ? Math.sqrt(Math.max(0, parts[o + 10]!)) : 0)
      lowest = Math.min(lowest, z)
    }
  const under = Math.max(0, -height - lowest)
  known.set(ready, under)
  return under
}

/** Does a stem that goes so far under run through the table, and not only lie on it? 0 no … 1 wholly; rises smoothly. */
export const throughTable = (under_mm: number): number => {
  const t = Math.min(1, Math.max(0, (under_mm - LIES) / WHOLE))
  return t * t * (3 - 2 * t)
}
