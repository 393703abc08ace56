import { type OrderLine, packWords } from '../../../stem-list/index.ts'
import { cut } from '../../picture/text.ts'
import type { Align, Font, Item, Laid } from '../../picture/types.ts'
import { INK, LINE } from '../../picture/types.ts'
import { plantName, type WorkedEvent } from '../use-worked-event.ts'
import { money } from '../words.ts'
import { careOf } from './care.ts'
import { bodyOf, type Pen, page, rule, STRONG, TEXT, words } from './frame.ts'

const ROW = 62

interface Column {
  head: string
  /** Share of the width where the cell ends (or begins, from the left). */
  at: number
  align: Align
  of: (line: OrderLine) => string
}

/** The order as a list to buy by, as many pages as it takes. */
export const orderPages = (
  pen: Pen,
  { order, event }: WorkedEvent,
  said: { colourOf: (line: OrderLine) => string; withCost: boolean; when: string; inches: boolean },
): Laid[] => {
  const body = bodyOf(pen.sheet)
  const { currency } = order
  const columns: Column[] = [
    { head: 'plant', at: 0.05, align: 'left', of: (l) => plantName(l.plant) },
    { head: 'colour', at: 0.32, align: 'left', of: said.colourOf },
    { head: 'needed', at: 0.62, align: 'right', of: (l) => String(l.stems) },
    { head: 'spare', at: 0.7, align: 'right', of: (l) => String(l.spareStems) },
    { head: 'bunches', at: 0.83, align: 'right', of: packWords },
    ...(said.withCost
      ? [
          {
            head: 'cost',
            at: 1,
            align: 'right' as const,
            of: (l: OrderLine) => `${money(l.minor, currency)}${l.example ? ' *' : ''}`,
          },
        ]
      : [{ head: 'left over', at: 1, align: 'right' as const, of: (l: OrderLine) => String(l.leftover) }]),
  ]
  const x = (c: Column): number => body.x + body.w * c.at
  const room = (c: Column): number => (c.align === 'left' ? body.w * (c.at < 0.1 ? 0.26 : 0.2) : body.w * 0.14)
  const line = (texts: readonly string[], font: Font, y: number): Item[] =>
    columns.map((c, i) => words(pen, cut(texts[i] ?? '', font, room(c), pen.measure), font, x(c), y, c.align))
  const perPage = Math.floor((body.h - 160) / ROW)
  const pages: Item[][] = []
  for (let from = 0; from < Math.max(1, order.lines.length); from += perPage) {
    const some = order.lines.slice(from, from + perPage)
    const items: Item[] = [
      ...line(
        columns.map((c) => c.head),
        { ...TEXT, size: 34 },
        body.y + 50,
      ),
      rule([body.x, body.y + 70], [body.x + body.w, body.y + 70], 3, INK),
    ]
    some.forEach((l, i) => {
      const y = body.y + 70 + ROW * (i + 1) - 18
      // A box to tick when it has been bought.
      items.push({ kind: 'box', box: { x: body.x + 6, y: y - 28, w: 32, h: 32 }, fill: null, stroke: INK, weight: 2 })
      items.push(
        ...line(
          columns.map((c) => c.of(l)),
          TEXT,
          y,
        ),
      )
      items.push(rule([body.x, y + 18], [body.x + body.w, y + 18], 2, LINE))
    })
    if (from + perPage >= order.lines.length) {
      const y = body.y + 70 + ROW * (some.length + 1) + 8
      const bought = order.lines.reduce((n, l) => n + l.bought, 0)
      const total = said.withCost ? `, ${money(order.minor, currency)}` : ''
      items.push(words(pen, `${bought} stems in all${total}.`, STRONG, body.x, y))
      if (said.withCost && order.lines.some((l) => l.example))
        items.push(words(pen, '* an example price, invented: no shop asks it.', TEXT, body.x, y + 54))
    }
    pages.push(items)
  }
  return pages.map((items, i) =>
    page(
      pen,
      {
        title: 'What to buy',
        aside: event.title || 'The event',
        facts: said.when,
        lines: ['For all the tables together; spare is in it. Look at heads and leaves before you pay.'],
        page: pages.length > 1 ? `${i + 1} of ${pages.length}` : '',
        inches: said.inches,
        foot: careOf(order.lines.map((l) => l.plant)),
      },
      items,
    ),
  )
}
