import type { Mechanics, VesselMaterial } from '../arrangement/index.ts'

/** kg/m³ (the same number as µg/mm³). Working figures inside the ranges named, all from memory of standard tables. */
export const DENSITIES: Record<VesselMaterial | 'water', number> = {
  /** Stoneware 2000–2500, earthenware 1700–2100, porcelain 2300–2500. */
  ceramic: 2200,
  /** Soda-lime glass 2440–2530. */
  glass: 2500,
  /** Polyester resin 1100–1300. */
  resin: 1200,
  /** Tinplate and steel 7800–7900, brass 8400–8700; vessels are mostly the former. */
  metal: 7800,
  /** Dry hardwoods 550–750. */
  wood: 650,
  /** At 20 °C: 998.2. */
  water: 998.2,
}

/**
 * What holds the stems, g. A crumpled piece of netting and a grid of tape are from memory; a pin-holder is a disc of lead
 * over half of the floor, 12 g to a square centimetre (from memory: one of 7 cm weighs about half a kilogram). Soaked foam
 * is close to water (from memory), so it counts as water that can't run.
 */
export const MECHANICS_MASS: Record<Mechanics, { fixed_g: number; perFloor_g_mm2: number }> = {
  netting: { fixed_g: 40, perFloor_g_mm2: 0 },
  foam: { fixed_g: 0, perFloor_g_mm2: 0 },
  'pin-holder': { fixed_g: 0, perFloor_g_mm2: 0.06 },
  'tape-grid': { fixed_g: 3, perFloor_g_mm2: 0 },
  none: { fixed_g: 0, perFloor_g_mm2: 0 },
}
