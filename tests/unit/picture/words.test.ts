import { describe, expect, it } from 'vitest'
import { newArrangement } from '../../../src/arrangement/index.ts'
import { dangerOf, findPlant, GENERAL_CAUTIONS, PLANTS } from '../../../src/catalogue/index.ts'
import { crc32 } from '../../../src/storage/index.ts'
import {
  cautionLine,
  cautionLines,
  dateWords,
  flameLine,
  listed,
  plainName,
  subtitle,
  vesselWord,
} from '../../../src/telling/index.ts'
import { alternativeText } from '../../../src/ui/picture/alt-text.ts'
import { factsOf } from '../../../src/ui/picture/facts.ts'
import { sizeChunk } from '../../../src/ui/picture/png-size.ts'
import { cut, wrapped } from '../../../src/ui/picture/text.ts'
import { design, measure, OPTIONS, stems } from './made.ts'

const vessel = newArrangement().vessel
const plant = (id: string) => findPlant(id)!

describe('words of the picture', () => {
  it('a vessel is called by its proportions', () => {
    expect(vesselWord(vessel)).toBe('bowl')
    expect(vesselWord({ ...vessel, height: 30 })).toBe('dish')
    expect(vesselWord({ ...vessel, height: 300 })).toBe('vase')
    expect(vesselWord({ ...vessel, plan: 'rectangular', width: 400, depth: 100 })).toBe('trough')
    const foot: [number, number][] = [
      [0, 0.5],
      [0.2, 0.25],
      [0.5, 0.8],
      [1, 1],
    ]
    expect(vesselWord({ ...vessel, profile: foot })).toBe('footed bowl')
  })

  it('the line under the title says what it is and for how many tables', () => {
    const document = design({ form: 'airy', stems: stems(3, 2, 200, 200, 100) })
    expect(subtitle(document)).toBe('a loose, airy arrangement in a bowl')
    expect(subtitle({ ...document, setting: { ...document.setting, copies: 14 } })).toBe(
      'a loose, airy arrangement in a bowl, for each of 14 tables',
    )
    expect(subtitle({ ...document, stems: [] })).toBe('a bowl')
  })

  it('the day is the one on the wall where it was written, whatever the zone', () => {
    expect(dateWords('2027-10-09', 'en-GB')).toBe('9 October 2027')
    expect(dateWords('2027-12-31T23:30-11:00', 'en-GB')).toBe('31 December 2027')
    expect(dateWords('2027-01-01T00:15+14:00', 'en-US')).toBe('January 1, 2027')
    expect(dateWords(undefined, 'en-GB')).toBe('')
  })

  it('a lily warns cats and stays off a table with food, daffodils do that, and what is milder stands apart from them', () => {
    const line = cautionLine(['dahlia', 'daffodil', 'lily-oriental'].map(plant))
    expect(line).toBe(
      'An emergency for cats, not on a table with food: Oriental lily. ' +
        'Poisonous to pets, not on a table with food: Daffodil. ' +
        'Poisonous to pets, keep clear of food and plates: Dahlia.',
    )
    expect(cautionLine([])).toBe('')
  })
  it('plants that nobody has checked are named as such, alone and among others, and a rose is not called safe', () => {
    expect(cautionLine(['lisianthus', 'stock', 'salal'].map(plant))).toBe(
      'None of these plants has been checked, so keep them from pets and food: Lisianthus, Stock and Salal.',
    )
    expect(cautionLine([plant('freesia')])).toMatch(/^This plant has not been checked.*Freesia\.$/)
    expect(cautionLine(['tulip', 'liatris', 'rose'].map(plant))).toBe(
      'Poisonous to pets, keep clear of food and plates: Tulip. Not checked, so keep from pets and food too: Liatris. ' +
        'Keep the rest from pets and plates too.',
    )
    expect(cautionLine([plant('rose')])).toMatch(
      /^Listed as not poisonous to cats, but.*keep them from pets and plates/,
    )
    for (const p of PLANTS) expect(cautionLine([p])).not.toMatch(/^$|\bsafe\b|harmless/)
  })
  it('where there is room all are named; else milder ones are counted, but never an emergency nor what is off the table', () => {
    const counted = cautionLine(PLANTS, 'All are in the list.', 2)
    expect(counted).toMatch(/and \d+ others.*All are in the list\.$/)
    expect(cautionLine(PLANTS, 'All are in the list.', PLANTS.length)).not.toMatch(/others|All are in the list/)
    for (const line of cautionLines(PLANTS)) {
      expect(line).toContain('An emergency for cats, not on a table with food: Oriental lily and Asiatic lily.')
      for (const name of ['Daffodil', 'Delphinium', 'Larkspur', 'Sweet pea']) expect(line).toContain(name)
    }
    for (const p of PLANTS) {
      const { pets } = dangerOf(p.id)
      if (pets !== 'not poisonous') expect(cautionLines(PLANTS)[0]).toContain(plainName(p.name))
    }
  })
  it('by candle, and only then, says how far a flame stays from what can burn, as the catalogue has it', () => {
    expect(flameLine('candle')).toMatch(/12 in \(305 mm\).*the venue/)
    const general = GENERAL_CAUTIONS.find((c) => c.about === 'flame')!.text
    for (const distance of ['12 in', '305 mm']) expect(general).toContain(distance)
    for (const light of ['daylight', 'overcast', 'warm-lamp'] as const) expect(flameLine(light)).toBe('')
  })

  it('the words for those who cannot see it name vessel, size, plants with counts and colours, and the palette', () => {
    const words = alternativeText(
      factsOf(design({ title: 'Supper', stems: stems(5, 2, 200, 200, 120) }), OPTIONS),
      'on its table',
    )
    expect(words).toContain('“Supper”')
    expect(words).toContain('The bowl is 14.0 cm wide and 8.4 cm high.')
    expect(words).toMatch(/stand five stems: .+ in apricot blush \(3\) and .+ \(2\)/)
    expect(words).toContain('It is shown on its table.')
    expect(words).toContain('Colours are shown in daylight.')
    expect(words).toContain('The palette First colours is')
    expect(words).not.toMatch(/undefined|NaN|\.\./)
  })

  it('the cost stands there only if it was asked for, and says whose prices they are', () => {
    const document = design({ stems: stems(4, 2, 200, 200, 120) })
    expect(factsOf(document, { ...OPTIONS, withCost: false }).cost).toBeNull()
    expect(factsOf(document, OPTIONS).cost?.standing).toBe('prices: example')
    const perBunch = Object.fromEntries(document.stems.map((s) => [s.plant, 1000]))
    expect(factsOf(document, { ...OPTIONS, prices: { currency: 'EUR', perBunch } }).cost?.standing).toBe(
      'prices: yours',
    )
  })

  it('lines break at spaces and never grow wider than their room', () => {
    const font = { face: 'lett', size: 40, weight: 470 } as const
    const lines = wrapped('a loose and airy arrangement of antidisestablishmentarianism', font, 300, 6, measure)
    for (const line of lines) expect(measure(line, font)).toBeLessThanOrEqual(300)
    expect(lines.length).toBeGreaterThan(2)
    expect(cut('short', font, 300, measure)).toBe('short')
    expect(listed(['a', 'b', 'c'])).toBe('a, b and c')
  })

  it('the file says its size on paper in a sound chunk', () => {
    // CRC-32 check value: Williams, A Painless Guide to CRC Error Detection Algorithms, 1993.
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926)
    const chunk = sizeChunk()
    expect(String.fromCharCode(...chunk.subarray(4, 8))).toBe('pHYs')
    expect(new DataView(chunk.buffer).getUint32(8)).toBe(11811)
  })
})
