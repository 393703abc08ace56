import type { Point2 } from '../../arrangement/index.ts'
import { CAPTION, LETTERING, TOKENS } from '../theme/tokens.ts'
import type { Box } from './labels.ts'

export type Pen = CanvasRenderingContext2D

/** Line weights by meaning, CSS px: ratios after ISO 128 and 129-1, two-tone marks ours. */
export const WEIGHT = { outline: 1.1, dimension: 0.8, centre: 0.7, rim: 0.7, hidden: 0.8 } as const
export const DASH = {
  /** ISO 128-2, long-dashed dotted line. */
  centre: [14, 3, 2.5, 3],
  /** ISO 128-2, dashed. */
  hidden: [5, 3],
  rim: [9, 3],
  /** ISO 128-2, long-dashed double-dotted line: an alternative position. */
  phantom: [12, 3, 2, 3, 2, 3],
  dropped: [2, 3],
  mark: [6, 4],
} satisfies Record<string, number[]>

/** Two tones over flowers: core width on halo width. */
export const TONES = {
  select: { core: 1.2, halo: 3 },
  lit: { core: 0.8, halo: 2.2 },
  mark: { core: 1.3, halo: 3.2, dash: DASH.mark },
  phantom: { core: 1, halo: 2.6, dash: DASH.phantom },
  dropped: { core: 1, halo: 2.4, dash: DASH.dropped },
  leader: { core: 0.9, halo: 2.6 },
  handle: { core: 1.4, halo: 4 },
} satisfies Record<string, Tone>
export interface Tone {
  core: number
  halo: number
  dash?: number[]
}

export const LETTER_PX = 12
export const lettering = (weight = 470, px = LETTER_PX): string => `${weight} ${px}px ${LETTERING}`
export const caption = (px = 13): string => `italic 400 ${px}px ${CAPTION}`

const snap = (v: number): number => Math.floor(v) + 0.5

export interface LineLook {
  colour?: string
  width?: number
  dash?: number[]
}

/** A straight line; level and upright ones fall on whole px. */
export const line = (pen: Pen, x1: number, y1: number, x2: number, y2: number, look: LineLook = {}): void => {
  const [ax, bx] = Math.abs(x1 - x2) < 0.01 ? [snap(x1), snap(x1)] : [x1, x2]
  const [ay, by] = Math.abs(y1 - y2) < 0.01 ? [snap(y1), snap(y1)] : [y1, y2]
  pen.beginPath()
  pen.moveTo(ax, ay)
  pen.lineTo(bx, by)
  pen.lineWidth = look.width ?? WEIGHT.dimension
  pen.strokeStyle = look.colour ?? TOKENS.ink2
  pen.setLineDash(look.dash ?? [])
  pen.stroke()
  pen.setLineDash([])
}

/** Strokes the present path in two tones: a halo, and a core on it. */
export const strokeTwo = (pen: Pen, tone: Tone, path?: Path2D): void => {
  const stroke = (): void => (path ? pen.stroke(path) : pen.stroke())
  pen.lineJoin = 'round'
  pen.lineCap = 'round'
  pen.setLineDash([])
  pen.globalAlpha = 0.92
  pen.strokeStyle = TOKENS.halo
  pen.lineWidth = tone.halo
  stroke()
  pen.globalAlpha = 1
  pen.lineCap = 'butt'
  pen.strokeStyle = TOKENS.core
  pen.lineWidth = tone.core
  pen.setLineDash(tone.dash ?? [])
  stroke()
  pen.setLineDash([])
}

export const pathOf = (pen: Pen, points: readonly Point2[], closed = false): void => {
  pen.beginPath()
  points.forEach(([x, y], i) => {
    if (i === 0) pen.moveTo(x, y)
    else pen.lineTo(x, y)
  })
  if (closed) pen.closePath()
}

/** A slim filled arrow whose tip is at (x, y), `angle` in radians the way it points (ISO 129-1). */
export const arrow = (pen: Pen, x: number, y: number, angle: number, colour: string, long = 8, half = 1.55): void => {
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  pathOf(
    pen,
    [
      [x, y],
      [x - long * c - half * s, y - long * s + half * c],
      [x - long * c + half * s, y - long * s - half * c],
    ],
    true,
  )
  pen.fillStyle = colour
  pen.fill()
}

