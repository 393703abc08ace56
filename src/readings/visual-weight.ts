import { type Grid, type Resolved, type ResolvedStem, VESSEL_PIXEL } from '../geometry/index.ts'
import type { Engine } from './engine.ts'
import { HALF_WAYS, SIDE, WAYS } from './extents.ts'
import type { Runs } from './runs.ts'
import { labOnce, partColour } from './tones.ts'

/** Lightness (CIELAB L, 0–100) at and under which a colour weighs most, and at and over which least. Ours. */
const DARK = 25
const LIGHT = 85
/**
 * A dark flower weighs as much as three light ones of its size (Indian Council of Agricultural Research, e-course Flower
 * Arrangement, Guidelines): the only number that was found. Which colours are light and dark, and the even run between,
 * are ours.
 */
const HEAVIEST = 3

/** How heavy a colour of this lightness (0–100) looks, 1 light … 3 dark. */
export const weightOfLightness = (lightness: number): number =>
  1 + (HEAVIEST - 1) * Math.min(1, Math.max(0, (LIGHT - lightness) / (LIGHT - DARK)))

/** How heavy a pixel of a stem's bloom (0) or leaf (1) looks. */
export const weightOf = (stem: ResolvedStem, kind: number): number =>
  weightOfLightness(labOnce(partColour(stem, kind))[0])

/** Where the weight lies, of blooms and leaves over the rim; mm. Bare stems and the vessel weigh nothing. */
export interface Weighed {
  /** Each way round: where its centre lies, right positive, and how far anything reaches from the axis; null where nothing shows. */
  ways: ({ x: number; z: number; reach: number } | null)[]
  /** The same from above at turn 0; null where nothing shows. */
  plan: { x: number; y: number; reach: number } | null
  /** Share of the weight over half of the height, all ways round. */
  aboveHalf: number
  /** Height of the highest bloom or leaf over the rim. */
  height: number
}

// By owner code, for one arrangement at a time; what is not in it weighs nothing.
const weights = new Float64Array(VESSEL_PIXEL + 1)
/** Sums over the plan: weight, weight × x, weight × y, greatest reach squared. An array, for numbers in it leave no litter. */
const plan = new Float64Array(4)

const setWeights = ({ stems }: Resolved): void => {
  for (let i = 0; i < stems.length; i++)
    for (let kind = 0; kind < 2; kind++) weights[i * 4 + kind + 1] = weightOf(stems[i]!, kind)
}

/** Sums of one elevation over the rim: weight, weight × pixels across, farthest reach in pixels, weight × mm up, weight over half. */
const way = new Float64Array(5)

/** Sums one elevation into `way`; `half` is half of the height of it all, mm. */
const sumWay = ({ inRow, code, from, length }: Runs, vesselCode: number, { mm, zeroRow }: Grid, half: number): void => {
  let up = 0
  let above = 0
  let weight = 0
  let across = 0
  let far = 0
  for (let r = Math.max(0, zeroRow); r < SIDE; r++) {
    let inThis = 0
    for (let k = r * SIDE, end = k + inRow[r]!; k < end; k++) {
      const w = code[k] === vesselCode ? 0 : weights[code[k]!]!
      if (w === 0) continue
      // A stretch of one owner, from its first pixel to its last, in half pixels from the axis: whole numbers are quick.
      const left = 2 * from[k]! - (SIDE - 1)
      const right = left + 2 * (length[k]! - 1)
      const mass = w * length[k]!
      inThis += mass
      across += mass * (left + right)
      if (-left > far) far = -left
      if (right > far) far = right
    }
    const z = (r + 0.5 - zeroRow) * mm
    weight += inThis
    up += inThis * z
    if (z > half) above += inThis
  }
  way[0] = weight
  way[1] = across / 4
  way[2] = far / 2
  way[3] = up
  way[4] = above
}

const weighPlan = (engine: Engine): Weighed['plan'] => {
  const { owner, depth } = engine.layers[HALF_WAYS]!
  const { mm, zeroRow } = engine.frame.plan
  plan.fill(0)
  for (let i = 0; i < owner.length; i++) {
    if (owner[i] === 0) continue
    const w = weights[owner[i]!]!
    // What hangs under the rim is left out, as it is from the side.
    if (w === 0 || depth[i]! <= 0) continue
    const r = (i / SIDE) | 0
    const px = i - r * SIDE - (SIDE - 1) / 2
    const py = r + 0.5 - zeroRow
    plan[0]! += w
    plan[1]! += w * px
    plan[2]! += w * py
    const reach = px * px + py * py
    if (reach > plan[3]!) plan[3] = reach
  }
  const weight = plan[0]!
  if (weight <= 0) return null
  return { x: (plan[1]! / weight) * mm, y: (plan[2]! / weight) * mm, reach: (Math.sqrt(plan[3]!) + 0.5) * mm }
}

/** Weighs what is seen from the twelve ways round and from above. Null when no bloom or leaf shows over the rim. */
export const weigh = (engine: Engine): Weighed | null => {
  setWeights(engine.resolved)
  const seen = engine.seen()
  const { mm } = engine.frame.grid
  let height = 0
  for (const r of engine.ready) height = Math.max(height, r.top)
  let all = 0
  let above = 0
  const ways: Weighed['ways'] = []
  for (let w = 0; w < WAYS; w++) {
    // Seen from behind, left and right change places.
    const right = w < HALF_WAYS ? 1 : -1
    sumWay(seen.runs[w]!, seen.vesselCode, engine.frame.grid, height / 2)
    const weight = way[0]!
    above += way[4]!
    all += weight
    ways.push(
      weight > 0 ? { x: ((right * way[1]!) / weight) * mm, z: way[3]! / weight, reach: (way[2]! + 0.5) * mm } : null,
    )
  }
  return all > 0 ? { ways, plan: weighPlan(engine), aboveHalf: above / all, height } : null
}
