import type { Point3 } from '../arrangement/index.ts'
import {
  heightFraction,
  innerSection,
  PART_STRIDE,
  type ResolvedStem,
  reachAlong,
  reachIn,
  waterlineZ,
} from '../geometry/index.ts'
import { openingFor, openingOf, sharing, thicknessOf } from './crowding.ts'
import type { Engine } from './engine.ts'
import { type Hold, holdsOf } from './held-stems.ts'

export interface Mechanical {
  /** Area of the smallest opening that the stems pass, over that of the neck: 1 where nothing more fits. */
  crowding: number
  needed_mm: number
  opening_mm: number
  holds: Hold[]
  /** Stems with bloom or leaf under the waterline. */
  under: boolean[]
  /** Stems that cross the mouth where another one does. */
  shares: boolean[]
}

/** Nothing that touches the water by less than this counts as under it, mm. Ours. */
const SPLASH = 3

const UP: Point3 = [0, 0, 1]

const isUnder = (engine: Engine, place: number, level: number): boolean => {
  const { vessel } = engine.resolved
  const { parts, low } = engine.ready[place]!
  if (low > level - SPLASH) return false
  for (let o = 0; o < parts.length; o += PART_STRIDE) {
    if (parts[o + 1] === 2) continue
    const z = reachAlong(parts, o, UP)[0]
    if (z > level - SPLASH) continue
    const section = innerSection(vessel, Math.max(0, heightFraction(vessel, z)))
    if (reachIn(vessel, section, parts[o + 2]!, parts[o + 3]!) <= 1) return true
  }
  return false
}

/** Measures how stems are held and watered. The vessel must have an opening. */
export const measureMechanics = (engine: Engine): Mechanical => {
  const { stems, vessel } = engine.resolved
  const needed_mm = openingFor(stems.map(thicknessOf))
  const opening_mm = openingOf(vessel)
  const crowding = (needed_mm / opening_mm) ** 2
  const level = waterlineZ(vessel)
  return {
    crowding,
    needed_mm,
    opening_mm,
    holds: holdsOf(engine.resolved, crowding),
    under: stems.map((_, i) => vessel.waterFill > 0 && isUnder(engine, i, level)),
    shares: sharing(stems),
  }
}

/** The stems of which something is so. */
export const stemsWhere = (engine: Engine, is: (place: number) => boolean): ResolvedStem[] =>
  engine.resolved.stems.filter((_, i) => is(i))
