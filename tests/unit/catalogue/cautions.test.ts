import { describe, expect, it } from 'vitest'
import listed from '../../../src/catalogue/cautions.json' with { type: 'json' }
import { cautionsOf, findPlant, GENERAL_CAUTIONS, MECHANICS_ROWS, PLANTS } from '../../../src/catalogue/index.ts'
import { cite } from '../../../src/catalogue/sources.ts'

const NOT_CHECKED = 'Not checked: no entry in the list used. Keep away from pets and food until you know.'
/** Botanical genera without an entry in the list used. */
const UNLISTED = [
  'lisianthus',
  'stock',
  'freesia',
  'protea',
  'scabiosa',
  'liatris',
  'eryngium',
  'limonium',
  'statice',
  'solidago',
  'solidaster',
  'waxflower',
  'veronica',
  'bells',
  'lilac',
  'tuberose',
  'astilbe',
  'craspedia',
  'leatherleaf',
  'salal',
  'ruscus-italian',
  'ruscus-israeli',
  'beargrass',
  'myrtle',
  'cymbidium',
  'bupleurum',
  'trachelium',
  'olive',
  'amaranthus',
  'queen-annes-lace',
]

describe('cautions', () => {
  it('says first of a lily that it is an emergency for cats', () => {
    for (const id of ['lily-oriental', 'lily-asiatic']) {
      const [first] = cautionsOf(id)
      expect(first?.about).toBe('pets')
      expect(first?.text).toMatch(/emergency for cats/i)
      expect(first?.text).toMatch(/vase water/)
      expect(first?.standing).toBe('source')
    }
  })

  it('says of every plant what is known about pets, before anything else', () => {
    for (const { id } of PLANTS) expect([id, cautionsOf(id)[0]?.about]).toEqual([id, 'pets'])
  })

  it('says not checked of exactly those that the list does not have', () => {
    const said = PLANTS.filter((p) => cautionsOf(p.id).some((c) => c.text === NOT_CHECKED)).map((p) => p.id)
    expect(said.sort()).toEqual([...UNLISTED].sort())
    for (const id of UNLISTED) expect(cautionsOf(id)[0]?.standing).toBe('not known')
  })

  it('never calls a plant safe or harmless', () => {
    const all = [...PLANTS.flatMap((p) => cautionsOf(p.id)), ...PLANTS.flatMap((p) => p.care), ...GENERAL_CAUTIONS]
    expect(
      all.filter((c) => /\bsafe\b|\bsafely\b|pet-friendly|(?<!not mean )harmless/i.test(c.text)).map((c) => c.text),
    ).toEqual([])
  })

  it('takes the stricter where the list has it both ways', () => {
    for (const id of ['gypsophila', 'asparagus', 'alstroemeria']) {
      const pets = cautionsOf(id)[0]!
      expect(pets.text).toMatch(/the stricter is taken/)
      expect(pets.source).toMatch(/sources differ/)
    }
  })

  it('names only plants that there are, and only sources that are listed', () => {
    for (const row of listed) {
      for (const id of row.plants.split(' ')) expect([row.text, findPlant(id)?.id]).toEqual([row.text, id])
      expect(cite(row.refs).source.length).toBeGreaterThan(0)
    }
    expect(() => cite('NOWHERE')).toThrow(/NOWHERE/)
  })

  it('keeps what is serious when eaten off a table with food', () => {
    for (const id of ['lily-oriental', 'lily-asiatic', 'delphinium', 'larkspur', 'daffodil', 'sweet-pea'])
      expect(cautionsOf(id).some((c) => c.about === 'food' && /not on a table with food/i.test(c.text))).toBe(true)
  })

  it('has a general word on blades, netting, foam, glass, flames, lifting and food, and gives way to those who know', () => {
    const text = GENERAL_CAUTIONS.map((c) => c.text).join(' ')
    for (const word of [
      'secateurs',
      'netting',
      'foam',
      'Glass',
      'Candles',
      'dried material',
      'Lift filled vessels',
      'garnish',
    ])
      expect(text).toContain(word)
    for (const word of ['venue', 'codes', 'licensed', 'vet', 'poison line']) expect(text).toContain(word)
    expect(text).toMatch(/before the event, look up the number of the poison line of the country/i)
  })

  it('says how every mechanic holds', () => {
    expect(MECHANICS_ROWS.map((m) => m.id).sort()).toEqual(['foam', 'netting', 'none', 'pin-holder', 'tape-grid'])
    for (const id of ['foam', 'netting'] as const)
      expect(MECHANICS_ROWS.find((m) => m.id === id)!.cautions.length).toBeGreaterThan(0)
  })
})
