import type { Vessel } from '../arrangement/index.ts'
import { areaOf, type HalfSection, innerSection } from '../geometry/index.ts'

/**
 * Radius of the smallest circle that holds n circles of radius 1, n = 1 … 20. Source: Circle packing in a circle,
 * Wikipedia, which names each one's proof (Graham 1968, Pirl 1969, Melissen 1994, Fodor 1999, 2000, 2003, Ekanayake and
 * LaFountain 2024); 15–18 and 20 are the best known, not proved.
 */
export const PACKED: readonly number[] = [
  1,
  2,
  1 + 2 / Math.sqrt(3),
  1 + Math.SQRT2,
  2.701302,
  3,
  3,
  1 + 1 / Math.sin(Math.PI / 7),
  1 + Math.sqrt(2 * (2 + Math.SQRT2)),
  3.81303,
  1 + 1 / Math.sin(Math.PI / 9),
  4.0296,
  2 + Math.sqrt(5),
  4.32843,
  4.521357,
  4.61543,
  4.79203,
  1 + Math.SQRT2 + Math.sqrt(6),
  1 + Math.SQRT2 + Math.sqrt(6),
  5.12232,
]

/** Of more circles than the table has, tight packings fill about this share (0.75–0.80, from memory; the limit is 0.9069). */
const TIGHT = 0.78

/** How much circle, over the area of n alike, the smallest one that holds them takes. */
const spareOf = (n: number): number => (n <= PACKED.length ? PACKED[n - 1]! ** 2 / n : 1 / TIGHT)

/**
 * Diameter of the smallest round opening that these stems pass, mm, each as wide as the mean of their areas. Taken over the
 * thickest one, two, three …, so that one more stem never needs less (seven alike fit where six do). 0 for none.
 */
export const openingFor = (diameters: readonly number[]): number => {
  const thickest = [...diameters].sort((a, b) => b - a)
  let [area, need] = [0, 0]
  thickest.forEach((d, i) => {
    area += d * d
    need = Math.max(need, spareOf(i + 1) * area)
  })
  return Math.sqrt(need)
}

/** The narrowest inner section from the rim down to half of the height: all stems pass it. */
export const neckOf = (vessel: Vessel): HalfSection => {
  let neck = innerSection(vessel, 1)
  for (let f = 0.5; f < 1; f += 0.05) {
    const here = innerSection(vessel, f)
    if (here.a > 0 && here.a < neck.a) neck = here
  }
  return neck
}

/** Diameter of the round opening that is as large as the vessel's neck, mm. For oval and rectangular ones an estimate, ours. */
export const openingOf = (vessel: Vessel): number => 2 * Math.sqrt(areaOf(vessel, neckOf(vessel)) / Math.PI)
