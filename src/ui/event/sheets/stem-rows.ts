import { formatLength, toUnit, type Units } from '../../../units/index.ts'
import type { Placing } from '../../../work-plan/index.ts'
import { formatNumber } from '../../parts/index.ts'
import { block, broken } from '../../picture/text.ts'
import type { Item } from '../../picture/types.ts'
import { INK, LINE } from '../../picture/types.ts'
import { type Pen, rule, SMALL, STRONG, TEXT, words } from './pen.ts'

/** Stems in one row. Ours: a head of 90 mm still keeps clear of its neighbour. */
const PER_ROW = 13
/** Under the line that the stems stand on: numbers, lengths, and what they are, px. */
export const UNDER_ROW = 242

/** Lettering and lines of a name that is wider than its stems. */
const NARROW = { ...SMALL, size: 26 }
const NAME_LINES = 4
const LEAST_NAME = 22
const NAME_LEADING = 29

/** Units as they stand in a sentence. */
export const UNIT_WORDS: Record<Units, string> = { mm: 'mm', cm: 'cm', in: 'inches' }

/** A length as bare figures, for the unit stands once on the page; inches in the eighths that the gauge has. */
export const figures = (mm: number, units: Units): string =>
  units === 'in'
    ? formatLength(mm, units).replace(/ in$/, '')
    : formatNumber(toUnit(mm, units), units === 'cm' ? 1 : 0, true)

/** Rows in the order of placing. */
export const rowsOf = (placings: readonly Placing[]): Placing[][] => {
  const count = Math.ceil(placings.length / PER_ROW)
  const each = Math.ceil(placings.length / Math.max(1, count))
  return Array.from({ length: count }, (_, i) => placings.slice(i * each, (i + 1) * each))
}

/** Stems of one plant and colour beside each other, and the words under them. */
const runsOf = (row: readonly Placing[], nameOf: (stem: Placing['stem']) => string) => {
  const runs: { from: number; to: number; name: string }[] = []
  row.forEach(({ stem }, i) => {
    const name = nameOf(stem)
    const last = runs.at(-1)
    if (last?.name === name) last.to = i
    else runs.push({ from: i, to: i, name })
  })
  return runs
}

interface Standing {
  x: number
  tip: number
  strip: number
  base: number
  cell: number
  scale: number
}

/** One stem, upright; its leaves end where it is stripped. One that hangs is as large as its length allows, not to scale. */
const standing = ({ plant, colour, openness, head_mm, stem }: Placing['stem'], at: Standing): Item[] => {
  const { x, tip, strip, base, cell, scale } = at
  const plate = { kind: 'plate' as const, plant: plant.id, colour, openness }
  if (plant.habit === 'trailing') return [{ ...plate, box: { x: x - cell / 2, y: tip, w: cell, h: base - tip } }]
  // The line begins inside the head, or where a spike or a spray is thick enough to hide it.
  const lateral = stem.piece === 'lateral'
  const inside = plant.headLength_mm && !lateral ? plant.headLength_mm.value * 0.8 : head_mm * 0.3
  const from = Math.min(strip, base, tip + inside * scale)
  const weight = Math.max(3, plant.stemDiameter_mm.value * scale * (lateral ? 0.5 : 0.8))
  return [
    rule([x, from], [x, base], weight, plant.leafColour),
    {
      ...plate,
      as: { piece: stem.piece, head_mm },
      scale,
      box: { x: x - cell / 2, y: tip, w: cell, h: Math.max(1, Math.min(strip, base) - tip) },
    },
  ]
}

/**
 * One row of stems to scale, each upright on the line at `base`, with the mark up to which it is stripped of leaves.
 * @param at its scale in px per mm
 * @param nameOf the words under a stem
 */
export const stemRow = (
  pen: Pen,
  row: readonly Placing[],
  at: { x: number; width: number; base: number; scale: number },
  units: Units,
  nameOf: (stem: Placing['stem']) => string,
): Item[] => {
  const cell = at.width / Math.max(row.length, 7)
  const left = at.x + (at.width - cell * row.length) / 2
  const middle = (i: number): number => left + cell * (i + 0.5)
  const items: Item[] = [rule([at.x, at.base], [at.x + at.width, at.base], 3, INK)]
  row.forEach(({ number, stem, cut_mm, under_mm }, i) => {
    const x = middle(i)
    const tip = at.base - cut_mm * at.scale
    const strip = at.base - under_mm * at.scale
    items.push(...standing(stem, { x, tip, strip, base: at.base, cell, scale: at.scale }))
    for (let dash = x - cell * 0.4; dash < x + cell * 0.4 - 8; dash += 26)
      items.push(rule([dash, strip], [dash + 16, strip], 2, INK))
    items.push(words(pen, String(number), STRONG, x, at.base + 46, 'centre'))
    items.push(words(pen, figures(cut_mm, units), TEXT, x, at.base + 90, 'centre'))
  })
  for (const { from, to, name } of runsOf(row, nameOf)) {
    const [x0, x1, y] = [middle(from) - cell * 0.42, middle(to) + cell * 0.42, at.base + 112]
    items.push({
      kind: 'path',
      points: [
        [x0, y - 12],
        [x0, y],
        [x1, y],
        [x1, y - 12],
      ],
      weight: 2,
      colour: LINE,
    })
    // A name keeps to the stems that it is of: smaller and in lines where they are few.
    const room = (to - from + 1) * cell - 10
    const wide = pen.measure(name, SMALL) <= room
    const { lines, font } = wide
      ? { lines: [name], font: SMALL }
      : block(broken(name, NARROW, room, pen.measure), NARROW, room, NAME_LINES, LEAST_NAME, pen.measure)
    lines.forEach((line, i) => {
      items.push(words(pen, line, font, (x0 + x1) / 2, y + 40 + i * NAME_LEADING, 'centre'))
    })
  }
  return items
}