export interface TextLook {
  align?: CanvasTextAlign
  colour?: string
  font?: string
  /** Paper under the letters. */
  plate?: boolean
  /** Radians. */
  turned?: number
}

/** Letters on their line, height over it and depth below, as parts of their size. Ours, for our two faces. */
const [RISE, FALL] = [0.8, 0.25]

/** Sets words. @returns the upright rectangle that they take up */
export const text = (pen: Pen, x: number, y: number, words: string, look: TextLook = {}): Box => {
  pen.save()
  pen.translate(x, y)
  if (look.turned) pen.rotate(look.turned)
  pen.font = look.font ?? lettering()
  pen.textAlign = look.align ?? 'left'
  pen.textBaseline = 'alphabetic'
  if (look.plate) {
    pen.lineJoin = 'round'
    pen.lineWidth = 4
    pen.strokeStyle = TOKENS.paper
    pen.strokeText(words, 0, 0)
  }
  pen.fillStyle = look.colour ?? TOKENS.ink
  pen.fillText(words, 0, 0)
  const wide = pen.measureText(words).width
  pen.restore()
  const px = Number(/(\d+)px/.exec(look.font ?? '')?.[1] ?? LETTER_PX)
  const left = look.align === 'center' ? -wide / 2 : look.align === 'right' ? -wide : 0
  return look.turned
    ? { x: x - RISE * px, y: y + left, width: (RISE + FALL) * px, height: wide }
    : { x: x + left, y: y - RISE * px, width: wide, height: (RISE + FALL) * px }
}

const ALONG = { right: 0, down: Math.PI / 2, left: Math.PI, up: -Math.PI / 2 } as const

/**
 * A level dimension between x1 and x2 at height y; extension lines come from `from`. The figure stands beside the axis, which
 * would strike it through; where it has no room between the arrows, outside them (ISO 129-1).
 * @returns the rectangle of the figure
 */
export const levelDimension = (
  pen: Pen,
  [x1, x2]: Point2,
  y: number,
  from: number,
  words: string,
  axisX: number,
): Box => {
  const beyond = y > from ? 5 : -5
  for (const x of [x1, x2]) line(pen, x, from, x, y + beyond)
  line(pen, x1, y, x2, y)
  arrow(pen, x1, snap(y), ALONG.left, TOKENS.ink2)
  arrow(pen, x2, snap(y), ALONG.right, TOKENS.ink2)
  pen.font = lettering()
  const half = pen.measureText(words).width / 2
  const clear = half + 6
  const middle = (x1 + x2) / 2
  const beside = Math.abs(middle - axisX) < clear ? axisX - clear : middle
  const inside = beside - half >= x1 + 9 && beside + half <= x2 - 9
  const at = inside ? beside : x2 + 8 + half
  return text(pen, at, inside ? y - 4 : y + 4, words, { align: 'center', plate: true })
}

/**
 * An upright dimension between y1 (above) and y2 at x; extension lines come from `from`, or there are none.
 * @returns the rectangle of the figure
 */
export const uprightDimension = (
  pen: Pen,
  [y1, y2]: Point2,
  x: number,
  from: [number | null, number | null],
  words: string,
): Box => {
  if (from[0] !== null) line(pen, from[0], y1, x + 5, y1)
  if (from[1] !== null) line(pen, from[1], y2, x + 5, y2)
  line(pen, x, y1, x, y2)
  // Too little room between the limits: the arrows stand outside them (ISO 129-1).
  const inside = y2 - y1 >= 20
  arrow(pen, snap(x), y1, inside ? ALONG.up : ALONG.down, TOKENS.ink2)
  arrow(pen, snap(x), y2, inside ? ALONG.down : ALONG.up, TOKENS.ink2)
  return text(pen, x - 4, (y1 + y2) / 2, words, { align: 'center', plate: true, turned: -Math.PI / 2 })
}
