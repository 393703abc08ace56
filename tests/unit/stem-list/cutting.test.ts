import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cutPlan, fewestOf, type Wanted, type Yield } from '../../../src/stem-list/index.ts'
import { promise } from '../../promise.ts'

const SPRAY: Yield = { main_mm: 500, sides: 3, side_mm: 250 }
const laterals = (count: number, length_mm: number): Wanted => ({ count, length_mm, piece: 'lateral' })
const wholes = (count: number, length_mm: number): Wanted => ({ count, length_mm, piece: 'whole' })

/** Tries every way to lay pieces on stems, one by one; knows nothing of the rule. A piece too long for any stem may have a main axis. */
const bySearch = (wanted: readonly Wanted[], given: Yield): number => {
  const pieces = wanted.flatMap(({ count, ...piece }) => Array.from({ length: count }, () => piece))
  const fits = (stems: number): boolean => {
    const free = Array.from({ length: stems }, () => ({ main: true, sides: given.sides }))
    const lay = (k: number): boolean => {
      const piece = pieces[k]
      if (!piece) return true
      const tried = new Set<string>()
      for (const stem of free) {
        const state = `${stem.main} ${stem.sides}`
        if (tried.has(state)) continue
        tried.add(state)
        if (piece.piece === 'whole') {
          if (!stem.main || stem.sides < given.sides) continue
          const sides = stem.sides
          Object.assign(stem, { main: false, sides: -1 })
          if (lay(k + 1)) return true
          Object.assign(stem, { main: true, sides })
          continue
        }
        if (stem.main) {
          stem.main = false
          if (lay(k + 1)) return true
          stem.main = true
        }
        if (stem.sides > 0 && piece.length_mm <= given.side_mm) {
          stem.sides -= 1
          if (lay(k + 1)) return true
          stem.sides += 1
        }
      }
      return false
    }
    return lay(0)
  }
  let stems = 0
  while (!fits(stems)) stems += 1
  return stems
}

const someYield = fc.record({
  main_mm: fc.constant(500),
  sides: fc.integer({ min: 0, max: 5 }),
  side_mm: fc.integer({ min: 100, max: 500 }),
})
/** Any length, and those where it turns: as long as a side stem or a main axis, and a little more or less. */
const lengthsFor = ({ main_mm, side_mm }: Yield): fc.Arbitrary<number> =>
  fc.oneof(
    fc.integer({ min: 60, max: 560 }),
    fc.tuple(fc.constantFrom(side_mm, main_mm), fc.constantFrom(-0.5, 0, 0, 0.5)).map(([limit, by]) => limit + by),
  )
/** Pieces and the stems that they are to come from. */
const someCase = (most: { count: number; kinds: number }): fc.Arbitrary<{ wanted: Wanted[]; given: Yield }> =>
  someYield.chain((given) =>
    fc.record({
      given: fc.constant(given),
      wanted: fc.array(
        fc.record({
          count: fc.integer({ min: 0, max: most.count }),
          length_mm: lengthsFor(given),
          piece: fc.constantFrom('whole' as const, 'lateral' as const, 'lateral' as const),
        }),
        { maxLength: most.kinds },
      ),
    }),
  )

describe('cutting many-headed stems apart', () => {
  it('ten short sprays of four heads come from three stems, not from ten', () => {
    expect(fewestOf([laterals(10, 150)], SPRAY)).toEqual({ stems: 3, least: 3, wholes: 0, sidesLeft: 2, tooLong: 0 })
  })
  it('a long piece needs a main axis, and its side stems serve the short ones', () => {
    // Two bowls want one long and three short each: two stems do for both.
    expect(fewestOf([laterals(2, 400), laterals(6, 150)], SPRAY).stems).toBe(2)
    expect(fewestOf([laterals(3, 400), laterals(2, 150)], SPRAY).stems).toBe(3)
  })
  it('a whole stem keeps its heads: nothing else is cut from it', () => {
    expect(fewestOf([wholes(2, 300), laterals(1, 100)], SPRAY)).toEqual({
      stems: 3,
      least: 3,
      wholes: 2,
      sidesLeft: 3,
      tooLong: 0,
    })
  })
  it('cups and bowls share stems: over the event fewer than one by one', () => {
    const [cups, bowls] = [laterals(24, 120), laterals(14, 180)]
    const apart = 24 * fewestOf([laterals(1, 120)], SPRAY).stems + 14 * fewestOf([laterals(1, 180)], SPRAY).stems
    expect(apart).toBe(38)
    expect(fewestOf([cups, bowls], SPRAY).stems).toBe(10)
  })
  it('says how many pieces no usual stem is long enough for', () => {
    expect(fewestOf([wholes(3, 620), laterals(2, 501), laterals(1, 500)], SPRAY)).toMatchObject({
      stems: 6,
      tooLong: 5,
    })
  })
  it('is what trying every way gives', () => {
    let runs = 0
    fc.assert(
      fc.property(someCase({ count: 3, kinds: 5 }), ({ wanted, given }) => {
        runs += 1
        const { stems, tooLong } = fewestOf(wanted, given)
        expect(stems).toBe(bySearch(wanted, given))
        expect(tooLong).toBe(wanted.reduce((n, w) => n + (w.length_mm > given.main_mm ? w.count : 0), 0))
      }),
      { numRuns: 500 },
    )
    promise(`C1 fewest stems, against trying every way: ${runs} cases, 0 failures`)
  })
})

