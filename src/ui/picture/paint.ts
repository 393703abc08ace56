import type { Arrangement } from '../../arrangement/index.ts'
import type { Painter } from '../../state/index.ts'
import { type Font, type Item, type Measure, PAPER, SHEET } from './types.ts'

/** CSS families of the two faces, and their fallbacks, as the page has them. */
export interface Faces {
  capt: string
  lett: string
}

export const cssFont = (font: Font, faces: Faces): string =>
  `${font.italic ? 'italic ' : ''}${font.weight} ${font.size}px ${faces[font.face]}`

/** The page's own faces, loaded. Falls back to what the system has if a file can't be had. */
export const loadFaces = async (): Promise<Faces> => {
  const style = getComputedStyle(document.documentElement)
  const faces: Faces = {
    capt: style.getPropertyValue('--capt').trim() || 'Georgia, serif',
    lett: style.getPropertyValue('--lett').trim() || 'sans-serif',
  }
  const wanted: Font[] = [
    { face: 'capt', size: 40, weight: 500 },
    { face: 'capt', size: 40, weight: 400, italic: true },
    { face: 'lett', size: 40, weight: 470 },
    { face: 'lett', size: 40, weight: 620 },
  ]
  await Promise.allSettled(wanted.map((font) => document.fonts.load(cssFont(font, faces), 'Aé 1⌀')))
  return faces
}

/** Measures letters with a canvas of its own. */
export const canvasMeasure = (faces: Faces): Measure => {
  const pen = document.createElement('canvas').getContext('2d')
  if (!pen) throw new Error('this browser gives no canvas to draw on')
  return (text, font) => {
    pen.font = cssFont(font, faces)
    return pen.measureText(text).width
  }
}

interface Pixels {
  width: number
  height: number
  rgba: Uint8ClampedArray
}

const canvasOf = ({ width, height, rgba }: Pixels): HTMLCanvasElement => {
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, width)
  canvas.height = Math.max(1, height)
  if (width > 0 && height > 0)
    canvas.getContext('2d')?.putImageData(new ImageData(new Uint8ClampedArray(rgba), width, height), 0, 0)
  return canvas
}

const drawPlain = (pen: CanvasRenderingContext2D, item: Item, faces: Faces): void => {
  if (item.kind === 'text') {
    pen.font = cssFont(item.font, faces)
    pen.fillStyle = item.colour
    pen.textAlign = item.align === 'centre' ? 'center' : item.align
    pen.fillText(item.text, item.x, item.y)
  } else if (item.kind === 'line') {
    pen.strokeStyle = item.colour
    pen.lineWidth = item.weight
    pen.beginPath()
    pen.moveTo(...item.from)
    pen.lineTo(...item.to)
    pen.stroke()
  } else if (item.kind === 'shape') {
    pen.fillStyle = item.fill
    pen.beginPath()
    for (const [x, y] of item.points) pen.lineTo(x, y)
    pen.fill()
  } else if (item.kind === 'box') {
    const { x, y, w, h } = item.box
    if (item.fill) {
      pen.fillStyle = item.fill
      pen.fillRect(x, y, w, h)
    }
    pen.strokeStyle = item.stroke
    pen.lineWidth = item.weight
    pen.strokeRect(x, y, w, h)
  }
}

/** The scale of a first small drawing, by which the size of a plant on its plate is learnt, px per mm. Ours. */
const TRIAL = 0.5
/**
 * Plates are drawn so that each fills its box by the greater part, and yet a large flower stays larger than a small one:
 * between the scale at which it would fill the box and the least of those scales, so far toward the latter. Ours.
 */
const TOGETHER = 0.3

type Plate = Extract<Item, { kind: 'plate' }>

const paintPlates = async (pen: CanvasRenderingContext2D, plates: Plate[], scale: number, painter: Painter) => {
  const trials = await Promise.all(plates.map((p) => painter.plate(p.plant, p.colour, p.openness, TRIAL)))
  const fits = plates.map(({ box }, i) => {
    const trial = trials[i]
    return Math.min((box.w * TRIAL) / Math.max(1, trial?.width ?? 1), (box.h * TRIAL) / Math.max(1, trial?.height ?? 1))
  })
  const least = Math.min(...fits)
  const sprites = await Promise.all(
    plates.map((p, i) => {
      const fit = (fits[i] ?? least) ** (1 - TOGETHER) * least ** TOGETHER
      // Rounded, so that the worker's store knows it again.
      return painter.plate(p.plant, p.colour, p.openness, Math.round(fit * scale * 0.97 * 500) / 500)
    }),
  )
  plates.forEach(({ box }, i) => {
    const sprite = sprites[i]
    if (!sprite || sprite.width === 0) return
    const [x, y] = [(box.x + box.w / 2) * scale - sprite.width / 2, (box.y + box.h) * scale - sprite.height]
    pen.drawImage(canvasOf(sprite), Math.round(x), Math.round(y))
  })
}

export interface Drawing {
  document: Arrangement
  items: readonly Item[]
  faces: Faces
  painter: Painter
  /** px of the canvas per px of the sheet. */
  scale: number
  /** Newest request of a lane wins. */
  lane: string
}

/**
 * Draws the sheet on a canvas, which gets its size from it. False when a newer drawing of the same lane overtook it.
 */
export const paintSheet = async (canvas: HTMLCanvasElement, drawing: Drawing): Promise<boolean> => {
  const { items, faces, painter, scale, lane } = drawing
  const views = items.filter((item) => item.kind === 'view')
  const painted = await Promise.all(
    views.map(({ view, frame }) =>
      painter.paint(
        `${lane} ${view}`,
        drawing.document,
        { turn: 0, pitch: view === 'front' ? 0 : 90 },
        { ...frame, scale: frame.scale * scale },
        { quality: 'fine', section: false, vessel: 'own' },
      ),
    ),
  )
  if (painted.some((picture) => picture === null)) return false
  canvas.width = Math.round(SHEET.width * scale)
  canvas.height = Math.round(SHEET.height * scale)
  const pen = canvas.getContext('2d')
  if (!pen) throw new Error('this browser gives no canvas of that size')
  pen.fillStyle = PAPER
  pen.fillRect(0, 0, canvas.width, canvas.height)
  for (const item of items) {
    if (item.kind === 'plate') continue
    if (item.kind === 'view') {
      const picture = painted[views.indexOf(item)]
      pen.setTransform(1, 0, 0, 1, 0, 0)
      if (picture) pen.drawImage(canvasOf(picture), Math.round(item.box.x * scale), Math.round(item.box.y * scale))
      continue
    }
    pen.setTransform(scale, 0, 0, scale, 0, 0)
    drawPlain(pen, item, faces)
  }
  pen.setTransform(1, 0, 0, 1, 0, 0)
  await paintPlates(
    pen,
    items.filter((item) => item.kind === 'plate'),
    scale,
    painter,
  )
  return true
}
