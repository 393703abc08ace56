import type { Light } from '../arrangement/index.ts'
import { underLight } from '../colour/index.ts'
import { ellipsePoints, type Frame, type Mark, type Place } from '../drawing/index.ts'

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
  const trace = (points: readonly Place[]): void => {
    pen.beginPath()
    for (const [x, y] of points) pen.lineTo((x - left) * scale, (top - y) * scale)
  }
  pen.lineJoin = 'round'
  for (const mark of marks) {
    trace(mark.kind === 'ellipse' ? ellipsePoints(mark) : mark.points)
    if (mark.kind === 'polygon') {
      pen.fillStyle = underLight(mark.fill, light)
      pen.fill()
    } else {
      pen.strokeStyle = underLight(mark.colour, light)
      pen.lineWidth = mark.weight * hair
      pen.stroke()
    }
  }
}
