import type { Mechanics, Vessel } from '../arrangement/index.ts'
import {
  floorFraction,
  type HalfSection,
  heightFraction,
  innerSection,
  type Resolved,
  type ResolvedStem,
  reachIn,
  waterlineZ,
} from '../geometry/index.ts'
import { loadOf } from './weight.ts'

/** Why a stem would not stay as it is drawn. */
export type Loose = 'outside' | 'rim' | 'slips' | 'slides' | 'lifts' | 'shallow' | 'far' | 'pins'

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
/** A stem that comes to rest on rim, or in the corner of floor and far wall, within this stays about as drawn. Ours. */
const SLACK_DEG = 10
/** In a neck this full stems hold one another: none falls to the rim, slips or slides (see crowding). Ours. */
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
export const PINS = Math.sqrt(0.5)

/** What the cut end of a stem touches. */
export interface Touch {
  floor: boolean
  /** The wall on the side from which it leans away. */
  wall: boolean
}

/**
 * Does a stem stay that leans on one edge and touches floor or far wall with its end? A rigid rod at rest (any text on
 * statics). It presses on the edge, taken as smooth, square to itself; the end is pushed sideways by `thrust` and up by
 * `lift`, in shares of its weight; forces and moments about the edge give both. It lifts where `lift` would be less than
 * nothing: overhang · tan(lean) > depth. On the floor alone the thrust, on the wall alone the lift is all friction.
 */
export const propped = (lean_deg: number, depth: number, overhang: number, { floor, wall }: Touch): Loose | null => {
  const t = Math.tan(lean_deg * DEGREE)
  if (overhang < -depth * t - TOUCH) return 'rim'
  const thrust = (overhang / depth + t) / (1 + t * t)
  const lift = 1 - t * thrust
  if (lift < 0) return 'lifts'
  if (floor && wall) return null
  if (wall) return lift <= FRICTION * thrust ? null : 'slides'
  return Math.abs(thrust) <= FRICTION * lift ? null : 'slips'
}

/**
 * From a point along (ux, uy) to where the ray leaves a section for good, mm; where it never is inside, to where it comes
 * nearest to the axis.
 */
const exitFrom = (vessel: Vessel, section: HalfSection, x: number, y: number, ux: number, uy: number): number => {
  const reach = (s: number): number => reachIn(vessel, section, x + s * ux, y + s * uy)
  let low = Math.max(0, -(x * ux + y * uy))
  let high = low + 2 * Math.hypot(section.a, section.b)
  for (let i = 0; i < 24; i++) {
    const middle = (low + high) / 2
    if (reach(middle) < 1) low = middle
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
    const why = propped(lean_deg, depth, overhang, { floor: onFloor, wall })
    const full = vessel.mechanics === 'none' && crowding >= WEDGED
    if (vessel.mechanics === 'none') {
      const gap = exitFrom(vessel, innerSection(vessel, 1), px, py, ux, uy) * Math.max(0, 1 - crowding / WEDGED)
      if (Math.atan2(gap, depth) / DEGREE > SLACK_DEG) return 'rim'
    }
    if (why !== 'slips' && why !== 'slides') return why
    const foot = innerSection(vessel, Math.min(1, floor + 0.01))
    const corner = Math.atan2(exitFrom(vessel, foot, px, py, -ux, -uy), (1 - floor) * vessel.height) / DEGREE
    return full || Math.abs(corner - lean_deg) <= SLACK_DEG ? null : why
  }
  hold.loose = loose()
  return hold
}

/** How every stem is held, in their order. */
export const holdsOf = ({ stems, vessel }: Resolved, crowding: number): Hold[] =>
  stems.map((stem) => holdOf(stem, vessel, crowding))
