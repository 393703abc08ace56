import type { Point3 } from '../../src/arrangement/index.ts'
import { SLAB, STAGES, slabsFrom } from '../../src/geometry/habits/fitted.ts'
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

/** Numbers of ellipsoids (nine each, every stage), each stage's axes named as those of the one nearer the middle. */
export const namedAlike = (own: readonly number[], count: number): number[] => {
  const stages = STAGES.map((_, k) => {
    const flat = slabsFrom(own.slice(9 * count * k, 9 * count * (k + 1)), 9)
    return Array.from({ length: count }, (_, i): Slab => {
      const v = (j: number): Point3 => [0, 1, 2].map((c) => flat[i * SLAB + 3 * j + c]!) as Point3
      return { o: v(0), a: v(1), b: v(2), c: v(3) }
    })
  })
  const middle = (STAGES.length - 1) / 2
  const name = (k: number, as: number): void => {
    stages[k] = stages[k]!.map((s, i) => namedAs(s, stages[as]![i]!))
  }
  for (let k = middle - 1; k >= 0; k--) name(k, k + 1)
  for (let k = middle + 1; k < STAGES.length; k++) name(k, k - 1)
  return stages.flatMap((slabs) =>
    slabs.flatMap((s) => [...s.o, Math.hypot(...s.a), Math.hypot(...s.b), Math.hypot(...s.c), ...turnOf(s)]),
  )
}
