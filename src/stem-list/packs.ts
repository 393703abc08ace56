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

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b))

/**
 * What to buy by the number of stems that are left over when their number is divided by those of the base: shortest paths over
 * remainders (Gilmore & Gomory, Operations Research 14:1045–1074, 1966). For the base no pack gives more stems for the money, so that
 * each of the others costs the same or more than its stems cost in the base; of equals the fewest packs.
 * @returns counts of the others and of the base; null: they hold more than is needed, and the base can't be less than nothing
 */
const byRemainder = (needed: number, base: Pack, others: readonly Pack[]): number[] | null => {
  const size = base.stems
  // What the others cost beyond their stems in the base, and their packs beyond those of the base: both times the stems of the base.
  const dearer = new Float64Array(size).fill(Number.POSITIVE_INFINITY)
  const packs = new Float64Array(size)
  dearer[0] = 0
  const oneMore = others.map(() => new Uint8Array(size))
  // The last first: so of equals the first is bought as seldom as can be.
  for (let k = others.length - 1; k >= 0; k -= 1) {
    const { stems, minor } = others[k]!
    const by = minor * size - base.minor * stems
    const rings = divisor(stems, size)
    // Twice round each ring: by then it has been once round from the best of it.
    for (let ring = 0; ring < rings; ring += 1)
      for (let n = 0, from = ring; n < (2 * size) / rings; n += 1) {
        const to = (from + stems) % size
        const cost = dearer[from]! + by
        const count = packs[from]! + size - stems
        if (cost < dearer[to]! || (cost === dearer[to]! && count < packs[to]!)) {
          dearer[to] = cost
          packs[to] = count
          oneMore[k]![to] = 1
        }
        from = to
      }
  }
  let [best, least] = [0, Number.POSITIVE_INFINITY]
  for (let over = 0; over < size; over += 1) {
    const cost = dearer[(needed + over) % size]! + base.minor * over
    if (cost < least) [best, least] = [over, cost]
  }
  let at = (needed + best) % size
  let rest = needed + best
  const counts = others.map(({ stems }, k) => {
    let count = 0
    for (; oneMore[k]![at] === 1; count += 1) at = (((at - stems) % size) + size) % size
    rest -= count * stems
    return count
  })
  return rest < 0 ? null : [...counts, rest / size]
}

/** What to buy for every number of stems up to those needed; counts of all packs. */
const byTable = (needed: number, packs: readonly Pack[]): number[] => {
  const size = needed + 1
  const [money, stems, bought] = [new Float64Array(size), new Float64Array(size), new Float64Array(size)]
  money.fill(Number.POSITIVE_INFINITY, 1)
  const oneMore = packs.map(() => new Uint8Array(size))
  for (let k = packs.length - 1; k >= 0; k -= 1) {
    const pack = packs[k]!
    for (let n = 1; n < size; n += 1) {
      const rest = Math.max(0, n - pack.stems)
      const by =
        money[rest]! + pack.minor - money[n]! || stems[rest]! + pack.stems - stems[n]! || bought[rest]! + 1 - bought[n]!
      if (!(by < 0)) continue
      money[n] = money[rest]! + pack.minor
      stems[n] = stems[rest]! + pack.stems
      bought[n] = bought[rest]! + 1
      oneMore[k]![n] = 1
    }
  }
  let left = needed
  return packs.map((pack, k) => {
    let count = 0
    for (; oneMore[k]![left] === 1; count += 1) left = Math.max(0, left - pack.stems)
    return count
  })
}

/**
 * The cheapest packs that hold at least `needed` stems; among equally cheap ones the fewest stems over, then the fewest packs, then
 * the fewest of the pack that is second cheapest by the stem, and so on. Exact: by what is left over when the base, the pack with the
 * least price a stem, has filled up as far as it goes; and where few stems are needed, by a table of every number of them.
 * @param packs one to four, whole numbers, stems from 1 up, minor from 0 up; throws a RangeError for others
 * @returns the kinds of which any are bought, largest first; nothing for 0 stems
 */
export const cheapestPacks = (needed: number, packs: readonly Pack[]): Bought[] => {
  if (packs.length < 1 || packs.length > MOST_PACKS || !packs.every(isPack))
    throw new RangeError(`packs: expected 1 to ${MOST_PACKS} of a whole number of stems and minor units`)
  if (!whole(needed, 0)) throw new RangeError(`needed: expected a whole number from 0 up, got ${needed}`)
  const ranked = [...packs].sort((a, b) => a.minor * b.stems - b.minor * a.stems || b.stems - a.stems)
  const [base, ...others] = ranked as [Pack, ...Pack[]]
  const counts = (needed > base.stems ? byRemainder(needed, base, others) : null) ?? byTable(needed, [...others, base])
  return [...others, base]
    .map((pack, k) => ({ ...pack, count: counts[k]! }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.stems - a.stems)
}
