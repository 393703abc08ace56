import { MECHANICS_ROWS } from '../../../catalogue/index.ts'
import { atLeast, lengthToAsk, type OrderLine, packWords } from '../../../stem-list/index.ts'
import { plainName, vesselWord } from '../../../telling/index.ts'
import { formatLength, type Units } from '../../../units/index.ts'
import { shortDay } from '../../../work-plan/index.ts'
import { cut } from '../../picture/text.ts'
import type { Align, Font, Item, Laid } from '../../picture/types.ts'
import { INK, LINE } from '../../picture/types.ts'
import { deliveryIn } from '../order/delivery-of.ts'
import { type EventDesign, plantName, type WorkedEvent } from '../use-worked-event.ts'
import { byPlant, money } from '../words.ts'
import { careOf } from './care.ts'
import { type Block, flowIn } from './flow.ts'
import { bodyOf, numberedPages } from './frame.ts'
import { HEAD, type Pen, rule, STRONG, TEXT, words } from './pen.ts'

const ROW = 62

interface Column {
  head: string
  /** Share of the width where the cell ends (or begins, from the left), and how much of it the cell may take. */
  at: number
  room: number
  align: Align
  of: (line: OrderLine) => string
}

interface OrderPageWords {
  colourOf: (line: OrderLine) => string
  withCost: boolean
  /** The sheet Take care is printed too. */
  withCare: boolean
  when: string
  units: Units
}

/** Where the columns end, or begin from the left, as shares of the width. */
const AT = {
  plain: { colour: 0.29, comes: 0.455, stem: 0.63, needed: 0.71, spare: 0.78, bunches: 0.9, over: 1 },
  withCost: { colour: 0.27, comes: 0.41, stem: 0.55, needed: 0.63, spare: 0.69, bunches: 0.805, over: 0.89 },
}

/** The day on which a line is to come; '' where none is settled. */
type DayOf = (line: OrderLine) => string

const columnsOf = (currency: string, dayOf: DayOf, { colourOf, withCost, units }: OrderPageWords): Column[] => {
  const at = withCost ? AT.withCost : AT.plain
  const comes = (l: OrderLine): string => {
    const day = dayOf(l)
    return day && shortDay(day)
  }
  const stem = (l: OrderLine): string => {
    const { least_mm, longer } = lengthToAsk(l)
    const mm = Math.max(least_mm ?? 0, longer?.least_mm ?? 0)
    return `${atLeast(mm, units)}${longer ? ' !' : ''}`
  }
  const cost = (l: OrderLine): string => `${money(l.minor, currency)}${l.example ? ' *' : ''}`
  return [
    { head: 'plant', at: 0.05, room: 0.23, align: 'left', of: (l) => plainName(plantName(l.plant)) },
    { head: 'colour', at: at.colour, room: 0.13, align: 'left', of: colourOf },
    { head: 'comes', at: at.comes, room: 0.09, align: 'left', of: comes },
    { head: `stem, ${units}`, at: at.stem, room: 0.11, align: 'right', of: stem },
    { head: 'needed', at: at.needed, room: 0.08, align: 'right', of: (l) => String(l.stems) },
    { head: 'spare', at: at.spare, room: 0.07, align: 'right', of: (l) => String(l.spareStems) },
    { head: 'bunches', at: at.bunches, room: 0.11, align: 'right', of: packWords },
    { head: 'left over', at: at.over, room: 0.08, align: 'right', of: (l) => String(l.leftover) },
    ...(withCost ? [{ head: 'cost', at: 1, room: 0.1, align: 'right' as const, of: cost }] : []),
  ]
}

/** A box to tick when it is there. */
const tickBox = (x: number, y: number): Item => ({
  kind: 'box',
  box: { x: x + 6, y: y - 28, w: 32, h: 32 },
  fill: null,
  stroke: INK,
  weight: 2,
})

