import { findPlant } from '../catalogue/index.ts'
import { csvText } from './csv.ts'
import type { Order, OrderLine } from './order.ts'
import { moneyDigits } from './price-book.ts'

/** `2 × 25 + 1 × 10`, or the stems alone where they are bought one by one. */
export const packWords = ({ packs, bought }: OrderLine): string =>
  packs.every((p) => p.stems === 1) ? `${bought} stems` : packs.map((p) => `${p.count} × ${p.stems}`).join(' + ')

export interface OrderWords {
  /** A colour in words. */
  colourOf: (line: OrderLine) => string
  withCost: boolean
}

const nameOf = (line: OrderLine): string => findPlant(line.plant)?.name ?? line.plant

/** The order as CSV (csvText); money in main units with its decimals, and whether a price is invented. */
export const orderCsv = (order: Order, { colourOf, withCost }: OrderWords): string =>
  csvText([
    [
      'plant',
      'botanical',
      'colour',
      'needed',
      'spare',
      'bunches',
      'stems bought',
      'left over',
      ...(withCost ? ['cost', 'currency', 'price'] : []),
    ],
    ...order.lines.map((line) => [
      nameOf(line),
      findPlant(line.plant)?.botanical ?? '',
      colourOf(line),
      line.stems,
      line.spareStems,
      packWords(line),
      line.bought,
      line.leftover,
      ...(withCost ? [moneyDigits(line.minor, order.currency), order.currency, line.example ? 'example' : 'mine'] : []),
    ]),
  ])

/** The order as a message: a line each, for the seller; no prices. */
export const orderMessage = (
  order: Order,
  title: string,
  day: string,
  { colourOf }: Pick<OrderWords, 'colourOf'>,
): string =>
  [
    `${title || 'Flowers'}${day ? `, needed for ${day}` : ''}:`,
    ...order.lines.map((line) => {
      const colour = colourOf(line)
      return `- ${nameOf(line)}${colour ? `, ${colour}` : ''}: ${packWords(line)}${line.packs.every((p) => p.stems === 1) ? '' : ` (${line.bought} stems)`}`
    }),
    'Please tell me what is not to be had in that colour.',
    '',
  ].join('\n')
