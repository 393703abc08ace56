import invented from './prices.json' with { type: 'json' }

/**
 * EXAMPLE prices, all of them invented: no shop asks them. They stand in until a person has set prices of their own.
 * Cents for one bunch of the catalogue's size, by plant id.
 */
export const EXAMPLE_PRICES: { currency: string; perBunch: Record<string, number> } = {
  currency: 'EUR',
  perBunch: invented,
}
