import type { Point2, Vessel } from '../arrangement/index.ts'
import {
  type Axes,
  COVER_WIDTH,
  type Cover,
  coverParts,
  coverPixel,
  createCover,
  type Grid,
  innerSection,
  isCovered,
  isFull,
  outerSection,
  reachIn,
  typedAxes,
  viewAxes,
} from '../geometry/index.ts'
import { type Ready, turnOf, WAYS } from './extents.ts'

/** Pixels across the mouth in the pictures from 45° above. */
const MOUTH_SIDE = COVER_WIDTH

export interface MouthView {
  grid: Grid
  axes: Axes
  /** How many pixels the open mouth has, and the picture in which all others are covered. */
  pixels: number
  closed: Cover
}

/** Twelve ways round, from 45° above, each with the pixels in which the mouth would be seen if nothing stood in it. */
export const mouthViews = (vessel: Vessel): MouthView[] => {
  const rim = outerSection(vessel, 1)
  const grid: Grid = {
    width: MOUTH_SIDE,
    height: MOUTH_SIDE,
    mm: (2 * Math.hypot(rim.a, vessel.plan === 'rectangular' ? rim.b : 0) || 1) / MOUTH_SIDE,
    zeroRow: MOUTH_SIDE / 2,
  }
  grid.mm = Math.max(grid.mm, (2 * Math.max(rim.a, rim.b)) / MOUTH_SIDE)
  const inner = innerSection(vessel, 1)
  return Array.from({ length: WAYS }, (_, way) => {
    const axes = typedAxes(viewAxes({ turn: turnOf(way), pitch: 45 }))
    const [c, s] = [axes.right[0]!, -axes.right[1]!]
    const closed = createCover(MOUTH_SIDE)
    let pixels = 0
    for (let r = 0; r < MOUTH_SIDE; r++)
      for (let col = 0; col < MOUTH_SIDE; col++) {
        const X = (col + 0.5 - MOUTH_SIDE / 2) * grid.mm
        const Y = (r + 0.5 - grid.zeroRow) * grid.mm * Math.SQRT2
        if (reachIn(vessel, inner, X * c + Y * s, -X * s + Y * c) <= 1) pixels += 1
        else coverPixel(closed, col, r)
      }
    return { grid, axes, pixels, closed }
  })
}

/** Covers one view of the mouth with some of the stems; stops when nothing is left to cover. */
export const coverMouth = (
  cover: Cover,
  { grid, axes }: MouthView,
  ready: readonly Ready[],
  places: readonly number[],
): void => {
  for (const over of [true, false])
    for (const i of places) {
      if (isFull(cover)) return
      coverParts(cover, grid, axes, ready[i]!.parts, over)
    }
}

/** What one stem covers in every view: the words of the pictures, one after another, and where in each anything is. */
export interface MouthStamp {
  words: Cover
  /** For each view the first word with anything in it, and the one after the last. */
  ends: Uint16Array
}

/** Paints one stem alone, to be put into pictures again and again. */
export const stampMouth = (ready: Ready, mouths: readonly MouthView[]): MouthStamp => {
  const size = createCover(MOUTH_SIDE).length
  const words = new Int32Array(mouths.length * size)
  const ends = new Uint16Array(2 * mouths.length)
  mouths.forEach((view, way) => {
    const own = words.subarray(way * size, (way + 1) * size)
    coverMouth(own, view, [ready], [0])
    let [first, end] = [0, size]
    while (first < end && own[first] === 0) first += 1
    while (end > first && own[end - 1] === 0) end -= 1
    ends.set([first, end], 2 * way)
  })
  return { words, ends }
}

/** Covers one view with what a stem was found to cover. */
export const putMouth = (cover: Cover, way: number, { words, ends }: MouthStamp): void => {
  const at = way * cover.length
  for (let i = ends[2 * way]!; i < ends[2 * way + 1]!; i++) cover[i]! |= words[at + i]!
}

/** The widest circle that is bare in the mouth, from one side. */
export interface MouthGap {
  /** In the plan at turn 0, in the plane of the rim, mm. */
  centre: Point2
  /** mm; 0 where nothing is bare. */
  radius: number
}

/** Rows to the nearest covered pixel of the same column. */
const upright = new Uint8Array(MOUTH_SIDE * MOUTH_SIDE)

/**
 * The largest circle within the bare part of the mouth, as it lies in the plane of the rim: a row is √2 as deep there as
 * it is seen from 45°. Distances as in the gaps of the outline: along columns first, then a search along the row. It runs
 * from the middle of a pixel to the middle of the first covered one.
 */
export const mouthGap = (cover: Cover, { grid, axes }: MouthView): MouthGap => {
  const side = MOUTH_SIDE
  for (let c = 0; c < side; c++) {
    let since = 0
    for (let r = 0; r < side; r++) upright[r * side + c] = isCovered(cover, c, r) ? 0 : ++since
    since = 0
    for (let r = side - 1; r >= 0; r--) {
      const i = r * side + c
      since = upright[i] === 0 ? 0 : since + 1
      if (since < upright[i]!) upright[i] = since
    }
  }
  let [best, at] = [0, 0]
  for (let i = 0; i < upright.length; i++) {
    let d = 2 * upright[i]! ** 2
    const c = i % side
    for (let k = 1; k * k < d && d > best; k++) {
      const left = c - k < 0 ? 0 : upright[i - k]!
      const right = c + k >= side ? 0 : upright[i + k]!
      d = Math.min(d, k * k + 2 * Math.min(left, right) ** 2)
    }
    if (d > best) [best, at] = [d, i]
  }
  const X = ((at % side) + 0.5 - side / 2) * grid.mm
  const Y = (Math.floor(at / side) + 0.5 - grid.zeroRow) * grid.mm * Math.SQRT2
  const [c, s] = [axes.right[0]!, -axes.right[1]!]
  return { centre: [X * c + Y * s, -X * s + Y * c], radius: Math.sqrt(best) * grid.mm }
}
