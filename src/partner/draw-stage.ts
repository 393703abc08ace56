import type { TableShape } from '../arrangement/index.ts'
import { PITCH } from './protocol.ts'
import type { Seen } from './turntable.ts'

const INK = '#191919'
const LINE = '#757575'
const RADIANS = Math.PI / 180

/** The table's edge seen from a turn: points on the plane it stands on, mm right and up from the axis of the vessel. */
const edgeOf = (table: TableShape, turn: number, ground: number): [number, number][] => {
  const [cos, sin, tilt] = [Math.cos(turn * RADIANS), Math.sin(turn * RADIANS), Math.sin(PITCH * RADIANS)]
  const at = (x: number, y: number): [number, number] => [x * cos - y * sin, ground + (x * sin + y * cos) * tilt]
  if (table.shape === 'rectangular') {
    const [l, w] = [table.length / 2, table.width / 2]
    return [at(-l, -w), at(l, -w), at(l, w), at(-l, w)]
  }
  const r = table.diameter / 2
  return Array.from({ length: 121 }, (_, i) => at(r * Math.cos(i * 3 * RADIANS), r * Math.sin(i * 3 * RADIANS)))
}

/**
 * Draws a picture with the table that it stands on, in thin ink, and the shadow of the vessel as an engraver lays it: level
 * lines. The lines are of the same weight whatever the picture's own size.
 * @param foot half width of the vessel where it stands, mm
 */
export const drawStage = (
  canvas: HTMLCanvasElement,
  { image, frame, view }: Seen,
  { table, foot, height }: { table: TableShape; foot: number; height: number },
  ratio: number,
): void => {
  const [w, h] = [Math.round(canvas.clientWidth * ratio), Math.round(canvas.clientHeight * ratio)]
  if (canvas.width !== w || canvas.height !== h) {
    canvas.width = w
    canvas.height = h
  }
  const pen = canvas.getContext('2d')
  if (!pen) return
  const scale = w / (frame.right - frame.left)
  const place = (x: number, y: number): [number, number] => [(x - frame.left) * scale, (frame.top - y) * scale]
  const ground = -height * Math.cos(PITCH * RADIANS)
  pen.clearRect(0, 0, w, h)

  pen.lineWidth = ratio
  pen.strokeStyle = LINE
  pen.beginPath()
  for (const [x, y] of edgeOf(table, view.turn, ground)) pen.lineTo(...place(x, y))
  pen.closePath()
  pen.stroke()

  const [cx, cy] = place(foot * 0.25, ground)
  const [rx, ry] = [foot * 1.7 * scale, foot * 1.7 * scale * Math.sin(PITCH * RADIANS) * 1.15]
  pen.strokeStyle = INK
  pen.lineWidth = 0.6 * ratio
  pen.beginPath()
  for (let y = -ry; y <= ry; y += 3 * ratio) {
    const half = rx * Math.sqrt(Math.max(0, 1 - (y / ry) ** 2))
    pen.moveTo(cx - half, Math.round(cy + y) + 0.5)
    pen.lineTo(cx + half, Math.round(cy + y) + 0.5)
  }
  pen.stroke()

  const own = document.createElement('canvas')
  own.width = image.width
  own.height = image.height
  own.getContext('2d')?.putImageData(image, 0, 0)
  pen.imageSmoothingQuality = 'high'
  pen.drawImage(own, 0, 0, w, h)
}
