import { Decimal } from 'decimal.js'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { minorDigits, moneyDigits, readMoney } from '../../../src/stem-list/index.ts'
import { promise } from '../../promise.ts'

describe('an amount as people write it', () => {
  it('with its sign before or after it, with thousands apart, by comma or point', () => {
    for (const text of [
      '18.80',
      '18,80',
      '18,8',
      '18,80 €',
      '€ 18.80',
      '€18,80',
      'EUR 18.80',
      '18.80 EUR',
      '18,80\u00a0€',
    ])
      expect(readMoney(text, 'EUR'), text).toBe(1880)
    for (const text of ['1.234,50', '1,234.50', '1 234,50', '1\u00a0234,50', '1\u202f234.50', "1'234.50", '1’234.50'])
      expect(readMoney(text, 'CHF'), text).toBe(123450)
    expect(readMoney('1.234.567', 'EUR')).toBe(123456700)
    expect(readMoney('1 000', 'EUR')).toBe(100000)
    expect(readMoney('CA$12', 'CAD')).toBe(1200)
    expect(readMoney('$12', 'CAD')).toBe(1200)
  })
  it('yen have no decimals, so a sign in them parts thousands', () => {
    for (const text of ['1,234', '1.234', '¥1,234', '1234']) expect(readMoney(text, 'JPY'), text).toBe(1234)
    expect(readMoney('12.5', 'JPY')).toBeNull()
  })
  it('what may be thousands or decimals is not guessed', () => {
    expect(readMoney('1,234', 'EUR')).toBe('either')
    expect(readMoney('1.234', 'EUR')).toBe('either')
    expect(readMoney('1,234', 'KWD')).toBe('either')
    // As this house writes dinars: a point, but a comma where semicolons part the cells.
    expect(readMoney('1.234', 'KWD')).toBe(1234)
    expect(readMoney('1,234', 'KWD', ',')).toBe(1234)
    expect(readMoney('1.234', 'KWD', ',')).toBe('either')
    expect(readMoney('0,950', 'KWD')).toBe(950)
    expect(readMoney('1.234,567', 'KWD')).toBe(1_234_567)
  })
  it('and the rest is no price', () => {
    const wrong = [
      '',
      '-1',
      '−1',
      '1e3',
      '$5',
      '12.3456',
      '1.23,4',
      '1,23,456',
      '1.234.50',
      '0.234,50',
      '1 23',
      '12 €€',
      'EUR',
    ]
    for (const text of wrong) expect(readMoney(text, 'EUR'), text).toBeNull()
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
        expect(readMoney(text.replace('.', ','), currency, ',')).toBe(minor)
      }),
    )
    promise(`C4 money to digits and back, against a decimal library: ${runs} amounts, 0 failures`)
  })
  it('is read as the browser writes it in eight languages', () => {
    const tongues = ['en', 'de', 'fr', 'de-CH', 'nl', 'sv', 'pt', 'es']
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 90_000_000 }), fc.constantFrom(...tongues), (minor, tongue) => {
        const style = { style: 'currency', currency: 'EUR' } as const
        expect(readMoney(new Intl.NumberFormat(tongue, style).format(minor / 100), 'EUR')).toBe(minor)
      }),
    )
  })
})
