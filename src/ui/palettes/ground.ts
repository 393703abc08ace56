import type { Arrangement } from '../../arrangement/index.ts'
import { hexOfLinear, linearOf, linearUnderLight, underLight } from '../../colour/index.ts'
import type { PaintedPicture } from '../../state/index.ts'

/** A wall behind the table: a middle grey without chroma, so that it tints no flower and both pale and dark ones stand off it. Ours. */
const WALL = '#8d8d8d'
/** Cloth that hangs from the edge gets less light than the top: so much of it. Ours. */
const HANGING = 0.72
/** Shade under the foot, of the light. Ours. */
const SHADE = 0.34

const RADIANS = Math.PI / 180

const dimmed = (hex: string, by: number, light: Arrangement['setting']['light']): string => {
  const [r, g, b] = linearUnderLight(linearOf(hex), light)
  return hexOfLinear([r * by, g * by, b * by])
}

/**
 * Wall, table in its linen and the shade that the vessel casts, as they lie behind a painted picture, all in the light of
 * the setting. The table has its size and the arrangement stands in the middle of it, seen under the angle of the picture.
 */
export const paintGround = (pen: CanvasRenderingContext2D, painted: PaintedPicture): void => {
  const { frame, angle, document, width, height } = painted
  const { light, linen, table } = document.setting
  const { scale } = frame
  const sine = Math.sin(angle.pitch * RADIANS)
  const x = -frame.left * scale
  // The foot of the vessel, on its axis.
  const y = (frame.top + document.vessel.height * Math.cos(angle.pitch * RADIANS)) * scale
  const [halfWide, halfDeep] =
    table.shape === 'round' ? [table.diameter / 2, table.diameter / 2] : [table.length / 2, table.width / 2]
  const across = halfWide * scale
  const back = halfDeep * sine * scale

  pen.fillStyle = underLight(WALL, light)
  pen.fillRect(0, 0, width, height)
  // The hanging cloth first: the top covers what is behind its front edge.
  pen.fillStyle = dimmed(linen, HANGING, light)
  pen.fillRect(x - across, y, across * 2, height)
  pen.fillStyle = underLight(linen, light)
  pen.beginPath()
  if (table.shape === 'round') pen.ellipse(x, y, across, back, 0, 0, 2 * Math.PI)
  else pen.rect(x - across, y - back, across * 2, back * 2)
  pen.fill()

  castShade(pen, document, x, y, scale, sine)
}

/** Light from the upper left, as in the drawing: a close shade under the foot and a wider, fainter one to the right. */
const castShade = (
  pen: CanvasRenderingContext2D,
  document: Arrangement,
  x: number,
  y: number,
  scale: number,
  sine: number,
): void => {
  const { vessel, setting } = document
  const foot = (vessel.width / 2) * (vessel.profile?.[0]?.[1] ?? 1) * scale
  const body = (vessel.width / 2) * scale
  const shade = dimmed(setting.linen, SHADE, setting.light)
  for (const [dx, rx, strength] of [
    [body * 0.5, body * 1.5, 0.34],
    [foot * 0.12, foot * 1.25, 0.6],
  ] as const) {
    pen.save()
    pen.translate(x + dx, y + rx * sine * 0.2)
    pen.scale(1, Math.max(0.09, sine))
    const soft = pen.createRadialGradient(0, 0, rx * 0.35, 0, 0, rx)
    soft.addColorStop(0, shade)
    soft.addColorStop(1, `${shade}00`)
    pen.globalAlpha = strength
    pen.fillStyle = soft
    pen.beginPath()
    pen.arc(0, 0, rx, 0, 2 * Math.PI)
    pen.fill()
    pen.restore()
  }
}
