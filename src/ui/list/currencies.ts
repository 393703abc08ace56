const CURRENCIES = ['EUR', 'GBP', 'USD', 'CAD', 'AUD', 'NZD', 'CHF', 'SEK', 'DKK', 'NOK', 'JPY'] as const

/** Currencies to choose from; the one in use is among them. */
export const currenciesWith = (now: string): readonly string[] =>
  (CURRENCIES as readonly string[]).includes(now) ? CURRENCIES : [now, ...CURRENCIES]
