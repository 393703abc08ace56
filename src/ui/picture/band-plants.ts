import { listed } from '../../telling/index.ts'
import type { Facts, PlantFact } from './facts.ts'
import { shifted } from './shifted.ts'
import { cut, textLine, wrapped } from './text.ts'
import { FAINT, type Font, INK, INK2, type Item, LINE, type Measure, middleOf, type Sheet, widthOf } from './types.ts'

const NAME: Font = { face: 'lett', size: 36, weight: 520 }
const COLOUR: Font = { face: 'capt', size: 34, weight: 400, italic: true }
const COUNT: Font = { face: 'lett', size: 34, weight: 470 }
const LINE_HEIGHT = 42
/** Labels of more plants than this in a row stand at two heights; more than the second go into two rows. Ours. */
const LEVEL = 8
const STAGGERED = 13
/** Plants with a plate of their own; the others are named in a line. Ours. */
const MOST = 16
/** From the foot of a stem to the first line under it, px. */
const UNDER_PLATE = 52
const GAP = 24

interface Label {
  name: string[]
  colour: string[]
  count: string
}

const labelOf = (p: PlantFact, width: number, said: UnderPlants, measure: Measure): Label => {
  const noun = p.sprigs ? (p.count === 1 ? 'sprig' : 'sprigs') : p.count === 1 ? 'stem' : 'stems'
  return {
    name: wrapped(p.name, NAME, width, 2, measure),
    colour: wrapped(p.colourWord, COLOUR, width, 2, measure),
    count: said === 'counts' ? `${p.count} ${noun}` : '',
  }
}
const linesOf = (labels: readonly Label[]): number =>
  Math.max(0, ...labels.map((l) => l.name.length + l.colour.length + (l.count ? 1 : 0)))

const labelItems = (label: Label, x: number, y: number, measure: Measure): Item[] => [
  ...label.name.map((line, i) => textLine(line, NAME, INK, 'centre', x, y + i * LINE_HEIGHT, measure)),
  ...label.colour.map((line, i) =>
    textLine(line, COLOUR, INK2, 'centre', x, y + (label.name.length + i) * LINE_HEIGHT, measure),
  ),
  ...(label.count
    ? [
        textLine(
          label.count,
          COUNT,
          INK2,
          'centre',
          x,
          y + (label.name.length + label.colour.length) * LINE_HEIGHT,
          measure,
        ),
      ]
    : []),
]

/** What is said under a plant besides its name and colour. */
export type UnderPlants = 'counts' | 'names only'

/** One row of plants on their stems. Gives its items as if it began at y 0, and its height. */
const row = (
  plants: readonly PlantFact[],
  sheet: Sheet,
  plateHeight: number,
  said: UnderPlants,
  measure: Measure,
): { items: Item[]; height: number } => {
  const cell = widthOf(sheet) / Math.max(plants.length, 4)
  const left = sheet.margin + (widthOf(sheet) - cell * plants.length) / 2
  const staggered = plants.length > LEVEL
  const labels = plants.map((p, i) => {
    const outer = i === 0 || i === plants.length - 1
    // At two heights a label has the room of two, but at the ends only as far as the margin lets it.
    const width = staggered ? Math.min(2 * cell - GAP, outer ? cell + 50 : Infinity) : cell - GAP
    return labelOf(p, width, said, measure)
  })
  const upper = linesOf(labels.filter((_, i) => !staggered || i % 2 === 0)) * LINE_HEIGHT
  const lower = staggered ? linesOf(labels.filter((_, i) => i % 2 === 1)) * LINE_HEIGHT + 14 : 0
  const items: Item[] = []
  plants.forEach((p, i) => {
    const middle = left + cell * (i + 0.5)
    const w = Math.min(cell - 10, plateHeight * 1.1)
    const box = { x: middle - w / 2, y: 0, w, h: plateHeight }
    items.push({ kind: 'plate', plant: p.id, colour: p.colour, openness: p.openness, box })
    const below = staggered && i % 2 === 1
    const y = plateHeight + UNDER_PLATE
    if (below)
      items.push({
        kind: 'line',
        from: [middle, plateHeight + 16],
        to: [middle, y + upper - 36],
        weight: 2,
        colour: LINE,
      })
    items.push(...labelItems(labels[i]!, middle, y + (below ? upper + 14 : 0), measure))
  })
  return { items, height: plateHeight + UNDER_PLATE - 34 + upper + lower }
}

const restLine = (rest: readonly PlantFact[]): string => {
  const stems = rest.reduce((sum, p) => sum + p.count, 0)
  const kinds = [...new Set(rest.map((p) => p.name))]
  const named = kinds.length > 6 ? [...kinds.slice(0, 6), 'others'] : kinds
  return `and ${stems} ${stems === 1 ? 'stem' : 'stems'} more: ${listed(named)}`
}

/** The plants, each on its own stem, above `bottom`, by `larger` px higher than they need be. `top` is where the band begins, px. */
export const plantsBand = (
  facts: Facts,
  sheet: Sheet,
  bottom: number,
  said: UnderPlants,
  measure: Measure,
  larger = 0,
): { items: Item[]; top: number } => {
  const [width, middle] = [widthOf(sheet), middleOf(sheet)]
  if (facts.plants.length === 0) {
    const words = `No flowers stand in it yet. The ${facts.vessel} is ${facts.vesselWide} wide and ${facts.vesselHigh} high.`
    const font: Font = { ...COLOUR, size: 48 }
    return {
      items: [textLine(cut(words, font, width, measure), font, INK2, 'centre', middle, bottom - 90, measure)],
      top: bottom - 160,
    }
  }
  const shown = facts.plants.length > MOST ? facts.plants.slice(0, MOST) : facts.plants
  const rest = facts.plants.slice(shown.length)
  const half = Math.ceil(shown.length / 2)
  const rows = (shown.length > STAGGERED ? [shown.slice(0, half), shown.slice(half)] : [shown]).map((plants, _, all) =>
    row(plants, sheet, (all.length > 1 ? 200 : 290) + larger / all.length, said, measure),
  )
  const restHeight = rest.length > 0 ? 56 : 0
  const height = rows.reduce((sum, r) => sum + r.height, 0) + (rows.length - 1) * 30 + restHeight
  const top = bottom - 34 - height - 40
  const items: Item[] = [
    { kind: 'line', from: [sheet.margin, top], to: [sheet.width - sheet.margin, top], weight: 2, colour: FAINT },
  ]
  let y = top + 40
  for (const r of rows) {
    items.push(...r.items.map((item) => shifted(item, y)))
    y += r.height + 30
  }
  if (rest.length > 0)
    items.push(
      textLine(cut(restLine(rest), COUNT, width, measure), COUNT, INK2, 'centre', middle, bottom - 44, measure),
    )
  return { items, top }
}
