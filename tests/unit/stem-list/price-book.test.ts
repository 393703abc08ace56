import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { EXAMPLE_PRICES, PLANTS } from '../../../src/catalogue/index.ts'
import { type Pack, type PriceBook, packsOf, readPriceBook, writePriceBook } from '../../../src/stem-list/index.ts'

const EMPTY: PriceBook = { currency: 'EUR', perBunch: {} }
const HEAD = 'plant,name,stems in it,price,currency,whose\r\n'
const SHORT = 'plant,stems in it,price\r\n'
const problemsOf = (text: string, before = EMPTY): string[] => readPriceBook(text, before).problems
const packsIn = (text: string, plant: string, before = EMPTY): Pack[] | undefined => {
  const read = readPriceBook(text, before)
  return read.ok ? read.prices.packs?.[plant] : undefined
}

describe('a price book that a person filled in', () => {
  it('a price typed over an example is the person’s own, though the row still says example', () => {
    const text = writePriceBook(EMPTY)
    const row = text.split('\r\n').findIndex((line) => line.startsWith('rose-garden,'))
    const lines = text.split('\r\n')
    const typed = lines.with(row, lines[row]!.replace(/,\d+\.\d\d,EUR/, ',30.00,EUR')).join('\r\n')
    expect(readPriceBook(typed, EMPTY)).toMatchObject({ ok: true, rows: 1, changed: [row + 1], problems: [] })
    expect(packsIn(typed, 'rose-garden')).toEqual([{ stems: 12, minor: 3000 }])
    // A size of its own too; and a row that only repeats the example is passed over.
    expect(packsIn(text.replace('rose-garden,Garden rose,12,', 'rose-garden,Garden rose,20,'), 'rose-garden')).toEqual([
      { stems: 20, minor: EXAMPLE_PRICES.perBunch['rose-garden'] },
    ])
    expect(readPriceBook(text, EMPTY)).toMatchObject({ ok: true, rows: 0, changed: [], problems: [] })
  })
  it('a decimal comma without quotes is named, and 18,80 is not taken as 18', () => {
    expect(readPriceBook(`${SHORT}rose-garden,12,18,80\r\n`, EMPTY)).toEqual({
      ok: false,
      problems: ['line 2: expected 3 cells as in line 1, got 4: a decimal comma has to stand in quotes, "18,80"'],
    })
    // With columns after it the 80 comes where a currency, or whose it is, should stand.
    expect(problemsOf('plant,stems in it,price,currency\r\nrose-garden,12,18,80\r\n')).toEqual([
      'line 2: expected a currency such as EUR, in capitals, got "80"',
    ])
    expect(problemsOf('plant,stems in it,price,whose\r\nrose-garden,12,18,80\r\n')).toEqual([
      'line 2: expected mine or example, got "80"',
    ])
    // Cells with which a spreadsheet fills up rows are none too many.
    expect(packsIn(`${SHORT}rose-garden,12,"18,80",,\r\n`, 'rose-garden')).toEqual([{ stems: 12, minor: 1880 }])
  })
  it('two prices for one size: both lines are named, neither is taken; the same price twice is one', () => {
    const text = `${SHORT}rose,10,9.00\r\ntulip,10,3.00\r\nrose,20,12.00\r\nrose,10,9.50\r\n`
    const read = readPriceBook(text, EMPTY)
    expect(read.problems).toEqual(['line 2 and line 5: two prices for 10 of Rose, 9.00 and 9.50'])
    expect(read).toMatchObject({ ok: true, rows: 1, prices: { packs: { tulip: [{ stems: 10, minor: 300 }] } } })
    expect(packsIn(text, 'rose')).toBeUndefined()
    expect(packsIn(`${SHORT}rose,10,9.00\r\nrose,10,"9,00 €"\r\n`, 'rose')).toEqual([{ stems: 10, minor: 900 }])
  })
  it('lines are those of the file: empty ones and names on two lines are counted', () => {
    expect(problemsOf(`\r\n${HEAD}\r\nrose,"Rose,\r\nred",20,cheap,EUR,\r\n\r\nrosa,,1,1,EUR,\r\n`)).toEqual([
      'line 4: expected a price in EUR, got "cheap"',
      'line 7: expected the id of a plant, got "rosa"',
    ])
  })
  it('as a spreadsheet of another country saves it', () => {
    const text = 'sep=;\r\nPlant;Stems in it;Price\r\nrose;20;9,99 €\r\ntulip;10;1.234,50\r\npeony;5;€ 7,00\r\n'
    expect(readPriceBook(text, EMPTY)).toMatchObject({
      ok: true,
      problems: [],
      prices: {
        packs: {
          rose: [{ stems: 20, minor: 999 }],
          tulip: [{ stems: 10, minor: 123450 }],
          peony: [{ stems: 5, minor: 700 }],
        },
      },
    })
    expect(packsIn('plant\tstems in it\tprice\r\nrose\t20\t9,99\r\n', 'rose')).toEqual([{ stems: 20, minor: 999 }])
  })
  it('what may be thousands or decimals is named, not guessed', () => {
    expect(problemsOf('plant,stems in it,price,currency\r\nrose,20,"1,234",KWD\r\n')).toEqual([
      'line 2: expected a price in KWD, got "1,234", which may be 1.234 or 1234',
    ])
  })
})

