import type { Facts } from './facts.ts'
import { cut, fitted, textLine, wrapped } from './text.ts'
import { type Font, INK, INK2, type Item, LINE, type Measure, type Sheet, widthOf } from './types.ts'

const HEAD: Font = { face: 'capt', size: 44, weight: 500 }
const WORD: Font = { face: 'lett', size: 34, weight: 470 }
const COUNT: Font = { face: 'lett', size: 34, weight: 620 }
const ROW = 56
const SWATCH = { w: 74, h: 42 }
/** Colours and kinds that are written out; the rest are counted. Ours. */
const MOST_COLOURS = 14
const MOST_KINDS = 16

/** No column beside the view from above is wider than this; longer words get smaller, then cut. px, ours. */
const WIDEST = 470

export const swatch = (colour: string, x: number, y: number, w: number = SWATCH.w): Item => ({
  kind: 'box',
  box: { x, y, w, h: SWATCH.h },
  fill: colour,
  stroke: LINE,
  weight: 2,
})

export const paletteHeight = (facts: Facts): number =>
  facts.swatches.length === 0 ? 0 : 70 + ROW * Math.min(facts.swatches.length, MOST_COLOURS + 1)

/** The colours under one another, each with its words. */
export const paletteColumn = (facts: Facts, x: number, y: number, width: number, measure: Measure): Item[] => {
  if (facts.swatches.length === 0) return []
  const items: Item[] = [textLine('The colours', HEAD, INK, 'left', x, y + 40, measure)]
  const shown = facts.swatches.length > MOST_COLOURS + 1 ? facts.swatches.slice(0, MOST_COLOURS) : facts.swatches
  const room = width - SWATCH.w - SPACE
  shown.forEach((s, i) => {
    const top = y + 70 + i * ROW
    items.push(swatch(s.colour, x, top))
    const { text, font } = fitted(s.word, WORD, room, 28, measure)
    items.push(textLine(text, font, INK, 'left', x + SWATCH.w + SPACE, top + 33, measure))
  })
  const more = facts.swatches.length - shown.length
  if (more > 0)
    items.push(textLine(`and ${more} more`, WORD, INK2, 'left', x, y + 70 + shown.length * ROW + 33, measure))
  return items
}

export const kindsOf = (facts: Facts): { count: number; text: string }[] => {
  const twice = (name: string): boolean => facts.buy.filter((b) => b.name === name).length > 1
  return facts.buy.map((b) => ({ count: b.count, text: twice(b.name) ? `${b.name}, ${b.colourWord}` : b.name }))
}
export const totalOf = (facts: Facts): number => facts.buy.reduce((sum, b) => sum + b.count, 0)
export const headOf = (facts: Facts): string => (facts.copies > 1 ? `To buy for all ${facts.copies} tables` : 'To buy')

export const listHeight = (facts: Facts): number =>
  facts.buy.length === 0 ? 0 : 70 + ROW * (Math.min(facts.buy.length, MOST_KINDS + 1) + 1)

const SPACE = 20

/** What the wider of the two columns needs beside the view from above, px. */
export const sideWidth = (facts: Facts, measure: Measure): number => {
  const figures = Math.max(
    0,
    ...facts.buy.map((b) => measure(String(b.count), COUNT)),
    measure(String(totalOf(facts)), COUNT),
  )
  const kinds = kindsOf(facts).map((k) => figures + SPACE + measure(k.text, WORD))
  const words = facts.swatches.map((s) => SWATCH.w + SPACE + measure(s.word, WORD))
  return Math.min(WIDEST, Math.max(measure(headOf(facts), HEAD), ...kinds, ...words))
}

