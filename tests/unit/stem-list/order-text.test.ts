import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Stem } from '../../../src/arrangement/index.ts'
import { findPlant, RECUT_mm } from '../../../src/catalogue/index.ts'
import {
  type Delivery,
  lengthToAsk,
  type OrderLine,
  orderCsv,
  orderMessage,
  orderOf,
  readCsv,
} from '../../../src/stem-list/index.ts'
import { BOOK, EXAMPLES, listed, stem } from './fixture.ts'

const orderFor = (...stems: Stem[]) =>
  orderOf([{ design: 'bowls', copies: 12, resolved: listed(...stems) }], { prices: BOOK, examples: EXAMPLES })
/** Cut length of a stem of the fixture: its tip above the mouth and 60 mm under it; 20 more are cut first. */
const long = (id: string, plant: string, above_mm: number, over: Partial<Stem> = {}): Stem =>
  stem(id, plant, { tip: [0, 0, above_mm], ...over })
const cm = (mm: number): number => Math.ceil((mm + 60 + 20 + RECUT_mm) / 10)

const DAYS: Record<string, Delivery> = {
  rose: {
    day: '2027-04-21',
    words: 'Wednesday 21 April 2027',
    how: 'further on, as it has only 3 of up to 4 days to open',
  },
  spray: { day: '2027-04-20', words: 'Tuesday 20 April 2027', how: '' },
}
const words = {
  colourOf: () => 'pink',
  deliveryOf: ({ plant }: OrderLine): Delivery | null => DAYS[plant] ?? null,
  units: 'cm' as const,
}
const none = { ...words, deliveryOf: () => null }

describe('the order as a message', () => {
  it('each flower is asked for on the day it is to come, as long as it has to be, and further on where it must', () => {
    const order = orderFor(
      long('a', 'rose', 120),
      long('b', 'rose', 200),
      long('c', 'spray', 150, { piece: 'lateral' }),
    )
    expect(orderMessage(order, 'Orchard\r\nsupper\u2028', 'Saturday 24 April 2027', words)).toBe(
      [
        'Orchard supper: flowers to order',
        'The event is on Saturday 24 April 2027. Please deliver each on the day that it stands under.',
        '',
        'To come on Tuesday 20 April 2027:',
        '- spray, pink: 1 × 5 (5 stems); at least 26 cm long; side stems at least 23 cm',
        '',
        'To come on Wednesday 21 April 2027:',
        '- Rose, pink: 3 × 10 (30 stems); at least 31 cm long; further on, as it has only 3 of up to 4 days to open',
        '',
        'Lengths are of the whole stem, as it is sold.',
        'Please tell me what is not to be had in that colour and length, or on that day.',
        '',
      ].join('\n'),
    )
  })
  it('pieces that no usual stem gives are told apart, by how many and how long', () => {
    // The fixture's stems are 500 mm long.
    const some = orderMessage(orderFor(long('a', 'rose', 120), long('b', 'rose', 450)), '', '', words)
    expect(some).toContain('; at least 23 cm long; 12 of them at least 56 cm, longer than the usual 50 cm')
    const all = orderMessage(orderFor(long('b', 'rose', 450)), '', '', words)
    expect(all).toContain('; at least 56 cm, longer than the usual 50 cm;')
  })
  it('without a date it is a plain list and says so', () => {
    const text = orderMessage(orderFor(long('a', 'rose', 120)), '', '', none)
    expect(text).toMatch(
      /^Flowers to order\nThe day is not settled yet\.\n\n- Rose, pink: 2 × 10 \(20 stems\); at least 23 cm long\n/,
    )
    expect(text).not.toContain('To come on')
  })
  it('what has no day while others have stands last', () => {
    const order = orderFor(long('a', 'branch', 120), long('b', 'rose', 120))
    const text = orderMessage(order, '', 'Saturday 24 April 2027', words)
    expect(text.indexOf('The day of these is not settled:\n- branch')).toBeGreaterThan(text.indexOf('- Rose'))
  })
  it('stays one line a title and one a flower, whatever the title', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (title) => {
        const lines = orderMessage(orderFor(long('a', 'rose', 120)), title, '', none).split(/[\n\r\u0085\u2028\u2029]/)
        expect(lines).toHaveLength(8)
        expect(lines[1]).toBe('The day is not settled yet.')
      }),
    )
  })
})

