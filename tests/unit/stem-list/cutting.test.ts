import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cutPlan, fewestOf, type Wanted, type Yield } from '../../../src/stem-list/index.ts'
import { promise } from '../../promise.ts'

const SPRAY: Yield = { main_mm: 500, sides: 3, side_mm: 250 }
const laterals = (count: number, length_mm: number): Wanted => ({ count, length_mm, piece: 'lateral' })
const wholes = (count: number, length_mm: number): Wanted => ({ count, length_mm, piece: 'whole' })

/** Tries every way to lay pieces on stems, one by one; knows nothing of the rule. Lengths in mm; null: no way. */
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

const someWanted = fc.array(
  fc.record({
    count: fc.integer({ min: 0, max: 3 }),
    length_mm: fc.integer({ min: 60, max: 480 }),
    piece: fc.constantFrom('whole' as const, 'lateral' as const, 'lateral' as const),
  }),
  { maxLength: 4 },
)
const someYield = fc.record({
  main_mm: fc.constant(500),
  sides: fc.integer({ min: 0, max: 4 }),
  side_mm: fc.integer({ min: 100, max: 300 }),
})

describe('cutting many-headed stems apart', () => {
  it('ten short sprays of four heads come from three stems, not from ten', () => {
    expect(fewestOf([laterals(10, 150)], SPRAY)).toEqual({ stems: 3, wholes: 0, tooLong: 0 })
  })
  it('a long piece needs a main axis, and its side stems serve the short ones', () => {
    // Two bowls want one long and three short each: two stems do for both.
    expect(fewestOf([laterals(2, 400), laterals(6, 150)], SPRAY).stems).toBe(2)
    expect(fewestOf([laterals(3, 400), laterals(2, 150)], SPRAY).stems).toBe(3)
  })
  it('a whole stem keeps its heads: nothing else is cut from it', () => {
    expect(fewestOf([wholes(2, 300), laterals(1, 100)], SPRAY)).toEqual({ stems: 3, wholes: 2, tooLong: 0 })
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
      fc.property(someWanted, someYield, (wanted, given) => {
        runs += 1
        expect(fewestOf(wanted, given).stems).toBe(bySearch(wanted, given))
      }),
      { numRuns: 300 },
    )
    promise(`C1 fewest stems, against trying every way: ${runs} cases, 0 failures`)
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
      fc.property(
        fc.array(
          fc.record({
            count: fc.integer({ min: 0, max: 60 }),
            length_mm: fc.integer({ min: 60, max: 480 }),
            piece: fc.constantFrom('whole' as const, 'lateral' as const),
          }),
          { maxLength: 8 },
        ),
        someYield,
        (wanted, given) => {
          const cuts = cutPlan(wanted, given)
          const seen = wanted.map(() => new Set<number>())
          let stems = 0
          for (const { times, pieces } of cuts) {
            stems += times
            const sides = pieces.filter((p) => p.from === 'side')
            expect(pieces.length - sides.length).toBe(1)
            expect(pieces.find((p) => p.from === 'main')!.count).toBe(1)
            expect(sides.reduce((n, p) => n + p.count, 0)).toBeLessThanOrEqual(given.sides)
            for (const p of pieces) {
              const { length_mm, piece } = wanted[p.wanted]!
              if (piece === 'whole') expect(pieces).toHaveLength(1)
              expect(length_mm).toBeLessThanOrEqual(p.from === 'main' ? given.main_mm : given.side_mm)
              for (let i = 0; i < times * p.count; i += 1) {
                expect(seen[p.wanted]!.has(p.first + i)).toBe(false)
                seen[p.wanted]!.add(p.first + i)
              }
            }
          }
          expect(stems).toBe(fewestOf(wanted, given).stems)
          wanted.forEach(({ count }, i) => {
            expect(seen[i]!.size).toBe(count)
            expect([...seen[i]!].every((n) => n >= 1 && n <= count)).toBe(true)
          })
        },
      ),
    )
  })
})
