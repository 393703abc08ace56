import { beforeEach, describe, expect, it } from 'vitest'
import { findPlant } from '../../../src/catalogue/index.ts'
import { newEvent } from '../../../src/event/index.ts'
import {
  change,
  changeCurrency,
  changeEvent,
  changePrices,
  redoEvent,
  undoEvent,
  useEvent,
  useStudio,
} from '../../../src/state/index.ts'
import { withChanges } from '../../../src/state/price-changes.ts'
import { withPacks } from '../../../src/stem-list/index.ts'
import { budgetWords } from '../../../src/ui/event/words.ts'

const EUR = { currency: 'EUR', perBunch: {} }
const rose = findPlant('rose-garden')!
const priced = (minor: number) => withPacks(useStudio.getState().prices, rose, [{ stems: 12, minor }])
const prices = () => useStudio.getState().prices
const event = () => useEvent.getState().event

beforeEach(() => {
  change({ prices: EUR })
  useEvent.setState({ event: newEvent('UTC'), prices: null, lastDone: '' })
  useEvent.temporal.getState().clear()
})

describe('prices in the event', () => {
  it('a price is one step: taken back, the book is as it was; done again, as it came to be', () => {
    changeEvent({ title: 'Wedding' }, 'called Wedding')
    changePrices(priced(2000), 'Garden rose: 20 for 12')
    const after = prices()
    changeEvent({ tables: 40 }, '40 tables')
    undoEvent()
    expect(prices()).toBe(after)
    undoEvent()
    expect(prices()).toBe(EUR)
    expect(useStudio.getState().message).toBe('Undone: Garden rose: 20 for 12.')
    expect(event().title).toBe('Wedding')
    undoEvent()
    expect(prices()).toBe(EUR)
    for (let i = 0; i < 3; i++) redoEvent()
    expect(prices()).toBe(after)
    expect(event()).toMatchObject({ title: 'Wedding', tables: 40 })
  })

  it('a bunch size of one’s own is taken back too', () => {
    changePrices(
      withPacks(prices(), rose, [
        { stems: 10, minor: 900 },
        { stems: 25, minor: 2000 },
      ]),
      'two sizes',
    )
    expect(prices().packs?.[rose.id]).toHaveLength(2)
    undoEvent()
    expect(prices()).toBe(EUR)
  })
})

describe('prices in two tabs', () => {
  const book = (perBunch: Record<string, number>, currency = 'EUR') => ({ currency, perBunch, packs: {} })

  it('a price of one plant leaves that of another as the other tab has put it', () => {
    const mine = book({ 'rose-garden': 2000 })
    const theirs = book({ 'rose-garden': 2000, dahlia: 900 })
    expect(withChanges(theirs, mine, book({ 'rose-garden': 1800 }))).toEqual(book({ 'rose-garden': 1800, dahlia: 900 }))
    expect(withChanges(theirs, mine, book({}))).toEqual(book({ dahlia: 900 }))
  })

  it('sizes of one’s own take the place of a price, and go again', () => {
    const sizes = { ...book({}), packs: { 'rose-garden': [{ stems: 10, minor: 900 }] } }
    const theirs = book({ 'rose-garden': 2000, dahlia: 900 })
    expect(withChanges(theirs, book({ 'rose-garden': 2000 }), sizes)).toEqual({ ...sizes, perBunch: { dahlia: 900 } })
    expect(withChanges(sizes, sizes, book({}))).toEqual(book({}))
  })

  it('in another currency the whole book holds: figures of two are not mixed', () => {
    const yen = book({ 'rose-garden': 2000 }, 'JPY')
    expect(withChanges(book({ dahlia: 900 }), book({}), yen)).toBe(yen)
  })
})

describe('a budget and the currency', () => {
  it('1,500.00 euros are 1,500 yen, not 150,000, and undo gives back the very cents', () => {
    changeEvent({ budget: 150_050, currency: 'EUR' }, 'budget')
    changePrices(priced(2049), 'a price')
    changeCurrency('JPY')
    expect(event()).toMatchObject({ budget: 1501, currency: 'JPY' })
    expect(prices()).toMatchObject({ currency: 'JPY', perBunch: { [rose.id]: 20 } })
    expect(useStudio.getState().message).toBe('Prices and the budget in JPY: the same figures, nothing is converted.')
    undoEvent()
    expect(event()).toMatchObject({ budget: 150_050, currency: 'EUR' })
    expect(prices()).toMatchObject({ currency: 'EUR', perBunch: { [rose.id]: 2049 } })
  })

  it('a budget in another currency than the prices stays what it was, and is held against nothing', () => {
    changeEvent({ budget: 150_000, currency: 'EUR' }, 'budget')
    changePrices({ currency: 'JPY', perBunch: {} }, 'a price book in yen')
    expect(event()).toMatchObject({ budget: 150_000, currency: 'EUR' })
    expect(budgetWords(event(), { minor: 100_000, currency: 'JPY' })).toEqual({
      words: 'The budget is €1,500.00, the prices are in JPY: not compared',
      amount: '',
      over: false,
    })
    expect(budgetWords(event(), { minor: 160_000, currency: 'EUR' })).toEqual({
      words: 'Over the budget of €1,500.00',
      amount: '€100.00',
      over: true,
    })
    expect(budgetWords({ budget: null, currency: '' }, { minor: 1, currency: 'EUR' })).toBeNull()
  })

  it('an event without a budget has no currency of its own', () => {
    changeCurrency('GBP')
    expect(event()).toMatchObject({ budget: null, currency: '' })
  })
})
