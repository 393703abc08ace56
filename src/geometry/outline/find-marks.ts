import type { Point2 } from '../../arrangement/index.ts'
import { bulgeOf, flatten } from './bulge.ts'
import { frameOf, pointAt } from './frame.ts'
import { distance, evidenceInRow, median, middleOf, sampleInto, stepOf, toOklab } from './ground.ts'
import { traceOutline } from './trace.ts'
import type { Marks, Photo } from './types.ts'

/** Longest side of what is looked at, pixels: enough to find the thing, not to measure it. Ours. */
const SIDE = 240
/** The wall is looked for in this share of the width, at both ends of a row. Ours. */
const WALL = 0.05
/** What is looked for covers at least this share of the photo. Ours. */
const LEAST_SHARE = 0.004
/** The corners of the rim lie in the highest part of what is found. Ours. */
const TOP = 0.08
/** The base is looked for so near to the axis, of the mouth's width. Ours. */
const NEAR_AXIS = 0.12
/** What is surely no shadow has to make up this share of what stands off; else the vessel is as grey as a shadow. Ours. */
const SURE = 0.5

/** Where a person may begin who marks all by hand. */
export const marksByHand = ({ width, height }: Photo): Marks => ({
  left: [width * 0.35, height * 0.35],
  right: [width * 0.65, height * 0.35],
  foot: [width * 0.5, height * 0.7],
})

/** Pixels of the largest patch that hangs together, by index; empty where there is none. */
const largestPatch = (is: Uint8Array, width: number): number[] => {
  const left = Uint8Array.from(is)
  let best: number[] = []
  for (let start = 0; start < left.length; start++) {
    if (!left[start]) continue
    const patch = [start]
    left[start] = 0
    for (let k = 0; k < patch.length; k++) {
      const i = patch[k]!
      const x = i % width
      for (const to of [x > 0 ? i - 1 : -1, x < width - 1 ? i + 1 : -1, i - width, i + width])
        if (to >= 0 && left[to]) {
          left[to] = 0
          patch.push(to)
        }
    }
    if (patch.length > best.length) best = patch
  }
  return best
}

/**
 * @param patch what surely stands before the wall: how deep it goes
 * @param whole with its darker tones, which are no shadow as high up as the rim: how far that reaches to either side
 */
const cornersOf = (patch: readonly number[], whole: readonly number[], width: number): Marks => {
  const placesOf = (those: readonly number[]) => those.map((i): Point2 => [i % width, Math.floor(i / width)])
  const places = placesOf(patch)
  const ys = places.map(([, y]) => y)
  const [top, bottom] = [ys.reduce((a, b) => Math.min(a, b)), ys.reduce((a, b) => Math.max(a, b))]
  const reach = (bottom - top) * TOP
  const high = placesOf(whole).filter(([, y]) => y >= top - reach / 2 && y <= top + reach)
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
 * Rim and base of the largest thing that stands off from the wall, shadows left out where they can be told.
 * Null where nothing stands off, or what does goes beyond the photo.
 */
const largestThing = (photo: Photo): Marks | null => {
  const k = Math.max(1, Math.max(photo.width, photo.height) / SIDE)
  const [width, height] = [Math.floor(photo.width / k), Math.floor(photo.height / k)]
  const wall = Math.max(2, Math.round(width * WALL))
  if (width < 4 * wall || height < 8) return null
  const bulge = bulgeOf(photo)
  const rows = Array.from({ length: height }, (_, y) => {
    const row = new Float64Array(width * 3)
    for (let x = 0; x < width; x++) sampleInto(photo, (x + 0.5) * k - 0.5, (y + 0.5) * k - 0.5, row, x * 3)
    toOklab(row, 1)
    flatten(row, bulge, (x) => (x + 0.5) / width)
    return { row, ends: [middleOf(row, 0, wall), middleOf(row, width - wall, width)] as const }
  })
  const spread = rows.flatMap(({ row, ends }) => Array.from({ length: wall }, (_, x) => distance(row, x, ...ends[0])))
  const step = stepOf(median(spread))
  const patchBy = (shadows: boolean): number[] => {
    const is = new Uint8Array(width * height)
    rows.forEach(({ row, ends }, y) => {
      for (let x = 0; x < width; x++) {
        const off = evidenceInRow(row, x, ends, x / (width - 1), step, shadows)
        if (off > 0) is[y * width + x] = 1
      }
    })
    return largestPatch(is, width)
  }
  const enough = width * height * LEAST_SHARE
  const holds = (patch: readonly number[]): boolean =>
    patch.length >= enough &&
    patch.every((i) => i >= width && i < width * (height - 1) && i % width > 0 && i % width < width - 1)
  const [sure, all] = [patchBy(true), patchBy(false)]
  const patch = holds(sure) && (sure.length >= SURE * all.length || !holds(all)) ? sure : all
  if (!holds(patch)) return null
  const { left, right, foot } = cornersOf(patch, holds(all) ? all : patch, width)
  const full = ([x, y]: Point2): Point2 => [x * k, y * k]
  return { left: full(left), right: full(right), foot: full(foot) }
}

/**
 * Proposes rim and base of the vessel on a photo; the person puts them right. A shadow or a mirror image on the table that
 * was taken for a part of it has no edges: the base is where the edges begin.
 * @returns null where nothing stands off from the wall, or what does goes beyond the photo
 */
export const findMarks = (photo: Photo): Marks | null => {
  const marks = largestThing(photo)
  const frame = marks && frameOf(marks)
  const outline = frame && traceOutline(photo, frame)
  return outline ? { ...marks!, foot: pointAt(frame, outline.lowest, 0) } : marks
}
