import type { Point3 } from '../arrangement/index.ts'
import type { Habit } from '../catalogue/index.ts'
import type { StemCurve } from './types.ts'

const unit = (x: number, y: number, z: number): Point3 => {
  const size = Math.hypot(x, y, z)
  return size > 1e-9 ? [x / size, y / size, z / size] : [0, 0, 1]
}

/** Direction in which the stem arrives at its tip, a unit vector. */
export const endTangent = ({ points }: StemCurve): Point3 => {
  const n = points.length
  // Two steps back, so that a bow's last bend does not throw the head about.
  return unit(points[n - 3]! - points[n - 9]!, points[n - 2]! - points[n - 8]!, points[n - 1]! - points[n - 7]!)
}

/** How much of [the stem's direction, outward from the axis, up] makes the facing of a head. Ours, from practice. */
type Blend = [along: number, out: number, up: number]
const HEAD: Blend = [0.6, 0.45, 0.2]
const FLAT_TOP: Blend = [0.6, 0.2, 0.7]
const NODDING: Blend = [0.5, 0.75, 0.05]
const ALONG: Blend = [1, 0, 0]

const BLENDS: Record<Habit, Blend> = {
  rosette: HEAD,
  quilled: HEAD,
  ray: HEAD,
  pincushion: HEAD,
  cup: HEAD,
  globe: FLAT_TOP,
  umbel: FLAT_TOP,
  dome: FLAT_TOP,
  trumpet: NODDING,
  spathe: NODDING,
  orchid: NODDING,
  spray: ALONG,
  spike: ALONG,
  'opposite-leaves': ALONG,
  'alternate-leaves': ALONG,
  trailing: ALONG,
  'broad-leaf': ALONG,
  fern: ALONG,
  plume: ALONG,
  blade: ALONG,
  cloud: ALONG,
  'berry-branch': ALONG,
}

/** From this distance on a head turns outward by half of its share, mm. Ours; keeps heads over the axis upright. */
const HALF_OUT = 40

/** Where a head faces, or a line or leaf points: a unit vector. Turns and mirrors with the stem. */
export const facingAxis = (habit: Habit, curve: StemCurve): Point3 => {
  const [along, out, up] = BLENDS[habit] ?? HEAD
  const t = endTangent(curve)
  if (out === 0 && up === 0) return t
  const n = curve.points.length
  const [x, y] = [curve.points[n - 3]!, curve.points[n - 2]!]
  const r = Math.hypot(x, y)
  // x / (r + HALF_OUT) is the outward direction times r / (r + HALF_OUT): smooth through the axis.
  const k = out / (r + HALF_OUT)
  return unit(along * t[0] + k * x, along * t[1] + k * y, along * t[2] + up)
}
