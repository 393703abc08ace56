import type { Point3 } from '../arrangement/index.ts'
import { DENSITIES, MECHANICS_MASS } from '../catalogue/index.ts'
import {
  heightFraction,
  innerSection,
  type Resolved,
  type ResolvedStem,
  type StemCurve,
  shellOf,
  waterlineZ,
  waterOf,
} from '../geometry/index.ts'

/** What stands on the table, by weight. Places in the document's axes, mm (z from the rim). */
export interface Weight {
  mass_g: number
  centre: Point3
  vessel_g: number
  water_g: number
  mechanics_g: number
  stems_g: number
  /** Can the water run when the vessel leans? Not in soaked foam. */
  free: boolean
}

/** Half of a whole stem's mass sits in its head and leaves, at the tip; the rest evenly along the stalk. Ours. */
const HEAD_SHARE = 0.5
/** µg/mm³ to g/mm³. */
const MICRO = 1e-6

interface Loaded {
  mass_g: number
  centre: Point3
}
const loads = new WeakMap<StemCurve, Loaded>()

/** A stem as cut: its stalk by length against the whole one's, its head as it is. */
export const loadOf = ({ curve, plant, stem }: ResolvedStem): Loaded => {
  const before = loads.get(curve)
  if (before) return before
  const whole = plant.stemMass_g.value / (stem.piece === 'lateral' ? Math.max(1, plant.bloomsPerStem.value) : 1)
  const long = plant.stem_mm.value / (stem.piece === 'lateral' ? 2 : 1)
  const head = HEAD_SHARE * whole
  const stalk = (1 - HEAD_SHARE) * whole * Math.min(1, curve.cut_mm / long)
  const { points } = curve
  let [x, y, z, length] = [0, 0, 0, 0]
  for (let i = 3; i < points.length; i += 3) {
    const step = Math.hypot(
      points[i]! - points[i - 3]!,
      points[i + 1]! - points[i - 2]!,
      points[i + 2]! - points[i - 1]!,
    )
    x += (step * (points[i]! + points[i - 3]!)) / 2
    y += (step * (points[i + 1]! + points[i - 2]!)) / 2
    z += (step * (points[i + 2]! + points[i - 1]!)) / 2
    length += step
  }
  const mass = head + stalk
  const k = length > 0 ? stalk / length : 0
  const made: Loaded = {
    mass_g: mass,
    centre: [
      (k * x + head * stem.tip[0]) / mass,
      (k * y + head * stem.tip[1]) / mass,
      (k * z + head * stem.tip[2]) / mass,
    ],
  }
  loads.set(curve, made)
  return made
}

/** Water that the stalks push aside, mm³: taken off, for the level is given with the stems in it. */
const pushedAside = (stem: ResolvedStem, level: number): number => {
  const { points, mouthIndex } = stem.curve
  let length = 0
  for (let i = 3; i <= 3 * mouthIndex; i += 3) {
    const middle = (points[i + 2]! + points[i - 1]!) / 2
    if (middle > level) continue
    length += Math.hypot(points[i]! - points[i - 3]!, points[i + 1]! - points[i - 2]!, points[i + 2]! - points[i - 1]!)
  }
  return (Math.PI / 4) * stem.plant.stemDiameter_mm.value ** 2 * length
}

/** Weighs vessel, water, mechanics and stems. Masses of stems are ranges from memory: an estimate. */
export const weigh = ({ vessel, stems }: Resolved): Weight => {
  const shell = shellOf(vessel)
  const water = waterOf(vessel)
  const level = waterlineZ(vessel)
  const floor = innerSection(vessel, Math.min(1, vessel.wall / vessel.height + 0.01))
  const floorArea = (vessel.plan === 'rectangular' ? 4 : Math.PI) * floor.a * floor.b
  const holds = MECHANICS_MASS[vessel.mechanics]
  const mechanics_g = holds.fixed_g + holds.perFloor_g_mm2 * floorArea
  const vessel_g = shell.volume_mm3 * DENSITIES[vessel.material] * MICRO
  const aside = stems.reduce((sum, s) => sum + pushedAside(s, level), 0)
  const water_g = Math.max(0, water.volume_mm3 - aside) * DENSITIES.water * MICRO
  // Netting and tape sit at the mouth, a pin-holder on the floor.
  const mechanicsZ = vessel.mechanics === 'pin-holder' ? vessel.wall - vessel.height : -0.1 * vessel.height
  let [mass, x, y, z] = [0, 0, 0, 0]
  const add = (g: number, [px, py, pz]: Point3): void => {
    mass += g
    x += g * px
    y += g * py
    z += g * pz
  }
  add(vessel_g, [0, 0, shell.centre_mm - vessel.height])
  add(water_g, [0, 0, water.centre_mm - vessel.height])
  add(mechanics_g, [0, 0, mechanicsZ])
  let stems_g = 0
  for (const stem of stems) {
    const load = loadOf(stem)
    stems_g += load.mass_g
    add(load.mass_g, load.centre)
  }
  const centre: Point3 = mass > 0 ? [x / mass, y / mass, z / mass] : [0, 0, -vessel.height / 2]
  return {
    mass_g: mass,
    centre,
    vessel_g,
    water_g,
    mechanics_g,
    stems_g,
    free: vessel.mechanics !== 'foam' && heightFraction(vessel, level) > 0,
  }
}
