import type { Mechanics, Vessel } from '../arrangement/index.ts'
import {
  floorFraction,
  heightFraction,
  innerSection,
  type Resolved,
  type ResolvedStem,
  reachIn,
  waterlineZ,
} from '../geometry/index.ts'
import { loadOf } from './weight.ts'

/** Why a stem would not stay as it is drawn. */
export type Loose = 'outside' | 'rim' | 'slips' | 'lifts' | 'shallow' | 'far' | 'pins'

/** How a stem is held. Degrees and mm. */
export interface Hold {
  /** Lean at the mouth, from the vertical. */
  lean_deg: number
  /** How deep its cut end stands under the rim. */
  depth_mm: number
  /** How far its centre of mass lies beyond its crossing, the way it leans; less than 0: behind it. */
  overhang_mm: number
  loose: Loose | null
  /** Its cut end is out of the water. */
  dry: boolean
}

const DEGREE = Math.PI / 180
/** A wet stem on a glazed floor, from memory: tables give 0.2–0.4 for wet wood on smooth stone. */
const FRICTION = 0.3
/** A stem that is free to fall this much farther before it meets the rim stays about as drawn. Ours. */
const SLACK_DEG = 10
/** A neck this full holds its own stems up (see crowding). Ours. */
const WEDGED = 0.5
/** What ends within this of wall or floor touches it, mm; what is thinner than a stem. Ours. */
const TOUCH = 3

interface Grip {
  /** The most lean that it holds. */
  lean_deg: number
  /** The least depth: mm, or this share of the inner height where that is less. */
  depth: readonly [mm: number, share: number]
  /** Overhang over depth, at most. */
  leverage: number
}

/**
 * What grips a stem by itself. Foam: an inch of it or more (common practice). The other figures are ours, set by what is
 * commonly built: crumpled netting holds at two layers, foam at any lean, pins up to about 60°.
 */
const GRIPS: Partial<Record<Mechanics, Grip>> = {
  netting: { lean_deg: 75, depth: [30, 0.4], leverage: 3 },
  foam: { lean_deg: 100, depth: [25, 0.5], leverage: 5 },
  'pin-holder': { lean_deg: 60, depth: [10, 0.5], leverage: 3 },
}
/** Pins cover half of the floor (as their weight is reckoned): this far out, as a share. */
const PINS = Math.sqrt(0.5)

/**
 * Does a stem stay that leans on one edge and stands on the floor or against the far wall? A rigid rod at rest: it presses on
 * the edge square to itself and is pushed up by the floor, or sideways by the wall (any text on statics). Its end lifts off
 * the wall when the overhang is more than depth / tan(lean); on a floor alone the thrust, (overhang / depth + tan lean) ·
 * cos² lean of its weight, must not pass what friction gives.
 */
export const propped = (lean_deg: number, depth: number, overhang: number, wall: boolean): Loose | null => {
  const t = Math.tan(lean_deg * DEGREE)
  if (overhang < -depth * t - TOUCH) return 'rim'
  if (wall) return overhang * t <= depth ? null : 'lifts'
  const thrust = (overhang / depth + t) / (1 + t * t)
  const floor = 1 - t * thrust
  return Math.abs(thrust) <= FRICTION * floor ? null : floor <= 0 ? 'lifts' : 'slips'
}

/** From a point in the mouth outwards, along (ux, uy), to the inner edge of the rim, mm. */
const gapTo = (vessel: Vessel, x: number, y: number, ux: number, uy: number): number => {
  const rim = innerSection(vessel, 1)
  let [low, high] = [0, 2 * Math.hypot(rim.a, rim.b)]
  for (let i = 0; i < 24; i++) {
    const middle = (low + high) / 2
    if (reachIn(vessel, rim, x + middle * ux, y + middle * uy) < 1) low = middle
    else high = middle
  }
  return low
}

/** @param crowding how full the neck is, 1 where nothing more fits */
export const holdOf = (stem: ResolvedStem, vessel: Vessel, crowding: number): Hold => {
  const { points, mouthIndex } = stem.curve
  const at = (i: number, c: number): number => points[3 * i + c]!
  const [px, py] = [at(mouthIndex, 0), at(mouthIndex, 1)]
  const [ex, ey, ez] = [at(0, 0), at(0, 1), at(0, 2)]
  const load = loadOf(stem)
  const depth = Math.max(1e-6, -ez)
  const side = Math.hypot(px - ex, py - ey)
  const lean_deg = Math.atan2(side, depth) / DEGREE
  const [ox, oy] = [load.centre[0] - px, load.centre[1] - py]
  // One that stands upright goes where its weight lies.
  const over = Math.hypot(ox, oy)
  const upright = side < 0.02 * depth
  const [ux, uy] = !upright ? [(px - ex) / side, (py - ey) / side] : over > 1e-9 ? [ox / over, oy / over] : [1, 0]
  const overhang = ox * ux + oy * uy
  const hold: Hold = {
    lean_deg,
    depth_mm: depth,
    overhang_mm: overhang,
    loose: null,
    dry: vessel.mechanics !== 'foam' && ez > waterlineZ(vessel) - TOUCH,
  }
  const loose = (): Loose | null => {
    if (reachIn(vessel, innerSection(vessel, 1), px, py) > 1) return 'outside'
    const grip = GRIPS[vessel.mechanics]
    const floor = floorFraction(vessel)
    const onFloor = heightFraction(vessel, ez) * vessel.height <= floor * vessel.height + TOUCH
    if (grip) {
      const inner = Math.max(0, vessel.height - vessel.wall)
      if (depth < Math.min(grip.depth[0], grip.depth[1] * inner)) return 'shallow'
      const foot = innerSection(vessel, Math.min(1, floor + 0.01))
      if (vessel.mechanics === 'pin-holder' && !(onFloor && reachIn(vessel, foot, ex, ey) <= PINS)) return 'pins'
      return lean_deg > grip.lean_deg || overhang > grip.leverage * depth ? 'far' : null
    }
    const section = innerSection(vessel, Math.max(floor + 1e-6, Math.min(1, heightFraction(vessel, ez))))
    const edge = TOUCH / Math.max(1, Math.min(section.a, section.b))
    const wall = reachIn(vessel, section, ex, ey) >= 1 - edge
    if (vessel.mechanics === 'none') {
      const gap = gapTo(vessel, px, py, ux, uy) * Math.max(0, 1 - crowding / WEDGED)
      if (Math.atan2(gap, depth) / DEGREE > SLACK_DEG) return 'rim'
    }
    return propped(lean_deg, depth, overhang, wall)
  }
  hold.loose = loose()
  return hold
}

/** How every stem is held, in their order. */
export const holdsOf = ({ stems, vessel }: Resolved, crowding: number): Hold[] =>
  stems.map((stem) => holdOf(stem, vessel, crowding))
