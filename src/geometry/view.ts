import type { Point2, Point3 } from '../arrangement/index.ts'
import type { ViewAngle } from './types.ts'

const HALF_ROOT3 = Math.sqrt(3) / 2
/** Cosines of 0°, 30° … 330°, so that a quarter turn changes no digit. */
const COSINES = [1, HALF_ROOT3, 0.5, 0, -0.5, -HALF_ROOT3, -1, -HALF_ROOT3, -0.5, 0, 0.5, HALF_ROOT3]

/** Cosine and sine of an angle in degrees, exact at multiples of 30° up to rounding of √3. */
export const cosSin = (degrees: number): [cos: number, sin: number] => {
  const k = degrees / 30
  if (Number.isInteger(k)) {
    const i = ((k % 12) + 12) % 12
    return [COSINES[i]!, COSINES[(i + 9) % 12]!]
  }
  const r = (degrees * Math.PI) / 180
  return [Math.cos(r), Math.sin(r)]
}

/** Directions of a view in the arrangement's axes: to the right, up the picture, toward the eye. Unit vectors. */
export const viewAxes = ({ turn, pitch }: ViewAngle): { right: Point3; up: Point3; toward: Point3 } => {
  const [c, s] = cosSin(turn)
  const [cp, sp] = cosSin(pitch)
  return { right: [c, -s, 0], up: [s * sp, c * sp, cp], toward: [-s * cp, -c * cp, sp] }
}

/** A point as seen: [right, up, toward the eye], mm. */
export const projectPoint = (p: Point3, angle: ViewAngle): Point3 => {
  const { right, up, toward } = viewAxes(angle)
  return [
    p[0] * right[0] + p[1] * right[1],
    p[0] * up[0] + p[1] * up[1] + p[2] * up[2],
    p[0] * toward[0] + p[1] * toward[1] + p[2] * toward[2],
  ]
}

/** Where `p` goes when it is put at [right, up] in the elevation at `turn`; its distance from the eye stays. */
export const unprojectElevation = (p: Point3, turn: number, at: Point2): Point3 => {
  const [c, s] = cosSin(turn)
  const y = p[0] * s + p[1] * c
  return [at[0] * c + y * s, -at[0] * s + y * c, at[1]]
}

/** Where `p` goes when it is put at [right, up] in the plan at `turn`; its height stays. */
export const unprojectPlan = (p: Point3, turn: number, at: Point2): Point3 => {
  const [c, s] = cosSin(turn)
  return [at[0] * c + at[1] * s, -at[0] * s + at[1] * c, p[2]]
}
