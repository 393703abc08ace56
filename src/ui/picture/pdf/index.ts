import type { Said } from '../export.ts'
import { canvasMeasure, cssFont, type Faces } from '../paint.ts'
import type { Placed } from '../rasters.ts'
import type { Item, Laid } from '../types.ts'
import { type PdfSheet, pdfOf } from './document.ts'
import type { PdfFace } from './font.ts'
import { isWritten } from './page.ts'
import { readTrueType } from './truetype.ts'

const FILES: (Omit<PdfFace, 'type'> & { ask: () => Promise<Response> })[] = [
  {
    name: 'C5',
    face: 'capt',
    weight: 500,
    italic: false,
    ask: () => fetch(new URL('../faces/capt-500.ttf', import.meta.url)),
  },
  {
    name: 'C4',
    face: 'capt',
    weight: 400,
    italic: true,
    ask: () => fetch(new URL('../faces/capt-400-italic.ttf', import.meta.url)),
  },
  {
    name: 'L4',
    face: 'lett',
    weight: 470,
    italic: false,
    ask: () => fetch(new URL('../faces/lett-470.ttf', import.meta.url)),
  },
  {
    name: 'L5',
    face: 'lett',
    weight: 520,
    italic: false,
    ask: () => fetch(new URL('../faces/lett-520.ttf', import.meta.url)),
  },
  {
    name: 'L6',
    face: 'lett',
    weight: 620,
    italic: false,
    ask: () => fetch(new URL('../faces/lett-620.ttf', import.meta.url)),
  },
]

/** A face; one that can't be had is left out, and its words are painted. */
const load = async ({ ask, ...face }: (typeof FILES)[number]): Promise<PdfFace[]> => {
  try {
    const answer = await ask()
    return answer.ok ? [{ ...face, type: readTrueType(new Uint8Array(await answer.arrayBuffer())) }] : []
  } catch {
    return []
  }
}

/** Words in letters that no face of ours has, as the browser writes them. */
const paintedWords = (item: Extract<Item, { kind: 'text' }>, faces: Faces): Placed | null => {
  const canvas = document.createElement('canvas')
  const [x, y] = [Math.floor(item.box.x), Math.floor(item.box.y)]
  canvas.width = Math.ceil(item.box.w) + 4
  canvas.height = Math.ceil(item.box.h) + 4
  const pen = canvas.getContext('2d')
  if (!pen) return null
  pen.font = cssFont(item.font, faces)
  pen.fillStyle = item.colour
  pen.fillText(item.text, item.box.x - x, item.y - y)
  const { width, height } = canvas
  return { x, y, pixels: { width, height, rgba: pen.getImageData(0, 0, width, height).data } }
}

/** Sheets as the pages of one PDF file. */
export const pdfPages = async (sheets: readonly PdfSheet[], faces: Faces, said: Said): Promise<Blob> => {
  const pdfFaces = (await Promise.all(FILES.map(load))).flat()
  const whole = sheets.map(({ laid, painted: placed }) => {
    const painted = new Map(placed)
    for (const item of laid.items) {
      if (item.kind !== 'text' || isWritten(item, pdfFaces)) continue
      const words = paintedWords(item, faces)
      if (words) painted.set(item, words)
    }
    return { laid, painted }
  })
  return pdfOf(whole, pdfFaces, canvasMeasure(faces), said)
}

/** The sheet as a PDF file. */
export const pdfFile = (laid: Laid, painted: ReadonlyMap<Item, Placed>, faces: Faces, said: Said): Promise<Blob> =>
  pdfPages([{ laid, painted }], faces, said)
