import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cheapestPacks, type Pack } from '../../../src/stem-list/index.ts'
import { promise } from '../../promise.ts'

/** The least money for at least n stems, stem by stem from nothing up. */
const byTable = (needed: number, packs: readonly Pack[]): number => {
  const least = [0]
  for (let n = 1; n <= needed; n += 1)
    least.push(Math.min(...packs.map((p) => p.minor + least[Math.max(0, n - p.stems)]!)))
  return least[needed]!
}
/** The least money, then the fewest stems, then the fewest packs, stem by stem from nothing up. */
const byFullTable = (needed: number, packs: readonly Pack[]): number[] => {
  const best = [[0, 0, 0]]
  for (let n = 1; n <= needed; n += 1) {
    const all = packs.map((p) => {
      const [minor, stems, count] = best[Math.max(0, n - p.stems)]!
      return [minor! + p.minor, stems! + p.stems, count! + 1]
    })
    best.push(all.reduce((a, b) => ((b[0]! - a[0]! || b[1]! - a[1]! || b[2]! - a[2]!) < 0 ? b : a)))
  }
  return best[needed]!
}
const spent = (packs: { count: number; minor: number }[]): number =>
  packs.reduce((sum, p) => sum + p.count * p.minor, 0)

describe('bunches of two sizes', () => {
  // Worked by hand: 25 roses at 20.00 (0.80 each), 10 at 9.00 (0.90 each).
  const roses = [
    { stems: 25, minor: 2000 },
    { stems: 10, minor: 900 },
  ]
  it('thirty roses: three small bunches at 27.00, for a large and a small one cost 29.00', () => {
    expect(cheapestPacks(30, roses)).toEqual([{ stems: 10, minor: 900, count: 3 }])
  })
  it('fifty-three roses: one large and three small at 47.00, for two large and a small one cost 49.00', () => {
    expect(cheapestPacks(53, roses)).toEqual([
      { stems: 25, minor: 2000, count: 1 },
      { stems: 10, minor: 900, count: 3 },
    ])
  })
  it('nothing is bought for nothing, and one size is rounded up', () => {
    expect(cheapestPacks(0, roses)).toEqual([])
    expect(cheapestPacks(21, [{ stems: 10, minor: 500 }])).toEqual([{ stems: 10, minor: 500, count: 3 }])
  })
  it('is as cheap as a table filled stem by stem', () => {
    const pack = fc.record({ stems: fc.integer({ min: 1, max: 25 }), minor: fc.integer({ min: 0, max: 3000 }) })
    let runs = 0
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 160 }), fc.array(pack, { minLength: 1, maxLength: 3 }), (needed, packs) => {
        runs += 1
        const bought = cheapestPacks(needed, packs)
        expect(spent(bought)).toBe(byTable(needed, packs))
        expect(bought.reduce((sum, p) => sum + p.count * p.stems, 0)).toBeGreaterThanOrEqual(needed)
      }),
      { numRuns: 400 },
    )
    promise(`C2 cheapest bunches, against a table of every number of stems: ${runs} cases, 0 failures`)
  })
  it('of equally cheap ones has the fewest stems over, then the fewest packs, with sizes from one to a thousand', () => {
    const pack = fc
      .record({
        stems: fc.constantFrom(1, 7, 10, 12, 20, 25, 50, 100, 1000),
        each: fc.constantFrom(50, 52, 55, 60),
        off: fc.integer({ min: 0, max: 9 }),
      })
      .map(({ stems, each, off }) => ({ stems, minor: stems * each - off }))
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 4000 }),
        fc.array(pack, { minLength: 1, maxLength: 4 }),
        (needed, packs) => {
          const bought = cheapestPacks(needed, packs)
          const sum = (of: (p: (typeof bought)[number]) => number): number => bought.reduce((n, p) => n + of(p), 0)
          expect([spent(bought), sum((p) => p.count * p.stems), sum((p) => p.count)]).toEqual(
            byFullTable(needed, packs),
          )
        },
      ),
    )
  })
  it('refuses sizes and prices that are none', () => {
    for (const packs of [[], [{ stems: 0, minor: 1 }], [{ stems: 2, minor: 0.5 }], [{ stems: 2, minor: -1 }]])
      expect(() => cheapestPacks(3, packs)).toThrow(RangeError)
    expect(() => cheapestPacks(-1, roses)).toThrow(RangeError)
  })
})
