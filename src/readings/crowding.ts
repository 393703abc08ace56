import type { Vessel } from '../arrangement/index.ts'
import { areaOf, type HalfSection, innerSection, type ResolvedStem } from '../geometry/index.ts'
import { densityOf } from './packed.ts'

/** No piece is thinner, mm. Ours. */
const THINNEST = 1

/**
 * How thick a piece is where it crosses the mouth, mm: the catalogue's stem. Of a side stem cut off a many-headed one there is
 * no figure: together they are as thick, by area, as the stem that bears them (Leonardo's rule; C. Eloy, Physical Review
 * Letters 107, 258101, 2011, on trees).
 */
export const thicknessOf = ({ plant, stem }: ResolvedStem): number => {
  const whole = plant.stemDiameter_mm.value
  if (stem.piece !== 'lateral' || !plant.manyHeaded) return whole
  return Math.min(whole, Math.max(THINNEST, whole / Math.sqrt(Math.max(1, plant.bloomsPerStem.value))))
}

/** Of all stems, in their order, mm. */
export const thicknesses = (stems: readonly ResolvedStem[]): Float64Array => {
  const out = new Float64Array(stems.length)
  for (let i = 0; i < stems.length; i++) out[i] = thicknessOf(stems[i]!)
  return out
}

/**
 * Diameter of the smallest round opening that these stems pass, mm: two by their own thickness, more as if each were as wide
 * as the mean of their areas. Taken over the thickest one, two, three …, so that one more stem never needs less (seven
 * alike fit where six do). 0 for none.
 */
export const openingFor = (diameters: ArrayLike<number>): number => {
  const thickest = new Float64Array(diameters).sort().reverse()
  let area = 0
  let need = 0
  for (let i = 0; i < thickest.length; i++) {
    area += thickest[i]! ** 2
    need = Math.max(need, i === 1 ? (thickest[0]! + thickest[1]!) ** 2 : area / densityOf(i + 1))
  }
  return Math.sqrt(need)
}

const necks = new WeakMap<Vessel, HalfSection>()

/** The narrowest inner section from the rim down to half of the height: all stems pass it. */
export const neckOf = (vessel: Vessel): HalfSection => {
  const before = necks.get(vessel)
  if (before) return before
  let neck = innerSection(vessel, 1)
  for (let f = 0.5; f < 1; f += 0.05) {
    const here = innerSection(vessel, f)
    if (here.a > 0 && here.a < neck.a) neck = here
  }
  necks.set(vessel, neck)
  return neck
}

/** Diameter of the round opening that is as large as the vessel's neck, mm. For oval and rectangular ones an estimate, ours. */
export const openingOf = (vessel: Vessel): number => 2 * Math.sqrt(areaOf(vessel, neckOf(vessel)) / Math.PI)

/**
 * Which stems cross the mouth where another one does: nearer than half of their thicknesses, so that one of them must move
 * by hand. One flag a stem, in their order; what leans is taken as if it stood upright.
 */
export const sharing = (stems: readonly ResolvedStem[]): boolean[] => {
  const n = stems.length
  const shares = new Array<boolean>(n).fill(false)
  // From left to right.
  const order = stems
    .map((_, i) => i)
    .sort((i, j) => {
      const [a, b] = [stems[i]!.stem.mouth[0], stems[j]!.stem.mouth[0]]
      return a === b ? 0 : a < b ? -1 : 1
    })
  const [xs, ys, half] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)]
  let widest = 0
  for (let k = 0; k < n; k++) {
    const stem = stems[order[k]!]!
    xs[k] = stem.stem.mouth[0]
    ys[k] = stem.stem.mouth[1]
    half[k] = thicknessOf(stem) / 2
    widest = Math.max(widest, half[k]!)
  }
  for (let p = 0; p < xs.length; p++)
    for (let q = p + 1; q < xs.length; q++) {
      const dx = xs[q]! - xs[p]!
      if (dx >= half[p]! + widest) break
      const dy = ys[q]! - ys[p]!
      const near = half[p]! + half[q]!
      if (dx * dx + dy * dy >= near * near) continue
      shares[order[p]!] = true
      shares[order[q]!] = true
    }
  return shares
}
