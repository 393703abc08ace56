import type { Point3 } from '../../arrangement/index.ts'
import type { StemCurve } from '../types.ts'
import { add, clamp, cross, dot, type Frame, frameOf, mix, scale, sub, unit } from './vector.ts'

/** A stem's curve with lengths and a frame carried along it without twist. */
export interface Line {
  points: Point3[]
  /** Length from the cut end to each point, mm. */
  lengths: number[]
  total: number
  /** Length from the cut end to the mouth. */
  mouth: number
  tangents: Point3[]
  sides: Point3[]
}

/**
 * The level direction from which turns about the stem are counted: across the way the head faces and the stem leans,
 * so that a stem turned about z carries its flower with it. Straight up there is none; then it is y.
 */
export const sideOf = (axis: Point3, points: Float32Array, mouthIndex: number): Point3 => {
  const m = 3 * mouthIndex
  const chord: Point3 = [-points[m]!, -points[m + 1]!, -points[m + 2]!]
  const long = Math.hypot(...chord) || 1
  const x = axis[0] + (0.3 * chord[0]) / long
  const y = axis[1] + (0.3 * chord[1]) / long
  return Math.hypot(x, y) > 1e-5 ? unit([-y, x, 0]) : [0, 1, 0]
}

/** Read a curve. Points that coincide do no harm. */
export const lineOf = (curve: StemCurve, side: Point3): Line => {
  const n = curve.points.length / 3
  const points: Point3[] = []
  const lengths: number[] = []
  const tangents: Point3[] = []
  const sides: Point3[] = []
  let total = 0
  for (let i = 0; i < n; i++) {
    const p: Point3 = [curve.points[3 * i]!, curve.points[3 * i + 1]!, curve.points[3 * i + 2]!]
    if (i > 0) {
      const q = points[i - 1]!
      total += Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2])
    }
    points.push(p)
    lengths.push(total)
  }
  let last: Point3 = [0, 0, 1]
  let carried = side
  for (let i = 0; i < n; i++) {
    const t = unit(sub(points[Math.min(n - 1, i + 1)]!, points[Math.max(0, i - 1)]!), last)
    last = t
    const u = frameOf(points[i]!, t, carried).u
    tangents.push(t)
    sides.push(u)
    carried = u
  }
  return { points, lengths, total, mouth: lengths[curve.mouthIndex] ?? 0, tangents, sides }
}

/** Place and directions at `s` mm from the cut end; beyond the ends it goes straight on. */
export const frameAt = (line: Line, s: number): Frame => {
  const { lengths, points, tangents, sides } = line
  let low = 0
  let high = lengths.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (lengths[middle]! <= s) low = middle
    else high = middle
  }
  const span = lengths[high]! - lengths[low]!
  const t = span > 1e-9 ? clamp((s - lengths[low]!) / span, 0, 1) : 0
  const w = unit(mix(tangents[low]!, tangents[high]!, t), tangents[low]!)
  const beyond = s > line.total ? s - line.total : Math.min(s, 0)
  const o = add(mix(points[low]!, points[high]!, t), scale(w, beyond))
  const side = mix(sides[low]!, sides[high]!, t)
  const u = unit(sub(side, scale(w, dot(side, w))), sides[low]!)
  return { o, u, v: cross(w, u), w }
}

/** Points of the line from s0 to s1, `count` steps. */
export const stretch = (line: Line, s0: number, s1: number, count: number): Point3[] =>
  Array.from({ length: count + 1 }, (_, i) => frameAt(line, s0 + ((s1 - s0) * i) / count).o)
