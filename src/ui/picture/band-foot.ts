import type { Facts } from './facts.ts'
import { block, cut, textLine } from './text.ts'
import { type Font, INK, INK2, INSET, type Item, MARGIN, type Measure, SHEET } from './types.ts'

const WIDTH = SHEET.width - 2 * MARGIN
const LABEL: Font = { face: 'lett', size: 36, weight: 470 }
const VALUE: Font = { face: 'lett', size: 40, weight: 620 }
const CAUTION: Font = { face: 'lett', size: 34, weight: 470 }
const CAUTION_LINE = 44
/** From the frame up to the last base line, px. */
const UNDER = 56

const columns = (facts: Facts): [label: string, value: string][] => {
  const tables = facts.copies > 1 ? `${facts.copies} tables` : 'one table'
  const rows: [string, string][] = [
    ['wide', facts.wide],
    ['high, from the cloth', facts.high],
  ]
  if (facts.date) rows.push(['date', facts.date])
  rows.push(['for', tables])
  if (facts.cost) rows.push([facts.cost.standing, facts.cost.total])
  rows.push(['colours shown in', 'daylight'])
  return rows
}

/** The rule, sizes, date and the rest at the foot of the sheet. `top` is where it begins, px. */
export const footBand = (facts: Facts, measure: Measure): { items: Item[]; top: number } => {
  const words = block(`Take care. ${facts.caution}`, CAUTION, WIDTH, 2, 26, measure)
  const caution = facts.caution ? words.lines : []
  const bottom = SHEET.height - INSET - UNDER
  const valueY = bottom - (caution.length > 0 ? caution.length * CAUTION_LINE + 18 : 0)
  const top = valueY - 140
  const rows = columns(facts)
  const widths = rows.map(([label, value]) => Math.max(measure(label, LABEL), measure(value, VALUE)))
  const total = widths.reduce((sum, w) => sum + w, 0)
  // Columns of their own width with equal gaps; where that would be too much, all alike and what is too long is cut.
  const even = total + 40 * (rows.length - 1) > WIDTH
  const gap = even ? 40 : (WIDTH - total) / (rows.length - 1)
  const room = (WIDTH - gap * (rows.length - 1)) / rows.length
  const items: Item[] = [{ kind: 'line', from: [MARGIN, top], to: [SHEET.width - MARGIN, top], weight: 3, colour: INK }]
  let x = MARGIN
  rows.forEach(([label, value], i) => {
    const w = even ? room : (widths[i] ?? 0)
    items.push(textLine(cut(label, LABEL, w, measure), LABEL, INK2, 'left', x, valueY - 54, measure))
    items.push(textLine(cut(value, VALUE, w, measure), VALUE, INK, 'left', x, valueY, measure))
    x += w + gap
  })
  caution.forEach((line, i) => {
    const y = bottom - (caution.length - 1 - i) * CAUTION_LINE
    items.push(textLine(line, words.font, INK, 'left', MARGIN, y, measure))
  })
  return { items, top }
}
