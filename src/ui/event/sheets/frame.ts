import { textLine, wrapped } from '../../picture/text.ts'
import type { Align, Box, Font, Item, Laid, Measure, Place, Sheet } from '../../picture/types.ts'
import { INK, INK2, LINE } from '../../picture/types.ts'

/** White: these sheets are printed to be worked from, on whatever paper there is. */
const PRINT_PAPER = '#ffffff'

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

/** Where the body of a page begins and ends, px. */
export const bodyOf = ({ height, inset, margin, width }: Sheet): Box => ({
  x: margin,
  y: 420,
  w: width - 2 * margin,
  h: height - inset - 180 - 420,
})

/** Ticks at true size: 0 to 100 mm, or 0 to 4 in, to be checked with a ruler before one cuts by it. */
const gauge = (pen: Pen, inches: boolean, right: number, y: number): Item[] => {
  const [step, count, each] = inches ? [25.4 / 8, 32, 8] : [1, 100, 10]
  const left = right - pxOf(pen.sheet, step * count)
  const items: Item[] = [rule([left, y], [right, y], 3, INK)]
  for (let i = 0; i <= count; i += 1) {
    const x = left + pxOf(pen.sheet, step * i)
    const high = i % each === 0 ? 34 : i % (each / 2) === 0 ? 24 : 14
    items.push(rule([x, y], [x, y - high], i % each === 0 ? 3 : 2, INK))
    if (i % each === 0) items.push(words(pen, `${i / (inches ? each : 1)}`, SMALL, x, y - 44, 'centre'))
  }
  items.push(words(pen, inches ? 'in' : 'mm', SMALL, right + 12, y, 'left'))
  return items
}

export interface PageWords {
  title: string
  /** Beside the title, at the right. */
  aside: string
  /** Under the aside. */
  facts: string
  /** Under the title. */
  lines: string[]
  page: string
  inches: boolean
  /** At the foot, in place of the gauge. */
  foot?: string
}

/** What stands at the foot: the gauge that the print is checked by, or words. */
const foot = (pen: Pen, said: PageWords, top: number): Item[] => {
  const { width, margin } = pen.sheet
  if (said.foot !== undefined) {
    const font = { ...SMALL, size: 30 }
    return paragraph(pen, said.foot, font, { x: margin, y: top + 54, width: width - 2 * margin, most: 3 }).items
  }
  const check = said.inches ? '4 in' : '100 mm'
  return [
    words(pen, 'True size when printed at 100 %: lay a ruler on', SMALL, margin, top + 62, 'left', INK2),
    words(pen, `the scale; it has to read ${check} before you cut by it.`, SMALL, margin, top + 106, 'left', INK2),
    ...gauge(pen, said.inches, width - margin - 60, top + 110),
  ]
}

/** A page with its frame, its title, and the length gauge at its foot. */
export const page = (pen: Pen, said: PageWords, body: Item[]): Laid => {
  const { sheet } = pen
  const { width, height, inset, margin } = sheet
  const footTop = height - inset - 160
  const items: Item[] = [
    ...body,
    words(pen, said.title, TITLE, margin, 262),
    words(pen, said.aside, ASIDE, width - margin, 236, 'right', INK2),
    words(pen, said.facts, TEXT, width - margin, 296, 'right', INK2),
    ...said.lines.map((line, i) => words(pen, line, TEXT, margin, 330 + i * LEADING_px, 'left', INK2)),
    rule([inset, footTop], [width - inset, footTop], 2, INK),
    words(pen, said.page, TEXT, width - margin, 356, 'right', INK2),
    ...foot(pen, said, footTop),
    {
      kind: 'box',
      box: { x: inset, y: inset, w: width - 2 * inset, h: height - 2 * inset },
      fill: null,
      stroke: INK,
      weight: 3,
    },
  ]
  return { sheet, paper: PRINT_PAPER, light: 'daylight', items }
}
