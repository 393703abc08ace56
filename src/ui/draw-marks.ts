import type { Light } from '../arrangement/index.ts'
import type { Frame, Mark, Place } from '../drawing/index.ts'
import { drawMark } from '../partner/index.ts'

/**
 * Draws vector pieces of the room on a canvas, in a light.
 * @param frame what is seen: its upper left corner in mm, and dots per mm
 * @param hair dots of a hairline
 */
export const drawMarks = (
  pen: CanvasRenderingContext2D,
  marks: readonly Mark[],
  { left, top, scale }: Pick<Frame, 'left' | 'top' | 'scale'>,
  light: Light,
  hair: number,
): void => {
  const place = ([x, y]: Place): Place => [(x - left) * scale, (top - y) * scale]
  pen.lineJoin = 'round'
  for (const mark of marks) drawMark(pen, mark, place, light, hair)
}
