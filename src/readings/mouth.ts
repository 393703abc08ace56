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
import { widestCircle } from './circle.ts'
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

const free = new Uint8Array(MOUTH_SIDE * MOUTH_SIDE)

/** The largest circle within the bare part of the mouth, as it lies in the plane of the rim: a row is √2 as deep there as it is seen from 45°. */
export const mouthGap = (cover: Cover, { grid, axes }: MouthView): MouthGap => {
  const side = MOUTH_SIDE
  for (let i = 0; i < free.length; i++) free[i] = isCovered(cover, i % side, Math.floor(i / side)) ? 0 : 1
  const { at, squared } = widestCircle(free, side, 2)
  const X = ((at % side) + 0.5 - side / 2) * grid.mm
  const Y = (Math.floor(at / side) + 0.5 - grid.zeroRow) * grid.mm * Math.SQRT2
  const [c, s] = [axes.right[0]!, -axes.right[1]!]
  return { centre: [X * c + Y * s, -X * s + Y * c], radius: Math.sqrt(squared) * grid.mm }
}
