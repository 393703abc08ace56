import { quarterBand } from './band-quarter.ts'
import type { Facts } from './facts.ts'
import { headOf, kindsOf, totalOf } from './side-lists.ts'
import { balanced, block, blockOfFirst, cut, fitted, textLine } from './text.ts'
import { type Font, INK, INK2, type Item, LINE, type Measure, middleOf, type Sheet, widthOf } from './types.ts'

const TITLE: Font = { face: 'capt', size: 84, weight: 500 }
const UNDER: Font = { face: 'lett', size: 36, weight: 470 }
const PALETTE: Font = { face: 'capt', size: 36, weight: 400, italic: true }
const HEAD: Font = { face: 'capt', size: 38, weight: 500 }
const WORD: Font = { face: 'lett', size: 32, weight: 470 }
const STRONG: Font = { ...WORD, weight: 620 }
const SMALL: Font = { face: 'lett', size: 28, weight: 470 }
/** No word on a phone's screen is smaller than this: 9 CSS px of a screen of 390. px, ours. */
const LEAST = 25
const ROW = 54
const GAP = 28
const SWATCH = { w: 60, h: 36 }
/** Colours and kinds in two columns; what is more is counted. Ours. */
const MOST_COLOURS = 12
const MOST_KINDS = 12

const top = (facts: Facts, sheet: Sheet, measure: Measure): { items: Item[]; bottom: number } => {
  const [width, middle] = [widthOf(sheet), middleOf(sheet)]
  const { font, lines } = block(facts.title, TITLE, width, 2, 48, measure)
  const title = { font, lines: balanced(facts.title, font, lines, width, measure) }
  const under = block(facts.subtitle, UNDER, width, 2, LEAST, measure)
  let y = sheet.inset + 52 + title.font.size * 0.8
  const items: Item[] = []
  title.lines.forEach((line, i) => {
    if (i > 0) y += title.font.size * 1.15
    items.push(textLine(line, title.font, INK, 'centre', middle, y, measure))
  })
  y += 18
  for (const line of under.lines) {
    y += 46
    items.push(textLine(line, under.font, INK2, 'centre', middle, y, measure))
  }
  if (facts.paletteName) {
    y += 46
    const { text, font } = fitted(`in the palette ${facts.paletteName}`, PALETTE, width, LEAST, measure)
    items.push(textLine(text, font, INK2, 'centre', middle, y, measure))
  }
  return { items, bottom: Math.round(y + 24) }
}

/** Rows of two columns, filled downward. Gives each entry its place. */
const inTwo = <T>(
  entries: readonly T[],
  sheet: Sheet,
  y: number,
  put: (entry: T, x: number, y: number, w: number) => Item[],
) => {
  const rows = Math.ceil(entries.length / 2)
  const width = (widthOf(sheet) - GAP) / 2
  return {
    items: entries.flatMap((e, i) => put(e, sheet.margin + (i < rows ? 0 : width + GAP), y + (i % rows) * ROW, width)),
    height: rows * ROW,
  }
}

const colours = (facts: Facts, sheet: Sheet, y: number, measure: Measure): { items: Item[]; height: number } => {
  const shown = facts.swatches.slice(0, facts.swatches.length > MOST_COLOURS ? MOST_COLOURS - 1 : MOST_COLOURS)
  const more = facts.swatches.length - shown.length
  const entries = [...shown, ...(more > 0 ? [{ colour: '', word: `and ${more} more` }] : [])]
  return inTwo(entries, sheet, y, ({ colour, word }, x, at, w) => {
    const { text, font } = fitted(word, WORD, w - SWATCH.w - 18, LEAST, measure)
    const said = textLine(text, font, INK, 'left', x + SWATCH.w + 18, at + 30, measure)
    const box = { x, y: at + 2, ...SWATCH }
    return colour ? [{ kind: 'box', box, fill: colour, stroke: LINE, weight: 1.5 }, said] : [said]
  })
}

