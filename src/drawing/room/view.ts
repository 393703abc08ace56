import type { Point3 } from '../../arrangement/index.ts'
import { cosSin, viewAxes } from '../../geometry/index.ts'
import type { ViewAngle } from '../types.ts'
import type { Ellipse, Place } from './types.ts'

/** A view of the room: how a point over the table is seen, mm from the centre of the vessel's mouth. */
export interface Looking {
  angle: ViewAngle
  /** Cosine and sine of the pitch: how long an upright, and how deep a level circle, looks. */
  upright: number
  level: number
  vesselHeight: number
  /** A point over the table (z from its top) as seen: right, up. */
  see: (x: number, y: number, z: number) => Place
  /** How far from the eye, beyond the vessel's axis, a place on the table is; negative before it. mm along the table. */
  beyond: (at: Place) => number
}

export const looking = (angle: ViewAngle, vesselHeight: number): Looking => {
  const { right, up } = viewAxes(angle)
  const [upright, level] = cosSin(angle.pitch)
  const [cos, sin] = cosSin(angle.turn)
  const dot = (d: Point3, x: number, y: number, z: number): number => d[0] * x + d[1] * y + d[2] * (z - vesselHeight)
  return {
    angle,
    upright,
    level,
    vesselHeight,
    see: (x, y, z) => [dot(right, x, y, z), dot(up, x, y, z)],
    beyond: ([x, y]) => x * sin + y * cos,
  }
}

/** A level circle as seen: an ellipse that is as deep as the sine of the pitch. */
export const circleSeen = (
  look: Looking,
  at: Place,
  height: number,
  radius: number,
): { centre: Place; half: Place } => ({
  centre: look.see(at[0], at[1], height),
  half: [radius, radius * Math.abs(look.level)],
})

const AROUND = 72

/** Points along an ellipse, from and to in radians against the clock from the right; all round if left out. */
export const ellipsePoints = (
  { centre, half }: Pick<Ellipse, 'centre' | 'half'>,
  from = 0,
  to = 2 * Math.PI,
  most = AROUND,
): Place[] => {
  const n = Math.max(2, Math.ceil((most * Math.abs(to - from)) / (2 * Math.PI)))
  return Array.from({ length: n + 1 }, (_, i) => {
    const a = from + ((to - from) * i) / n
    return [centre[0] + half[0] * Math.cos(a), centre[1] + half[1] * Math.sin(a)]
  })
}

/** The convex outline of points, against the clock (Andrew's monotone chain, Inf. Proc. Letters 9:216–219, 1979). */
export const convexOutline = (points: readonly Place[]): Place[] => {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const chain = (those: readonly Place[]): Place[] => {
    const out: Place[] = []
    for (const p of those) {
      while (out.length >= 2) {
        const [a, b] = [out[out.length - 2]!, out[out.length - 1]!]
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break
        out.pop()
      }
      out.push(p)
    }
    return out.slice(0, -1)
  }
  if (sorted.length < 3) return sorted
  return [...chain(sorted), ...chain(sorted.reverse())]
}
