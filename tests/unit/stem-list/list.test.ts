import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Stem } from '../../../src/arrangement/index.ts'
import { minorDigits, priceOf, purchase, rowOf, stemList } from '../../../src/stem-list/index.ts'
import { BOOK, EXAMPLES, listed, stem } from './fixture.ts'

const lateral = { piece: 'lateral' } as const
const buy = (stems: Stem[], copies: number, book = BOOK) => purchase(listed(...stems), copies, book, EXAMPLES)
const many = (n: number, plant: string, over: Partial<Stem> = {}): Stem[] =>
  Array.from({ length: n }, (_, i) => stem(`${plant}${over.piece ?? ''}${i}`, plant, over))

const anyStems = fc
  .array(
    fc.record({
      plant: fc.constantFrom('rose', 'spray', 'branch'),
      role: fc.constantFrom('focal', 'mass', 'filler' as const),
      colour: fc.constantFrom('#e8a0b4', '#E8A0B4', '#ffffff'),
      piece: fc.constantFrom('whole', 'lateral' as const),
      z: fc.integer({ min: 10, max: 300 }),
    }),
    { maxLength: 30 },
  )
  .map((rows) =>
    rows.map(({ plant, z, ...over }, i) => stem(`s${i}`, plant, { ...over, tip: [0, 0, z] } as Partial<Stem>)),
  )

describe('the stem list', () => {
  it('has a row for each plant, colour and role, as they first appear', () => {
    const rows = stemList(
      listed(
        stem('a', 'spray', { ...lateral, tip: [0, 0, 90] }),
        stem('b', 'rose', { role: 'focal', colour: '#FFFFFF', tip: [0, 0, 140] }),
        stem('c', 'spray', { ...lateral, tip: [0, 0, 110] }),
        stem('d', 'rose', { role: 'focal', colour: '#ffffff', tip: [0, 0, 100.5] }),
        stem('e', 'rose', { colour: '#ffffff' }),
      ),
    )
    expect(rows).toEqual([
      { plant: 'spray', colour: '#e8a0b4', role: 'mass', pieces: 2, stems: 1, cut_mm: [150, 170], ids: ['a', 'c'] },
      { plant: 'rose', colour: '#ffffff', role: 'focal', pieces: 2, stems: 2, cut_mm: [160.5, 200], ids: ['b', 'd'] },
      { plant: 'rose', colour: '#ffffff', role: 'mass', pieces: 1, stems: 1, cut_mm: [180, 180], ids: ['e'] },
    ])
    expect(rowOf(rows, 'd')).toBe(rows[1])
    expect(rowOf(rows, 'gone')).toBeUndefined()
  })

  it('says of a row how many of its pieces no usual stem is long enough for', () => {
    // A 50 cm stem is recut by an inch; a piece is cut 2 cm long first.
    const [tall, low] = [stem('a', 'rose', { tip: [0, 0, 394.7] }), stem('b', 'rose', { tip: [0, 0, 394.5] })]
    expect(stemList(listed(tall, low))).toMatchObject([{ pieces: 2, stems: 2, tooLong: 1 }])
    expect(stemList(listed(low))[0]).not.toHaveProperty('tooLong')
  })

  it('is empty for an empty vessel, and nothing is bought', () => {
    expect(stemList(listed())).toEqual([])
    expect(buy([], 12)).toEqual({ copies: 12, currency: 'EUR', lines: [], total: 0 })
  })

  it('keeps every stem in one row, whatever their order', () => {
    fc.assert(
      fc.property(anyStems, (stems) => {
        const key = (r: object): string => JSON.stringify({ ...r, ids: null })
        const [rows, turned] = [stemList(listed(...stems)), stemList(listed(...[...stems].reverse()))]
        expect(rows.flatMap((r) => r.ids).sort()).toEqual(stems.map((s) => s.id).sort())
        expect(rows.map(key).sort()).toEqual(turned.map(key).sort())
        expect(buy(stems, 7).total).toBe(buy([...stems].reverse(), 7).total)
      }),
    )
  })
})

