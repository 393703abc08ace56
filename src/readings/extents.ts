import type { Point3, Vessel } from '../arrangement/index.ts'
import {
  type Axes,
  cosSin,
  type Grid,
  heightFraction,
  outerSection,
  PART_STRIDE,
  preparedParts,
  type ResolvedStem,
  reachAlong,
  reachIn,
  type StemCurve,
  typedAxes,
  viewAxes,
  widestSection,
} from '../geometry/index.ts'

/** Ways round that are looked at; a multiple of four, so that a quarter turn changes nothing. Opposite ones are mirror images. */
export const WAYS = 12
export const HALF_WAYS = WAYS / 2
export const turnOf = (way: number): number => (way * 360) / WAYS

/** A stem made ready for painting, with how far it reaches, mm. */
export interface Ready {
  parts: Float64Array
  /** Farthest from the axis, never too little. */
  radius: number
  low: number
  high: number
  /** Blooms and leaves alone: their top, and across each of the first six ways round from (2 × way) and to; empty when there are none. */
  top: number
  across: Float64Array
  /** Has a bloom among its parts. */
  bloom: boolean
}

const known = new WeakMap<StemCurve, Ready>()
/** The first six ways round. */
export const SIDE_AXES: readonly Axes[] = Array.from({ length: HALF_WAYS }, (_, way) =>
  typedAxes(viewAxes({ turn: turnOf(way), pitch: 0 })),
)
const RIGHTS = Array.from({ length: HALF_WAYS }, (_, way): Point3 => {
  const [c, s] = cosSin(turnOf(way))
  return [c, -s, 0]
})

const measure = (parts: Float64Array): Omit<Ready, 'parts'> => {
  let [radius, low, high, top] = [0, 0, 0, Number.NEGATIVE_INFINITY]
  let bloom = false
  const across = Float64Array.from({ length: 2 * HALF_WAYS }, (_, i) =>
    i % 2 === 0 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY,
  )
  for (let o = 0; o < parts.length; o += PART_STRIDE) {
    const [from, to] = reachAlong(parts, o, [0, 0, 1])
    low = Math.min(low, from)
    high = Math.max(high, to)
    const capsule = parts[o] === 1
    const wide = capsule ? parts[o + 8]! : Math.sqrt(Math.max(0, parts[o + 5]! + parts[o + 8]!))
    const ends = capsule ? [2, 5] : [2]
    for (const k of ends) radius = Math.max(radius, Math.hypot(parts[o + k]!, parts[o + k + 1]!) + wide)
    if (parts[o + 1] === 2) continue
    if (parts[o + 1] === 0) bloom = true
    top = Math.max(top, to)
    if (to <= 0) continue
    RIGHTS.forEach((right, way) => {
      const [a, b] = reachAlong(parts, o, right)
      across[2 * way] = Math.min(across[2 * way]!, a)
      across[2 * way + 1] = Math.max(across[2 * way + 1]!, b)
    })
  }
  return { radius, low, high, top, across, bloom }
}

/** Pieces of bare stem that lie within the vessel are never seen: they are left out once, not painted every time. */
const withoutHidden = (parts: Float64Array, vessel: Vessel): Float64Array => {
  const inside = (o: number): boolean => {
    const z = parts[o + 2]!
    if (z < -vessel.height) return false
    return reachIn(vessel, outerSection(vessel, heightFraction(vessel, z)), parts[o]!, parts[o + 1]!) < 1
  }
  let end = 0
  for (let o = 0; o < parts.length; o += PART_STRIDE) {
    const hidden = parts[o] === 1 && parts[o + 4]! < -parts[o + 8]! && parts[o + 7]! < -parts[o + 8]!
    if (hidden && inside(o + 2) && inside(o + 5)) continue
    if (end < o) parts.copyWithin(end, o, o + PART_STRIDE)
    end += PART_STRIDE
  }
  return end < parts.length ? parts.slice(0, end) : parts
}

/** From–to of all blooms and leaves across one of the first six ways round, mm; from is more than to where there are none. */
export const spanAcross = (ready: readonly Ready[], way: number): [from: number, to: number] => {
  let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (let i = 0; i < ready.length; i++) {
    from = Math.min(from, ready[i]!.across[2 * way]!)
    to = Math.max(to, ready[i]!.across[2 * way + 1]!)
  }
  return [from, to]
}

/** Remembered as long as the stem keeps its shape (a curve belongs to one vessel). */
export const readyStem = (
  stem: ResolvedStem,
  vessel: Vessel,
  standins: (stem: ResolvedStem) => Float32Array,
): Ready => {
  const before = known.get(stem.curve)
  if (before) return before
  const { points } = stem.curve
  const n = points.length
  const parts = withoutHidden(preparedParts(standins(stem), [points[n - 3]!, points[n - 2]!, points[n - 1]!]), vessel)
  const ready = { parts, ...measure(parts) }
  known.set(stem.curve, ready)
  return ready
}

/** Pixels along a side of every picture. */
export const SIDE = 144
const SNAP = 8

export interface Frame {
  grid: Grid
  /** The same scale for the plan. */
  plan: Grid
  /** Side of the square that just holds everything, and the height of its middle, mm. */
  side: number
  middle: number
}

/** Both grids are made here: of two shapes of object each read of `mm` would be boxed. */
const gridOf = (mm: number, zeroRow: number): Grid => ({ width: SIDE, height: SIDE, mm, zeroRow })

/**
 * One scale for all views. It goes in steps (fourth roots of two) and the rim's row in steps of eight, so that a small
 * move leaves every other stem's pixels where they are.
 */
export const frameFor = (ready: readonly Ready[], vessel: Vessel): Frame => {
  const body = widestSection(vessel)
  let radius = Math.hypot(body.a, body.b)
  let [low, high] = [-vessel.height, 0]
  for (const r of ready) {
    radius = Math.max(radius, r.radius)
    low = Math.min(low, r.low)
    high = Math.max(high, r.high)
  }
  const side = Math.max(2 * radius, high - low)
  const mm = 2 ** (Math.ceil(Math.log2(side / (SIDE - SNAP)) * 4) / 4)
  const zeroRow = SNAP * Math.ceil(-low / mm / SNAP)
  return { grid: gridOf(mm, zeroRow), plan: gridOf(mm, SIDE / 2), side, middle: (low + high) / 2 }
}
