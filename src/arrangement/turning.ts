import type { Point2, Point3 } from './types.ts'

/** Cosine and sine of an angle in degrees, exact at quarter turns. */
export const cosSin = (degrees: number): [number, number] => {
  const turned = ((degrees % 360) + 360) % 360
  if (turned % 90 === 0) return ([[1, 0], [0, 1], [-1, 0], [0, -1]] as [number, number][])[turned / 90 % 4]!
  const radians = (turned * Math.PI) / 180
  return [Math.cos(radians), Math.sin(radians)]
} // biome-ignore format: a table

/** Anticlockwise about the vertical axis, seen from above. */
export const turned = <P extends Point2 | Point3>([x, y, ...z]: P, [cos, sin]: [number, number]): P =>
  [x * cos - y * sin + 0, x * sin + y * cos + 0, ...z] as unknown as P

/** Mirrored in the upright plane through the axis that is seen edge-on, as a line up the middle, at this turn. */
export const mirrored = <P extends Point2 | Point3>(point: P, [cos, sin]: [number, number]): P => {
  const [x, y, ...z] = turned(point, [cos, sin])
  return turned([-x, y, ...z] as unknown as P, [cos, -sin])
}
