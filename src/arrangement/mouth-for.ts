import type { Point2, Point3, Vessel } from './types.ts'

/**
 * Where a stem with this tip may cross the mouth: toward the tip, a third of the way, as stems that start at one point
 * lean (common practice), kept inside the wall with room for the stem (ours). mm
 */
export const mouthFor = (vessel: Vessel, tip: Point3): Point2 => {
  const room = (size: number) => Math.max(2, size / 2 - vessel.wall - 6) * 0.85
  const [rx, ry] = [room(vessel.width), room(vessel.depth)]
  const x = tip[0] * 0.32
  const y = tip[1] * 0.32
  const over = vessel.plan === 'rectangular' ? Math.max(Math.abs(x) / rx, Math.abs(y) / ry) : Math.hypot(x / rx, y / ry)
  const k = over > 1 ? 1 / over : 1
  return [Math.round(x * k), Math.round(y * k)]
}
