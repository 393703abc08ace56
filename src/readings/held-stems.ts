import type { Mechanics, Vessel } from '../arrangement/index.ts'
import {
  floorFraction,
  type HalfSection,
  heightFraction,
  innerSection,
  type Resolved,
  type ResolvedStem,
  reachIn,
  type StemCurve,
  waterlineZ,
} from '../geometry/index.ts'
import { neckOf, thicknessOf } from './crowding.ts'
import { loadOf } from './weight.ts'

/** Why a stem would not stay as it is drawn. */
export type Loose = 'neck' | 'outside' | 'rim' | 'slips' | 'slides' | 'lifts' | 'shallow' | 'far' | 'pins'

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
 * From a point along (ux, uy) to where the ray leaves a section, mm; where it misses the section, to where it comes nearest to
 * its middle. Rectangle: the nearer of the two sides ahead; ellipse: the greater root.
 */
const exitFrom = (vessel: Vessel, { a, b }: HalfSection, x: number, y: number, ux: number, uy: number): number => {
  if (vessel.plan === 'rectangular') {
    const ahead = (half: number, at: number, u: number): number =>
      Math.abs(u) < 1e-9 ? Number.POSITIVE_INFINITY : (Math.sign(u) * half - at) / u
    return Math.max(0, Math.min(ahead(a, x, ux), ahead(b, y, uy)))
  }
  const [aa, bb] = [Math.max(1e-12, a * a), Math.max(1e-12, b * b)]
  const square = (ux * ux) / aa + (uy * uy) / bb
  const middle = -((x * ux) / aa + (y * uy) / bb) / square
  const root = middle * middle - ((x * x) / aa + (y * y) / bb - 1) / square
  return Math.max(0, middle + Math.sqrt(Math.max(0, root)))
}

/** What is known of a stem whatever its neighbours are. */
interface Rest {
  hold: Hold
  /** How far it would fall before it meets the rim, mm; 0 where something grips it. */
  gap_mm: number
  /** It would move, but come to rest in the corner of floor and far wall about as drawn. */
  settles: boolean
}
const known = new WeakMap<StemCurve, Rest>()

const restOf = (stem: ResolvedStem, vessel: Vessel): Rest => {
  const before = known.get(stem.curve)
  if (before) return before
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
  const rim = innerSection(vessel, 1)
  const floor = floorFraction(vessel)
  const foot = innerSection(vessel, Math.min(1, floor + 0.01))
  const onFloor = heightFraction(vessel, ez) * vessel.height <= floor * vessel.height + TOUCH
  const grip = GRIPS[vessel.mechanics]

  const gripped = ({ lean_deg: most, depth: [mm, share], leverage }: Grip): Loose | null => {
    if (depth < Math.min(mm, share * Math.max(0, vessel.height - vessel.wall))) return 'shallow'
    if (vessel.mechanics === 'pin-holder' && !(onFloor && reachIn(vessel, foot, ex, ey) <= PINS)) return 'pins'
    return lean_deg > most || overhang > leverage * depth ? 'far' : null
  }
  const leaning = (): Loose | null => {
    const section = innerSection(vessel, Math.max(floor + 1e-6, Math.min(1, heightFraction(vessel, ez))))
    const edge = TOUCH / Math.max(1, Math.min(section.a, section.b))
    const wall = reachIn(vessel, section, ex, ey) >= 1 - edge
    return propped(lean_deg, depth, overhang, { floor: onFloor, wall })
  }
  const outside = reachIn(vessel, rim, px, py) > 1
  const neck = neckOf(vessel)
  // A stem is as good as round and does not give: what is thicker than the neck does not go in, whatever is at the rim.
  const thick = thicknessOf(stem) > 2 * Math.min(neck.a, neck.b)
  const loose = thick ? 'neck' : outside ? 'outside' : grip ? gripped(grip) : leaning()
  const corner = (): number =>
    Math.atan2(exitFrom(vessel, foot, px, py, -ux, -uy), (1 - floor) * vessel.height) / DEGREE
  const moves = loose === 'slips' || loose === 'slides'
  const rest: Rest = {
    hold: {
      lean_deg,
      depth_mm: depth,
      overhang_mm: overhang,
      loose,
      dry: vessel.mechanics !== 'foam' && ez > waterlineZ(vessel) - TOUCH,
    },
    gap_mm: vessel.mechanics === 'none' && !outside && !thick ? exitFrom(vessel, rim, px, py, ux, uy) : 0,
    settles: moves && Math.abs(corner() - lean_deg) <= SLACK_DEG,
  }
  known.set(stem.curve, rest)
  return rest
}

/** @param crowding how full the neck is, 1 where nothing more fits */
export const holdOf = (stem: ResolvedStem, vessel: Vessel, crowding: number): Hold => {
  const { hold, gap_mm, settles } = restOf(stem, vessel)
  const gap = gap_mm * Math.max(0, 1 - crowding / WEDGED)
  if (gap > 0 && Math.atan2(gap, hold.depth_mm) / DEGREE > SLACK_DEG) return { ...hold, loose: 'rim' }
  const wedged = vessel.mechanics === 'none' && crowding >= WEDGED
  const moves = hold.loose === 'slips' || hold.loose === 'slides'
  return moves && (settles || wedged) ? { ...hold, loose: null } : hold
}

/** How every stem is held, in their order. */
export const holdsOf = ({ stems, vessel }: Resolved, crowding: number): Hold[] =>
  stems.map((stem) => holdOf(stem, vessel, crowding))
