import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Stem } from '../../../src/arrangement/index.ts'
import { benchRows, cutPlan, orderOf, type Place, uncutOf, type Yield } from '../../../src/stem-list/index.ts'
import { BOOK, EXAMPLES, listed, PLANTS, stem } from './fixture.ts'

const SPRAY: Yield = { main_mm: 500, sides: 3, side_mm: 250 }
const place = (design: string, id: string, count: number, length_mm: number, piece: Stem['piece']): Place => ({
  design,
  stem: id,
  count,
  cut_mm: length_mm - 20,
  length_mm,
  piece,
})
const inCm = (mm: number): string => (mm / 10).toFixed(1)

describe('the cutting plan at the bench', () => {
  it('three sprays: a long piece each for three bowls, and nine cups from their side stems', () => {
    const places = [place('bowls', 'a', 3, 300, 'lateral'), place('cups', 'x', 9, 150, 'lateral')]
    expect(benchRows(cutPlan(places, SPRAY), places, inCm)).toEqual([
      {
        stems: 3,
        pieces: [
          { from: 'main', each: 1, length_mm: 300, design: 'bowls', stems: ['a'], copies: [1, 3] },
          { from: 'side', each: 3, length_mm: 150, design: 'cups', stems: ['x'], copies: [1, 9] },
        ],
      },
    ])
  })

  it('two roses of a bowl that read the same length are one row, cut to the longer', () => {
    const one: Yield = { main_mm: 475, sides: 0, side_mm: 0 }
    const places = [
      place('bowls', 'a', 12, 245.2, 'whole'),
      place('bowls', 'b', 12, 245.4, 'whole'),
      place('bowls', 'c', 12, 260, 'whole'),
    ]
    const rows = benchRows(cutPlan(places, one), places, inCm)
    expect(rows.map((r) => [r.stems, r.pieces[0]!.stems, r.pieces[0]!.length_mm])).toEqual([
      [12, ['c'], 260],
      [24, ['b', 'a'], 245.4],
    ])
  })

  it('no piece is lost on the way from the plan to the bench', () => {
    const some = fc.array(
      fc.record({
        design: fc.constantFrom('bowls', 'cups'),
        count: fc.integer({ min: 1, max: 40 }),
        length_mm: fc.integer({ min: 60, max: 480 }),
        piece: fc.constantFrom('whole' as const, 'lateral' as const),
      }),
      { maxLength: 8 },
    )
    fc.assert(
      fc.property(some, fc.integer({ min: 0, max: 4 }), (given, sides) => {
        const places = given.map((g, i) => ({ ...g, stem: `s${i}`, cut_mm: g.length_mm - 20 }))
        const cuts = cutPlan(places, { ...SPRAY, sides })
        const rows = benchRows(cuts, places, (mm) => String(Math.round(mm / 50)))
        const stems = (all: { stems?: number; times?: number }[]): number =>
          all.reduce((n, r) => n + (r.stems ?? r.times ?? 0), 0)
        expect(stems(rows)).toBe(stems(cuts))
        for (const { count, stem: id } of places) {
          const cut = rows.flatMap((r) => r.pieces.filter((p) => p.stems.includes(id)))
          expect(cut.reduce((n, p) => n + p.copies[1] - p.copies[0] + 1, 0)).toBe(count)
        }
      }),
    )
  })
})

describe('what cutting apart saves', () => {
  it('36 laterals of four heads: 9 stems in two bunches, uncut 36 in eight', () => {
    const lateral: Partial<Stem> = { piece: 'lateral', tip: [0, 0, 90] }
    const choices = { prices: BOOK, examples: EXAMPLES, spare: { spray: 0 } }
    const order = orderOf([{ design: 'cups', copies: 36, resolved: listed(stem('x', 'spray', lateral)) }], choices)
    expect(order.lines[0]).toMatchObject({ stems: 9, bought: 10, minor: 2 * 899 })
    const uncut = uncutOf(order, choices, (id) => PLANTS[id])
    expect([...uncut.values()]).toEqual([{ stems: 36, bought: 40, minor: 8 * 899 }])
  })
})
