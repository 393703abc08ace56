import type { Point3 } from '../../arrangement/index.ts'
import type { Plant } from '../../catalogue/index.ts'
import { PART_STRIDE, type Resolved, reachAlong } from '../../geometry/index.ts'
import { partsOf } from '../parts.ts'
import { FLAME, SOLIDS } from './solids.ts'
import type { Place, Scene } from './types.ts'

/** Least distance of anything that burns from a flame: 12 in. firemarshal.nd.gov, 2023-12-20, after NFPA. */
export const FLAME_LEAST_mm = 305
/** The strictest that was found: 4 ft. fdnysmart.org. */
export const FLAME_STRICT_mm = 1219

/** Often left to dry, or dry as they are sold, besides those whose row says so. From memory. */
const DRY = new Set(['limonium', 'gypsophila', 'amaranthus', 'celosia', 'hydrangea', 'solidago', 'allium', 'protea'])

/** Whether it is dried, or dries where it stands. From the care rows ("Dries."), others from memory. */
export const dries = (plant: Plant): boolean =>
  DRY.has(plant.id) ||
  plant.care.some(({ label, text }) => label === 'Worth knowing' && /(^|; )dries( well)?[.;]/i.test(text))

/** One kind of plant near a flame. */
export interface NearFlame {
  plant: Plant
  /** From the flame to the nearest part of any of its stems, mm. */
  distance_mm: number
  dries: boolean
  hangs: boolean
}

/** How far outside one part of a stand-in a point is, at most as much as it truly is, mm; 0 inside. */
const outside = (parts: Float64Array, o: number, p: Point3): number => {
  const [x, y, z] = [parts[o + 2]!, parts[o + 3]!, parts[o + 4]!]
  if (parts[o] === 1) {
    const [u, v, w] = [parts[o + 5]! - x, parts[o + 6]! - y, parts[o + 7]! - z]
    const length2 = u * u + v * v + w * w
    const t = length2 === 0 ? 0 : ((p[0] - x) * u + (p[1] - y) * v + (p[2] - z) * w) / length2
    const k = Math.min(1, Math.max(0, t))
    return Math.max(0, Math.hypot(p[0] - x - k * u, p[1] - y - k * v, p[2] - z - k * w) - parts[o + 8]!)
  }
  const d: Point3 = [p[0] - x, p[1] - y, p[2] - z]
  const far = Math.hypot(...d)
  if (far === 0) return 0
  const n: Point3 = [d[0] / far, d[1] / far, d[2] / far]
  return Math.max(0, n[0] * p[0] + n[1] * p[1] + n[2] * p[2] - reachAlong(parts, o, n)[1])
}

/** Flames of a scene, in the arrangement's axes, mm. */
export const flamesOf = ({ things }: Scene, vesselHeight: number): Point3[] =>
  things
    .filter(({ kind }) => kind === 'candle')
    .map(({ at }) => [at[0], at[1], SOLIDS.candle.height + FLAME.wick + FLAME.height / 2 - vesselHeight])

/**
 * Kinds of plants with the least distance from a stem of theirs to a flame, nearest first; empty without a flame. The copies
 * of a row are alike, so a flame near one of them is near the designed one's own stems.
 */
export const nearFlames = (resolved: Resolved, scene: Scene): NearFlame[] => {
  const pieces: Place[] = [[0, 0], ...scene.copies]
  const flames = flamesOf(scene, resolved.vessel.height).flatMap(([x, y, z]) =>
    pieces.map(([px, py]): Point3 => [x - px, y - py, z]),
  )
  const found = new Map<string, NearFlame>()
  if (flames.length === 0) return []
  for (const stem of resolved.stems) {
    const parts = partsOf(stem)
    let nearest = Infinity
    for (let o = 0; o < parts.length; o += PART_STRIDE)
      for (const flame of flames) nearest = Math.min(nearest, outside(parts, o, flame))
    const { plant } = stem
    const hangs = plant.habit === 'trailing' || stem.stem.tip[2] < 0
    const before = found.get(plant.id)
    if (before) {
      before.distance_mm = Math.min(before.distance_mm, nearest)
      before.hangs ||= hangs
    } else found.set(plant.id, { plant, distance_mm: nearest, dries: dries(plant), hangs })
  }
  return [...found.values()].sort((a, b) => a.distance_mm - b.distance_mm)
}
