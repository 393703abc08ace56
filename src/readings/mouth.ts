import type { Vessel } from '../arrangement/index.ts'
import { type Axes, type Grid, innerSection, type Layer, outerSection, reachIn, viewAxes } from '../geometry/index.ts'
import { turnOf, WAYS } from './extents.ts'

/** Pixels across the mouth in the pictures from 45° above. */
export const MOUTH_SIDE = 64

export interface MouthView {
  grid: Grid
  axes: Axes
  /** Pixels of the open mouth. */
  pixels: Int32Array
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
    const pixels: number[] = []
    for (let r = 0; r < MOUTH_SIDE; r++)
      for (let col = 0; col < MOUTH_SIDE; col++) {
        const X = (col + 0.5 - MOUTH_SIDE / 2) * grid.mm
        const Y = (r + 0.5 - grid.zeroRow) * grid.mm * Math.SQRT2
        if (reachIn(vessel, inner, X * c + Y * s, -X * s + Y * c) <= 1) pixels.push(r * MOUTH_SIDE + col)
      }
    return { grid, axes, pixels: Int32Array.from(pixels) }
  })
}

/** Empties a picture of the mouth: nothing is nearer than the plane of the rim, which falls away as it goes up the picture. */
export const clearMouth = (layer: Layer, grid: Grid): void => {
  layer.owner.fill(0)
  for (let r = 0; r < grid.height; r++)
    layer.depth.fill(-(r + 0.5 - grid.zeroRow) * grid.mm, r * grid.width, (r + 1) * grid.width)
}
