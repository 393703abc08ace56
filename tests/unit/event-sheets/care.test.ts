import { describe, expect, it } from 'vitest'
import type { Stem } from '../../../src/arrangement/index.ts'
import { dangerOf, findPlant, PLANTS } from '../../../src/catalogue/index.ts'
import { newEvent } from '../../../src/event/index.ts'
import { resolveArrangement } from '../../../src/geometry/index.ts'
import { plainName } from '../../../src/telling/index.ts'
import { DEFER } from '../../../src/ui/event/sheets/care.ts'
import { eventPages, type SheetChoices } from '../../../src/ui/event/sheets/pages.ts'
import { footBand } from '../../../src/ui/picture/band-foot.ts'
import { factsOf } from '../../../src/ui/picture/facts.ts'
import { phoneItems } from '../../../src/ui/picture/phone.ts'
import { type Item, SHEETS } from '../../../src/ui/picture/types.ts'
import { workOut } from '../../../src/work-plan/index.ts'
import { design as documentOf, measure, OPTIONS, stems } from '../picture/made.ts'

const of = (plants: readonly string[]) => {
  const all: Stem[] = stems(plants.length, 1, 300, 300, 200).map((s, i) => ({
    ...s,
    plant: plants[i]!,
    role: findPlant(plants[i]!)!.role,
  }))
  return documentOf({ title: 'Bowl', stems: all })
}
const sheetsOf = (plants: readonly string[], over: Partial<SheetChoices>) => {
  const document = of(plants)
  const parts = [{ design: 'd', copies: 6, place: '' }]
  const designs = [{ ...parts[0]!, title: 'Bowl', document, resolved: resolveArrangement(document) }]
  const event = { ...newEvent('Europe/Lisbon'), title: 'June', date: '2027-06-12T15:00', parts }
  const none = { bench: false, cutting: false, order: false, days: false, care: false, withCost: false }
  return eventPages(
    workOut(event, designs, { currency: 'EUR', perBunch: {} }),
    { size: 'a4', ...none, ...over },
    { units: 'cm', generalName: () => 'pink' },
    measure,
  )
}
const said = (items: readonly Item[]): string => items.flatMap((i) => (i.kind === 'text' ? [i.text] : [])).join(' ')
const pageSaid = (plants: readonly string[], over: Partial<SheetChoices>): string[] =>
  sheetsOf(plants, over).map(({ laid }) => said(laid.items))

const TEN = 'lily-oriental daffodil tulip ranunculus anemone ivy euc-silver dahlia stock rose'.split(' ')
const UNCHECKED = ['lisianthus', 'stock', 'salal']

describe('what a sheet says of danger', () => {
  it('names every plant with a warning at the foot of the order and of the days, and points to Take care only if it is printed', () => {
    for (const over of [{ order: true }, { days: true }, { bench: true }]) {
      for (const care of [false, true]) {
        const pages = pageSaid(TEN, { ...over, care })
        const first = pages.find((p) => p.includes('An emergency for cats'))!
        for (const id of TEN.filter((id) => dangerOf(id).pets !== 'not poisonous'))
          expect([id, first]).toEqual([id, expect.stringContaining(plainName(findPlant(id)!.name))])
        expect(first).not.toMatch(/others/)
        expect(first).toContain('An emergency for cats, not on a table with food: Oriental lily.')
        expect(first).toContain(DEFER)
        if (!care) expect(pages.join(' ')).not.toMatch(/(on|see) the sheet Take care/)
      }
    }
  })

  it('where there is no room for all, none is cut off: milder ones are counted, and the sheet that has all is to be printed', () => {
    const all = PLANTS.map((p) => p.id)
    for (const over of [{ order: true }, { days: true }, { bench: true }]) {
      const page = pageSaid(all, over).find((p) => p.includes('An emergency for cats'))!
      expect(page).toMatch(/Oriental lily and Asiatic lily/)
      expect(page).toMatch(/not on a table with food: Daffodil/)
      expect(page).toContain(DEFER)
      if (/others/.test(page)) expect(page).toContain('Print the sheet Take care: it names all.')
    }
    expect(pageSaid(all, { order: true })[0]).toMatch(/others/)
    expect(pageSaid(all, { order: true, care: true })[0]).toContain('All are on the sheet Take care.')
  })

  it('flowers that nobody has checked are named as such on order, bench sheet and picture', () => {
    const pages = [{ order: true }, { days: true }, { bench: true }].map((over) => pageSaid(UNCHECKED, over).join(' '))
    for (const words of [...pages, factsOf(of(UNCHECKED), OPTIONS).cautions[0]!]) {
      const [, names = ''] = words.split('None of these plants has been checked, so keep them from pets and food: ')
      for (const name of ['Lisianthus', 'Stock', 'Salal']) expect(names.slice(0, 40)).toContain(name)
    }
  })

  it('take care has the emergency before all else', () => {
    const page = pageSaid(['tulip', 'stock', 'lily-asiatic'], { care: true })[0]!
    expect(page.indexOf('Asiatic lily')).toBeGreaterThan(0)
    expect(page.indexOf('Asiatic lily')).toBeLessThan(page.indexOf('Tulip'))
    expect(page.indexOf('Tulip')).toBeLessThan(page.indexOf('Stock'))
    expect(page).toMatch(/numbers for the country/)
  })

  it('on a picture nothing of the cautions is cut off, not even with every plant that there is', () => {
    for (const plants of [TEN, PLANTS.map((p) => p.id)]) {
      const facts = factsOf(of(plants), OPTIONS)
      for (const name of ['a4', 'letter'] as const) {
        const text = said(footBand(facts, SHEETS[name], measure).items)
        expect(facts.cautions.some((caution) => text.endsWith(caution))).toBe(true)
      }
      const phone = said(phoneItems(facts, SHEETS.phone, measure))
      expect(facts.cautions.some((caution) => phone.endsWith(caution))).toBe(true)
    }
    expect(said(footBand(factsOf(of(TEN), OPTIONS), SHEETS.a4, measure).items)).not.toMatch(/others/)
  })
})
