import type { Point3, Stem } from '../arrangement/index.ts'
import type { Habit, Plant } from '../catalogue/index.ts'
import { buildMesh, type StemCurve, seedOf } from '../geometry/index.ts'
import { type Cache, remembered } from './cache.ts'
import { detailFor } from './sprite.ts'
import { allAtOnce, meshSteps, spriteBytes } from './steps.ts'
import { tintsOf } from './tints.ts'
import type { Quality, Sprite, ViewAngle } from './types.ts'

/** Heads that turn their face to the reader, by kind, flower or habit; all others point along the stem. */
const FACING: Record<string, Point3 | undefined> = {
  rosette: [0.08, -0.76, 0.64],
  quilled: [0.08, -0.76, 0.64],
  ray: [0.08, -0.76, 0.64],
  pincushion: [0.08, -0.72, 0.69],
  cup: [0.05, -0.35, 0.93],
  trumpet: [0.1, -0.7, 0.7],
  spathe: [0.12, -0.5, 0.86],
  calla: [0.06, -0.26, 0.96],
  iris: [0.06, -0.16, 0.98],
  orchid: [0.1, -0.9, 0.42],
  umbel: [0, -0.34, 0.94],
  dome: [0, -0.45, 0.89],
  globe: [0, -0.45, 0.89],
  // One-sided spikes look the way they lean.
  spike: [0, -0.3, 0.95],
}

/** Flat sprays and leaves that a straight stem would show edge on are turned to the reader, degrees. */
const TURN: Partial<Record<Habit, number>> = { 'alternate-leaves': 90, fern: 90, 'broad-leaf': 90 }

/** The piece that a plate shows, where it is not a whole stem with the head that is usual for its openness. */
export interface PlatePiece {
  piece: Stem['piece']
  /** Diameter of the head, mm. */
  head_mm: number
}

const STEPS = 24
const BELOW = 6

/** A short straight stem, or for a hanging plant one that bends over; relative to its tip. */
const plateCurve = (plant: Plant, head: number): StemCurve => {
  const hanging = plant.habit === 'trailing'
  const long = (plant.headLength_mm?.value ?? head) * (hanging ? 1 : 1.05)
  // The stem of a calla bends to the foot of its cup, far below its middle.
  const deep = plant.shape.kind === 'calla' ? 1.5 : 0.55
  const above = Math.min(Math.max(40, long + Math.max(22, head * deep)), 320)
  const points = new Float32Array(3 * (STEPS + BELOW + 1))
  const set = (i: number, x: number, z: number): void => {
    points[3 * i] = x
    points[3 * i + 2] = z
  }
  for (let i = 0; i <= BELOW; i++) set(i, 0, -above - BELOW + i)
  for (let i = 1; i <= STEPS; i++) {
    const t = i / STEPS
    if (!hanging) set(BELOW + i, 3 * Math.sin(Math.PI * t) * (1 - t), -above * (1 - t))
    else {
      // Up, over in a half circle, and down again.
      const r = Math.max(8, head * 0.7)
      const rise = above * 0.35
      const total = rise + Math.PI * r + above
      const s = t * total
      if (s < rise) set(BELOW + i, 0, s)
      else if (s < rise + Math.PI * r) {
        const a = (s - rise) / r
        set(BELOW + i, r - r * Math.cos(a), rise + r * Math.sin(a))
      } else set(BELOW + i, 2 * r, rise - (s - rise - Math.PI * r))
    }
  }
  const last = STEPS + BELOW
  if (hanging) for (let i = 0; i <= BELOW; i++) set(i, 0, i - BELOW)
  const [x, y, z] = [points[3 * last]!, points[3 * last + 1]!, points[3 * last + 2]!]
  let length = 0
  for (let i = 0; i <= last; i++) {
    points[3 * i] = points[3 * i]! - x
    points[3 * i + 1] = points[3 * i + 1]! - y
    points[3 * i + 2] = points[3 * i + 2]! - z
    if (i > BELOW) length += Math.hypot(points[3 * i]! - points[3 * i - 3]!, points[3 * i + 2]! - points[3 * i - 1]!)
  }
  const middle = 3 * (BELOW + STEPS / 2)
  return {
    points,
    mouthIndex: BELOW,
    above_mm: length,
    below_mm: BELOW,
    cut_mm: length + BELOW,
    middle: [points[middle]!, points[middle + 1]!, points[middle + 2]!],
  }
}

/**
 * One plant on a short cut stem, as on a plate: for list, picker and picture.
 * @param openness 0 bud … 1 open
 * @param angle turn and pitch; { turn: 0, pitch: 0 } shows the stem upright and the head half turned to the reader
 * @param scale pixels per mm
 * @param as a certain piece of it
 */
export const plantPlate = (
  plant: Plant,
  colour: string,
  openness: number,
  angle: ViewAngle,
  scale: number,
  cache: Cache,
  quality: Quality = 'fine',
  as: PlatePiece | null = null,
): Sprite => {
  const one = as ? ` ${as.piece} ${as.head_mm.toFixed(1)}` : ''
  const key = `plate ${plant.id}${one} ${colour} ${openness.toFixed(3)} ${angle.turn} ${angle.pitch} ${scale.toFixed(4)} ${quality}`
  const turned = { turn: angle.turn + (TURN[plant.habit] ?? 0), pitch: angle.pitch }
  const paint = (): Sprite => {
    const open = plant.headOpen_mm.value
    const closed = plant.headClosed_mm?.value ?? open
    const head_mm = as?.head_mm ?? closed + (open - closed) * openness
    const curve = plateCurve(plant, head_mm)
    const seed = seedOf(plant.id)
    const hanging = plant.habit === 'trailing'
    const { kind, flower } = plant.shape
    const [x, y, z] = FACING[`${kind}`] ?? FACING[`${flower}`] ?? FACING[plant.habit] ?? [0, 0, hanging ? -1 : 1]
    const size = Math.hypot(x, y, z)
    const axis: Point3 = [x / size, y / size, z / size]
    const piece = as?.piece ?? 'whole'
    const mesh = buildMesh({ plant, openness, head_mm, seed, axis, curve, piece, detail: detailFor(scale) })
    return allAtOnce(meshSteps(mesh, turned, scale, quality, tintsOf(plant, colour, seed), seed)).sprite
  }
  return remembered(cache, key, paint, spriteBytes)
}
