import { change, changeEvent, startEvent, useEvent, useStudio } from '../../state/index.ts'
import { inCurrency, minorDigits, sameFigure } from '../../stem-list/index.ts'

const CURRENCIES = ['EUR', 'GBP', 'USD', 'CAD', 'AUD', 'NZD', 'CHF', 'SEK', 'DKK', 'NOK', 'JPY'] as const

/** Currencies to choose from; the one in use is among them. */
export const currenciesWith = (now: string): readonly string[] =>
  (CURRENCIES as readonly string[]).includes(now) ? CURRENCIES : [now, ...CURRENCIES]

/** The same figures in another currency, those of the event's budget as well: it is kept in the price book's minor units. */
export const changeCurrency = async (currency: string): Promise<void> => {
  const { prices } = useStudio.getState()
  change({ prices: inCurrency(prices, currency) })
  if (minorDigits(prices.currency) === minorDigits(currency)) return
  await startEvent()
  const { budget } = useEvent.getState().event
  if (budget !== null)
    changeEvent({ budget: sameFigure(budget, prices.currency, currency) }, `the budget in ${currency}`)
}
