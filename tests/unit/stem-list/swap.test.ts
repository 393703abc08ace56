import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../../src/arrangement/index.ts'
import { findPlant, PLANTS } from '../../../src/catalogue/index.ts'
import { swapEdit, swapsFor } from '../../../src/stem-list/index.ts'
import { documentOf, stem } from './fixture.ts'

const plant = (id: string) => findPlant(id)!

describe('another plant in place of one', () => {
  it('for a red rose stands what is round and red before what is small or blue', () => {
    const offers = swapsFor(plant('rose-garden'), '#b02a30')
    expect(offers.every((o) => o.plant.formClass === plant('rose-garden').formClass)).toBe(true)
    expect(offers.map((o) => o.plant.id)).not.toContain('rose-garden')
    expect(offers[0]!.far).toBeLessThan(1.5)
    expect(offers.map((o) => o.far)).toEqual(offers.map((o) => o.far).sort((a, b) => a - b))
  })

  it('every plant of the class is offered once, in a colour of its own', () => {
    for (const wanted of PLANTS) {
      const offers = swapsFor(wanted, wanted.colours[0]?.hex ?? wanted.leafColour)
      const others = PLANTS.filter((p) => p.formClass === wanted.formClass && p !== wanted)
      expect(new Set(offers.map((o) => o.plant))).toEqual(new Set(others))
      for (const { plant: p, colour, times } of offers) {
        expect([...p.colours.map((c) => c.hex), p.leafColour]).toContain(colour)
        expect(times).toBeGreaterThan(0)
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
