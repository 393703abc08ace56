import type { Point2 } from '../../arrangement/index.ts'

/** A picture as sRGB bytes r, g, b, a, row by row, at least two pixels each way; opaque (a is not looked at). */
export interface Photo {
  rgba: Uint8ClampedArray
  width: number
  height: number
}

/**
 * What a person marks on the photo of a vessel: the rim at both sides, the middle of the base. In pixels from the upper left
 * corner, x right, y down.
 */
export interface Marks {
  left: Point2
  right: Point2
  foot: Point2
}

/** The edges of the vessel as traced, for heights (fraction, 0 at the base … 1 at the rim) from the base up. */
export interface Outline {
  heights: number[]
  /** Pixels from the axis, to the left and to the right of it; both above zero. */
  left: number[]
  right: number[]
  /** Share of the heights at which an edge stands off from its surround, 0–1. */
  clear: number
  /** Below this height (fraction) no edge is seen any more: the base is likely there. 0 where all is seen. */
  lowest: number
}
