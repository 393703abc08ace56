import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { PLANTS as CATALOGUE, findPlant, RECUT_mm } from '../../../src/catalogue/index.ts'
import { stemAsItComes, yieldOf } from '../../../src/stem-list/index.ts'
import { PLANTS } from './fixture.ts'

const { spray, rose } = PLANTS as { spray: (typeof PLANTS)[string]; rose: (typeof PLANTS)[string] }

describe('what a stem gives', () => {
  it('is what the catalogue has, an inch gone to the recut', () => {
    expect(yieldOf(spray)).toEqual({ main_mm: 500 - RECUT_mm, sides: 3, side_mm: 250 })
    expect(yieldOf(rose)).toEqual({ main_mm: 500 - RECUT_mm, sides: 0, side_mm: 0 })
  })
  it('a bunch of 40 cm sprays with three heads: side stems that nobody measured are half as long as the stem', () => {
    expect(stemAsItComes(spray, { stem_mm: 400, heads: 3 })).toEqual({
      stem_mm: 400,
      heads: 3,
      side_mm: 200,
      pieces: 1,
    })
    expect(yieldOf(spray, { stem_mm: 400, heads: 3, side_mm: 180 })).toEqual({
      main_mm: 400 - RECUT_mm,
      sides: 2,
      side_mm: 180,
    })
  })
  it('lilies with all flowers at the top keep their short stalks on a longer stem', () => {
    const lily = findPlant('lily-oriental')!
    expect(yieldOf(lily, { stem_mm: 1000 }).side_mm).toBe(yieldOf(lily).side_mm)
  })
  it('a plant with one head has no side stems, whatever is said', () => {
    expect(yieldOf(rose, { heads: 4, side_mm: 200 })).toMatchObject({ sides: 0, side_mm: 0 })
  })
  it('greens with leaves all along are cut into pieces where the person says so; a fern, a large leaf and a rose never', () => {
    const along = (id: string, pieces?: number): number | undefined =>
      yieldOf(findPlant(id)!, pieces === undefined ? {} : { pieces }).along
    expect([along('ruscus-italian'), along('ruscus-italian', 1), along('ruscus-italian', 2)]).toEqual([
      undefined,
      undefined,
      2,
    ])
    for (const id of ['leatherleaf', 'monstera', 'aspidistra', 'beargrass', 'rose'])
      expect(along(id, 3)).toBeUndefined()
  })
  it('side stems of no length are none', () => {
    expect(yieldOf(spray, { side_mm: 0 })).toMatchObject({ sides: 0, side_mm: 0 })
  })
  it('no side stem gives more than the stem it grows on, and nothing is below zero', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...CATALOGUE),
        fc.record(
          {
            stem_mm: fc.integer({ min: 50, max: 3000 }),
            heads: fc.integer({ min: 1, max: 50 }),
            side_mm: fc.integer({ min: 0, max: 3000 }),
          },
          { requiredKeys: [] },
        ),
        (plant, own) => {
          const given = yieldOf(plant, own)
          expect(given.side_mm).toBeLessThanOrEqual(given.main_mm)
          expect(given.main_mm).toBeGreaterThanOrEqual(0)
          expect(Number.isInteger(given.sides) && given.sides >= 0).toBe(true)
          if (!plant.manyHeaded) expect(given.sides).toBe(0)
        },
      ),
    )
  })
})
