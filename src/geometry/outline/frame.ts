import type { Point2 } from '../../arrangement/index.ts'
import type { Marks } from './types.ts'

/** The vessel's own axes on the photo: `up` along its axis, `across` to the right of it, both of length 1. */
export interface Frame {
  foot: Point2
  up: Point2
  across: Point2
  /** Base to rim along the axis, pixels. */
  height: number
  /** Half of the mouth across the axis, pixels. */
  half: number
  /** How far the base line falls to the right, degrees: the roll of the camera. */
  tilt_deg: number
}

/** Smaller than this, nothing can be measured, pixels. Ours. */
export const LEAST = { height: 16, half: 6 } as const

/**
 * The axis runs from the middle of the base to the middle of the mouth; widths are taken square to it, so a camera that
 * was held askew does no harm. Null where the marks lie too near to one another, or the rim's sides are swapped.
 */
export const frameOf = ({ left, right, foot }: Marks): Frame | null => {
  const [x, y] = [(left[0] + right[0]) / 2 - foot[0], (left[1] + right[1]) / 2 - foot[1]]
  const height = Math.hypot(x, y)
  if (!(height >= LEAST.height)) return null
  const up: Point2 = [x / height, y / height]
  const across: Point2 = [-up[1], up[0]]
  const half = ((right[0] - left[0]) * across[0] + (right[1] - left[1]) * across[1]) / 2
  if (!(half >= LEAST.half)) return null
  return { foot, up, across, height, half, tilt_deg: (Math.atan2(across[1], across[0]) * 180) / Math.PI }
}

/** The pixel at a height (fraction) and so many pixels to the right of the axis. */
export const pointAt = ({ foot, up, across, height }: Frame, at: number, aside: number): Point2 => [
  foot[0] + up[0] * height * at + across[0] * aside,
  foot[1] + up[1] * height * at + across[1] * aside,
]

/** Height (fraction) and pixels to the right of the axis of a place on the photo. */
export const placeIn = ({ foot, up, across, height }: Frame, [x, y]: Point2): { at: number; aside: number } => {
  const [dx, dy] = [x - foot[0], y - foot[1]]
  return { at: (dx * up[0] + dy * up[1]) / height, aside: dx * across[0] + dy * across[1] }
}
