import type { Point3, Vessel } from '../arrangement/index.ts'
import { innerSection, type Mesh, outerSection, reachIn } from '../geometry/index.ts'
import { mechanicsInto } from './mechanics-mesh.ts'
import { addGrid, type Growing, growing, meshOf } from './surface.ts'

/** What the surfaces of a vessel are; the number stands where a stem's mesh has its tissue. */
export const WALL = 0
export const RIM = 1
export const INSIDE = 2
export const CUT_FACE = 3
export const MECHANICS_PART = 4
export const PINS = 5

/** Points round a horizontal section and rows up the wall: fine enough that no corner shows at 4 px/mm. Ours. */
const ROUND = 96
const ROWS = 44
/** A rectangle's corners are rounded as a superellipse of this power is. Ours. */
const CORNER = 14

/** A point on the unit outline of the plan, `v` 0 … 1 round it. */
const onPlan = (vessel: Vessel, v: number): [number, number] => {
  const a = v * 2 * Math.PI
  const [c, s] = [Math.cos(a), Math.sin(a)]
  if (vessel.plan !== 'rectangular') return [c, s]
  const k = 2 / CORNER
  return [Math.sign(c) * Math.abs(c) ** k, Math.sign(s) * Math.abs(s) ** k]
}

/** Half of the width of a section along the level direction (dx, dy), mm; 0 where it is empty. */
export const reachAlong = (vessel: Vessel, section: { a: number; b: number }, dx: number, dy: number): number => {
  const reach = reachIn(vessel, section, dx, dy)
  return Number.isFinite(reach) && reach > 0 ? 1 / reach : 0
}

const shell = (g: Growing, vessel: Vessel): void => {
  const { height, wall } = vessel
  const ring = (a: number, b: number, v: number, z: number): Point3 => {
    const [x, y] = onPlan(vessel, v)
    return [a * x, b * y, z]
  }
  addGrid(g, ROWS, ROUND, WALL, (u, v) => {
    const { a, b } = outerSection(vessel, u)
    return ring(a, b, v, (u - 1) * height)
  })
  const rim = outerSection(vessel, 1)
  addGrid(g, 1, ROUND, RIM, (u, v) => ring(Math.max(0, rim.a - u * wall), Math.max(0, rim.b - u * wall), v, 0))
  const floor = Math.min(0.9, wall / height) + 1e-6
  addGrid(g, ROWS, ROUND, INSIDE, (u, v) => {
    const f = floor + (1 - floor) * u
    const { a, b } = innerSection(vessel, f)
    return ring(a, b, v, (f - 1) * height)
  })
  const low = innerSection(vessel, floor)
  addGrid(g, 3, ROUND, INSIDE, (u, v) => ring(low.a * u, low.b * u, v, (floor - 1) * height))
}

/** The face of wall and floor where the half section cuts them, in the upright plane of the axis, right half. */
const cutFace = (g: Growing, vessel: Vessel, right: Point3): void => {
  const rows = 72
  const at = (u: number, v: number): Point3 => {
    const outer = reachAlong(vessel, outerSection(vessel, u), right[0], right[1])
    const inner = reachAlong(vessel, innerSection(vessel, u), right[0], right[1])
    const r = Math.min(outer, inner) + (outer - Math.min(outer, inner)) * v
    return [right[0] * r, right[1] * r, (u - 1) * vessel.height]
  }
  addGrid(g, rows, 1, CUT_FACE, at)
}

/**
 * The vessel as triangles, mm, origin at the centre of its mouth: wall, rim, inside and floor, what holds the stems
 * unless it is of glass, and the hatched face when it is cut open.
 * @param right the view's direction to the right when the front right quarter is cut away, else null
 */
export const vesselMesh = (vessel: Vessel, right: Point3 | null): Mesh => {
  const g = growing()
  shell(g, vessel)
  // In clear glass it stands by itself, behind the wall.
  if (vessel.material !== 'glass') mechanicsInto(g, vessel, MECHANICS_PART, PINS)
  if (right) cutFace(g, vessel, right)
  return meshOf(g)
}

/** What holds the stems, alone. */
export const mechanicsMesh = (vessel: Vessel): Mesh => {
  const g = growing()
  mechanicsInto(g, vessel, MECHANICS_PART, PINS)
  return meshOf(g)
}
