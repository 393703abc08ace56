import type { Point3 } from '../../../arrangement/index.ts'
import { type LeafForm, PLAIN_LEAF } from '../leaf.ts'
import { frameAt, type Line } from '../line.ts'
import { add, along, scale, turned, unit } from '../vector.ts'

/** A leaf on a stem at s mm from its cut end, at azimuth `turn`, standing off by `spread` (0 along … 1 square). */
export const leafOn = (
  line: Line,
  s: number,
  turn: number,
  length: number,
  width: number,
  form: Partial<LeafForm> & { spread?: number; clear?: number } = {},
): LeafForm => {
  const f = frameAt(line, s)
  const { spread = 0.85, clear = 0, ...rest } = form
  const out = turned(f, Math.cos(turn), Math.sin(turn), 0)
  const direction = unit(add(scale(out, spread), scale(f.w, 0.6)))
  // A leaf turns its face to the light: between the way the stem grows and straight up.
  const face: Point3 = along(f.w, [0, 0, 1], 0.5)
  return { o: along(f.o, out, clear), along: direction, face, length, width, outline: 'leaf', ...PLAIN_LEAF, ...rest }
}
