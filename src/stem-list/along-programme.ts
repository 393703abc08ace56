import { type Kinds, type Stock, sum, type Way } from './along-kinds.ts'
import { atLeast, bestStems, type Steps, type Worths, worthOf } from './along-price.ts'
import { type Basis, enter } from './along-simplex.ts'
import { HAIR_mm } from './pieces.ts'

/** What is known of a case: its kinds with the counts that are to be cut, and the ways that were found so far. */
export interface Case {
  kinds: Kinds
  stock: Stock
  ways: Way[]
}

/** Prices are made whole by so much, and a way enters if it is worth so much more than a stem, in parts of it. */
const SCALE = 2 ** 33
const MORE = 2 ** -27
const NOISE = 1e-7
/** Programme and bound are this near, or there is this much room to round in, stems: it is good enough. Ours. */
const NEAR = 0.05
const ROOM = 0.5

/** As many pieces of each kind alone as a stem gives. */
export const singles = ({ lengths, counts }: Kinds, { main_mm, along }: Stock): Way[] =>
  lengths.map((mm, i) => {
    const most = mm > 0 ? Math.floor((main_mm + HAIR_mm) / mm) : along
    return new Array<number>(Math.max(1, Math.min(along, counts[i]!, most))).fill(i)
  })

const stemsIn = ({ columns, times }: Basis): number =>
  columns.reduce((all, column, r) => all + ('way' in column ? times[r]! : 0), 0)

/** The piece whose price is most under that of the next shorter one, which it could serve as; −1: none. */
const cheapest = (prices: Float64Array): number => {
  let [worst, least] = [-1, -1e-9]
  prices.forEach((price, i) => {
    const by = price - (prices[i + 1] ?? 0)
    if (by < least) [worst, least] = [i, by]
  })
  return worst
}

/**
 * The linear programme over all ways to cut a stem, with fractions of stems (Gilmore & Gomory, Operations Research 9:849–859,
 * 1961): a way comes in as long as there is one whose pieces cost more than a stem. Improves the basis, and adds the ways.
 * @param known so many stems are needed at least
 * @param enough no better bound is wanted, nor a better basis than of so many stems
 * @returns the best bound, whether it is as good as it gets or not, and worths that prove nearly as much
 */
export const improve = (
  basis: Basis,
  { kinds, stock, ways }: Case,
  counts: readonly number[],
  { known, enough, good }: { known: number; enough: number; good: number },
  steps: Steps,
): { least: number; worths: Worths | null } => {
  const scale = Math.min(SCALE, 2 ** Math.floor(52 - Math.log2(sum(counts) + 1)))
  const over = Math.floor(scale * (1 + MORE))
  let least = known
  let worths: Worths | null = null
  let near = 0
  for (let n = 0; n < 50 + 20 * counts.length && steps.left > 0; n += 1) {
    const value = stemsIn(basis)
    if (!(value > good) || least >= enough) break
    if (worths && least >= Math.ceil(value - NOISE) && (least - value > ROOM || value - near < NEAR)) break
    steps.left -= 2 * counts.length ** 2
    const spare = cheapest(basis.prices)
    if (spare >= 0) {
      if (!enter(basis, { spare })) break
      continue
    }
    const pieces = Array.from(basis.prices, (price) => Math.floor(Math.max(0, price) * scale))
    let best: Way | undefined
    let most = over
    for (const way of ways) {
      const worth = worthOf(way, pieces)
      if (worth > most) [best, most] = [way, worth]
    }
    if (!best) {
      const found = bestStems(kinds, counts, pieces, stock, over, steps)
      const now = { pieces, stem: Math.max(over, found.most) }
      least = Math.max(least, atLeast(counts, now))
      const bound = sum(counts.map((count, i) => count * pieces[i]!)) / now.stem
      if (bound > near) [near, worths] = [bound, now]
      best = found.ways.at(-1)
      if (!best) break
      ways.push(...found.ways)
    }
    if (!enter(basis, { way: best })) break
  }
  return { least, worths }
}
