import type { Point3 } from '../../src/arrangement/index.ts'
import { type Builder, TISSUE_NUMBER } from '../../src/geometry/habits/builder.ts'

export interface Bounds {
  least: Point3
  most: Point3
  middle: Point3
  /** Half the diagonal. */
  half: number
}
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
