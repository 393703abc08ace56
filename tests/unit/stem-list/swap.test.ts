import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../../src/arrangement/index.ts'
import { findPlant, PLANTS } from '../../../src/catalogue/index.ts'
import { swapEdit, swapsFor } from '../../../src/stem-list/index.ts'
import { documentOf, stem } from './fixture.ts'

const plant = (id: string) => findPlant(id)!

describe('another plant in place of one', () => {
  it('for a red rose stands what is round and red before what is small or blue', () => {
    const offers = swapsFor(plant('rose-garden'), '#b02a30')
    expect(offers[0]!.main).toBe(true)
    expect(offers.map((o) => o.plant.id)).not.toContain('rose-garden')
    expect(offers[0]!.far).toBeLessThan(1.5)
    for (const main of [true, false]) {
      const far = offers.filter((o) => o.main === main).map((o) => o.far)
      expect(far).toEqual([...far].sort((a, b) => a - b))
    }
  })

  it('for alstroemeria, a filler that some call a form flower, fillers come first, then what shares form or mass', () => {
    const offers = swapsFor(plant('alstroemeria'), '#ffffff')
    const first = offers.findIndex((o) => !o.main)
    expect(first).toBeGreaterThan(0)
    expect(offers.slice(first).every((o) => !o.main && o.plant.formClass !== 'filler')).toBe(true)
    expect(offers.find((o) => o.plant.id === 'iris')).toMatchObject({ main: false, shared: 'form' })
    expect(offers.map((o) => o.plant.id)).not.toContain('salal')
  })

  it('in October a peony stands a step further off than in June, and a flower whose months are from memory as far as ever', () => {
    const far = (month: number, id: string): number =>
      swapsFor(plant('rose-garden'), '#e0a3a6', { month, half: 'north' }).find((o) => o.plant.id === id)!.far
    expect(far(10, 'peony')).toBeCloseTo(far(6, 'peony') + 1, 12)
    expect(far(8, 'ranunculus')).toBe(far(2, 'ranunculus'))
    expect(swapsFor(plant('rose-garden'), '#e0a3a6').find((o) => o.plant.id === 'peony')!.far).toBe(far(6, 'peony'))
  })

  it('every plant that shares a class is offered once, in a colour of its own, the same main class first', () => {
    for (const wanted of PLANTS) {
      const offers = swapsFor(wanted, wanted.colours[0]?.hex ?? wanted.leafColour)
      const others = PLANTS.filter((p) => p !== wanted && p.formClasses.some((c) => wanted.formClasses.includes(c)))
      expect(offers.map((o) => o.plant.id).sort()).toEqual(others.map((p) => p.id).sort())
      expect(offers.findLastIndex((o) => o.main)).toBe(offers.filter((o) => o.main).length - 1)
      for (const { plant: p, colour, times, shared, main } of offers) {
        expect([...p.colours.map((c) => c.hex), p.leafColour]).toContain(colour)
        expect(times).toBeGreaterThan(0)
        expect(wanted.formClasses).toContain(shared)
        expect(p.formClasses).toContain(shared)
        expect(main).toBe(p.formClass === wanted.formClass)
      }
    }
  })

  it('laterals of a spray rose become whole roses, where they stand; the rest of the design is as it was', () => {
    const before = documentOf([
      stem('a', 'rose-spray', { piece: 'lateral', head: 44 }),
      stem('b', 'rose-spray', { colour: '#ffffff' }),
      stem('c', 'dahlia'),
    ])
    const place = { design: 'cups', stem: 'a', count: 24, cut_mm: 150, length_mm: 170, piece: 'lateral' as const }
    const line = { plant: 'rose-spray', places: [place, { ...place, design: 'bowls', stem: 'b' }] }
    const to = { plant: plant('ranunculus'), colour: '#dc90a4' }
    const after = applyEdit(before, swapEdit(before.stems, line, 'cups', to)!)
    expect(after.stems[0]).toMatchObject({ plant: 'ranunculus', colour: '#dc90a4', piece: 'whole', tip: [80, 0, 120] })
    expect(after.stems[0]).not.toHaveProperty('head')
    expect(after.stems.slice(1)).toEqual(before.stems.slice(1))
    // By now it is another plant, and a design that the line does not name has none of it.
    expect(swapEdit(after.stems, line, 'cups', to)).toBeNull()
    expect(swapEdit(before.stems, line, 'urns', to)).toBeNull()
  })
})
