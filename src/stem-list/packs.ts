/** Stems that are sold together, and what they cost in whole minor units. */
export interface Pack {
  stems: number
  minor: number
}

export interface Bought extends Pack {
  count: number
}

/** So many kinds of bunch of one plant may be sold; more would make the search long. Ours. */
export const MOST_PACKS = 4

const whole = (n: number, least: number): boolean => Number.isSafeInteger(n) && n >= least
/** Whole numbers: stems from 1 up, minor units from 0 up. */
export const isPack = ({ stems, minor }: Pack): boolean => whole(stems, 1) && whole(minor, 0)

/**
 * The cheapest packs that hold at least `needed` stems; among equally cheap ones the fewest stems over, then the fewest packs.
 * Exact: let e be the pack with the least price a stem. A best choice holds fewer than e.stems packs of the other kinds
 * together, for among that many some hold a multiple of e.stems between them (pigeonhole) and could be e for no more money.
 * So the others are tried one by one up to there, and e fills the rest; no further than the best so far could still be met,
 * for what is left costs no less than by the stem in packs of e.
 * @param packs one to four, whole numbers, stems from 1 up, minor from 0 up; throws a RangeError for others
 * @returns the kinds of which any are bought, largest first; nothing for 0 stems
 */
export const cheapestPacks = (needed: number, packs: readonly Pack[]): Bought[] => {
  if (packs.length < 1 || packs.length > MOST_PACKS || !packs.every(isPack))
    throw new RangeError(`packs: expected 1 to ${MOST_PACKS} of a whole number of stems and minor units`)
  if (!whole(needed, 0)) throw new RangeError(`needed: expected a whole number from 0 up, got ${needed}`)
  const ranked = [...packs].sort((a, b) => a.minor * b.stems - b.minor * a.stems || b.stems - a.stems)
  const [base, ...others] = ranked as [Pack, ...Pack[]]
  const counts = new Array<number>(ranked.length).fill(0)
  let best = null as { minor: number; stems: number; packs: number; counts: number[] } | null
  const settle = (left: number, minor: number, stems: number, used: number): void => {
    const fill = Math.max(0, Math.ceil(left / base.stems))
    const all = { minor: minor + fill * base.minor, stems: stems + fill * base.stems, packs: used + fill }
    if (
      !best ||
      all.minor < best.minor ||
      (all.minor === best.minor && (all.stems < best.stems || (all.stems === best.stems && all.packs < best.packs)))
    )
      best = { ...all, counts: [fill, ...counts.slice(1)] }
  }
  const tryFrom = (k: number, left: number, minor: number, stems: number, used: number): void => {
    const pack = others[k]
    if (!pack) return settle(left, minor, stems, used)
    for (let n = 0; used + n < base.stems; n += 1) {
      const rest = Math.max(0, left - n * pack.stems)
      // More of this kind only costs more.
      if (best && (minor + n * pack.minor - best.minor) * base.stems + rest * base.minor > 0) break
      counts[k + 1] = n
      tryFrom(k + 1, left - n * pack.stems, minor + n * pack.minor, stems + n * pack.stems, used + n)
      if (left - n * pack.stems <= 0) break
    }
    counts[k + 1] = 0
  }
  tryFrom(0, needed, 0, 0, 0)
  return ranked
    .map((pack, k) => ({ ...pack, count: best?.counts[k] ?? 0 }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.stems - a.stems)
}