describe('the fewest stems', () => {
  it('cut one spray for three tables, where each alone would need a stem', () => {
    expect(buy(many(1, 'spray', lateral), 3).lines[0]).toMatchObject({
      pieces: 3,
      stems: 1,
      spareStems: 1,
      bunches: 1,
      leftover: 3,
    })
  })

  it('leave a whole spray whole, and give each lateral of a single-headed plant a stem', () => {
    expect(buy([...many(2, 'spray'), ...many(5, 'spray', lateral)], 1).lines[0]?.stems).toBe(4)
    expect(buy(many(7, 'rose', lateral), 2).lines[0]?.stems).toBe(14)
  })

  it('take no more stems than pieces, and at most twice as many for twice the copies', () => {
    fc.assert(
      fc.property(anyStems, fc.integer({ min: 1, max: 5000 }), (stems, copies) => {
        const [once, twice] = [buy(stems, copies), buy(stems, copies * 2)]
        once.lines.forEach((line, i) => {
          const double = twice.lines[i]?.stems as number
          expect(double).toBeLessThanOrEqual(line.stems * 2)
          expect(double).toBeGreaterThanOrEqual(line.stems)
          expect(line.stems).toBeLessThanOrEqual(line.pieces)
        })
      }),
    )
  })
})

describe('what to buy', () => {
  it('buys a bunch once for flowers of two roles', () => {
    const stems = [...many(6, 'rose', { role: 'focal' }), ...many(3, 'rose').map((s) => ({ ...s, id: `${s.id}m` }))]
    expect(buy(stems, 1)).toEqual({
      copies: 1,
      currency: 'EUR',
      lines: [
        {
          plant: 'rose',
          colour: '#e8a0b4',
          pieces: 9,
          stems: 9,
          spareStems: 1,
          bunchSize: 10,
          bunches: 1,
          leftover: 0,
          cost: 12.5,
        },
      ],
      total: 12.5,
    })
  })

  it('buys by the stem where no bunch size is known', () => {
    expect(buy(many(2, 'branch'), 3).lines[0]).toMatchObject({
      bunchSize: null,
      bunches: null,
      spareStems: 1,
      leftover: 0,
      cost: 19.25,
    })
  })

  it('adds the lines up to the cent, and every bunch to its stems', () => {
    fc.assert(
      fc.property(anyStems, fc.integer({ min: 1, max: 10_000 }), (stems, copies) => {
        const { lines, total } = buy(stems, copies)
        expect(lines.reduce((sum, l) => sum + Math.round(l.cost * 100), 0)).toBe(Math.round(total * 100))
        for (const l of lines) {
          expect(l.leftover).toBeGreaterThanOrEqual(0)
          expect(l.cost * 100).toBeCloseTo(
            (l.bunches ?? l.stems + l.spareStems) * (BOOK.perBunch[l.plant] as number),
            4,
          )
          if (l.bunches === null || l.bunchSize === null) continue
          expect(l.bunches * l.bunchSize).toBe(l.stems + l.spareStems + l.leftover)
          expect(l.leftover).toBeLessThan(l.bunchSize)
        }
      }),
    )
  })

  it('knows how many decimals a currency has', () => {
    expect(['EUR', 'USD', 'JPY', 'KWD', 'nothing'].map(minorDigits)).toEqual([2, 2, 0, 3, 2])
    expect(buy(many(1, 'rose'), 1, { currency: 'JPY', perBunch: { rose: 1250 } }).total).toBe(1250)
    expect(buy(many(1, 'rose'), 1, { currency: 'KWD', perBunch: { rose: 1250 } }).total).toBe(1.25)
  })

  it('takes the example where the person has no price, and says so', () => {
    const book = { currency: 'EUR', perBunch: { rose: 0, spray: -3, branch: 1.5 } }
    expect(priceOf('rose', book, EXAMPLES)).toEqual({ minor: 0, example: false })
    expect(priceOf('spray', book, EXAMPLES)).toEqual({ minor: 700, example: true })
    expect(priceOf('branch', book, EXAMPLES)).toEqual({ minor: 200, example: true })
    expect(priceOf('toString', book, EXAMPLES)).toEqual({ minor: 700, example: true })
    expect(priceOf('rose', BOOK).example).toBe(false)
  })

  it.each([0, -1, 1.5, Number.NaN])('refuses %s copies', (copies) => {
    expect(() => buy([], copies)).toThrow('copies: expected a whole number from 1 up')
  })
})