/** `12 × footed bowl ⌀ 15.0 × 11.4 cm, ceramic, with netting: Orchard supper`. */
const vesselLine = ({ document, resolved, copies, title, place }: EventDesign, units: Units): string => {
  const { vessel } = document
  const wide = vessel.plan === 'round' ? `⌀ ${formatLength(vessel.width, units)}` : formatLength(vessel.width, units)
  const deep = vessel.plan === 'round' ? '' : ` × ${formatLength(vessel.depth, units)}`
  const mechanics = MECHANICS_ROWS.find((row) => row.id === vessel.mechanics)
  const held = mechanics && mechanics.id !== 'none' ? `, with ${mechanics.name.toLowerCase()}` : ''
  const word = vesselWord(resolved.vessel)
  return `${copies} × ${word}, ${wide}${deep}, ${formatLength(vessel.height, units)} high, ${vessel.material}${held}: ${title}${place ? `, ${place}` : ''}`
}

/** By the day on which they come, each plant's colours beside each other. */
const inOrder = (lines: readonly OrderLine[], dayOf: DayOf): OrderLine[] =>
  byPlant(lines).sort((a, b) => (dayOf(a) < dayOf(b) ? -1 : dayOf(a) > dayOf(b) ? 1 : 0))

/** The order as a list to buy by, and the vessels that it is for, as many pages as it takes. */
export const orderPages = (pen: Pen, worked: WorkedEvent, said: OrderPageWords): Laid[] => {
  const { order, event, designs } = worked
  const body = bodyOf(pen.sheet, 1)
  const { currency } = order
  const deliveryOf = deliveryIn(worked)
  const days = new Map(order.lines.map((l) => [l, deliveryOf(l)?.day ?? '']))
  const dayOf: DayOf = (l) => days.get(l) ?? ''
  const columns = columnsOf(currency, dayOf, said)
  const line = (texts: readonly string[], font: Font, y: number): Item[] =>
    columns.map((c, i) =>
      words(pen, cut(texts[i] ?? '', font, body.w * c.room, pen.measure), font, body.x + body.w * c.at, y, c.align),
    )
  const heads = columns.map((c) => c.head)
  const flow = flowIn(body)
  const under = (y: number, weight: number): Item => rule([body.x, y], [body.x + body.w, y], weight, LINE)
  const head: Block = { items: [...line(heads, { ...TEXT, size: 34 }, 50), under(70, 3)], height: 70 }
  flow.head(head, head, ROW)
  for (const l of inOrder(order.lines, dayOf)) {
    const cells = columns.map((c) => c.of(l))
    flow.put({ items: [tickBox(body.x, ROW - 18), ...line(cells, TEXT, ROW - 18), under(ROW, 2)], height: ROW })
  }
  const bought = order.lines.reduce((n, l) => n + l.bought, 0)
  const total = said.withCost ? `, ${money(order.minor, currency)}` : ''
  flow.put({ items: [words(pen, `${bought} stems in all${total}.`, STRONG, body.x, ROW)], height: ROW + 8 })
  if (order.lines.some((l) => l.tooLong > 0))
    flow.put({
      items: [words(pen, '! longer than its stems usually are: ask whether it can be had.', TEXT, body.x, 40)],
      height: 54,
    })
  if (said.withCost && order.lines.some((l) => l.example))
    flow.put({ items: [words(pen, '* an example price, invented: no shop asks it.', TEXT, body.x, 40)], height: 54 })
  const vessels = (said: string): Block => ({
    items: [words(pen, said, HEAD, body.x, 120), under(146, 3)],
    height: 146,
  })
  flow.head(vessels('Vessels and what holds the stems'), vessels('Vessels, continued'), ROW)
  for (const design of designs) {
    const text = cut(vesselLine(design, said.units), TEXT, body.w * 0.95, pen.measure)
    const row = [tickBox(body.x, ROW - 18), words(pen, text, TEXT, body.x + body.w * 0.05, ROW - 18), under(ROW, 2)]
    flow.put({ items: row, height: ROW })
  }
  return numberedPages(pen, flow.pages(), {
    title: 'What to buy',
    aside: event.title || 'The event',
    facts: said.when,
    lines: [
      'For all the tables together, spare in it; stem: the least length to ask for. Look at heads and leaves before you pay.',
    ],
    inches: false,
    foot: careOf(
      order.lines.map((l) => l.plant),
      said.withCare,
    ),
  })
}
