import type { Point2 } from '../../arrangement/index.ts'
import { type Frame, placeIn, pointAt } from './frame.ts'
import { median } from './ground.ts'
import type { Marks, Outline } from './types.ts'

/** The corners of the rim lie in the highest part of what is found. Ours. */
const TOP = 0.08
/** The rim is where it is first so wide, of what is seen that much lower: what sticks out above it is not. Ours. */
const RIM = 0.5
/** The base is looked for so near to the axis, of the mouth's width. Ours. */
const NEAR_AXIS = 0.12
/** The side right below the rim is told by two bands of this height, fraction. Ours. */
const BAND = 0.06

/** The row of the rim: neither specks above it nor a rim askew that begins with a corner put it too high. */
const rimRow = (ys: readonly number[], top: number, reach: number): number => {
  const wide = new Map<number, number>()
  for (const y of ys) wide.set(y, (wide.get(y) ?? 0) + 1)
  const wideAt = (y: number): number => wide.get(Math.round(y)) ?? 0
  let y = top
  while (wideAt(y) < RIM * wideAt(y + reach)) y++
  return y
}

/**
 * Rim and base of a patch.
 * @param patch what surely stands before the wall: how deep it goes
 * @param whole with its darker tones, which are no shadow as high up as the rim: how far that reaches to either side
 */
export const cornersOf = (patch: readonly number[], whole: readonly number[], width: number): Marks => {
  const placesOf = (those: readonly number[]) => those.map((i): Point2 => [i % width, Math.floor(i / width)])
  const places = placesOf(patch)
  const ys = places.map(([, y]) => y)
  const [top, bottom] = [ys.reduce((a, b) => Math.min(a, b)), ys.reduce((a, b) => Math.max(a, b))]
  const reach = (bottom - top) * TOP
  const rim = rimRow(ys, top, reach)
  const high = placesOf(whole).filter(([, y]) => Math.abs(y - rim) <= reach)
  const corner = (side: 1 | -1): Point2 =>
    high.reduce((best, p) => (side * p[0] - p[1] > side * best[0] - best[1] ? p : best))
  const [left, right]: [Point2, Point2] = [corner(-1), [corner(1)[0] + 1, corner(1)[1]]]
  // The base lies square below the rim: so a shadow to one side does not draw it there.
  const middle: Point2 = [(left[0] + right[0]) / 2, (left[1] + right[1]) / 2]
  const long = Math.hypot(right[0] - left[0], right[1] - left[1])
  const down: Point2 = [-(right[1] - left[1]) / long, (right[0] - left[0]) / long]
  const deep = places.reduce((most, [x, y]) => {
    const [dx, dy] = [x + 0.5 - middle[0], y + 0.5 - middle[1]]
    const aside = Math.abs(dx * down[1] - dy * down[0])
    return aside < long * NEAR_AXIS ? Math.max(most, dx * down[0] + dy * down[1]) : most
  }, 0)
  return { left, right, foot: [middle[0] + down[0] * (deep + 0.5), middle[1] + down[1] * (deep + 0.5)] }
}

/**
 * The corners of the rim where the traced sides come up to it, finer than the cells they were found in; a corner from which
 * its side is farther off than `most` pixels stays.
 */
export const sharperCorners = (marks: Marks, frame: Frame, outline: Outline, most: number): Marks => {
  const about = (side: readonly number[], from: number, to: number): number =>
    median(side.filter((_, j) => outline.heights[j]! >= from && outline.heights[j]! <= to))
  const corner = (mark: Point2, side: readonly number[], way: 1 | -1): Point2 => {
    const [high, low] = [about(side, 1 - BAND, 1), about(side, 1 - 2 * BAND, 1 - BAND)]
    const { at, aside } = placeIn(frame, mark)
    const to = way * (high + (high - low) / 2)
    return Math.abs(to - aside) <= most ? pointAt(frame, at, to) : mark
  }
  return { ...marks, left: corner(marks.left, outline.left, -1), right: corner(marks.right, outline.right, 1) }
}