describe('the length to ask for', () => {
  it('is that of the longest piece as it is first cut, and the recut', () => {
    const [line] = orderFor(long('a', 'rose', 120), long('b', 'rose', 200)).lines
    expect(lengthToAsk(line!)).toEqual({ least_mm: 280 + RECUT_mm, longer: null, usual_mm: 500, side_mm: null })
  })
  it('of greens that are cut one piece after the other it is all of them together', () => {
    const eucalyptus = findPlant('euc-silver')!
    const [line] = orderFor(long('a', 'rose', 70), long('b', 'rose', 100)).lines
    const along = { ...line!, plant: eucalyptus.id, given: { main_mm: 500, sides: 0, side_mm: 0, along: 2 } }
    // 150 and 180 mm, two a stem: the longest two together.
    expect(lengthToAsk(along).least_mm).toBeGreaterThanOrEqual(150 + 180 + RECUT_mm)
  })
  it('is enough for the longest piece, in any unit, and no whole unit more', () => {
    const step = { cm: 10, in: 25.4, mm: 10 }
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 10, max: 390 }), { minLength: 1, maxLength: 5 }),
        fc.constantFrom('cm' as const, 'in' as const, 'mm' as const),
        (above, units) => {
          const order = orderFor(...above.map((mm, i) => long(`s${i}`, 'rose', mm)))
          const text = orderMessage(order, '', '', { ...none, units })
          const said =
            Number(new RegExp(`at least (\\d+) ${units} long`).exec(text)?.[1]) * (units === 'mm' ? 1 : step[units])
          const wanted = Math.max(...above) + 60 + 20 + RECUT_mm
          expect(said).toBeGreaterThanOrEqual(wanted - 1e-5)
          expect(said - wanted).toBeLessThan(step[units])
        },
      ),
    )
  })
})

describe('the order as CSV', () => {
  const order = orderFor(long('a', 'rose', 200), long('b', 'rose', 450), long('c', 'spray', 150, { piece: 'lateral' }))

  it('says of each line when it is to come, how long it has to be, and how open', () => {
    const [head, rose, spray] = readCsv(orderCsv(order, { ...words, withCost: true })).rows.map((row) => row.cells)
    const row = (cells: string[]): Record<string, string> =>
      Object.fromEntries(head!.map((name, i) => [name, cells[i] ?? '']))
    expect(row(rose!)).toMatchObject({
      'to come on': 'Wednesday 21 April 2027',
      date: '2027-04-21',
      bunches: '3 x 10',
      'stem at least (cm)': String(cm(200)),
      'longer than usual': '12',
      'those at least (cm)': String(cm(450)),
      'how open': 'further on, as it has only 3 of up to 4 days to open',
      cost: '37.50',
      currency: 'EUR',
      price: 'mine',
    })
    expect(row(spray!)).toMatchObject({ date: '2027-04-20', 'longer than usual': '', 'side stems at least (cm)': '23' })
    expect(readCsv(orderCsv(order, { ...none, withCost: false })).rows[1]!.cells.slice(3, 5)).toEqual([
      'not settled',
      '',
    ])
  })
  it('is written with semicolons and decimal commas for a spreadsheet that wants those', () => {
    const text = orderCsv(order, { ...words, withCost: true, kind: 'semicolon' })
    expect(text).toContain(';37,50;EUR;mine\r\n')
    expect(readCsv(text)).toMatchObject({ delimiter: ';' })
  })
  it('has no letter that a spreadsheet could take for another', () => {
    expect(orderCsv(order, { ...words, withCost: true })).toMatch(/^[\r\n\x20-\x7e]*$/)
  })
})
