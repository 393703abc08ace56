import { describe, expect, it } from 'vitest'
import type { Arrangement } from '../../../src/arrangement/index.ts'
import { dressedIn, paletteWords, tell } from '../../../src/partner/tell.ts'
import type { Parcel } from '../../../src/storage/index.ts'
import { bowl } from '../arrangement/helpers.ts'

/** The bowl, its greens by the name that the catalogue has for them. */
const design = (): Arrangement => ({
  ...bowl(),
  stems: bowl().stems.map((s) => (s.role === 'greens' ? { ...s, plant: 'euc-silver' } : s)),
})
const parcel = (more: Partial<Parcel> = {}): Parcel => ({
  design: design(),
  offers: [
    {
      name: 'Rose and sage',
      slots: [
        { colour: '#c9717b', part: 'focal', name: 'old rose' },
        { colour: '#8fa07a', part: 'greens' },
      ],
    },
    { name: 'Straw', slots: [{ colour: '#e8d9a0', part: 'focal', name: 'oat' }] },
  ],
  units: 'cm',
  prices: null,
  note: '',
  ...more,
})
const general = (hex: string): string => `like ${hex}`
const told = (given: Parcel, which = 0) => tell(given, dressedIn(given)[which]!, given.offers[which]!, 'en-GB', general)

describe('what the partner is told', () => {
  it('names plants with their colours, the palette’s own words first', () => {
    expect(told(parcel()).plants.map((p) => [p.name, p.colourWord, p.count])).toEqual([
      ['Garden rose', 'old rose', '1'],
      ['Garden rose', 'like #f3e3d3', '1'],
      ['Silver-dollar eucalyptus', 'like #8fa07a', '1'],
    ])
    expect(paletteWords(parcel().offers[0]!, general)).toEqual(['old rose', 'like #8fa07a'])
  })
  it('recolours the words with the palette', () => {
    expect(told(parcel(), 1).plants[0]!.colourWord).toBe('oat')
  })
  it('says date and tables, and the cost only when it was sent', () => {
    const names = (given: Parcel) => told(given).facts.map(([name]) => name)
    expect(names(parcel())).toEqual(['for', 'tables', 'wide', 'high'])
    expect(told(parcel()).facts.slice(0, 2)).toEqual([
      ['for', '12 June 2027'],
      ['tables', 'twelve'],
    ])
    const priced = parcel({ prices: { currency: 'GBP', perBunch: {} } })
    expect(names(priced)).toEqual(['for', 'tables', 'wide', 'high', 'flowers cost'])
    expect(told(priced).facts.at(-1)![1]).toMatch(/^£[\d,]+\.\d\d, at example prices$/)
    const own = { 'rose-garden': 1200, 'euc-silver': 800 }
    expect(told(parcel({ prices: { currency: 'GBP', perBunch: own } })).facts.at(-1)![1]).toMatch(/^£[\d,]+\.\d\d$/)
    // Own prices for sizes of one's own are no examples either.
    const packs = { 'rose-garden': [{ stems: 25, minor: 2000 }], 'euc-silver': [{ stems: 10, minor: 800 }] }
    expect(told(parcel({ prices: { currency: 'GBP', perBunch: {}, packs } })).facts.at(-1)![1]).toMatch(
      /^£[\d,]+\.\d\d$/,
    )
  })
  it('keeps the word of danger, and calls no plant safe', () => {
    expect(told(parcel()).caution).toBe(
      'Poisonous to pets, keep clear of food and plates: Silver-dollar eucalyptus. Keep the rest from pets and plates too.',
    )
    const unchecked = design()
    for (const stem of unchecked.stems) stem.plant = 'stock'
    expect(told(parcel({ design: unchecked })).caution).toMatch(/not been checked.*Stock\.$/)
  })
  it('puts the drawing into words', () => {
    expect(told(parcel()).picture).toMatch(
      /^A loose, airy arrangement in a bowl, for each of 12 tables: Garden rose in old rose/,
    )
  })
})
