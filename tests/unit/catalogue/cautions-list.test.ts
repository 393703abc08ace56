import { describe, expect, it } from 'vitest'
import listed from '../../../src/catalogue/cautions.json' with { type: 'json' }
import { type Caution, cautionsOf, dangerOf, findPlant, gravestFirst, PLANTS } from '../../../src/catalogue/index.ts'
import published from '../../fixtures/catalogue/cautions.json' with { type: 'json' }

const ROWS = published.rows.flatMap(({ plants, ...row }) => plants.split(' ').map((id) => ({ id, ...row })))
const textOf = (id: string, about?: Caution['about']): string =>
  cautionsOf(id)
    .filter((c) => about === undefined || c.about === about)
    .map((c) => c.text)
    .join(' ')

/** Words of the list that warn of something, and what ours has to say for them. */
const SAID: Record<string, RegExp> = {
  alkaloids: /alkaloids/,
  allergen: /allerg/i,
  allergic: /allergic/,
  allergy: /allerg/i,
  alone: /stand alone/,
  alstroemeria: /alstroemeria/,
  anthers: /anthers/,
  berries: /berries/i,
  bouquets: /bouquet/,
  bulbs: /bulb/,
  burning: /burning/,
  blistering: /blister/,
  cloth: /cloth/,
  composite: /daisy family/,
  contested: /stricter is taken/,
  crystals: /crystals/,
  cyanogenic: /cyanide/,
  damage: /harm to the kidneys/,
  dermatitis: /rash|allerg|reddens/i,
  drunk: /drunk/,
  dust: /dust/,
  dye: /dyes/,
  eye: /eyes/,
  eyes: /eyes/,
  failure: /kidney failure/,
  fingers: /fingers/,
  flowers: /other flowers/,
  frequent: /often/,
  gloves: /gloves/,
  handling: /handle/,
  harmful: /harmful|makes ill/i,
  harms: /harms other flowers/,
  irritant: /irritat/i,
  irritate: /irritate/,
  irritates: /irritates/,
  irritation: /irritate/,
  itchy: /itching/,
  kidney: /kidney/,
  lactones: /sesquiterpene lactones/,
  leaves: /young leaves/,
  'light-sensitising': /sensitive to light/,
  low: /slightly/i,
  lungs: /lungs/,
  lycorine: /lycorine/,
  mild: /mild/,
  minor: /slightly/i,
  moderate: /moderately/i,
  nitrile: /nitrile/,
  oil: /oil/,
  oxalate: /oxalate/,
  pain: /pain/i,
  pesticide: /pesticides/,
  pollen: /pollen/i,
  'pollen-free': /without pollen are as dangerous/,
  protoanemonin: /protoanemonin/,
  rash: /rash/,
  're-cut': /do not cut it again/,
  reddening: /reddens/,
  related: /relative/,
  resin: /resin/,
  sap: /sap/i,
  seeds: /seeds/,
  sensitising: /three years/,
  serious: /serious/i,
  sesquiterpene: /sesquiterpene/,
  signs: /signs within 12 hours/,
  smell: /smells/,
  stains: /stains/,
  sticky: /sticky/,
  strongest: /strongest/,
  swelling: /swelling/,
  thorns: /thorns/i,
  toxic: /poisonous/,
  tuliposide: /tuliposides/,
  vase: /vase water/,
  very: /very poisonous/,
  vinyl: /vinyl/,
  vomiting: /vomiting/,
  wash: /wash it off/,
  washing: /after washing/,
  worst: /worst/,
  wrap: /wrap/,
  yes: /poisonous to people/i,
  young: /young/,
  '3': /three years/,
  '6': /6 hours/,
  '12': /12/,
  '24': /24/,
  '72': /72/,
}
/** Words of the list that warn of nothing by themselves. */
const PLAIN = new Set(
  `a a's about after also and androsaemum are as aspca at baby's before breath call calls can carries cats cause copy cut
  daffodil dangerous do ends expected florist-grade for general goes hands has hold if in inodorum is it kinds library
  list listed lists maidens material may m measure mixing none non-toxic not off only optional or other people pick
  plant possible remove residues safety shared skin some stem still stop the through took trade tulip type water
  whole with work years h. s never 0 h`.split(/\s+/),
)
const wordsOf = (text: string): string[] =>
  text
    .toLowerCase()
    .replaceAll('’', "'")
    .match(/[a-z](?:[a-z']|-(?=[a-z]))*[a-z]|[a-z]|\d+/g) ?? []

/** What of its sources each code of ours stands for. Food rows cite the rule, not the plant. */
const COUNTERPARTS: Record<string, RegExp> = {
  FDA: /FDA/,
  ASPCA: /ASPCA/,
  APL: /PoisonLine/,
  RHS: /RHS/,
  MG2: /Extension Master Gardener/,
  MA: /Marks/,
  SFR: /Super Floral/,
  CCFC: /California Cut Flower/,
  FDI: /Floral Design Institute/,
  CPC: /California Poison/,
  NC: /NC State/,
  C: /common practice/,
}

describe('held against what lists and pages say', () => {
  it('every plant is either in the list or said not to be checked', () => {
    for (const { id } of ROWS) expect([id, findPlant(id)?.id]).toEqual([id, id])
    const absent = PLANTS.map((p) => p.id).filter((id) => !ROWS.some((r) => r.id === id))
    for (const id of [...absent, ...ROWS.filter((r) => r.level === null).map((r) => r.id)])
      expect([id, dangerOf(id).pets, cautionsOf(id)[0]?.text]).toEqual([
        id,
        'not checked',
        expect.stringMatching(/^Not checked/),
      ])
  })

  it('an emergency, poison and what is mild are what the list has for cats; where it is contested, poison', () => {
    for (const { id, cat, note, level } of ROWS) {
      if (level === null) continue
      const contested = /toxic/i.test(note) && /contested/i.test(note)
      const expected =
        cat === 'emergency' ? 'emergency' : /^non-toxic/.test(cat) && !contested ? 'not poisonous' : 'poisonous'
      expect([id, dangerOf(id).pets]).toEqual([id, expected])
      if (/mild/.test(cat)) expect(textOf(id, 'pets')).toMatch(/mildly/)
      if (/conflicting/.test(cat)) expect(textOf(id, 'pets')).toMatch(/stricter is taken/)
    }
  })

  it('says of dogs what the list says of them', () => {
    for (const { id, dog, level } of ROWS) {
      if (level === null) continue
      expect([id, textOf(id, 'pets')]).toEqual([id, expect.stringMatching(/dogs/i)])
      if (/^unlisted/.test(dog)) expect(textOf(id, 'pets')).toMatch(/Dogs: not checked/)
    }
  })

  it('loses no warning that stands in a word of the list', () => {
    for (const { id, eaten, skin, note, level } of ROWS) {
      if (level === null) continue
      for (const word of wordsOf(`${eaten} ${skin} ${note}`).filter((w) => !PLAIN.has(w))) {
        expect([id, word, Object.hasOwn(SAID, word)]).toEqual([id, word, true])
        expect([id, word, textOf(id)]).toEqual([id, word, expect.stringMatching(SAID[word]!)])
      }
    }
  })

  it('has a row for what is eaten and one for the skin wherever the list has one', () => {
    for (const { id, eaten, skin, level } of ROWS) {
      if (level === null) continue
      if (eaten !== 'none expected') expect([id, textOf(id, 'eaten')]).toEqual([id, expect.stringMatching(/./)])
      if (skin !== '–') expect([id, textOf(id, 'skin') + textOf(id, 'sharp')]).toEqual([id, expect.stringMatching(/./)])
    }
  })

  it('what is serious or worse, and what the list bars, is not on a table with food; what it keeps clear is kept clear', () => {
    for (const { id, level, food } of ROWS) {
      const barred = food === 'avoid' || (level ?? 0) >= 3
      if (barred)
        expect([id, dangerOf(id).food, textOf(id, 'food')]).toEqual([id, 'barred', 'Not on a table with food.'])
      else if (food === 'keep-clear' || (level ?? 0) >= 2) expect([id, dangerOf(id).food]).toEqual([id, 'clear'])
    }
    expect(dangerOf('lily-oriental')).toEqual({ pets: 'emergency', food: 'barred' })
  })

  it('says from memory where the list does, and names no source that the list has not for that plant', () => {
    const about = { eaten: ['eaten'], skin: ['skin', 'dust', 'sharp'], dog: ['pets'] }
    for (const row of ROWS) {
      for (const field of ['eaten', 'skin', 'dog'] as const) {
        if (!/\bM\)/.test(row[field]) || row.level === null) continue
        const those = cautionsOf(row.id).filter((c) => about[field].includes(c.about))
        expect([row.id, field, those.map((c) => c.source).join()]).toEqual([
          row.id,
          field,
          expect.stringMatching(/from memory/),
        ])
      }
      for (const { plants, refs, about } of listed) {
        if (about === 'food' || !plants.split(' ').includes(row.id)) continue
        for (const code of refs.split('+').filter((c) => c !== 'M' && c !== 'X')) {
          const has = COUNTERPARTS[code] !== undefined && row.sources.some((s) => COUNTERPARTS[code]!.test(s))
          expect([row.id, about, code, has]).toEqual([row.id, about, code, true])
        }
      }
    }
  })

  it('puts lilies before tulips, and what is barred from a table with food before what is only kept clear', () => {
    expect(gravestFirst(['rose', 'tulip', 'stock', 'daffodil', 'lily-asiatic'])).toEqual([
      'lily-asiatic',
      'daffodil',
      'tulip',
      'stock',
      'rose',
    ])
  })
})
