import { minorDigits } from './money.ts'

/** Prices above this are taken for a slip, in main units. Ours. */
const MOST_PRICE = 100_000_000

/** The signs that stand for a currency beside an amount: its code, and its signs in English (CLDR, through Intl). */
const signsOf = (currency: string): string[] => {
  const as = (currencyDisplay: 'symbol' | 'narrowSymbol'): string => {
    try {
      const parts = new Intl.NumberFormat('en', { style: 'currency', currency, currencyDisplay }).formatToParts(0)
      return parts.find((p) => p.type === 'currency')?.value ?? ''
    } catch {
      return ''
    }
  }
  return [currency, as('symbol'), as('narrowSymbol')].filter(Boolean).sort((a, b) => b.length - a.length)
}

const withoutSign = (text: string, currency: string): string => {
  const signs = signsOf(currency)
  const before = signs.find((sign) => text.startsWith(sign))
  if (before) return text.slice(before.length).trim()
  const after = signs.find((sign) => text.endsWith(sign))
  return after ? text.slice(0, -after.length).trim() : text
}

const PLAIN = /^(\d{1,12})(?:[.,](\d+))?$/
/** Thousands apart by one sign throughout, and perhaps another sign with decimals. */
const GROUPED = /^([1-9]\d{0,2}(?:([.,'’ \u00a0\u2009\u202f])\d{3})(?:\2\d{3})*)(?:([.,])(\d+))?$/

/** Whole main units and decimals; where one sign parts three digits it may be either, unless that is settled. */
const partsOf = (
  text: string,
  digits: number,
  decimal: '.' | ',',
): { whole: string; after: string } | 'either' | null => {
  const grouped = GROUPED.exec(text)
  if (!grouped) {
    const plain = PLAIN.exec(text)
    return plain && { whole: plain[1]!, after: plain[2] ?? '' }
  }
  const [, front, sign, point, after = ''] = grouped as unknown as [string, string, string, string?, string?]
  const groups = front.split(sign)
  if (point === sign) return null
  if (point === undefined && groups.length === 2 && (sign === '.' || sign === ',') && digits > 0) {
    if (digits < 3 || sign !== decimal) return 'either'
    return { whole: groups[0]!, after: groups[1]! }
  }
  return { whole: groups.join(''), after }
}

/**
 * `12.50`, `12,5`, `€ 18.80`, `18,80 €`, `1.234,50`, `1 234,50` or `1'234.50` to whole minor units; null for what is no price from
 * 0 up, has another currency's sign, or more decimals than the currency; 'either' where it may be thousands or decimals: `1,234`
 * euros. Of dinars with three decimals the sign that the file's decimals have tells.
 */
export const readMoney = (text: string, currency: string, decimal: '.' | ',' = '.'): number | 'either' | null => {
  const digits = minorDigits(currency)
  const parts = partsOf(withoutSign(text.trim(), currency), digits, decimal)
  if (parts === null || parts === 'either') return parts
  if (parts.after.length > digits) return null
  const minor = Number(`${parts.whole}${parts.after.padEnd(digits, '0')}`)
  return minor <= MOST_PRICE * 10 ** digits ? minor : null
}
