import { findPlant } from '../catalogue/index.ts'
import { toUnit, type Units } from '../units/index.ts'
import { type CsvKind, csvText, inKind } from './csv.ts'
import type { Order, OrderLine } from './order.ts'
import { moneyDigits } from './price-book.ts'
import { lengthToAsk } from './stem-length.ts'

/** `2 × 25 + 1 × 10`, or the stems alone where they are bought one by one. */
export const packWords = ({ packs, bought }: OrderLine): string =>
  packs.every((p) => p.stems === 1) ? `${bought} stems` : packs.map((p) => `${p.count} × ${p.stems}`).join(' + ')

/** When a plant is to come, and in what state it is to be then. */
export interface Delivery {
  /** `YYYY-MM-DD` */
  day: string
  /** `Saturday 24 April 2027` */
  words: string
  /** `further on, as it has only 1 of up to 3 days to open`; '' where nothing is asked. */
  how: string
}

export interface OrderWords {
  /** A colour in words. */
  colourOf: (line: OrderLine) => string
  /** null where no day is settled. */
  deliveryOf: (line: OrderLine) => Delivery | null
  units: Units
}

const nameOf = (line: OrderLine): string => findPlant(line.plant)?.name ?? line.plant

/** Lengths for a seller stand on whole cm or inches, or on ten mm. Ours. */
const STEP: Record<Units, number> = { mm: 10, cm: 1, in: 1 }
/** So far over a full step is what reckoning in fractions adds. */
const HAIR = 1e-6

const onStep = (mm: number, units: Units, round: 'ceil' | 'floor'): number => {
  const hair = round === 'ceil' ? -HAIR : HAIR
  return STEP[units] * Math[round](toUnit(mm, units) / STEP[units] + hair)
}
/** No shorter than this, rounded up to what a seller is asked for. */
export const atLeast = (mm: number, units: Units): number => onStep(mm, units, 'ceil')

const CSV_HEAD = (units: Units): string[] => [
  'plant',
  'botanical',
  'colour',
  'to come on',
  'date',
  'needed',
  'spare',
  'bunches',
  'stems bought',
  'left over',
  `stem at least (${units})`,
  'longer than usual',
  `those at least (${units})`,
  `side stems at least (${units})`,
  'how open',
]
const NOT_SETTLED = 'not settled'

/**
 * The order as CSV (csvText), a row for each line: the day it is to come, the least length of its stems as they are sold, money in
 * main units with its decimals, and whether a price is invented. All its letters are ASCII, so that a spreadsheet that
 * takes it for another alphabet than UTF-8 shows them right.
 */
export const orderCsv = (
  order: Order,
  { colourOf, deliveryOf, units, withCost, kind = 'comma' }: OrderWords & { withCost: boolean; kind?: CsvKind },
): string =>
  csvText(
    [
      [...CSV_HEAD(units), ...(withCost ? ['cost', 'currency', 'price'] : [])],
      ...order.lines.map((line) => {
        const delivery = deliveryOf(line)
        const { least_mm, longer, side_mm } = lengthToAsk(line)
        const length = (mm: number | null | undefined): number | '' => (mm ? atLeast(mm, units) : '')
        return [
          nameOf(line),
          findPlant(line.plant)?.botanical ?? '',
          colourOf(line),
          delivery?.words ?? NOT_SETTLED,
          delivery?.day ?? '',
          line.stems,
          line.spareStems,
          packWords(line).replaceAll('×', 'x'),
          line.bought,
          line.leftover,
          length(least_mm),
          longer?.pieces ?? '',
          length(longer?.least_mm),
          length(side_mm),
          delivery?.how ?? '',
          ...(withCost
            ? [inKind(moneyDigits(line.minor, order.currency), kind), order.currency, line.example ? 'example' : 'mine']
            : []),
        ]
      }),
    ],
    kind,
  )

const lengthWords = (line: OrderLine, units: Units): string => {
  const { least_mm, longer, usual_mm, side_mm } = lengthToAsk(line)
  const from = (mm: number): string => `at least ${atLeast(mm, units)} ${units}`
  const usual = longer && `${from(longer.least_mm)}, longer than the usual ${onStep(usual_mm, units, 'floor')} ${units}`
  return [
    least_mm === null ? '' : `${from(least_mm)} long`,
    longer && (least_mm === null ? usual : `${longer.pieces} of them ${usual}`),
    side_mm === null ? '' : `side stems ${from(side_mm)}`,
  ]
    .filter(Boolean)
    .join('; ')
}

const lineWords = (line: OrderLine, { colourOf, deliveryOf, units }: OrderWords): string => {
  const colour = colourOf(line)
  const stems = line.packs.every((p) => p.stems === 1) ? '' : ` (${line.bought} stems)`
  const what = `- ${nameOf(line)}${colour ? `, ${colour}` : ''}: ${packWords(line)}${stems}`
  return [what, lengthWords(line, units), deliveryOf(line)?.how].filter(Boolean).join('; ')
}

/** A text as one line: breaks and other unseen signs pass for a space. */
const oneLine = (text: string): string => text.replace(/[\s\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ').trim()

interface Day {
  /** '' where none is settled. */
  words: string
  lines: OrderLine[]
}

/** Lines under the day on which they are to come, the first day first; those without one last. */
const byDay = (order: Order, deliveryOf: OrderWords['deliveryOf']): Day[] => {
  const days = new Map<string, Day>()
  for (const line of order.lines) {
    const { day = '', words = '' } = deliveryOf(line) ?? {}
    const there = days.get(day) ?? { words, lines: [] }
    there.lines.push(line)
    days.set(day, there)
  }
  const last = ([day]: readonly [string, Day]): string => day || '~'
  return [...days].sort((a, b) => (last(a) < last(b) ? -1 : 1)).map(([, day]) => day)
}

/**
 * The order as a message to the seller, by day of delivery; no prices.
 * @param title of the event, '' for none
 * @param when the event's day in words, '' where it has none: the list is plain then
 */
export const orderMessage = (order: Order, title: string, when: string, words: OrderWords): string => {
  const days = byDay(order, words.deliveryOf)
  const plain = days.every((day) => day.words === '')
  return [
    oneLine(title) ? `${oneLine(title)}: flowers to order` : 'Flowers to order',
    when
      ? `The event is on ${when}.${plain ? '' : ' Please deliver each on the day that it stands under.'}`
      : 'The day is not settled yet.',
    ...days.flatMap((day) => [
      '',
      ...(plain ? [] : [day.words ? `To come on ${day.words}:` : 'The day of these is not settled:']),
      ...day.lines.map((line) => lineWords(line, words)),
    ]),
    '',
    'Lengths are of the whole stem, as it is sold.',
    'Please tell me what is not to be had in that colour and length, or on that day.',
    '',
  ].join('\n')
}
