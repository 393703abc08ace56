import type { Pixels, Placed } from './rasters.ts'
import type { Font, Item, Laid, Measure } from './types.ts'

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

/** A canvas of its own size with these pixels. */
export const canvasOf = ({ width, height, rgba }: Pixels): HTMLCanvasElement => {
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, width)
  canvas.height = Math.max(1, height)
  if (width > 0 && height > 0)
    canvas.getContext('2d')?.putImageData(new ImageData(new Uint8ClampedArray(rgba), width, height), 0, 0)
  return canvas
}

const PLAIN = [1, 0, 0, 1, 0, 0] as const

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
  } else if (item.kind === 'path') {
    pen.strokeStyle = item.colour
    pen.lineWidth = item.weight
    pen.lineJoin = 'round'
    pen.beginPath()
    for (const [x, y] of item.points) pen.lineTo(x, y)
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

/**
 * Draws the sheet on a canvas, which gets its size from it. Throws an Error in words when there is no such canvas.
 * @param painted views and plates, painted at the same scale
 */
export const paintSheet = (
  canvas: HTMLCanvasElement,
  { laid, scale }: { laid: Laid; scale: number },
  painted: ReadonlyMap<Item, Placed>,
  faces: Faces,
): void => {
  canvas.width = Math.round(laid.sheet.width * scale)
  canvas.height = Math.round(laid.sheet.height * scale)
  const pen = canvas.getContext('2d')
  if (!pen) throw new Error('this browser gives no canvas of that size')
  pen.fillStyle = laid.paper
  pen.fillRect(0, 0, canvas.width, canvas.height)
  for (const item of laid.items) {
    const placed = painted.get(item)
    pen.setTransform(...(placed ? PLAIN : ([scale, 0, 0, scale, 0, 0] as const)))
    if (placed) pen.drawImage(canvasOf(placed.pixels), placed.x, placed.y)
    else drawPlain(pen, item, faces)
  }
  pen.setTransform(...PLAIN)
}
