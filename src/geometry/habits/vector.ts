import type { Point3 } from '../../arrangement/index.ts'

export const TAU = 2 * Math.PI
export const DEG = Math.PI / 180
/** The golden angle: the spiral in which most heads and stems set their parts. */
export const GOLDEN = 137.508 * DEG

export const add = (a: Point3, b: Point3): Point3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
export const sub = (a: Point3, b: Point3): Point3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
export const scale = (a: Point3, k: number): Point3 => [a[0] * k, a[1] * k, a[2] * k]
/** a + k b */
export const along = (a: Point3, b: Point3, k: number): Point3 => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]]
export const dot = (a: Point3, b: Point3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
export const cross = (a: Point3, b: Point3): Point3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
/** Unit vector; `otherwise` when there is no length to divide by. */
export const unit = (a: Point3, otherwise: Point3 = [0, 0, 1]): Point3 => {
  const l = Math.hypot(a[0], a[1], a[2])
  return l > 1e-9 ? [a[0] / l, a[1] / l, a[2] / l] : otherwise
}
export const mix = (a: Point3, b: Point3, t: number): Point3 => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
]
export const lerp = (a: number, b: number, t: number): number => a + (b - a) * t
export const clamp = (x: number, least: number, most: number): number => Math.max(least, Math.min(most, x))
/** 0 below `from`, 1 above `to`, smooth between. */
export const smooth = (from: number, to: number, x: number): number => {
  const t = clamp((x - from) / (to - from), 0, 1)
  return t * t * (3 - 2 * t)
}

/** Three bows of a quadratic curve through a, toward b, to c; `steps` + 1 points. */
export const bow = (a: Point3, b: Point3, c: Point3, steps: number): Point3[] =>
  Array.from({ length: steps + 1 }, (_, i) => mix(mix(a, b, i / steps), mix(b, c, i / steps), i / steps))

export type Random = () => number
/** Even numbers in 0 … 1 from a seed (mulberry32, public domain). Same seed, same numbers. */
export const randomFrom = (seed: number): Random => {
  let state = (Math.imul(Math.floor(seed) | 0, 2654435761) ^ 0x9e3779b9) >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}
/** Around 1, by at most ± `by`. */
export const about = (random: Random, by: number): number => 1 + by * (2 * random() - 1)

/** A place and three unit directions at right angles; w is where a head faces or a stem grows. */
export interface Frame {
  o: Point3
  u: Point3
  v: Point3
  w: Point3
}

/** The frame at `o` looking along `w`, its u as near to `side` as it can be, turned by `roll` about w. */
export const frameOf = (o: Point3, w: Point3, side: Point3, roll = 0): Frame => {
  const k = dot(side, w)
  let u: Point3 = [side[0] - k * w[0], side[1] - k * w[1], side[2] - k * w[2]]
  if (Math.hypot(u[0], u[1], u[2]) < 1e-6) u = Math.abs(w[2]) < 0.9 ? cross([0, 0, 1], w) : cross([0, 1, 0], w)
  u = unit(u)
  const v = cross(w, u)
  if (roll === 0) return { o, u, v, w }
  const c = Math.cos(roll)
  const s = Math.sin(roll)
  return { o, u: along(scale(u, c), v, s), v: along(scale(v, c), u, -s), w }
}

export const at = ({ o, u, v, w }: Frame, x: number, y: number, z: number): Point3 => [
  o[0] + u[0] * x + v[0] * y + w[0] * z,
  o[1] + u[1] * x + v[1] * y + w[1] * z,
  o[2] + u[2] * x + v[2] * y + w[2] * z,
]
export const turned = ({ u, v, w }: Frame, x: number, y: number, z: number): Point3 => [
  u[0] * x + v[0] * y + w[0] * z,
  u[1] * x + v[1] * y + w[1] * z,
  u[2] * x + v[2] * y + w[2] * z,
]

/** A frame at a local place of another, looking along a local direction. */
export const frameIn = (f: Frame, place: Point3, direction: Point3, roll = 0): Frame => {
  const w = unit(turned(f, direction[0], direction[1], direction[2]), f.w)
  // Across both axes, so that a part on the side of a head stands upright in it.
  const side = cross(f.w, w)
  const clear = Math.hypot(side[0], side[1], side[2]) > 1e-4
  return frameOf(at(f, place[0], place[1], place[2]), w, clear ? side : f.u, roll)
}

/** The frame of arrangement axes, at the tip. */
export const UPRIGHT: Frame = { o: [0, 0, 0], u: [1, 0, 0], v: [0, 1, 0], w: [0, 0, 1] }