describe('the count of stems', () => {
  it('a piece as long as a side stem comes from it; one half a millimetre longer takes a main axis', () => {
    expect(fewestOf([laterals(4, 250)], SPRAY).stems).toBe(1)
    expect(fewestOf([laterals(4, 250.5)], SPRAY).stems).toBe(4)
    expect(fewestOf([wholes(1, 500)], SPRAY).tooLong).toBe(0)
    expect(fewestOf([wholes(1, 500.5)], SPRAY).tooLong).toBe(1)
  })
  it('never falls when more is wanted, never rises when two are cut together, and asks no order', () => {
    const two = someCase({ count: 10_000, kinds: 5 }).chain(({ wanted, given }) =>
      fc.record({ a: fc.constant(wanted), b: fc.shuffledSubarray(wanted), given: fc.constant(given) }),
    )
    fc.assert(
      fc.property(two, fc.integer({ min: 1, max: 50 }), ({ a, b, given }, times) => {
        const stems = (wanted: readonly Wanted[]): number => fewestOf(wanted, given).stems
        const often = (k: number): Wanted[] => a.map((w) => ({ ...w, count: w.count * k }))
        expect(stems([...a, ...b])).toBeGreaterThanOrEqual(stems(a))
        expect(stems([...a, ...b])).toBeLessThanOrEqual(stems(a) + stems(b))
        expect(stems([...a].reverse())).toBe(stems(a))
        expect(stems(often(times + 1))).toBeGreaterThanOrEqual(stems(often(times)))
        expect(stems(often(times))).toBeLessThanOrEqual(times * stems(a))
      }),
    )
  })
  it('better stems are never more: longer ones, more heads, longer side stems', () => {
    fc.assert(
      fc.property(someCase({ count: 60, kinds: 6 }), fc.integer({ min: 0, max: 80 }), ({ wanted, given }, by) => {
        const { stems } = fewestOf(wanted, given)
        for (const better of [
          { sides: given.sides + 1 },
          { side_mm: given.side_mm + by },
          { main_mm: given.main_mm + by },
        ])
          expect(fewestOf(wanted, { ...given, ...better }).stems).toBeLessThanOrEqual(stems)
      }),
    )
  })
})

describe('the cutting plan', () => {
  it('names stem, piece and copies', () => {
    expect(cutPlan([laterals(2, 400), laterals(6, 150)], SPRAY)).toEqual([
      {
        times: 2,
        pieces: [
          { wanted: 0, count: 1, first: 1, from: 'main' },
          { wanted: 1, count: 3, first: 1, from: 'side' },
        ],
      },
    ])
  })
  it('gives each piece of each copy once, from a part of a stem that is long enough, by the fewest stems', () => {
    fc.assert(
      fc.property(someCase({ count: 60, kinds: 8 }), ({ wanted, given }) => {
        const cuts = cutPlan(wanted, given)
        const seen = wanted.map(() => new Set<number>())
        const free: number[] = []
        let stems = 0
        let over = 0
        for (const { times, pieces } of cuts) {
          stems += times
          const sides = pieces.filter((p) => p.from === 'side')
          expect(pieces.length - sides.length).toBe(1)
          expect(pieces.find((p) => p.from === 'main')!.count).toBe(1)
          const taken = sides.reduce((n, p) => n + p.count, 0)
          expect(taken).toBeLessThanOrEqual(given.sides)
          const whole = wanted[pieces[0]!.wanted]!.piece === 'whole'
          if (!whole) free.push(...Array.from({ length: times }, () => given.sides - taken))
          for (const p of pieces) {
            const { length_mm, piece } = wanted[p.wanted]!
            if (piece === 'whole') expect(pieces).toHaveLength(1)
            if (p.from === 'side') expect(length_mm).toBeLessThanOrEqual(given.side_mm)
            else if (length_mm > given.main_mm) over += times
            for (let i = 0; i < times * p.count; i += 1) {
              expect(seen[p.wanted]!.has(p.first + i)).toBe(false)
              seen[p.wanted]!.add(p.first + i)
            }
          }
        }
        const count = fewestOf(wanted, given)
        expect(stems).toBe(count.stems)
        expect(over).toBe(count.tooLong)
        // What nothing takes is on the last stems, as it is said.
        expect(free.reduce((n, k) => n + k, 0)).toBe(count.sidesLeft)
        const last = given.sides > 0 ? Math.ceil(count.sidesLeft / given.sides) : 0
        expect(free.slice(0, free.length - last).every((k) => k === 0)).toBe(true)
        wanted.forEach(({ count }, i) => {
          expect(seen[i]!.size).toBe(count)
          expect([...seen[i]!].every((n) => n >= 1 && n <= count)).toBe(true)
        })
      }),
    )
  })
})
