import type { Vessel } from '../arrangement/index.ts'
import { alongCurve, type MonotoneCurve, monotoneCurve } from './monotone.ts'

const curves = new WeakMap<Vessel, MonotoneCurve>()

const profileOf = (vessel: Vessel): MonotoneCurve => {
  const known = curves.get(vessel)
  if (known) return known
  const made = monotoneCurve(
    vessel.profile?.length
      ? vessel.profile
      : [
          [0, 1],
          [1, 1],
        ],
  )
  curves.set(vessel, made)
  return made
}

/** Half of a horizontal section: along x and along y, mm. */
export interface HalfSection {
  a: number
  b: number
}

/** Outer half-width (along x) at a height, mm. `heightFraction` 0 at the table … 1 at the rim. */
export const vesselHalfWidth = (vessel: Vessel, heightFraction: number): number =>
  (alongCurve(profileOf(vessel), heightFraction) * vessel.width) / 2

/** Outer half section at a height, mm. */
export const outerSection = (vessel: Vessel, heightFraction: number): HalfSection => {
  const k = alongCurve(profileOf(vessel), heightFraction)
  return { a: (k * vessel.width) / 2, b: (k * vessel.depth) / 2 }
}

/**
 * Inner half section at a height, mm: the outer one less the wall, measured level. 0 inside the floor, which is as
 * thick as the wall.
 */
export const innerSection = (vessel: Vessel, heightFraction: number): HalfSection => {
  if (heightFraction * vessel.height < vessel.wall) return { a: 0, b: 0 }
  const { a, b } = outerSection(vessel, heightFraction)
  return { a: Math.max(0, a - vessel.wall), b: Math.max(0, b - vessel.wall) }
}

/** Greatest outer half section over all heights. */
export const widestSection = (vessel: Vessel): HalfSection => {
  const k = Math.max(...profileOf(vessel).y)
  return { a: (k * vessel.width) / 2, b: (k * vessel.depth) / 2 }
}

/** Height as a fraction (0 table … 1 rim) of a point at z, mm. */
export const heightFraction = (vessel: Vessel, z: number): number => (z + vessel.height) / vessel.height

/**
 * How far out a point lies in a section: 1 on its edge, under 1 inside. Ellipse for round and oval, the greater of the
 * two directions for rectangular. Infinity where the section is empty.
 */
export const reachIn = (vessel: Vessel, section: HalfSection, x: number, y: number): number => {
  if (section.a <= 0 || section.b <= 0) return Number.POSITIVE_INFINITY
  const u = x / section.a
  const v = y / section.b
  return vessel.plan === 'rectangular' ? Math.max(Math.abs(u), Math.abs(v)) : Math.sqrt(u * u + v * v)
}

/** Half of the width that a section shows to someone who looks level, the arrangement turned so that x is (cos, −sin). */
export const shownHalfWidth = (vessel: Vessel, section: HalfSection, cos: number, sin: number): number =>
  vessel.plan === 'rectangular'
    ? section.a * Math.abs(cos) + section.b * Math.abs(sin)
    : Math.sqrt((section.a * cos) ** 2 + (section.b * sin) ** 2)

/** Area of a horizontal section, mm². */
export const areaOf = (vessel: Vessel, { a, b }: HalfSection): number =>
  (vessel.plan === 'rectangular' ? 4 : Math.PI) * a * b

/**
 * ∫ of(height fraction) dz between two heights (fractions), the value's unit × mm: ten panels of Simpson's rule between
 * neighbouring knots of the profile, exact for straight sides.
 */
export const integrateHeights = (vessel: Vessel, from: number, to: number, of: (f: number) => number): number => {
  const knots = [from, ...profileOf(vessel).x.filter((x) => x > from && x < to), to]
  let sum = 0
  for (let k = 0; k + 1 < knots.length; k++) {
    const h = (knots[k + 1]! - knots[k]!) / 20
    for (let i = 0; i < 20; i += 2) {
      const f = knots[k]! + i * h
      sum += (h / 3) * (of(f) + 4 * of(f + h) + of(f + 2 * h))
    }
  }
  return sum * vessel.height
}

/** Height of the floor's upper side, a fraction: it is as thick as the wall. */
export const floorFraction = (vessel: Vessel): number => Math.min(1, vessel.wall / vessel.height)

const volumeUpTo = (vessel: Vessel, top: number): number => {
  const floor = floorFraction(vessel)
  if (top <= floor) return 0
  return integrateHeights(vessel, floor, top, (f) => areaOf(vessel, innerSection(vessel, Math.max(f, floor))))
}

/** What the vessel holds to the rim, mm³ (1e6 = a litre). */
export const innerVolume_mm3 = (vessel: Vessel): number => volumeUpTo(vessel, 1)

/** z of the water's surface, mm (negative: under the rim). */
export const waterlineZ = (vessel: Vessel): number => {
  const inner = Math.max(0, vessel.height - vessel.wall)
  return -vessel.height + Math.min(vessel.height, vessel.wall) + inner * vessel.waterFill
}

/** Water in it, mm³, stems not taken off. */
export const waterVolume_mm3 = (vessel: Vessel): number =>
  volumeUpTo(vessel, heightFraction(vessel, waterlineZ(vessel)))
