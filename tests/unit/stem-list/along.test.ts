import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { alongStems } from '../../../src/stem-list/along.ts'
import { cutPlan, fewestOf, type Wanted } from '../../../src/stem-list/index.ts'
import { promise } from '../../promise.ts'

const greens = (count: number, length_mm: number): Wanted => ({ count, length_mm, piece: 'whole' })
const RUSCUS = { main_mm: 675, along: 2 }

/** The fewest groups that pieces can be put in, each no longer than a stem and of so many pieces: over all sets of them. */
const bySets = (wanted: readonly Wanted[], main_mm: number, along: number): number => {
  const all = wanted.flatMap(({ count, length_mm }) => Array.from({ length: count }, () => length_mm))
  const fits = (set: number): boolean => {
    const lengths = all.filter((_, i) => set & (1 << i))
    return lengths.length === 1 || (lengths.length <= along && lengths.reduce((a, b) => a + b, 0) <= main_mm)
  }
  const fewest = [0]
  for (let set = 1; set < 1 << all.length; set += 1) {
    let best = all.length
    for (let part = set; part > 0; part = (part - 1) & set)
      if (fits(part)) best = Math.min(best, 1 + fewest[set ^ part]!)
    fewest[set] = best
  }
  return fewest[(1 << all.length) - 1]!
}

describe('greens cut along their length', () => {
  it('two pieces of 29 cm come from one stem of 70 cm, three of them do not', () => {
    expect(alongStems([greens(24, 290)], RUSCUS)).toMatchObject({ stems: 12, least: 12 })
    expect(alongStems([greens(24, 290)], { ...RUSCUS, along: 3 })).toMatchObject({ stems: 12, least: 12 })
    expect(alongStems([greens(24, 210)], { ...RUSCUS, along: 3 })).toMatchObject({ stems: 8, least: 8 })
  })
  it('a long piece takes a short one along, and one longer than any stem stands alone', () => {
    expect(alongStems([greens(3, 420), greens(3, 250), greens(1, 700)], RUSCUS).stems).toBe(4)
  })
  it('finds what the rule of thumb misses', () => {
    // First fit takes 4 + 3 and is left with three stems; 4 + 2 + 2 and 3 + 3 + 2 are two.
    const wanted = [greens(1, 400), greens(2, 300), greens(3, 200)]
    expect(alongStems(wanted, { main_mm: 800, along: 3 })).toMatchObject({ stems: 2, least: 2 })
  })
  it('is what trying every set of pieces gives', () => {
    const some = fc.array(fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 10, max: 75 })), { maxLength: 6 })
    let runs = 0
    fc.assert(
      fc.property(some, fc.integer({ min: 1, max: 6 }), (given, along) => {
        const wanted = given.map(([count, cm]) => greens(count, cm * 10))
        fc.pre(wanted.reduce((n, w) => n + w.count, 0) <= 9)
        runs += 1
        const fewest = bySets(wanted, 675, along)
        expect(alongStems(wanted, { main_mm: 675, along })).toMatchObject({ stems: fewest, least: fewest })
      }),
      { numRuns: 400 },
    )
    promise(`C5 greens cut along their length, against every way: ${runs} cases, 0 failures`)
  })
  it('proves the fewest where the rules of thumb are five stems over and their bounds twenty under', () => {
    const wanted = [greens(100, 310), greens(150, 230), greens(200, 190), greens(100, 145)]
    expect(alongStems(wanted, { main_mm: 600, along: 3 })).toMatchObject({ stems: 212, least: 212 })
  })
  it('two designs are never more together than apart', () => {
    const some = fc.array(fc.tuple(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 40, max: 400 })), {
      minLength: 1,
      maxLength: 8,
    })
    fc.assert(
      fc.property(
        some,
        some,
        fc.integer({ min: 400, max: 900 }),
        fc.integer({ min: 3, max: 6 }),
        (a, b, main_mm, along) => {
          const of = (design: string, given: typeof a): Wanted[] =>
            given.map(([count, mm]) => ({ ...greens(count, mm), design }))
          const stems = (wanted: readonly Wanted[]): number => alongStems(wanted, { main_mm, along }).stems
          const [one, other] = [of('a', a), of('b', b)]
          expect(stems([...one, ...other])).toBeLessThanOrEqual(stems(one) + stems(other))
        },
      ),
    )
  })
  it('the plan gives each copy of each piece once, two to a stem', () => {
    const wanted = [greens(12, 290), greens(24, 279), greens(4, 245)]
    const cuts = cutPlan(wanted, { main_mm: 575, sides: 0, side_mm: 0, along: 2 })
    expect(cuts.reduce((n, c) => n + c.times, 0)).toBe(20)
    const seen = wanted.map(() => new Set<number>())
    for (const { times, pieces } of cuts)
      for (const p of pieces)
        for (let i = 0; i < times * p.count; i += 1) {
          expect(p.from).toBe('main')
          expect(seen[p.wanted]!.has(p.first + i)).toBe(false)
          seen[p.wanted]!.add(p.first + i)
        }
    expect(seen.map((s) => s.size)).toEqual([12, 24, 4])
    expect(fewestOf(wanted, { main_mm: 575, sides: 0, side_mm: 0, along: 2 })).toMatchObject({ stems: 20, least: 20 })
  })
  it('every pattern fits its stem and every piece is cut once, however many there are', () => {
    const some = fc.array(fc.tuple(fc.integer({ min: 0, max: 10_000 }), fc.integer({ min: 100, max: 750 })), {
      maxLength: 12,
    })
    fc.assert(
      fc.property(some, fc.integer({ min: 1, max: 5 }), (given, along) => {
        const wanted = given.map(([count, mm]) => greens(count, mm))
        const { patterns, stems, least } = alongStems(wanted, { main_mm: 675, along })
        expect(least).toBeLessThanOrEqual(stems)
        expect(patterns.reduce((n, p) => n + p.times, 0)).toBe(stems)
        const cut = wanted.map(() => 0)
        for (const { times, pieces } of patterns) {
          const n = pieces.reduce((all, p) => all + p.count, 0)
          const long = pieces.reduce((all, p) => all + p.count * wanted[p.wanted]!.length_mm, 0)
          expect(times).toBeGreaterThan(0)
          expect(n).toBeLessThanOrEqual(along)
          if (n > 1) expect(long).toBeLessThanOrEqual(675 + 1e-6)
          for (const p of pieces) cut[p.wanted]! += times * p.count
        }
        expect(cut).toEqual(wanted.map((w) => w.count))
      }),
    )
  })
})
