import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inCurrency, packsOf, priceOf, sameFigure, withPacks } from '../../../src/stem-list/index.ts'
import { BOOK, EXAMPLES, PLANTS } from './fixture.ts'

const rose = PLANTS.rose!

describe('prices edited in place', () => {
  it('a second size of roses stands beside the first, and going back to one leaves the plain price of a bunch', () => {
    const two = withPacks(BOOK, rose, [
      { stems: 10, minor: 1250 },
      { stems: 25, minor: 2750 },
    ])
    expect(two.packs).toEqual({
      rose: [
        { stems: 10, minor: 1250 },
        { stems: 25, minor: 2750 },
      ],
    })
    expect('rose' in two.perBunch).toBe(false)
    const one = withPacks(two, rose, [{ stems: 10, minor: 1300 }])
    expect(one.packs).toEqual({})
    expect(priceOf('rose', one, EXAMPLES)).toEqual({ minor: 1300, example: false })
  })

  it('without a price of its own a plant has the example again', () => {
    const none = withPacks(BOOK, rose, [])
    expect(packsOf(rose, none, EXAMPLES)).toEqual({ packs: [{ stems: 10, minor: 1000 }], example: true })
    expect(none.perBunch).toMatchObject({ spray: 899, branch: 275 })
  })

  it('12.50 is 12.50 in another currency, and 13 in yen: nothing is converted', () => {
    expect(inCurrency(BOOK, 'GBP')).toEqual({ ...BOOK, currency: 'GBP', packs: {} })
    expect(inCurrency(BOOK, 'JPY').perBunch).toEqual({ rose: 13, spray: 9, branch: 3 })
    expect(sameFigure(13, 'JPY', 'EUR')).toBe(1300)
  })

  it('what was put in is what is sold, whatever was there before', () => {
    const pack = fc.record({ stems: fc.integer({ min: 1, max: 60 }), minor: fc.nat(1e6) })
    fc.assert(
      fc.property(fc.array(pack, { minLength: 1, maxLength: 4 }), fc.array(pack, { maxLength: 4 }), (packs, before) => {
        const book = withPacks(withPacks(BOOK, rose, before), rose, packs)
        expect(packsOf(rose, book, EXAMPLES)).toEqual({ packs, example: false })
        expect(Number('rose' in book.perBunch) + Number('rose' in (book.packs ?? {}))).toBe(1)
      }),
    )
  })
})
