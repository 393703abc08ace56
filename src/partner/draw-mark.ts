import type { Light } from '../arrangement/index.ts'
import { underLight } from '../colour/index.ts'
import { ellipsePoints, type Mark, type Place } from '../drawing/index.ts'

/**
 * Draws one vector piece of the room on a canvas, in a light.
 * @param place where a point in mm lies, dots
 * @param hair dots of a hairline
 */
export const drawMark = (
  pen: CanvasRenderingContext2D,
  mark: Mark,
  place: (at: Place) => Place,
  light: Light,
  hair: number,
): void => {
  pen.beginPath()
  for (const at of mark.kind === 'ellipse' ? ellipsePoints(mark) : mark.points) pen.lineTo(...place(at))
  if (mark.kind === 'polygon') {
    pen.fillStyle = underLight(mark.fill, light)
    pen.fill()
  } else {
    pen.strokeStyle = underLight(mark.colour, light)
    pen.lineWidth = mark.weight * hair
    pen.stroke()
  }
}
