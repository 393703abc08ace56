import type { Vessel } from '../arrangement/index.ts'
import { heightFraction, innerSection, PART_STRIDE, type ResolvedStem, reachIn, waterlineZ } from '../geometry/index.ts'
import { openingFor, openingOf, sharing, thicknesses } from './crowding.ts'
import type { Engine } from './engine.ts'
import type { Ready } from './extents.ts'
import { type Hold, holdsOf } from './held-stems.ts'
import { underTable_mm } from './under-table.ts'

export interface Mechanical {
  /** Area of the smallest opening that the stems pass, over that of the neck: 1 where nothing more fits. */
  crowding: number
  needed_mm: number
  opening_mm: number
  holds: Hold[]
  /** Stems with bloom or leaf under the waterline. */
  under: boolean[]
  /** How far each stem goes under the table top, mm. */
  below_mm: number[]
  /** Stems that cross the mouth where another one does. */
  shares: boolean[]
}

/** Nothing that touches the water by less than this counts as under it, mm. Ours. */
const SPLASH = 3

/** The lowest point of a part, mm over the rim (see geometry/parts.ts). */
const lowest = (parts: Float64Array, o: number): number =>
  parts[o] === 1
    ? Math.min(parts[o + 4]!, parts[o + 7]!) - parts[o + 8]!
    : parts[o + 4]! - Math.sqrt(Math.max(0, parts[o + 10]!))

/** A stem made ready belongs to one vessel and its water. */
const known = new WeakMap<Ready, boolean>()

const isUnder = (ready: Ready, vessel: Vessel, level: number): boolean => {
  const before = known.get(ready)
  if (before !== undefined) return before
  const { parts, low } = ready
  let under = false
  for (let o = 0; o < parts.length && !under && low <= level - SPLASH; o += PART_STRIDE) {
    if (parts[o + 1] === 2) continue
    const z = lowest(parts, o)
    if (z > level - SPLASH) continue
    const section = innerSection(vessel, Math.max(0, heightFraction(vessel, z)))
    under = reachIn(vessel, section, parts[o + 2]!, parts[o + 3]!) <= 1
  }
  known.set(ready, under)
  return under
}

/** Measures how stems are held and watered; null where there are none, or the walls close the mouth. */
export const measureMechanics = (engine: Engine): Mechanical | null => {
  const { stems, vessel } = engine.resolved
  const opening_mm = openingOf(vessel)
  if (stems.length === 0 || opening_mm <= 0) return null
  const needed_mm = openingFor(thicknesses(stems))
  const crowding = (needed_mm / opening_mm) ** 2
  const level = waterlineZ(vessel)
  return {
    crowding,
    needed_mm,
    opening_mm,
    holds: holdsOf(engine.resolved, crowding),
    under: stems.map((_, i) => vessel.waterFill > 0 && isUnder(engine.ready[i]!, vessel, level)),
    below_mm: engine.ready.map((ready) => underTable_mm(ready, vessel)),
    shares: sharing(stems),
  }
}

/** The stems of which something is so. */
export const stemsWhere = (engine: Engine, is: (place: number) => boolean): ResolvedStem[] =>
  engine.resolved.stems.filter((_, i) => is(i))
