import type { Vessel } from '../arrangement/index.ts'
import {
  cosSin,
  heightFraction,
  innerSection,
  outerSection,
  reachIn,
  shownHalfWidth,
  waterlineZ,
} from '../geometry/index.ts'
import { levelIndex, tanInside, WATER_INDEX } from './optics.ts'
import type { ViewAngle } from './types.ts'

/**
 * How water in clear glass shows what stands in it, seen from afar. Simplified: the wall is thin, so that by itself it turns no ray;
 * it is upright where the thing stands; an oval is a circle drawn out; what is hidden outside the water stays hidden.
 */
export interface Lens {
  vessel: Vessel
  /** Of turn and pitch. */
  turned: [cos: number, sin: number]
  pitched: [cos: number, sin: number]
  /** z of the water's surface, mm. */
  surface: number
  /** The index as seen from above. */
  index: number
  /** How steeply a ray falls, mm a mm of level way, once it is through the wall, and how far it goes on level, mm a mm down, once it
   * is through the surface. */
  fall: number
  drift: number
}

/** Steeper than this the walls show nothing that the surface does not, cosine of the pitch. Ours: 85°. */
const LEAST_COS = 0.087

/** The lens that the water in a glass vessel is, or null where nothing is shifted: no glass, no water. */
export const waterLens = (vessel: Vessel, angle: ViewAngle): Lens | null => {
  const surface = waterlineZ(vessel)
  if (vessel.material !== 'glass' || surface <= -vessel.height + vessel.wall) return null
  const pitched = cosSin(angle.pitch)
  if (pitched[0] < LEAST_COS || pitched[1] < 0) return null
  return {
    vessel,
    turned: cosSin(angle.turn),
    pitched,
    surface,
    index: levelIndex(WATER_INDEX, pitched[0]),
    fall: tanInside(pitched[1], WATER_INDEX),
    drift: tanInside(pitched[0], WATER_INDEX),
  }
}

/** Up to here what a ray meets moves outward with it, whatever stands in the circle; beyond, by small steps. Shares of the radius. */
const SURE = 0.8
const HALVINGS = 12
const STEP = 0.01

/** Where a ray that meets a round wall of radius 1 at u crosses the level `away` from the axis: Snell's law. */
const meets = (u: number, away: number, index: number): number => {
  const inside = u / index
  const [outer, inner] = [Math.sqrt(1 - u * u), Math.sqrt(1 - inside * inside)]
  // It is turned by asin u − asin (u / n), and passes the axis at u / n.
  return (inside - away * (u * inner - outer * inside)) / (outer * inner + u * inside)
}

/**
 * Where on a round wall of radius 1 one sees what stands in the water behind it.
 * @param across from the axis, 0 or more, @param away beyond it, negative before it; both of the radius
 * @returns 0 … 1 from the middle; NaN where it is not seen: near the sides of the far wall
 */
export const seenOnRound = (across: number, away: number, index: number): number => {
  let [low, high] = [0, SURE]
  if (meets(SURE, away, index) < across) {
    do {
      low = high
      high += STEP
      if (high >= 1) return Number.NaN
    } while (meets(high, away, index) < across)
  }
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + high) / 2
    if (meets(middle, away, index) < across) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** Where a thing in the water is seen, [right, up] mm for each way that light may come: four sides, surface. NaN: not that way. */
export type Seen = Float64Array
export const WAYS = 5
const SURFACE = 4
export const nothingSeen = (): Seen => new Float64Array(2 * WAYS)

/** Notes where a ray through the wall comes from, if it enters under water: from (right, away), after so long a way. */
const note = (lens: Lens, seen: Seen, side: number, right: number, away: number, way: number, z: number): void => {
  const entry = z + way * lens.fall
  if (entry > lens.surface) return
  seen[2 * side] = right
  seen[2 * side + 1] = entry * lens.pitched[0] + away * lens.pitched[1]
}

const throughRound = (lens: Lens, seen: Seen, X: number, Y: number, z: number): void => {
  const [c, s] = lens.turned
  const section = outerSection(lens.vessel, heightFraction(lens.vessel, z))
  const wide = shownHalfWidth(lens.vessel, section, c, s)
  const deep = shownHalfWidth(lens.vessel, section, -s, c)
  const u = seenOnRound(Math.abs(X) / wide, Y / deep, lens.index)
  if (Number.isNaN(u)) return
  const away = -deep * Math.sqrt(1 - u * u)
  note(lens, seen, 0, Math.sign(X) * u * wide, away, Y - away, z)
}

/** A side seen more from the edge than this mirrors the room more than it shows, cosine. Ours. */
const LEAST_FACING = 0.3

/** Through each flat side that faces the eye. */
const throughSides = (lens: Lens, seen: Seen, X: number, Y: number, z: number): void => {
  const [c, s] = lens.turned
  const { a, b } = outerSection(lens.vessel, heightFraction(lens.vessel, z))
  const [x, y] = [X * c + Y * s, Y * c - X * s]
  for (let side = 0; side < 4; side++) {
    // Outward normal (nx, ny), along the side (−ny, nx); the eye's rays go along (s, c).
    const [nx, ny] = [side === 0 ? 1 : side === 2 ? -1 : 0, side === 1 ? 1 : side === 3 ? -1 : 0]
    if (-(s * nx + c * ny) < LEAST_FACING) continue
    const [half, long] = nx !== 0 ? [a, b] : [b, a]
    const behind = half - (x * nx + y * ny)
    const slant = c * nx - s * ny
    const sin = slant / lens.index
    const cos = Math.sqrt(1 - sin * sin)
    const along = y * nx - x * ny - (behind * sin) / cos
    if (Math.abs(along) > long) continue
    const [px, py] = [half * nx - along * ny, half * ny + along * nx]
    note(lens, seen, side, px * c - py * s, px * s + py * c, behind / cos, z)
  }
}

/** Is a point (right, away, z) in the water? */
export const isInWater = ({ vessel, turned: [c, s], surface }: Lens, X: number, Y: number, z: number): boolean =>
  z < surface && reachIn(vessel, outerSection(vessel, heightFraction(vessel, z)), X * c + Y * s, Y * c - X * s) <= 1

/** All the places where one sees a point that is in the water: through the wall, and from above through the surface. */
export const seenInWater = (lens: Lens, X: number, Y: number, z: number, seen: Seen): void => {
  const { vessel, turned, pitched, surface } = lens
  seen.fill(Number.NaN)
  if (vessel.plan === 'rectangular') throughSides(lens, seen, X, Y, z)
  else throughRound(lens, seen, X, Y, z)
  if (pitched[1] < 0.02) return
  const [c, s] = turned
  const entry = Y - (surface - z) * lens.drift
  const section = innerSection(vessel, heightFraction(vessel, surface))
  if (reachIn(vessel, section, X * c + entry * s, entry * c - X * s) > 1) return
  seen[2 * SURFACE] = X
  seen[2 * SURFACE + 1] = surface * pitched[0] + entry * pitched[1]
}
