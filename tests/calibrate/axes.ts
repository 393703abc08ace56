import type { Point3 } from '../../src/arrangement/index.ts'
import { SLAB, slabsFrom } from '../../src/geometry/habits/fitted.ts'
import { clamp } from '../../src/geometry/habits/vector.ts'
import type { Slab } from './silhouette.ts'

/** The rotation vector of three axes (columns of a rotation once each has length 1). */
export const turnOf = ({ a, b, c }: Slab): number[] => {
  const u = [a, b, c].map((v) => v.map((x) => x / (Math.hypot(...v) || 1)))
  const det =
    u[0]![0]! * (u[1]![1]! * u[2]![2]! - u[1]![2]! * u[2]![1]!) -
    u[0]![1]! * (u[1]![0]! * u[2]![2]! - u[1]![2]! * u[2]![0]!) +
    u[0]![2]! * (u[1]![0]! * u[2]![1]! - u[1]![1]! * u[2]![0]!)
  if (det < 0) u[2] = u[2]!.map((x) => -x)
  const angle = Math.acos(clamp((u[0]![0]! + u[1]![1]! + u[2]![2]! - 1) / 2, -1, 1))
  const v = [u[1]![2]! - u[2]![1]!, u[2]![0]! - u[0]![2]!, u[0]![1]! - u[1]![0]!]
  const l = Math.hypot(...v)
  if (l > 1e-6) return v.map((x) => (x / l) * angle)
  const d = [0, 1, 2].map((i) => Math.sqrt(Math.max(0, (u[i]![i]! + 1) / 2)))
  return angle < 1 ? [0, 0, 0] : d.map((x) => x * angle)
}

const ORDERS = [
  ['a', 'b', 'c'],
  ['a', 'c', 'b'],
  ['b', 'a', 'c'],
  ['b', 'c', 'a'],
  ['c', 'a', 'b'],
  ['c', 'b', 'a'],
] as const
const cosine = (p: Point3, q: Point3): number =>
  (p[0] * q[0] + p[1] * q[1] + p[2] * q[2]) / (Math.hypot(...p) * Math.hypot(...q) || 1)

/** The same ellipsoid, its axes named and turned as near to another's as they can be: so what is mixed is alike. */
export const namedAs = (s: Slab, other: Slab): Slab => {
  const likeness = ([a, b, c]: (typeof ORDERS)[number]): number =>
    Math.abs(cosine(s[a], other.a)) + Math.abs(cosine(s[b], other.b)) + Math.abs(cosine(s[c], other.c))
  const [a, b, c] = ORDERS.reduce((best, order) => (likeness(order) > likeness(best) ? order : best))
  const toward = (p: Point3, q: Point3): Point3 => (cosine(p, q) < 0 ? [-p[0], -p[1], -p[2]] : p)
  return { o: s.o, a: toward(s[a], other.a), b: toward(s[b], other.b), c: toward(s[c], other.c) }
}
export const LEVEL: Slab = { o: [0, 0, 0], a: [1, 0, 0], b: [0, 1, 0], c: [0, 0, 1] }

/** Numbers of ellipsoids (nine each, three stages), every stage's axes named as those of the middle one. */
export const namedAlike = (own: readonly number[], count: number): number[] => {
  const stages = [0, 1, 2].map((k) => slabsFrom(own.slice(9 * count * k, 9 * count * (k + 1)), 9))
  const slab = (k: number, i: number): Slab => {
    const v = (j: number): Point3 => {
      const at = i * SLAB + 3 * j
      return [stages[k]![at]!, stages[k]![at + 1]!, stages[k]![at + 2]!]
    }
    return { o: v(0), a: v(1), b: v(2), c: v(3) }
  }
  return [0, 1, 2].flatMap((k) =>
    Array.from({ length: count }, (_, i) => i).flatMap((i) => {
      const s = namedAs(slab(k, i), slab(1, i))
      return [...s.o, Math.hypot(...s.a), Math.hypot(...s.b), Math.hypot(...s.c), ...turnOf(s)]
    }),
  )
}