describe('the currency of a price book', () => {
  it('one that is none is named with its line, and the rest is taken', () => {
    for (const code of ['QQQ', 'eur', 'euro', '€'])
      expect(readPriceBook(`${HEAD}rose,,1,1,${code},\r\ntulip,,1,1,EUR,\r\n`, EMPTY)).toMatchObject({
        ok: true,
        rows: 1,
        problems: [`line 2: expected a currency such as EUR, in capitals, got "${code}"`],
      })
  })
  it('of a file in two currencies nothing is read, and each line that differs is named', () => {
    expect(readPriceBook(`${HEAD}rose,,1,1,GBP,\r\ntulip,,1,1,EUR,\r\npeony,,1,1,,\r\n`, EMPTY)).toEqual({
      ok: false,
      problems: ['line 3: expected GBP as in line 2, got EUR', 'line 4: expected GBP as in line 2, got EUR'],
    })
  })
  it('examples that were left as they are have no say in it', () => {
    const text = writePriceBook(EMPTY).replace(/rose-garden,.*?\r\n/, 'rose-garden,Garden rose,12,20.00,GBP,mine\r\n')
    expect(readPriceBook(text, EMPTY)).toMatchObject({ ok: true, rows: 1, prices: { currency: 'GBP' } })
  })
})

describe('the price book', () => {
  const own: PriceBook = {
    currency: 'GBP',
    perBunch: { rose: 1250 },
    packs: {
      carnation: [
        { stems: 25, minor: 2000 },
        { stems: 10, minor: 900 },
      ],
    },
  }

  it('goes out and comes in again; what is invented stays out', () => {
    const text = writePriceBook(own)
    expect(text).toContain('\r\nrose,Rose,25,12.50,GBP,mine\r\n')
    expect(text).toContain('\r\ncarnation,Carnation,25,20.00,GBP,mine\r\ncarnation,Carnation,10,9.00,GBP,mine\r\n')
    expect(text.split('\r\n').filter((l) => l.endsWith(',example'))).toHaveLength(PLANTS.length - 2)
    const read = readPriceBook(text, EMPTY)
    expect(read).toMatchObject({ ok: true, rows: 2, problems: [] })
    for (const plant of PLANTS) if (read.ok) expect(packsOf(plant, read.prices)).toEqual(packsOf(plant, own))
  })
  it('any prices go out and come in again, in currencies of none, two and three decimals, by comma or semicolon', () => {
    const pack = fc.record({ stems: fc.integer({ min: 1, max: 1000 }), minor: fc.nat(9_000_000) })
    const packs = fc.uniqueArray(pack, { minLength: 1, maxLength: 4, selector: ({ stems }) => stems })
    const ids = fc.uniqueArray(fc.constantFrom(...PLANTS.map((p) => p.id)), { maxLength: 5 })
    fc.assert(
      fc.property(
        ids.chain((some) => fc.tuple(...some.map((id) => packs.map((p) => [id, p] as const)))),
        fc.constantFrom('EUR', 'JPY', 'KWD'),
        fc.constantFrom('comma' as const, 'semicolon' as const),
        (sold, currency, kind) => {
          const book: PriceBook = { currency, perBunch: {}, packs: Object.fromEntries(sold) }
          const read = readPriceBook(writePriceBook(book, kind), EMPTY)
          expect(read.problems).toEqual([])
          if (read.ok) expect(read.prices).toEqual({ ...book, currency: sold.length > 0 ? currency : 'EUR' })
        },
      ),
      { numRuns: 60 },
    )
  })
  it('names the line of what is wrong, takes the rest, and leaves other prices alone', () => {
    const read = readPriceBook(
      `${HEAD}rose,Rose,20,9.99,GBP,mine\r\nrosa,,1,1,GBP,\r\ntulip,Tulip,ten,3,GBP,mine\r\ntulip,Tulip,10,cheap,GBP,mine\r\n`,
      own,
    )
    expect(read).toEqual({
      ok: true,
      rows: 1,
      changed: [],
      problems: [
        'line 3: expected the id of a plant, got "rosa"',
        'line 4: expected a whole number of stems from 1 to 1000, got "ten"',
        'line 5: expected a price in GBP, got "cheap"',
      ],
      prices: { currency: 'GBP', perBunch: {}, packs: { ...own.packs, rose: [{ stems: 20, minor: 999 }] } },
    })
    const five = [1, 2, 3, 4, 5].map((n) => `rose,${n},${n}\r\n`).join('')
    expect(problemsOf(`${SHORT}${five}`)).toEqual(['line 6: expected at most 4 sizes of Rose, got 5'])
  })
  it('is refused without its columns, or with one of them twice', () => {
    expect(readPriceBook('a,b\r\n1,2\r\n', EMPTY)).toEqual({
      ok: false,
      problems: ['line 1: expected the columns plant, stems in it, price; got no plant, no stems in it, no price'],
    })
    expect(problemsOf('plant,stems in it,price,price\r\nrose,1,2,3\r\n')).toEqual([
      'line 1: expected one column price, got two',
    ])
    expect(readPriceBook('', EMPTY).ok).toBe(false)
  })
})
