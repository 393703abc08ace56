import type { Point3 } from '../../../arrangement/index.ts'
import { type LeafForm, PLAIN_LEAF } from '../leaf.ts'
import { frameAt, type Line } from '../line.ts'
import { add, along, cross, dot, type Frame, scale, turned, unit } from '../vector.ts'

export interface LeafPlace extends Partial<LeafForm> {
  /** How far it stands off: 0 along the stem … 1 square to it … and `rise` along it, below 0 hanging. */
  spread?: number
  rise?: number
  /** Distance of its foot from the middle of the stem, mm. */
  clear?: number
  /** Turn about its own length, radians; 0 faces the light above. */
  roll?: number
}

/** A leaf at a place of a stem, at azimuth `turn`. mm. */
export const leafAt = (f: Frame, turn: number, length: number, width: number, form: LeafPlace = {}): LeafForm => {
  const { spread = 0.85, rise = 0.6, clear = 0, roll = 0, ...rest } = form
  const out = turned(f, Math.cos(turn), Math.sin(turn), 0)
  const direction = unit(add(scale(out, spread), scale(f.w, rise)))
  // A leaf turns its face to the light: between the way the stem grows and straight up.
  const light: Point3 = along(f.w, [0, 0, 1], 0.5)
  const above = unit(along(light, direction, -dot(light, direction)), out)
  const face = along(scale(above, Math.cos(roll)), cross(direction, above), Math.sin(roll))
  return { o: along(f.o, out, clear), along: direction, face, length, width, outline: 'leaf', ...PLAIN_LEAF, ...rest }
}

/** A leaf on a stem at s mm from its cut end, at azimuth `turn`. */
export const leafOn = (
  line: Line,
  s: number,
  turn: number,
  length: number,
  width: number,
  form: LeafPlace = {},
): LeafForm => leafAt(frameAt(line, s), turn, length, width, form)
