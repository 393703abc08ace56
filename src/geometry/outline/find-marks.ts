import type { Point2 } from '../../arrangement/index.ts'
import { bulgeOf, flatten } from './bulge.ts'
import { cornersOf, sharperCorners } from './corners.ts'
import { frameOf, pointAt } from './frame.ts'
import { distance, evidenceInRow, median, middleOf, sampleInto, stepOf, toOklab } from './ground.ts'
import { largestPatch, standingOff } from './patch.ts'
import { traceOutline } from './trace.ts'
import type { Marks, Photo } from './types.ts'

/** Longest side of what is looked at, pixels: enough to find the thing, not to measure it. Ours. */
const SIDE = 240
/** Places that are looked at in each pixel of that, each way. */
const PLACES = 3
/** A corner is put where the trace has it, if that is no farther off than so many of those pixels. Ours. */
const SHARPER = 2.5
/** The wall is looked for in this share of the width, at both ends of a row. Ours. */
const WALL = 0.05
/** What is looked for covers at least this share of the photo. Ours. */
const LEAST_SHARE = 0.004
/** What is surely no shadow has to make up this share of what stands off; else the vessel is as grey as a shadow. Ours. */
const SURE = 0.5

/** Where a person may begin who marks all by hand. */
export const marksByHand = ({ width, height }: Photo): Marks => ({
  left: [width * 0.35, height * 0.35],
  right: [width * 0.65, height * 0.35],
  foot: [width * 0.5, height * 0.7],
})

/**
 * Sets pixel `x` of a row to what a cell of `k` by `k` pixels of the photo shows, sRGB bytes: the middle of what is seen at
 * nine places of it, channel by channel.
 * Noise and the blocks of a JPEG fall out; an edge through the cell stays sharp, which a mean would spread outward.
 */
const cellInto = (photo: Photo, x: number, y: number, k: number, row: Float64Array): void => {
  const seen = new Float64Array(3)
  const channels = [0, 1, 2].map(() => new Float64Array(PLACES * PLACES))
  for (let i = 0; i < PLACES * PLACES; i++) {
    const [u, v] = [x + ((i % PLACES) + 0.5) / PLACES, y + (Math.floor(i / PLACES) + 0.5) / PLACES]
    sampleInto(photo, u * k - 0.5, v * k - 0.5, seen.fill(0), 0)
    for (let c = 0; c < 3; c++) channels[c]![i] = seen[c]!
  }
  for (let c = 0; c < 3; c++) row[x * 3 + c] = channels[c]!.sort()[(PLACES * PLACES) >> 1]!
}

/** Side of what is looked at as one, pixels of the photo. */
const cellOf = ({ width, height }: Photo): number => Math.max(1, Math.max(width, height) / SIDE)

/**
 * Rim and base of the largest thing that stands off from the wall, shadows left out where they can be told.
 * Null where nothing stands off, or what does goes beyond the photo.
 */
const largestThing = (photo: Photo): Marks | null => {
  const k = cellOf(photo)
  const [width, height] = [Math.floor(photo.width / k), Math.floor(photo.height / k)]
  const wall = Math.max(2, Math.round(width * WALL))
  if (width < 4 * wall || height < 8) return null
  const bulge = bulgeOf(photo)
  const rows = Array.from({ length: height }, (_, y) => {
    const row = new Float64Array(width * 3)
    for (let x = 0; x < width; x++) cellInto(photo, x, y, k, row)
    toOklab(row, 1)
    flatten(row, bulge, (x) => (x + 0.5) / width)
    return { row, ends: [middleOf(row, 0, wall), middleOf(row, width - wall, width)] as const }
  })
  const spread = rows.flatMap(({ row, ends }) => Array.from({ length: wall }, (_, x) => distance(row, x, ...ends[0])))
  const step = stepOf(median(spread))
  const patchBy = (shadows: boolean): number[] => {
    const off = new Float64Array(width * height)
    rows.forEach(({ row, ends }, y) => {
      for (let x = 0; x < width; x++) off[y * width + x] = evidenceInRow(row, x, ends, x / (width - 1), step, shadows)
    })
    return largestPatch(standingOff(off, width), width)
  }
  const enough = width * height * LEAST_SHARE
  const holds = (patch: readonly number[]): boolean =>
    patch.length >= enough &&
    patch.every((i) => i >= width && i < width * (height - 1) && i % width > 0 && i % width < width - 1)
  const [sure, all] = [patchBy(true), patchBy(false)]
  const patch = holds(sure) && (sure.length >= SURE * all.length || !holds(all)) ? sure : all
  if (!holds(patch)) return null
  // What is largest with its shadows may be another thing.
  const whole = holds(all) && all.includes(patch[0]!) ? all : patch
  const { left, right, foot } = cornersOf(patch, whole, width)
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
  if (!outline) return marks
  const sharper = sharperCorners(marks!, frame!, outline, SHARPER * cellOf(photo))
  return { ...sharper, foot: pointAt(frame!, outline.lowest, 0) }
}
