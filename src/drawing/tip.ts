import type { ResolvedStem } from '../geometry/index.ts'

/** Where a stem ends, mm: the last point of its curve. */
export const tipOf = ({ curve }: ResolvedStem): [number, number, number] => {
  const n = curve.points.length
  return [curve.points[n - 3]!, curve.points[n - 2]!, curve.points[n - 1]!]
}
