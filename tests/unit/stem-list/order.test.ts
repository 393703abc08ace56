import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Stem } from '../../../src/arrangement/index.ts'
import { type Demand, orderOf, shareOut } from '../../../src/stem-list/index.ts'
import { promise } from '../../promise.ts'
import { BOOK, EXAMPLES, listed, stem } from './fixture.ts'

const lateral: Partial<Stem> = { piece: 'lateral', tip: [0, 0, 90] }
const choices = { prices: BOOK, examples: EXAMPLES }
const noSpare = { ...choices, spare: { rose: 0, spray: 0, branch: 0 } }
const demand = (design: string, copies: number, ...stems: Stem[]): Demand => ({
  design,
  copies,
  resolved: listed(...stems),
})
const bowls = demand('bowls', 12, stem('a', 'spray', lateral), stem('b', 'rose'))
const cups = demand('cups', 24, stem('x', 'spray', lateral))

describe('the order of an event', () => {
  it('cups and bowls are cut from the same sprays and rounded up once', () => {
    // 36 laterals, four a stem: 9 stems, two bunches of five. One by one: 12/4 = 3 and 24/4 = 6 stems, one and two bunches.
    const order = orderOf([bowls, cups], noSpare)
    expect(order.lines.map((l) => [l.plant, l.stems, l.bought, l.leftover])).toEqual([
      ['spray', 9, 10, 1],
      ['rose', 12, 20, 8],
    ])
    const alone = [bowls, cups].map((d) => orderOf([d], noSpare).lines[0]!.bought)
    expect(alone).toEqual([5, 10])
    expect(order.minor).toBe(2 * 899 + 2 * 1250)
  })

  it('spare goes on top of the whole, before rounding', () => {
    const [spray, rose] = orderOf([bowls, cups], { ...choices, spare: { spray: 0.1, rose: 0.25 } }).lines
    expect(spray).toMatchObject({ stems: 9, spareStems: 1, bought: 10, leftover: 0 })
    expect(rose).toMatchObject({ stems: 12, spareStems: 3, bought: 20, leftover: 5 })
    // 50 × 0.1 is five, not six.
    const fifty = demand('f', 50, stem('a', 'rose'))
    expect(orderOf([fifty], { ...choices, spare: { rose: 0.1 } }).lines[0]!.spareStems).toBe(5)
  })

  it('takes two sizes of bunch where that is cheaper', () => {
    const packs = {
      rose: [
        { stems: 10, minor: 1250 },
        { stems: 3, minor: 400 },
      ],
    }
    const { lines } = orderOf([bowls], { ...noSpare, prices: { ...BOOK, packs } })
    // Twelve roses: 10 + 3 at 16.50; 4 × 3 at 16.00; 2 × 10 at 25.00.
    expect(lines[1]!.packs).toEqual([{ stems: 3, minor: 400, count: 4 }])
    expect(lines[1]!.minor).toBe(1600)
  })

  it('says where what is left over would go', () => {
    const [spray, rose] = orderOf([bowls, cups], noSpare).lines
    expect(spray!.uses).toEqual([
      { design: 'bowls', length_mm: 170, each: 1, copies: 4 },
      { design: 'cups', length_mm: 170, each: 1, copies: 4 },
    ])
    expect(rose!.uses).toEqual([{ design: 'bowls', length_mm: 200, each: 1, copies: 8 }])
  })

  it('sprays of three heads that came 40 cm long are counted and cut as they are', () => {
    const came = { ...noSpare, stems: { spray: { stem_mm: 400, heads: 3, side_mm: 150 } } }
    // 36 pieces of 170 mm: no side stem is as long, so each takes a main axis. With the catalogue's four heads and 250 mm, nine stems.
    expect(orderOf([bowls, cups], came).lines[0]).toMatchObject({ stems: 36, bought: 40, tooLong: 0, sidesLeft: 72 })
    const longer = { ...noSpare, stems: { spray: { heads: 3 } } }
    expect(orderOf([bowls, cups], longer).lines[0]).toMatchObject({ stems: 12, bought: 15, sidesLeft: 0 })
    const stubs = { ...noSpare, stems: { spray: { stem_mm: 180 } } }
    expect(orderOf([bowls, cups], stubs).lines[0]).toMatchObject({ stems: 36, tooLong: 36 })
    // What one plant is like says nothing of another.
    expect(orderOf([bowls], came).lines[1]).toEqual(orderOf([bowls], noSpare).lines[1])
  })

  it('shares the cost by the heads each takes, to the cent', () => {
    const order = orderOf([bowls, cups], noSpare)
    // 1798 cents over 12 and 24 heads: 599.33 and 1198.67.
    expect(order.lines[0]!.minorOf).toEqual({ bowls: 599, cups: 1199 })
    expect(order.minorOf).toEqual({ bowls: 599 + 2500, cups: 1199 })
  })

  it('shades of one colour of the trade come from one bunch over two designs; another colour does not', () => {
    const green = (id: string, colour: string): Stem => stem(id, 'fern', { colour })
    const rose = (id: string, colour: string): Stem => stem(id, 'rose', { colour })
    const two = [
      demand('a', 1, green('x', '#5d7a4a'), rose('r', '#e8a0b4')),
      demand('b', 1, green('x', '#617d50'), rose('r', '#eaa6b8'), rose('s', '#8a1530')),
    ]
    expect(orderOf(two, choices).lines.map((l) => [l.plant, l.stems])).toEqual([
      ['fern', 2],
      ['rose', 2],
      ['rose', 1],
    ])
    const alone = demand('a', 1, rose('r', '#e8a0b4'), rose('s', '#eaa4b6'))
    // An event of one design too: another design beside it must not make it cheaper. Its own list shows it as it is drawn.
    expect(orderOf([alone], choices).lines).toHaveLength(1)
    expect(orderOf([alone], { ...choices, shades: 'apart' }).lines).toHaveLength(2)
  })

  it('says how many pieces are longer than the stems that are sold', () => {
    const tall = demand('tall', 3, stem('a', 'rose', { tip: [0, 0, 600] }), stem('b', 'rose'))
    expect(orderOf([tall], choices).lines[0]).toMatchObject({ stems: 6, tooLong: 3 })
  })

  it('is the same in whatever order designs and stems are given, and never buys more together than apart', () => {
    const someStems = fc.array(
      fc.record({
        plant: fc.constantFrom('rose', 'spray', 'branch'),
        piece: fc.constantFrom('whole' as const, 'lateral' as const),
        z: fc.integer({ min: 10, max: 300 }),
      }),
      { maxLength: 8 },
    )
    const someDemands = fc.array(fc.tuple(someStems, fc.integer({ min: 1, max: 500 })), { minLength: 1, maxLength: 5 })
    let runs = 0
    fc.assert(
      fc.property(someDemands, (given) => {
        runs += 1
        const demands = given.map(([stems, copies], d) =>
          demand(
            `d${d}`,
            copies,
            ...stems.map(({ plant, piece, z }, i) => stem(`s${i}`, plant, { piece, tip: [0, 0, z] })),
          ),
        )
        const order = orderOf(demands, noSpare)
        const turned = orderOf([...demands].reverse(), noSpare)
        const plain = (o: typeof order): string[] =>
          o.lines.map((l) => [l.plant, l.pieces, l.stems, l.bought, l.minor].join()).sort()
        expect(plain(turned)).toEqual(plain(order))
        expect(order.lines.reduce((sum, l) => sum + l.minor, 0)).toBe(order.minor)
        expect(Object.values(order.minorOf).reduce((sum, n) => sum + n, 0)).toBe(order.minor)
        for (const line of order.lines) {
          expect(line.bought).toBe(line.stems + line.spareStems + line.leftover)
          const apart = demands
            .flatMap((d) => orderOf([d], noSpare).lines)
            .filter((l) => l.plant === line.plant)
            .reduce((sum, l) => sum + l.stems, 0)
          expect(line.stems).toBeLessThanOrEqual(apart)
        }
      }),
      { numRuns: 150 },
    )
    promise(`C3 an order over designs is exact to the cent and never more than apart: ${runs} events, 0 failures`)
  })

  it('refuses shares and copies that are none', () => {
    expect(() => orderOf([{ ...bowls, copies: 0 }], choices)).toThrow('copies: expected a whole number')
    expect(() => orderOf([bowls], { ...choices, spare: { rose: -0.1 } })).toThrow('spare: expected a share')
  })
})

describe('sharing out money', () => {
  it('gives what is left to the largest remainders', () => {
    expect(
      shareOut(
        100,
        new Map([
          ['a', 1],
          ['b', 1],
          ['c', 1],
        ]),
      ),
    ).toEqual({ a: 34, b: 33, c: 33 })
    expect(
      shareOut(
        5,
        new Map([
          ['a', 0],
          ['b', 0],
        ]),
      ),
    ).toEqual({ a: 5, b: 0 })
  })
  it('adds up, and no part is off by a whole unit', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1_000_000_000 }),
        fc.array(fc.integer({ min: 0, max: 1_000_000 }), { minLength: 1, maxLength: 12 }),
        (amount, weights) => {
          const all = weights.reduce((sum, w) => sum + w, 0)
          const parts = Object.values(shareOut(amount, new Map(weights.map((w, i) => [`k${i}`, w]))))
          expect(parts.reduce((sum, p) => sum + p, 0)).toBe(amount)
          for (const [i, p] of parts.entries())
            if (all > 0) expect(Math.abs(p - (amount * weights[i]!) / all)).toBeLessThan(1.0001)
        },
      ),
    )
  })
})
