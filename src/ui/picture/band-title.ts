import type { Facts } from './facts.ts'
import { balanced, block, fitted, LEADING, textLine } from './text.ts'
import { type Font, INK, INK2, type Item, type Measure, middleOf, type Sheet, widthOf } from './types.ts'

const TITLE: Font = { face: 'capt', size: 124, weight: 500 }
const TWO_LINES: Font = { ...TITLE, size: 100 }
/** A title in one line gets no smaller than this before it goes over two, px. Ours. */
const ONE_LINE_LEAST = 88
const SUBTITLE: Font = { face: 'lett', size: 48, weight: 470 }

/** One line, if need be smaller; else two; else three, and what is longer than that is cut. */
const titleLines = (title: string, width: number, measure: Measure): { lines: string[]; font: Font } => {
  const one = fitted(title, TITLE, width, ONE_LINE_LEAST, measure)
  if (one.text === title) return { lines: [title], font: one.font }
  const two = block(title, TWO_LINES, width, 2, 76, measure)
  const said = two.lines.at(-1)?.endsWith('…') ? block(title, { ...TITLE, size: 76 }, width, 3, 52, measure) : two
  return { lines: balanced(title, said.font, said.lines, width, measure), font: said.font }
}

/** The subtitle with the name of the palette in italics: in one line if it goes, else in two. */
const subtitleItems = (facts: Facts, sheet: Sheet, y: number, measure: Measure): { items: Item[]; lines: number } => {
  const [width, middle] = [widthOf(sheet), middleOf(sheet)]
  const lead = facts.paletteName ? `${facts.subtitle}, in the palette ` : facts.subtitle
  const italic: Font = { ...SUBTITLE, face: 'capt', weight: 400, italic: true }
  const [a, b] = [measure(lead, SUBTITLE), facts.paletteName ? measure(facts.paletteName, italic) : 0]
  if (a + b <= width) {
    const left = middle - (a + b) / 2
    const first = textLine(lead, SUBTITLE, INK2, 'left', left, y, measure)
    const items = facts.paletteName
      ? [first, textLine(facts.paletteName, italic, INK2, 'left', left + a, y, measure)]
      : [first]
    return { items, lines: 1 }
  }
  const top = fitted(facts.subtitle, SUBTITLE, width, 34, measure)
  const items: Item[] = [textLine(top.text, top.font, INK2, 'centre', middle, y, measure)]
  if (!facts.paletteName) return { items, lines: 1 }
  const under = fitted(`in the palette ${facts.paletteName}`, italic, width, 34, measure)
  items.push(textLine(under.text, under.font, INK2, 'centre', middle, y + 64, measure))
  return { items, lines: 2 }
}

/** Title and subtitle. `bottom` is where the next band may begin, px. */
export const titleBand = (facts: Facts, sheet: Sheet, measure: Measure): { items: Item[]; bottom: number } => {
  const { lines, font } = titleLines(facts.title, widthOf(sheet), measure)
  let y = sheet.inset + 80 + font.size * 0.8
  const items: Item[] = lines.map((line, i) =>
    textLine(line, font, INK, 'centre', middleOf(sheet), y + i * font.size * LEADING, measure),
  )
  y += (lines.length - 1) * font.size * LEADING + 96
  const sub = subtitleItems(facts, sheet, y, measure)
  return { items: [...items, ...sub.items], bottom: y + (sub.lines - 1) * 64 + 40 }
}