/** What to buy for all tables, a short list of stems. */
export const listColumn = (facts: Facts, x: number, y: number, width: number, measure: Measure): Item[] => {
  if (facts.buy.length === 0) return []
  const items: Item[] = [textLine(headOf(facts), HEAD, INK, 'left', x, y + 40, measure)]
  const kinds = kindsOf(facts)
  const shown = kinds.length > MOST_KINDS + 1 ? kinds.slice(0, MOST_KINDS) : kinds
  const total = totalOf(facts)
  const figures = Math.max(...shown.map((k) => measure(String(k.count), COUNT)), measure(String(total), COUNT))
  const line = (count: string, text: string, i: number): void => {
    const base = y + 70 + i * ROW + 33
    items.push(textLine(count, COUNT, INK, 'right', x + figures, base, measure))
    const word = fitted(text, WORD, width - figures - SPACE, 28, measure)
    items.push(textLine(word.text, word.font, INK, 'left', x + figures + SPACE, base, measure))
  }
  shown.forEach((k, i) => {
    line(String(k.count), k.text, i)
  })
  const rest = kinds.slice(shown.length)
  if (rest.length > 0)
    line(String(rest.reduce((sum, k) => sum + k.count, 0)), `of ${rest.length} other kinds`, shown.length)
  const last = shown.length + (rest.length > 0 ? 1 : 0)
  const rule = y + 70 + last * ROW - 2
  items.push({ kind: 'line', from: [x, rule], to: [x + width, rule], weight: 2, colour: LINE })
  line(String(total), facts.spare ? 'stems, spare with them' : total === 1 ? 'stem' : 'stems together', last)
  return items
}

const MOST_LINES = 3
/** Between two swatches in a row, px. */
const BETWEEN = 16

/** A head and entries as running text, broken only between entries; what goes beyond the last line is cut. */
const running = (head: string, entries: readonly string[], width: number, measure: Measure): string[] => {
  const lines = [head]
  entries.forEach((entry, i) => {
    const last = lines.length - 1
    const joined = `${lines[last]}${i === 0 ? ' ' : ' · '}${entry}`
    if (lines.length === MOST_LINES || measure(joined, WORD) <= width) lines[last] = joined
    else lines.push(entry)
  })
  return lines.map((line) => cut(line, WORD, width, measure))
}

/** Colours in a row and the list as running text, for a design that leaves no room at its sides. */
export const listsBelow = (
  facts: Facts,
  sheet: Sheet,
  measure: Measure,
): { height: number; at: (y: number) => Item[] } => {
  const width = widthOf(sheet)
  const each = Math.max(4, Math.min(facts.swatches.length, 10))
  const cell = (width + BETWEEN) / each
  const shown = facts.swatches.length > 2 * each ? facts.swatches.slice(0, 2 * each) : facts.swatches
  const rows = Math.ceil(shown.length / each)
  const said = shown.map((s) => wrapped(s.word, WORD, cell - BETWEEN, 2, measure))
  const rowHeight = SWATCH.h + Math.max(0, ...said.map((lines) => lines.length)) * 38 + 26
  const buy = kindsOf(facts).map((k) => `${k.count} ${k.text}`)
  const lines =
    buy.length > 0
      ? running(`${headOf(facts)}, ${totalOf(facts)} ${facts.spare ? 'with spare' : 'together'}:`, buy, width, measure)
      : []
  const at = (y: number): Item[] => [
    ...shown.flatMap((s, i): Item[] => {
      const x = sheet.margin + cell * (i % each)
      const top = y + Math.floor(i / each) * rowHeight
      return [
        swatch(s.colour, x, top, cell - BETWEEN),
        ...said[i]!.map((word, n) =>
          textLine(
            cut(word, WORD, cell - BETWEEN, measure),
            WORD,
            INK,
            'left',
            x,
            top + SWATCH.h + 38 + n * 38,
            measure,
          ),
        ),
      ]
    }),
    ...lines.map((line, i) =>
      textLine(line, WORD, INK, 'left', sheet.margin, y + rows * rowHeight + 34 + i * 46, measure),
    ),
  ]
  return { height: rows * rowHeight + lines.length * 46, at }
}
