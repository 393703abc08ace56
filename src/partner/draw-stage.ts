import { clothMarks, type Place, type Scene } from '../drawing/index.ts'
import type { Resolved } from '../geometry/index.ts'
import { drawMark } from './draw-mark.ts'
import { PITCH } from './protocol.ts'
import type { Seen } from './turntable.ts'

/** A hairline, and from one line of hatching to the next, CSS px. Ours. */
const HAIR = 0.8
const HATCH = 3.2

/** What it stands on: the table in its linen, nothing else on it. */
export interface Ground {
  resolved: Resolved
  scene: Scene
}

/** The table with nothing laid. */
export const bareTable = (table: Scene['table'], linen: string): Scene => ({
  manner: 'round',
  table,
  linen,
  seats: 0,
  things: [],
  copies: [],
  under: {},
  noRoom: [],
})

/** Draws pictures with the table that each stands on, in the linen and the light of the design. */
export const createStage = (canvas: HTMLCanvasElement, { resolved, scene }: Ground) => {
  const sheet = document.createElement('canvas')
  return ({ image, frame, view }: Seen, ratio: number): void => {
    const [w, h] = [Math.round(canvas.clientWidth * ratio), Math.round(canvas.clientHeight * ratio)]
    if (canvas.width !== w || canvas.height !== h) {
      canvas.width = w
      canvas.height = h
    }
    const [pen, own] = [canvas.getContext('2d'), sheet.getContext('2d')]
    if (!pen || !own) return
    const scale = w / (frame.right - frame.left)
    const place = ([x, y]: Place): Place => [(x - frame.left) * scale, (frame.top - y) * scale]
    pen.clearRect(0, 0, w, h)
    const angle = { turn: view.turn, pitch: PITCH }
    for (const mark of clothMarks(resolved, scene, angle, (HATCH * ratio) / scale))
      drawMark(pen, mark, place, view.light, HAIR * ratio)
    sheet.width = image.width
    sheet.height = image.height
    own.putImageData(image, 0, 0)
    pen.imageSmoothingQuality = 'high'
    pen.drawImage(sheet, 0, 0, w, h)
  }
}
