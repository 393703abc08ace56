import { cut, wrapped } from '../../picture/text.ts'
import type { Box, Item, Laid, Sheet } from '../../picture/types.ts'
import { INK, INK2 } from '../../picture/types.ts'
import { checkScale, edgeGauge, gaugeReach } from './gauge.ts'
import { ASIDE, LEADING_px, type Pen, paragraph, rule, SMALL, TEXT, TITLE, words } from './pen.ts'

/** White: these sheets are printed to be worked from, on whatever paper there is. */
const PRINT_PAPER = '#ffffff'

/** Lines under the title at the most, and where the first stands, px. */
const HEAD_LINES = 4
const FIRST_LINE = 316

/**
 * Where the body of a page begins and ends, px.
 * @param lines under the title, so many
 */
export const bodyOf = ({ height, inset, margin, width }: Sheet, lines = HEAD_LINES): Box => {
  const top = FIRST_LINE + (lines - 1) * LEADING_px + 40
  return { x: margin, y: top, w: width - 2 * margin, h: height - inset - 180 - top }
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
  /** At the foot, in place of the scale and the gauge at the edge: the first of these that has room. */
  foot?: readonly string[]
}

/** Lettering that the foot has room for, its lines, and where the first stands below the rule, px. */
const FEET = [
  { font: { ...SMALL, size: 30 }, most: 3, under: 54 },
  { font: { ...SMALL, size: 26 }, most: 4, under: 46 },
] as const

/** The first of the words that have room, as large as they go; the last are cut if they have to be. */
const footWords = (pen: Pen, texts: readonly string[], top: number): Item[] => {
  const { sheet, measure } = pen
  const width = sheet.width - 2 * sheet.margin
  const all = texts.flatMap((text) => FEET.map((foot) => ({ text, ...foot })))
  const laid =
    all.find(({ text, font, most }) => wrapped(text, font, width, most + 1, measure).length <= most) ?? all.at(-1)
  if (!laid) return []
  return paragraph(pen, laid.text, laid.font, { x: sheet.margin, y: top + laid.under, width, most: laid.most }).items
}

/** What stands at the foot: the scale that the print is checked by and how to use the gauge at the edge, or words. */
const foot = (pen: Pen, said: PageWords, top: number): Item[] => {
  const { sheet } = pen
  const { width, margin } = sheet
  if (said.foot !== undefined) return footWords(pen, said.foot, top)
  const check = said.inches ? '4 in' : '100 mm'
  const lines = [
    `True size when printed at 100 %: lay a ruler on the`,
    `scale, it has to read ${check}. The right edge measures stems`,
    `up to ${gaugeReach(sheet, said.inches)} ${said.inches ? 'in' : 'cm'}: cut end on the lowest line of the frame.`,
  ]
  return [
    ...lines.map((line, i) => words(pen, line, SMALL, margin, top + 50 + i * 44, 'left', INK2)),
    ...checkScale(pen, said.inches, width - margin - 60, top + 110),
    ...edgeGauge(pen, said.inches),
  ]
}

/** The lines under the title, over the whole width, each in two at the most. */
const headLines = (pen: Pen, { lines }: PageWords): Item[] => {
  const { width, margin } = pen.sheet
  return lines
    .flatMap((line) => wrapped(line, TEXT, width - 2 * margin, 2, pen.measure))
    .slice(0, HEAD_LINES)
    .map((line, i) => words(pen, line, TEXT, margin, FIRST_LINE + i * LEADING_px, 'left', INK2))
}

/** A page with its frame and its title, and what stands at its foot. */
const page = (pen: Pen, said: PageWords, body: Item[]): Laid => {
  const { sheet } = pen
  const { width, height, inset, margin } = sheet
  const footTop = height - inset - 160
  const items: Item[] = [
    ...body,
    words(pen, said.title, TITLE, margin, 232),
    words(pen, cut(said.aside, ASIDE, width * 0.5, pen.measure), ASIDE, width - margin, 206, 'right', INK2),
    words(pen, said.facts, TEXT, width - margin, 262, 'right', INK2),
    ...headLines(pen, said),
    rule([inset, footTop], [width - inset, footTop], 2, INK),
    words(pen, said.page, TEXT, width - margin, 150, 'right', INK2),
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

/** Pages with the same words, numbered where there is more than one. */
export const numberedPages = (pen: Pen, pages: readonly Item[][], said: Omit<PageWords, 'page'>): Laid[] =>
  pages.map((items, i) => page(pen, { ...said, page: pages.length > 1 ? `${i + 1} of ${pages.length}` : '' }, items))
