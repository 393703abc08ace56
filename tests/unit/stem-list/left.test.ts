import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fewestOf, type Wanted, type Yield } from '../../../src/stem-list/index.ts'
import { usesOf } from '../../../src/stem-list/left.ts'

const SPRAY: Yield = { main_mm: 500, sides: 3, side_mm: 250 }
const place = (design: string, count: number, length_mm: number, piece: Wanted['piece'] = 'lateral') => ({
  design,
  count,
  length_mm,
  piece,
})

describe('what is left over', () => {
  it('five short pieces of sprays of four: the second stem keeps three of its side stems', () => {
    expect(fewestOf([place('cup', 5, 150)], SPRAY)).toMatchObject({ stems: 2, sidesLeft: 3 })
  })
  it('ten long pieces leave every side stem', () => {
    expect(fewestOf([place('bowl', 10, 400)], SPRAY)).toMatchObject({ stems: 10, sidesLeft: 30 })
  })
  it('a whole piece leaves none: what is drawn is the stem with all its heads', () => {
    expect(fewestOf([place('bowl', 4, 300, 'whole')], SPRAY).sidesLeft).toBe(0)
  })
})

describe('where what is left over would go', () => {
  it('two stems of four heads and three side stems are eleven short pieces, two long ones or two whole', () => {
    const left = { stems: 2, sides: 3 }
    expect(usesOf([place('cup', 4, 150)], SPRAY, left)).toEqual([{ design: 'cup', length_mm: 150, each: 2, copies: 4 }])
    expect(usesOf([place('bowl', 4, 400)], SPRAY, left)).toEqual([
      { design: 'bowl', length_mm: 400, each: 1, copies: 2 },
    ])
    expect(usesOf([place('head', 1, 150, 'whole')], SPRAY, left)).toEqual([
      { design: 'head', length_mm: 150, each: 2, copies: 1 },
    ])
  })
  it('side stems alone serve no long piece and no whole one', () => {
    const left = { stems: 0, sides: 3 }
    expect(usesOf([place('bowl', 4, 260), place('head', 1, 100, 'whole')], SPRAY, left)).toEqual([])
  })
  it('of greens that are cut along their length a stem is as many pieces as it is long enough for', () => {
    const ruscus: Yield = { main_mm: 675, sides: 0, side_mm: 0, along: 3 }
    const more = (length_mm: number) => usesOf([place('bowl', 6, length_mm, 'whole')], ruscus, { stems: 2, sides: 0 })
    expect(more(225)).toEqual([{ design: 'bowl', length_mm: 225, each: 1, copies: 6 }])
    expect(more(226)).toEqual([{ design: 'bowl', length_mm: 226, each: 1, copies: 4 }])
    expect(more(340)).toEqual([{ design: 'bowl', length_mm: 340, each: 1, copies: 2 }])
  })
  it('a piece longer than any stem is no use for anything', () => {
    expect(usesOf([place('tall', 1, 600)], SPRAY, { stems: 9, sides: 9 })).toEqual([])
  })
  it('of a design with several pieces it names the one that there is most for, the longest of equals', () => {
    const bowl = [place('bowl', 2, 400), place('bowl', 2, 150), place('bowl', 2, 220), place('bowl', 2, 90)]
    expect(usesOf(bowl, SPRAY, { stems: 1, sides: 0 })).toEqual([
      { design: 'bowl', length_mm: 220, each: 2, copies: 2 },
    ])
  })
  it('of a whole and a side stem of one length it is the one that side stems are left for', () => {
    const [small, both] = [
      { main_mm: 500, sides: 1, side_mm: 100 },
      [place('cup', 1, 62, 'whole'), place('cup', 1, 62)],
    ]
    expect(usesOf(both, small, { stems: 0, sides: 1 })).toEqual([{ design: 'cup', length_mm: 62, each: 1, copies: 1 }])
  })
  it('no more is said than the same stems give, and of short pieces not one less', () => {
    const someWanted = fc.uniqueArray(
      fc.record({
        design: fc.constantFrom('a', 'b', 'c'),
        count: fc.integer({ min: 1, max: 40 }),
        length_mm: fc.integer({ min: 60, max: 560 }),
        piece: fc.constantFrom('whole' as const, 'lateral' as const),
      }),
      // A use names its piece by design and length.
      { minLength: 1, maxLength: 6, selector: ({ design, length_mm }) => `${design} ${length_mm}` },
    )
    const someYield = fc.record({
      main_mm: fc.constant(500),
      sides: fc.integer({ min: 0, max: 5 }),
      side_mm: fc.integer({ min: 100, max: 500 }),
    })
    fc.assert(
      fc.property(someWanted, someYield, fc.integer({ min: 0, max: 20 }), (wanted, given, over) => {
        const { stems, sidesLeft } = fewestOf(wanted, given)
        for (const use of usesOf(wanted, given, { stems: over, sides: sidesLeft })) {
          const like = wanted.find((w) => w.design === use.design && w.length_mm === use.length_mm)!
          const withMore = (count: number): number => fewestOf([...wanted, { ...like, count }], given).stems
          expect(withMore(use.each * use.copies)).toBeLessThanOrEqual(stems + over)
          if (like.piece === 'lateral' && like.length_mm <= given.side_mm && use.copies < like.count)
            expect(withMore(use.copies + 1)).toBeGreaterThan(stems + over)
        }
      }),
    )
  })
})
