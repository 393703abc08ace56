import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ROLES } from '../../../src/arrangement/index.ts'
import {
  cautionsOf,
  EXAMPLE_PRICES,
  type Figure,
  findPlant,
  HABITS,
  PLANTS,
  plantIds,
  searchPlants,
} from '../../../src/catalogue/index.ts'
import care from '../../fixtures/catalogue/care-ranges.json' with { type: 'json' }

const HEX = /^#[0-9a-f]{6}$/
const CLASSES = ['line', 'form', 'mass', 'filler', 'foliage']
const figuresOf = (p: (typeof PLANTS)[number]): [string, Figure][] =>
  Object.entries(p).filter(
    (pair): pair is [string, Figure] => typeof pair[1] === 'object' && pair[1] !== null && 'range' in pair[1],
  )

describe('the plants', () => {
  it('has every plant of the care table under its own id, and two more', () => {
    expect(care.plants).toHaveLength(79)
    expect(care.plants.map((p) => p.id).filter((id) => !findPlant(id))).toEqual([])
    expect(plantIds.size).toBe(PLANTS.length)
    for (const id of ['amaranthus', 'queen-annes-lace']) expect(plantIds.has(id)).toBe(true)
  })

  it('keeps the ranges of the care table, millimetre by millimetre', () => {
    for (const row of care.plants) {
      const plant = findPlant(row.id)!
      expect([row.id, plant.bunch?.range]).toEqual([row.id, row.bunch])
      expect([row.id, plant.headClosed_mm?.range ?? null]).toEqual([row.id, row.closed_mm])
      expect([row.id, (plant.spread_mm ?? plant.headOpen_mm).range]).toEqual([row.id, row.open_mm])
      expect([row.id, plant.stem_mm.range]).toEqual([row.id, row.stem_mm])
      const vase = plant.care.find((c) => c.label === 'Lasts in the vase')
      expect([row.id, vase?.text]).toEqual([row.id, `${row.vaseLife_days.join('–')} days`])
    }
  })

  it('counts blooms as the care table does, or says that it counts side stems', () => {
    for (const row of care.plants) {
      const { bloomsPerStem: blooms, manyHeaded } = findPlant(row.id)!
      if (blooms.standing === 'ours') expect(blooms.source).toContain(`${row.blooms[0]}–${row.blooms[1]} florets`)
      else expect([row.id, blooms.range]).toEqual([row.id, row.blooms])
      // What bears one bloom can't be cut apart.
      if (manyHeaded) expect([row.id, row.manyBloomed]).toEqual([row.id, true])
      if (manyHeaded) expect(blooms.value).toBeGreaterThanOrEqual(2)
    }
  })

  it('chooses every working figure inside its range, with a standing and a source', () => {
    for (const plant of PLANTS)
      for (const [key, { value, range, standing, source }] of figuresOf(plant)) {
        const at = `${plant.id} ${key}`
        expect([at, Number.isFinite(value) && value > 0]).toEqual([at, true])
        expect([at, range[0] <= value && value <= range[1]]).toEqual([at, true])
        expect(standing.length * source.length).toBeGreaterThan(0)
      }
  })

  it('never names a page of the trade where it says common practice or from memory', () => {
    const words = PLANTS.flatMap((p) => [...p.care, ...cautionsOf(p.id), ...figuresOf(p).map(([, f]) => f)]).map(
      (c) => c.source,
    )
    expect(words.filter((w) => /https?:|www\.|\.com|\.co\b|\.org|blog/.test(w))).toEqual([])
  })

  it('counts bunches and blooms in whole numbers', () => {
    for (const { id, bunch, bloomsPerStem } of PLANTS)
      expect([id, Number.isInteger(bloomsPerStem.value) && (bunch === null || Number.isInteger(bunch.value))]).toEqual([
        id,
        true,
      ])
  })

  it('opens wider than it was closed, and has a stem longer than its head', () => {
    for (const { id, headClosed_mm, headOpen_mm, headLength_mm, stem_mm } of PLANTS) {
      if (headClosed_mm) expect([id, headClosed_mm.value < headOpen_mm.value]).toEqual([id, true])
      expect([id, Math.max(headOpen_mm.value, headLength_mm?.value ?? 0) < stem_mm.value]).toEqual([id, true])
    }
  })

  it('has all five form classes, known habits and roles', () => {
    expect([...new Set(PLANTS.map((p) => p.formClass))].sort()).toEqual([...CLASSES].sort())
    for (const p of PLANTS) {
      expect(HABITS).toContain(p.habit)
      expect(ROLES).toContain(p.role)
      expect([p.id, p.formClasses.filter((c) => !CLASSES.includes(c))]).toEqual([p.id, []])
      expect([p.id, p.role === 'greens']).toEqual([p.id, p.formClass === 'foliage'])
    }
    expect([...new Set(PLANTS.map((p) => p.habit))].sort()).toEqual([...HABITS].sort())
  })

  it('gives every line flower and leaf a length', () => {
    const long = PLANTS.filter((p) =>
      ['spike', 'plume', 'trailing', 'fern', 'blade', 'opposite-leaves', 'alternate-leaves', 'broad-leaf'].includes(
        p.habit,
      ),
    )
    expect(long.filter((p) => p.headLength_mm === null).map((p) => p.id)).toEqual([])
  })

  it('gives a real colour for every word, and no word twice', () => {
    for (const p of PLANTS) {
      expect([p.id, [...p.colours.map((c) => c.hex), p.leafColour].filter((h) => !HEX.test(h))]).toEqual([p.id, []])
      expect(new Set(p.colours.map((c) => c.name)).size).toBe(p.colours.length)
      expect(p.colours.length).toBeGreaterThan(0)
      for (const [key, value] of Object.entries(p.shape)) if (key.endsWith('Colour')) expect(value).toMatch(HEX)
    }
  })

  it('has an example price in whole cents for every plant and for nothing else', () => {
    expect(Object.keys(EXAMPLE_PRICES.perBunch).sort()).toEqual([...plantIds].sort())
    for (const price of Object.values(EXAMPLE_PRICES.perBunch)) expect(Number.isInteger(price) && price > 0).toBe(true)
  })
})

describe('finding a plant', () => {
  const first = (text: string) => searchPlants(text)[0]?.id
  it('finds by the beginning of a name, by Latin, by class and colour together', () => {
    expect(
      searchPlants('rose')
        .slice(0, 4)
        .map((p) => p.id),
    ).toEqual(['rose', 'rose-spray', 'rose-garden', 'rose-sweetheart'])
    expect(first('ranunc')).toBe('ranunculus')
    expect(first('antirrhinum')).toBe('snapdragon')
    expect(first('Queen Anne’s')).toBe('queen-annes-lace')
    expect(searchPlants('line white').every((p) => p.formClasses.includes('line'))).toBe(true)
    expect(searchPlants('zzz')).toEqual([])
    expect(findPlant('no-such-plant')).toBeUndefined()
  })

  it('gives all for nothing asked, and never breaks on what is typed', () => {
    expect(searchPlants('  ')).toEqual(PLANTS)
    fc.assert(fc.property(fc.string({ unit: 'grapheme' }), (text) => searchPlants(text).length <= PLANTS.length))
  })
})
