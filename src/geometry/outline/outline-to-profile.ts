import { LIMITS, type ProfilePoint, type VesselPlan } from '../../arrangement/index.ts'
import { alongCurve, monotoneCurve } from '../monotone.ts'
import type { Frame } from './frame.ts'
import type { Outline } from './types.ts'

/** Handles are set until the curve through them is nowhere farther off than this, of the half mouth; never more. Ours. */
const TOLERANCE = 0.008
const MOST_HANDLES = 12
/** Proposed handles are so far apart in height, fraction, that a hand can tell them. Ours. */
const APART = 0.02
/** Sides that are nowhere farther off from upright than this, of the half mouth, are straight. Ours. */
const STRAIGHT = 0.015
/** Two handles are at least this far apart in height, fraction; a half-width is at least so much of the mouth's. Ours. */
export const LEAST_GAP = 0.01
export const LEAST_HALF = 0.05

const within = (x: number, least: number, most: number): number => Math.min(most, Math.max(least, x))
const given = (x: number | undefined, before: number): number => (x === undefined || Number.isNaN(x) ? before : x)
const rounded = (x: number): number => Math.round(x * 1000) / 1000
const halfWithin = (x: number): number => rounded(within(x, LEAST_HALF, LIMITS.halfWidth))

/** How far the two sides are from one another at most, as a fraction of the mouth's width, and at which height. */
export const lopsided = ({ heights, left, right }: Outline, { half }: Frame): { by: number; at: number } =>
  heights.reduce(
    (worst, at, i) => {
      const by = Math.abs(left[i]! - right[i]!) / (2 * half)
      return by > worst.by ? { by, at } : worst
    },
    { by: 0, at: 0 },
  )

/**
 * Few handles that hold the outline: the mean of both sides, over the half mouth. The rim's is 1 by what is marked. More
 * are set where the curve through them (the one that the vessel is drawn by) is farthest off.
 * @returns heights rising from 0 to 1, half-widths within the document's limits
 */
export const handlesOf = ({ heights, left, right }: Outline, { half }: Frame): ProfilePoint[] => {
  const mean = heights.map((_, i) => (left[i]! + right[i]!) / 2 / half)
  const low = mean.slice(0, 3).sort((a, b) => a - b)
  const points: ProfilePoint[] = [
    [0, halfWithin(low[low.length >> 1] ?? 1)],
    [1, 1],
  ]
  while (points.length < MOST_HANDLES) {
    const curve = monotoneCurve(points)
    let [worst, by] = [-1, TOLERANCE]
    heights.forEach((at, i) => {
      const off = Math.abs(alongCurve(curve, at) - mean[i]!)
      if (off > by && points.every(([h]) => Math.abs(h - at) >= APART)) [worst, by] = [i, off]
    })
    if (worst < 0) break
    points.push([rounded(heights[worst]!), halfWithin(mean[worst]!)])
    points.sort((a, b) => a[0] - b[0])
  }
  return points
}

/**
 * A handle at another height or width: between its neighbours, the lowest at the base, the highest at the rim, which is 1.
 * What is no number leaves it as it was.
 */
export const moveHandle = (
  handles: readonly ProfilePoint[],
  i: number,
  to: { at?: number; half?: number },
): ProfilePoint[] =>
  handles.map(([h, w], k): ProfilePoint => {
    if (k !== i || i === handles.length - 1) return [h, w]
    const [below, above] = [handles[i - 1]?.[0], handles[i + 1]![0]]
    const at = i === 0 ? 0 : within(given(to.at, h), below! + LEAST_GAP, above - LEAST_GAP)
    return [rounded(at), halfWithin(given(to.half, w))]
  })

/** A handle more, half way to the next above and on the curve; the same where there is no room for one. */
export const addHandle = (handles: readonly ProfilePoint[], i: number): ProfilePoint[] => {
  const [a, b] = [handles[i], handles[i + 1]]
  if (!a || !b || b[0] - a[0] < 2 * LEAST_GAP || handles.length >= LIMITS.profilePoints) return [...handles]
  const at = rounded((a[0] + b[0]) / 2)
  return [...handles.slice(0, i + 1), [at, halfWithin(alongCurve(monotoneCurve(handles), at))], ...handles.slice(i + 1)]
}

/** Without a handle; base and rim stay. */
export const dropHandle = (handles: readonly ProfilePoint[], i: number): ProfilePoint[] =>
  handles.filter((_, k) => k !== i || i === 0 || i === handles.length - 1)

/** The measure of the vessel that is known, mm. */
export interface Known {
  of: 'width' | 'height'
  mm: number
}

/** What is known of a vessel after its photo: sizes in mm; a null profile is a cylinder. */
export interface Measured {
  plan: VesselPlan
  width: number
  depth: number
  height: number
  profile: ProfilePoint[] | null
}

/**
 * The vessel of an outline, by one measure that is known; the other follows from the photo. A round vessel is as deep as
 * it is wide, of the others the depth is not seen. Lengths to a tenth of a millimetre.
 */
export const measuredVessel = (
  frame: Frame,
  handles: readonly ProfilePoint[],
  known: Known,
  { plan, depth }: { plan: VesselPlan; depth: number },
): Measured => {
  const tenth = (mm: number): number => Math.max(LIMITS.size_mm, Math.round(mm * 10) / 10)
  const each = known.mm / (known.of === 'width' ? frame.half * 2 : frame.height)
  const width = tenth(known.of === 'width' ? known.mm : frame.half * 2 * each)
  const height = tenth(known.of === 'height' ? known.mm : frame.height * each)
  const straight = handles.every(([, w]) => Math.abs(w - 1) <= STRAIGHT)
  return {
    plan,
    width,
    depth: plan === 'round' ? width : depth,
    height,
    profile: straight ? null : handles.map(([h, w]) => [h, halfWithin(w)]),
  }
}
