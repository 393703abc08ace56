import type { PriceBook } from '../stem-list/index.ts'

/** `there` with each entry that differs between the two as it is in `to`. */
const changed = <T>(
  there: Readonly<Record<string, T>>,
  from: Readonly<Record<string, T>>,
  to: Readonly<Record<string, T>>,
): Record<string, T> => {
  const next = { ...there }
  for (const key of new Set([...Object.keys(from), ...Object.keys(to)])) {
    if (JSON.stringify(from[key]) === JSON.stringify(to[key])) continue
    if (Object.hasOwn(to, key)) next[key] = to[key]!
    else delete next[key]
  }
  return next
}

/**
 * The price book as it is kept, with what a page has changed in its own: another page's prices of other plants stay. With another
 * currency the page's whole book holds, for figures of two currencies are not to be mixed.
 */
export const withChanges = (there: PriceBook, from: PriceBook, to: PriceBook): PriceBook =>
  there.currency !== to.currency || from.currency !== to.currency
    ? to
    : {
        currency: to.currency,
        perBunch: changed(there.perBunch, from.perBunch, to.perBunch),
        packs: changed(there.packs ?? {}, from.packs ?? {}, to.packs ?? {}),
      }
