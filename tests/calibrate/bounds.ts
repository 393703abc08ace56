import type { Point3 } from '../../src/arrangement/index.ts'
import { type Builder, TISSUE_NUMBER } from '../../src/geometry/habits/builder.ts'
import type { Eye } from './silhouette.ts'

export interface Bounds {
  least: Point3
  most: Point3
  middle: Point3
  /** Half the diagonal. */
  half: number
}
/** A square that holds what is seen in a view: its middle (in space) and half its side. */
export type Seen = Pick<Bounds, 'middle' | 'half'>
type Laid = Pick<Builder, 'positions' | 'triangles' | 'tissues' | 'vertices' | 'faces'>

/** Bounds of what is not bare stem; null when there is nothing. */
export const boundsOf = (b: Laid): Bounds | null => {
  const least: Point3 = [Infinity, Infinity, Infinity]
  const most: Point3 = [-Infinity, -Infinity, -Infinity]
  for (let t = 0; t < b.faces; t++) {
    if (b.tissues[t] === TISSUE_NUMBER.stem || b.tissues[t] === TISSUE_NUMBER.bark) continue
    for (let j = 0; j < 3; j++) {
      const i = 3 * b.triangles[3 * t + j]!
      for (let c = 0; c < 3; c++) {
        const p = b.positions[i + c]!
        if (p < least[c]!) least[c] = p
        if (p > most[c]!) most[c] = p
      }
    }
  }
  if (!Number.isFinite(least[0])) return null
  const middle: Point3 = [(least[0] + most[0]) / 2, (least[1] + most[1]) / 2, (least[2] + most[2]) / 2]
  return {
    least,
    most,
    middle,
    half: (Math.hypot(most[0] - least[0], most[1] - least[1], most[2] - least[2]) / 2) * 1.04,
  }
}

/** The square round what is not bare stem, seen in a view, with a little room for stand-ins that reach farther. */
export const seenFrom = (b: Laid, { right, up }: Eye): Seen => {
  let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity]
  const P = b.positions
  for (let t = 0; t < b.faces; t++) {
    if (b.tissues[t] === TISSUE_NUMBER.stem || b.tissues[t] === TISSUE_NUMBER.bark) continue
    for (let j = 0; j < 3; j++) {
      const i = 3 * b.triangles[3 * t + j]!
      const x = P[i]! * right[0] + P[i + 1]! * right[1] + P[i + 2]! * right[2]
      const y = P[i]! * up[0] + P[i + 1]! * up[1] + P[i + 2]! * up[2]
      if (x < x0) x0 = x
      if (x > x1) x1 = x
      if (y < y0) y0 = y
      if (y > y1) y1 = y
    }
  }
  const [x, y] = [(x0 + x1) / 2, (y0 + y1) / 2]
  const middle: Point3 = [right[0] * x + up[0] * y, right[1] * x + up[1] * y, right[2] * x + up[2] * y]
  return { middle, half: (Math.max(x1 - x0, y1 - y0) / 2) * 1.15 }
}
