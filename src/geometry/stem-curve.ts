import type { Point3, Stem, Vessel } from '../arrangement/index.ts'
import { bowDirection, hangingArc, type Plane, raisedArc } from './stem-arcs.ts'
import type { StemCurve } from './types.ts'
import { heightFraction, innerSection, outerSection, reachIn } from './vessel.ts'

const ABOVE = 24
const BELOW = 12
/** Tips between these heights over the rim pass from one arc to two, mm. Ours. */
const ARC_FROM = 40
const ARC_TO = -20
/** Air between a hanging stem and the wall, mm. Ours. */
const CLEARANCE = 4
/** Even a stem set outside the mouth is held by this much, mm. Ours. */
const LEAST_BELOW = 5

const smooth = (from: number, to: number, at: number): number => {
  const t = Math.min(1, Math.max(0, (at - from) / (to - from)))
  return t * t * (3 - 2 * t)
}

/** Distance along (ux, uy) from the mouth point to the outer edge of the rim; 0 when it stands outside already. */
const toRim = (vessel: Vessel, stem: Stem, ux: number, uy: number): number => {
  const rim = outerSection(vessel, 1)
  const reach = (s: number): number => reachIn(vessel, rim, stem.mouth[0] + s * ux, stem.mouth[1] + s * uy)
  if (reach(0) >= 1) return 0
  let [low, high] = [0, 2 * Math.hypot(rim.a, rim.b) + 1]
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2
    if (reach(middle) < 1) low = middle
    else high = middle
  }
  return low
}

/** A point below the rim and inside the wall is set just outside it, along the line from the axis. */
const outOfWall = (vessel: Vessel, p: Point3, weight: number): Point3 => {
  if (p[2] >= 0 || p[2] < -vessel.height || weight <= 0) return p
  const { a, b } = outerSection(vessel, heightFraction(vessel, p[2]))
  const reach = reachIn(vessel, { a: a + CLEARANCE, b: b + CLEARANCE }, p[0], p[1])
  if (reach >= 1 || reach < 1e-6) return p
  const k = 1 + (1 / reach - 1) * weight
  return [p[0] * k, p[1] * k, p[2]]
}

const below = (vessel: Vessel, start: Point3, along: Point3): Point3 => {
  const floor = -vessel.height + Math.min(vessel.wall, vessel.height / 2)
  const inside = (s: number): boolean => {
    const z = start[2] - s * along[2]
    if (z <= floor) return false
    const section = innerSection(vessel, Math.min(1, heightFraction(vessel, z)))
    return reachIn(vessel, section, start[0] - s * along[0], start[1] - s * along[1]) <= 1
  }
  let [low, high] = [0, -floor / Math.max(along[2], 0.05)]
  for (let i = 1; i <= 32; i++) {
    const s = (high * i) / 32
    if (inside(s)) low = s
    else {
      high = s
      break
    }
  }
  for (let i = 0; i < 20; i++) {
    const middle = (low + high) / 2
    if (inside(middle)) low = middle
    else high = middle
  }
  const s = Math.max(low, Math.min(LEAST_BELOW, vessel.height / 2))
  return [start[0] - s * along[0], start[1] - s * along[1], start[2] - s * along[2]]
}

const lengthOf = (points: Float32Array, from: number, to: number): number => {
  let sum = 0
  for (let i = from; i < to; i++) {
    const k = 3 * i
    sum += Math.hypot(points[k + 3]! - points[k]!, points[k + 4]! - points[k + 1]!, points[k + 5]! - points[k + 2]!)
  }
  return sum
}

/**
 * The line of a stem: 12 steps below the mouth, 24 above. It leaves the mouth steeper than it arrives; a head lower
 * than 40 mm is reached over the rim, a tip under the rim hangs outside the wall (a tip set inside the vessel is
 * reached straight). `bend` bows it level and square to the plane of mouth and tip by that fraction of its length.
 * Turned or mirrored (with the sign of bend) like the stem when the vessel is round. mm.
 */
export const stemCurve = (stem: Stem, vessel: Vessel): StemCurve => {
  const mouth: Point3 = [stem.mouth[0], stem.mouth[1], 0]
  const far = Math.hypot(stem.tip[0] - mouth[0], stem.tip[1] - mouth[1], stem.tip[2]) >= 1
  const tip: Point3 = far ? stem.tip : [mouth[0], mouth[1], 1]
  const [dx, dy] = [tip[0] - mouth[0], tip[1] - mouth[1]]
  const across = Math.hypot(dx, dy)
  const [ux, uy] = across > 1e-9 ? [dx / across, dy / across] : [0, 0]
  const plane: Plane = { across, up: tip[2], rim: toRim(vessel, stem, ux, uy) }
  // A tip over the mouth, or inside the vessel, has no rim to pass.
  const passes = across > plane.rim
  const hang = passes ? smooth(ARC_FROM, ARC_TO, tip[2]) : 0
  const one = hang < 1 ? raisedArc(plane, passes, ABOVE) : null
  const two = hang > 0 ? hangingArc(plane, ABOVE) : null

  const bow = bowDirection(stem, ux, uy)
  const points = new Float32Array(3 * (BELOW + ABOVE + 1))
  const chain: Point3[] = []
  let long = 0
  for (let i = 0; i <= ABOVE; i++) {
    const at = (arc: Float64Array | null, k: number): number => arc?.[2 * i + k] ?? 0
    const s = at(one, 0) * (1 - hang) + at(two, 0) * hang
    const z = at(one, 1) * (1 - hang) + at(two, 1) * hang
    chain.push([mouth[0] + s * ux, mouth[1] + s * uy, z])
    const before = chain[i - 1]
    if (before) long += Math.hypot(s * ux + mouth[0] - before[0], s * uy + mouth[1] - before[1], z - before[2])
  }
  for (let i = 0; i <= ABOVE; i++) {
    const t = i / ABOVE
    const off = stem.bend * long * 4 * t * (1 - t)
    const p = chain[i]!
    const bowed: Point3 = [p[0] + off * bow[0], p[1] + off * bow[1], p[2]]
    const clear = hang > 0 ? outOfWall(vessel, bowed, hang * Math.min(1, 6 * (1 - t))) : bowed
    points.set(i === ABOVE ? tip : clear, 3 * (BELOW + i))
  }
  const k = 3 * BELOW
  const first: Point3 = [points[k + 3]! - mouth[0], points[k + 4]! - mouth[1], points[k + 5]! - mouth[2]]
  const size = Math.hypot(...first)
  const rising = size > 1e-6 && first[2] > 0.05 * size
  const along: Point3 = rising ? [first[0] / size, first[1] / size, first[2] / size] : [0, 0, 1]
  const end = below(vessel, mouth, along)
  for (let i = 0; i < BELOW; i++) {
    const t = i / BELOW
    for (let c = 0; c < 3; c++) points[3 * i + c] = end[c]! + (mouth[c]! - end[c]!) * t
  }
  const above_mm = lengthOf(points, BELOW, BELOW + ABOVE)
  const below_mm = lengthOf(points, 0, BELOW)
  const middle = 3 * (BELOW + ABOVE / 2)
  return {
    points,
    mouthIndex: BELOW,
    above_mm,
    below_mm,
    cut_mm: above_mm + below_mm,
    middle: [points[middle]!, points[middle + 1]!, points[middle + 2]!],
  }
}
