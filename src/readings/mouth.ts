import type { Vessel } from '../arrangement/index.ts'
import {
  type Axes,
  COVER_WIDTH,
  type Cover,
  coverParts,
  coverPixel,
  createCover,
  type Grid,
  innerSection,
  isFull,
  outerSection,
  reachIn,
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
    const axes = viewAxes({ turn: turnOf(way), pitch: 45 })
    const [c, s] = [axes.right[0], -axes.right[1]]
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
