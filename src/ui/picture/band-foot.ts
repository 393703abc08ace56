import type { Facts } from './facts.ts'
import { blockOfFirst, cut, textLine } from './text.ts'
import { type Font, INK, INK2, type Item, type Measure, type Sheet, widthOf } from './types.ts'

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
  rows.push(['colours shown in', facts.lightWords])
  return rows
}

/** The rule, sizes, date and the rest at the foot of the sheet. `top` is where it begins, px. */
export const footBand = (facts: Facts, sheet: Sheet, measure: Measure): { items: Item[]; top: number } => {
  const { margin } = sheet
  const width = widthOf(sheet)
  const said = facts.cautions.map((caution) => `Take care. ${caution}`)
  const { lines: caution, font } = blockOfFirst(said, CAUTION, width, 3, 26, measure)
  const bottom = sheet.height - sheet.inset - UNDER
  const valueY = bottom - (caution.length > 0 ? caution.length * CAUTION_LINE + 18 : 0)
  const top = valueY - 140
  const rows = columns(facts)
  const widths = rows.map(([label, value]) => Math.max(measure(label, LABEL), measure(value, VALUE)))
  const total = widths.reduce((sum, w) => sum + w, 0)
  // Columns of their own width with equal gaps; where that would be too much, all alike and what is too long is cut.
  const even = total + 40 * (rows.length - 1) > width
  const gap = even ? 40 : (width - total) / (rows.length - 1)
  const room = (width - gap * (rows.length - 1)) / rows.length
  const items: Item[] = [{ kind: 'line', from: [margin, top], to: [sheet.width - margin, top], weight: 3, colour: INK }]
  let x = margin
  rows.forEach(([label, value], i) => {
    const w = even ? room : (widths[i] ?? 0)
    items.push(textLine(cut(label, LABEL, w, measure), LABEL, INK2, 'left', x, valueY - 54, measure))
    items.push(textLine(cut(value, VALUE, w, measure), VALUE, INK, 'left', x, valueY, measure))
    x += w + gap
  })
  caution.forEach((line, i) => {
    const y = bottom - (caution.length - 1 - i) * CAUTION_LINE
    items.push(textLine(line, font, INK, 'left', margin, y, measure))
  })
  return { items, top }
}
