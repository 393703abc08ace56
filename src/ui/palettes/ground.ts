import { underLight } from '../../colour/index.ts'
import { bareScene, roomMarks } from '../../drawing/index.ts'
import { resolveArrangement } from '../../geometry/index.ts'
import type { PaintedPicture } from '../../state/index.ts'
import { drawMarks } from '../draw-marks.ts'

/** A wall behind the table: a middle grey without chroma, so that it tints no flower and both pale and dark ones stand off it. Ours. */
const WALL = '#8d8d8d'
/** From one line of hatching to the next, and a hairline, of the picture's width. Ours. */
const HATCH = 1 / 110
const HAIR = 1 / 480

/**
 * Wall, table in its linen and the shade on it, as they lie behind a painted picture, all in the light of the setting. Nothing
 * else stands on the table: palettes are held beside each other, not tables.
 */
export const paintGround = (pen: CanvasRenderingContext2D, painted: PaintedPicture): void => {
  const { frame, angle, document, width, height } = painted
  const { light } = document.setting
  const resolved = resolveArrangement(document)
  pen.fillStyle = underLight(WALL, light)
  pen.fillRect(0, 0, width, height)
  const step_mm = (width * HATCH) / frame.scale
  const marks = roomMarks(resolved, bareScene(resolved), angle, { step_mm, wall: WALL })
  drawMarks(pen, marks, frame, light, Math.max(1, width * HAIR))
}
