import { textLine, wrapped } from '../../picture/text.ts'
import type { Align, Font, Item, Measure, Place, Sheet } from '../../picture/types.ts'
import { INK, LINE } from '../../picture/types.ts'

export const TITLE: Font = { face: 'capt', size: 96, weight: 500 }
export const HEAD: Font = { face: 'capt', size: 54, weight: 500 }
export const ASIDE: Font = { face: 'capt', size: 44, weight: 400, italic: true }
export const TEXT: Font = { face: 'lett', size: 38, weight: 470 }
export const STRONG: Font = { face: 'lett', size: 38, weight: 620 }
export const SMALL: Font = { face: 'lett', size: 34, weight: 470 }
export const LEADING_px = 48

/** px of the sheet in so many mm of paper. */
export const pxOf = ({ width, paper_mm }: Sheet, mm: number): number => (mm * width) / (paper_mm?.[0] ?? 210)

export interface Pen {
  sheet: Sheet
  measure: Measure
}

export const words = (
  pen: Pen,
  text: string,
  font: Font,
  x: number,
  y: number,
  align: Align = 'left',
  colour = INK,
): Item => textLine(text, font, colour, align, x, y, pen.measure)

/** A paragraph in a column, from its first base line. @returns the items and the base line after the last */
export const paragraph = (
  pen: Pen,
  text: string,
  font: Font,
  at: { x: number; y: number; width: number; most?: number },
): { items: Item[]; y: number } => {
  const lines = wrapped(text, font, at.width, at.most ?? 40, pen.measure)
  const leading = font.size * 1.28
  return {
    items: lines.map((line, i) => words(pen, line, font, at.x, at.y + i * leading)),
    y: at.y + lines.length * leading,
  }
}

export const rule = (from: Place, to: Place, weight = 2, colour: string = LINE): Item => ({
  kind: 'line',
  from,
  to,
  weight,
  colour,
})

/** A circle as a closed line of many sides. */
const circle = (x: number, y: number, r: number): Place[] =>
  Array.from({ length: 29 }, (_, i) => {
    const a = (i * 2 * Math.PI) / 28
    return [x + r * Math.cos(a), y + r * Math.sin(a)]
  })

export const ring = (x: number, y: number, r: number, colour: string, weight: number): Item => ({
  kind: 'path',
  points: circle(x, y, r),
  weight,
  colour,
})

export const disc = (x: number, y: number, r: number, fill: string, stroke: string, weight: number): Item[] => [
  { kind: 'shape', points: circle(x, y, r), fill },
  ring(x, y, r, stroke, weight),
]
