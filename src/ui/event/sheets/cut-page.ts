import { type BenchPiece, benchRows, cutPlan, type OrderLine } from '../../../stem-list/index.ts'
import { listed } from '../../../telling/index.ts'
import { formatLength, type Units } from '../../../units/index.ts'
import { shortDay } from '../../../work-plan/index.ts'
import { cut } from '../../picture/text.ts'
import type { Box, Item, Laid } from '../../picture/types.ts'
import { INK, INK2, LINE } from '../../picture/types.ts'
import { benchNumbers, pieceWords } from '../cut-words.ts'
import { givesWords } from '../cutting/gives.ts'
import { type EventDesign, plantName, type WorkedEvent } from '../use-worked-event.ts'
import { byPlant, count } from '../words.ts'
import { type Block, flowIn } from './flow.ts'
import { bodyOf, numberedPages } from './frame.ts'
import { type Pen, paragraph, rule, STRONG, TEXT, words } from './pen.ts'
import { figures, UNIT_WORDS } from './stem-rows.ts'

const SMALLER = { ...TEXT, size: 34 }
/** Where the stems, the pieces of the main axis and those of the side stems begin, as shares of the width. */
const AT = { stems: 0.13, main: 0.14, side: 0.55 }
/** For a length, px. */
const LENGTH = 190

export interface CutPageWords {
  units: Units
  when: string
  colourOf: (line: OrderLine) => string
}

/** What is cut and from how many stems; what a stem gives and what is too long stand below it in lines. */
const headOf = (pen: Pen, line: OrderLine, name: string, units: Units, { x, w }: Box): Block => {
  const spare = line.spareStems > 0 ? `; ${line.spareStems} spare: uncut` : ''
  const about = `${count(line.pieces, 'piece', 'pieces')} from ${count(line.stems, 'stem', 'stems')}${spare}`
  const gives = line.pieces > line.stems ? givesWords(line, units).replace(/^; a/, 'A') : ''
  const long =
    line.tooLong > 0
      ? `Too long for any such stem (${formatLength(line.given.main_mm, units)}): ${count(line.tooLong, 'piece', 'pieces')}. Ask for longer ones.`
      : ''
  const items: Item[] = [
    words(pen, cut(name, STRONG, w * 0.6, pen.measure), STRONG, x, 52),
    words(pen, about, SMALLER, x + w, 52, 'right', INK2),
  ]
  let y = 96
  for (const text of [gives, long].filter((t) => t !== '')) {
    const block = paragraph(pen, text, SMALLER, { x, y, width: w, most: 3 })
    items.push(...block.items)
    y = block.y
  }
  return { items: [...items, rule([x, y - 28], [x + w, y - 28], 2, INK)], height: y - 20 }
}

/** Pieces under one another: to what length, and whom they are for. @returns its items and where it ends */
const cellOf = (
  pen: Pen,
  pieces: readonly BenchPiece[],
  wordsOf: (p: BenchPiece) => string,
  units: Units,
  at: { x: number; width: number },
): Block => {
  const items: Item[] = []
  let y = 38
  for (const piece of pieces) {
    const times = piece.each > 1 ? `${piece.each} × ` : ''
    items.push(words(pen, `${times}${figures(piece.length_mm, units)}`, STRONG, at.x + LENGTH - 30, y, 'right'))
    const block = paragraph(pen, wordsOf(piece), SMALLER, { x: at.x + LENGTH, y, width: at.width - LENGTH, most: 4 })
    items.push(...block.items)
    y = block.y
  }
  return { items, height: y - 38 + 12 }
}

/** The days on which a plant goes in. */
const daysWords = (plant: string, { tasks }: WorkedEvent['plan']): string => {
  const days = tasks.filter((t) => t.kind === 'place' && t.plants.includes(plant)).map((t) => shortDay(t.start))
  return days.length > 0 ? `: goes in on ${listed([...new Set(days)])}` : ''
}

/**
 * Which stem gives which pieces, plant by plant, to cut by: how many stems, what to cut each to, and whom it is for, with a
 * box to tick at each row.
 */
export const cutPages = (pen: Pen, { order, designs, event, plan }: WorkedEvent, said: CutPageWords): Laid[] => {
  const body = bodyOf(pen.sheet, 2)
  const flow = flowIn(body)
  const known = new Map(designs.map((d) => [d, benchNumbers(d, plan)]))
  const wordsOf = (piece: BenchPiece): string =>
    pieceWords(piece, designs, (d: EventDesign) => known.get(d) ?? new Map())
  for (const line of byPlant(order.lines)) {
    const rows = benchRows(cutPlan(line.places, line.given), line.places, (mm) => figures(mm, said.units))
    const apart = rows.some((r) => r.pieces.some((p) => p.from === 'side'))
    const name = `${plantName(line.plant)}, ${said.colourOf(line)}${daysWords(line.plant, plan)}`
    const head = (words: string): Block => headOf(pen, line, words, said.units, body)
    flow.head(head(name), head(`${name}, continued`), 110)
    for (const { stems, pieces } of rows) {
      const [main, side] = [pieces.filter((p) => p.from === 'main'), pieces.filter((p) => p.from === 'side')]
      const cells = [
        cellOf(pen, main, wordsOf, said.units, {
          x: body.x + body.w * AT.main,
          width: body.w * (apart ? AT.side - AT.main - 0.02 : 1 - AT.main),
        }),
        cellOf(pen, side, wordsOf, said.units, { x: body.x + body.w * AT.side, width: body.w * (1 - AT.side) }),
      ]
      const height = Math.max(...cells.map((c) => c.height))
      const items: Item[] = [
        { kind: 'box', box: { x: body.x + 2, y: 10, w: 30, h: 30 }, fill: null, stroke: INK, weight: 2 },
        words(pen, count(stems, 'stem', 'stems'), TEXT, body.x + body.w * AT.stems, 38, 'right'),
        ...cells.flatMap((c) => c.items),
        rule([body.x, height - 2], [body.x + body.w, height - 2], 1, LINE),
      ]
      flow.put({ items, height })
    }
    flow.put({ items: [], height: 26 })
  }
  return numberedPages(pen, flow.pages(), {
    title: 'Cut sheet',
    aside: event.title || 'The event',
    facts: said.when,
    lines: [
      `Stems to take, and what to cut them to, in ${UNIT_WORDS[said.units]}: ${formatLength(event.trim_mm, said.units)} longer than the bench sheet says.`,
      'First the length along the main axis, then what its side stems give. Numbers are those of the bench sheets.',
    ],
    inches: said.units === 'in',
  })
}
