import type { Point3, Vessel } from '../arrangement/index.ts'
import { DENSITIES, MECHANICS_MASS } from '../catalogue/index.ts'
import {
  type Body,
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

/** By curve, which belongs to one vessel and its water. */
const asides = new WeakMap<StemCurve, number>()

/** Water that the stalks push aside, mm³: taken off, for the level is given with the stems in it. */
const pushedAside = (stem: ResolvedStem, level: number): number => {
  const { points, mouthIndex } = stem.curve
  const before = asides.get(stem.curve)
  if (before !== undefined) return before
  let length = 0
  for (let i = 3; i <= 3 * mouthIndex; i += 3) {
    const middle = (points[i + 2]! + points[i - 1]!) / 2
    if (middle > level) continue
    length += Math.hypot(points[i]! - points[i - 3]!, points[i + 1]! - points[i - 2]!, points[i + 2]! - points[i - 1]!)
  }
  const aside = (Math.PI / 4) * stem.plant.stemDiameter_mm.value ** 2 * length
  asides.set(stem.curve, aside)
  return aside
}

/** What is known of a vessel before anything stands in it. */
interface Holder {
  shell: Body
  water: Body
  vessel_g: number
  mechanics_g: number
  level: number
}
const holders = new WeakMap<Vessel, Holder>()

const holderOf = (vessel: Vessel): Holder => {
  const before = holders.get(vessel)
  if (before) return before
  const shell = shellOf(vessel)
  const floor = innerSection(vessel, Math.min(1, vessel.wall / vessel.height + 0.01))
  const floorArea = (vessel.plan === 'rectangular' ? 4 : Math.PI) * floor.a * floor.b
  const holds = MECHANICS_MASS[vessel.mechanics]
  const made: Holder = {
    shell,
    water: waterOf(vessel),
    vessel_g: shell.volume_mm3 * DENSITIES[vessel.material] * MICRO,
    mechanics_g: holds.fixed_g + holds.perFloor_g_mm2 * floorArea,
    level: waterlineZ(vessel),
  }
  holders.set(vessel, made)
  return made
}

/** Weighs vessel, water, mechanics and stems. Masses of stems are ranges from memory: an estimate. */
export const weigh = ({ vessel, stems }: Resolved): Weight => {
  const { shell, water, vessel_g, mechanics_g, level } = holderOf(vessel)
  let aside = 0
  for (let i = 0; i < stems.length; i++) aside += pushedAside(stems[i]!, level)
  const water_g = Math.max(0, water.volume_mm3 - aside) * DENSITIES.water * MICRO
  // Netting and tape sit at the mouth, a pin-holder on the floor.
  const mechanicsZ = vessel.mechanics === 'pin-holder' ? vessel.wall - vessel.height : -0.1 * vessel.height
  // Vessel, water and mechanics stand on the axis.
  let stems_g = 0
  let x = 0
  let y = 0
  let z =
    vessel_g * (shell.centre_mm - vessel.height) +
    water_g * (water.centre_mm - vessel.height) +
    mechanics_g * mechanicsZ
  for (let i = 0; i < stems.length; i++) {
    const { mass_g, centre } = loadOf(stems[i]!)
    stems_g += mass_g
    x += mass_g * centre[0]
    y += mass_g * centre[1]
    z += mass_g * centre[2]
  }
  const mass = vessel_g + water_g + mechanics_g + stems_g
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
