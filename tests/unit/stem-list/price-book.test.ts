import { Decimal } from 'decimal.js'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { PLANTS } from '../../../src/catalogue/index.ts'
import {
  csvRows,
  csvText,
  minorDigits,
  moneyDigits,
  type Pack,
  type PriceBook,
  packsOf,
  readMoney,
  readPriceBook,
  writePriceBook,
} from '../../../src/stem-list/index.ts'
import { promise } from '../../promise.ts'

const EMPTY: PriceBook = { currency: 'EUR', perBunch: {} }
const HEAD = 'plant,name,stems in it,price,currency,whose\r\n'

describe('CSV', () => {
  it('is that of RFC 4180: CRLF, quotes doubled', () => {
    expect(csvText([['a "b"', 1, 'x,y', 'two\nlines']])).toBe('"a ""b""",1,"x,y","two\nlines"\r\n')
  })
  it('gives no spreadsheet a formula', () => {
    const text = csvText([['=1+1', '+2', '-3', '@x', '\tz', -4]])
    for (const cell of text.trimEnd().split(',')) expect(cell.replace(/^"/, '')).toMatch(/^('|-4$)/)
  })
  it('brings back what was written, formulas too', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.array(
            fc.string().map((s) => `x${s.replace(/[;\t]/g, '')}`.trim()),
            { minLength: 2, maxLength: 4 },
          ),
          { minLength: 1, maxLength: 5 },
        ),
        (rows) => {
          expect(csvRows(csvText(rows))).toEqual(rows)
        },
      ),
    )
    expect(csvRows(csvText([['=SUM(A1)', 'b']]))).toEqual([['=SUM(A1)', 'b']])
  })
})

describe('money as digits', () => {
  it('is exact to and fro, against a decimal library', () => {
    let runs = 0
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 90_000_000 }), fc.constantFrom('EUR', 'JPY', 'KWD'), (minor, currency) => {
        runs += 1
        const text = moneyDigits(minor, currency)
        expect(new Decimal(text).times(new Decimal(10).pow(minorDigits(currency))).toString()).toBe(String(minor))
        expect(readMoney(text, currency)).toBe(minor)
      }),
    )
    promise(`C4 money to digits and back, against a decimal library: ${runs} amounts, 0 failures`)
  })
  it('reads a comma or a point, and refuses more decimals than there are', () => {
    expect(readMoney('12,5', 'EUR')).toBe(1250)
    expect(readMoney('12.05', 'EUR')).toBe(1205)
    for (const wrong of ['', '-1', '1.234', '1e3', '€5', '1 000']) expect(readMoney(wrong, 'EUR')).toBeNull()
    expect(readMoney('12.5', 'JPY')).toBeNull()
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
  it('names the line of what is wrong, takes the rest, and leaves other prices alone', () => {
    const read = readPriceBook(
      `${HEAD}rose,Rose,20,9.99,GBP,mine\r\nrosa,,1,1,GBP,\r\ntulip,Tulip,ten,3,GBP,mine\r\ntulip,Tulip,10,cheap,GBP,mine\r\n`,
      own,
    )
    expect(read).toEqual({
      ok: true,
      rows: 1,
      problems: [
        'line 3: expected the id of a plant, got "rosa"',
        'line 4: expected a whole number of stems from 1 to 1000, got "ten"',
        'line 5: expected a price in GBP, got "cheap"',
      ],
      prices: { currency: 'GBP', perBunch: {}, packs: { ...own.packs, rose: [{ stems: 20, minor: 999 }] } },
    })
  })
  it('with semicolons and decimal commas, as spreadsheets of half the world write it', () => {
    const read = readPriceBook('Plant;Stems in it;Price\r\nrose;20;9,99\r\n', EMPTY)
    expect(read).toMatchObject({
      ok: true,
      prices: { packs: { rose: [{ stems: 20, minor: 999 }] } as Record<string, Pack[]> },
    })
  })
  it('is refused without its columns, in two currencies, or in none', () => {
    expect(readPriceBook('a,b\r\n1,2\r\n', EMPTY)).toEqual({
      ok: false,
      problems: ['line 1: expected the columns plant, stems in it, price; got no plant, no stems in it, no price'],
    })
    expect(readPriceBook(`${HEAD}rose,,1,1,GBP,\r\ntulip,,1,1,EUR,\r\n`, EMPTY).ok).toBe(false)
    expect(readPriceBook(`${HEAD}rose,,1,1,euro,\r\n`, EMPTY).ok).toBe(false)
    expect(readPriceBook('', EMPTY).ok).toBe(false)
  })
})