/** What to buy for all tables; of a single kind for one table, what stands in it. */
const list = (facts: Facts, sheet: Sheet, y: number, measure: Measure): { items: Item[]; height: number } => {
  const bought = facts.buy.length > 0
  const kinds = bought ? kindsOf(facts) : facts.plants.map((p) => ({ count: p.count, text: p.name }))
  if (kinds.length === 0) return { items: [], height: 0 }
  const shown = kinds.slice(0, kinds.length > MOST_KINDS ? MOST_KINDS - 1 : MOST_KINDS)
  const rest = kinds.slice(shown.length)
  const others = { count: rest.reduce((sum, k) => sum + k.count, 0), text: `of ${rest.length} other kinds` }
  const entries = rest.length > 0 ? [...shown, others] : shown
  const figures = Math.max(...entries.map((k) => measure(String(k.count), STRONG)))
  const total = bought ? totalOf(facts) : kinds[0]!.count
  const spare = bought && facts.spare ? ', spare with them' : ''
  const head = `${bought ? headOf(facts) : 'In it'}: ${total} ${total === 1 ? 'stem' : 'stems'}${spare}`
  const made = inTwo(entries, sheet, y + 56, ({ count, text }, x, at, w) => {
    const word = fitted(text, WORD, w - figures - 16, LEAST, measure)
    return [
      textLine(String(count), STRONG, INK, 'right', x + figures, at + 30, measure),
      textLine(word.text, word.font, INK, 'left', x + figures + 16, at + 30, measure),
    ]
  })
  const title = textLine(cut(head, HEAD, widthOf(sheet), measure), HEAD, INK, 'left', sheet.margin, y + 34, measure)
  return { items: [title, ...made.items], height: made.height + 56 }
}

const foot = (facts: Facts, sheet: Sheet, measure: Measure): { items: Item[]; top: number } => {
  const width = widthOf(sheet)
  const facts1 = [`${facts.wide} wide`, `${facts.high} high`, ...(facts.date ? [facts.date] : [])].join(' · ')
  const cost = facts.cost ? [`${facts.cost.total} (${facts.cost.standing})`] : []
  const facts2 = [`Colours shown in ${facts.lightWords}`, ...cost].join(' · ')
  const said = facts.cautions.map((caution) => `Take care. ${caution}`)
  const caution = blockOfFirst(said, SMALL, width, 7, LEAST, measure)
  const lines: [text: string, font: Font, high: number][] = [
    [facts1, STRONG, 46],
    [facts2, WORD, 42],
    ...caution.lines.map((line): [string, Font, number] => [line, caution.font, 36]),
  ]
  const first = sheet.height - sheet.inset - 32 - lines.slice(1).reduce((sum, [, , high]) => sum + high, 0)
  const rule = first - 54
  let y = first
  const items: Item[] = [
    { kind: 'line', from: [sheet.margin, rule], to: [sheet.width - sheet.margin, rule], weight: 2, colour: INK },
  ]
  lines.forEach(([text, font, high], i) => {
    if (i > 0) y += high
    const line = fitted(text, font, width, LEAST, measure)
    items.push(textLine(line.text, line.font, INK, 'left', sheet.margin, y, measure))
  })
  return { items, top: rule }
}

/** For a phone: the arrangement on its table as large as it goes, title, colours with words, and a short list. */
export const phoneItems = (facts: Facts, sheet: Sheet, measure: Measure): Item[] => {
  const title = top(facts, sheet, measure)
  const under = foot(facts, sheet, measure)
  const heights = [list(facts, sheet, 0, measure).height, colours(facts, sheet, 0, measure).height] as const
  const listTop = under.top - 26 - heights[0]
  const coloursTop = listTop - (heights[0] > 0 ? 30 : 0) - heights[1]
  return [
    ...quarterBand(facts, sheet, title.bottom, coloursTop - 40),
    ...title.items,
    ...colours(facts, sheet, coloursTop, measure).items,
    ...list(facts, sheet, listTop, measure).items,
    ...under.items,
  ]
}
