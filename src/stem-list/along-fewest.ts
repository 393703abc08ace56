import { complete } from './along-complete.ts'
import { type Batch, type Kinds, type Stock, stemsOf, sum } from './along-kinds.ts'
import type { Worths } from './along-price.ts'
import { improve, singles } from './along-programme.ts'
import { released, rounded } from './along-round.ts'
import { firstBasis } from './along-simplex.ts'

/** So many steps are taken in all for the programme, and for rounding it; as many for every way where there are few pieces. Ours. */
const STEPS = 4e6
const STEPS_FOR_ALL = 2e6
const FEW_PIECES = 40
/** Ways of the programme that rounding passes over, turn by turn, as long as it does not come out. Ours. */
const ASIDES = [[], [0, 1], [2], [1], [0, 0, 1], [0, 2], [3], [1, 1]]

/**
 * As few stems as can be found, and the most that is proven of how few there can be.
 * @param batches some way to cut them all
 * @param known so many stems are needed at least
 */
export const fewest = (
  kinds: Kinds,
  stock: Stock,
  batches: readonly Batch[],
  known: number,
): { batches: readonly Batch[]; least: number; worths: Worths | null } => {
  const basis = firstBasis(singles(kinds, stock), kinds.counts)
  const all = { kinds, stock, ways: batches.map((b) => b.way) }
  const steps = { left: STEPS }
  let best = batches
  let { least, worths } = improve(basis, all, kinds.counts, { known, enough: stemsOf(best), good: 0 }, steps)
  if (worths && sum(kinds.counts) <= FEW_PIECES) {
    const few = { left: STEPS_FOR_ALL }
    for (; least < stemsOf(best); least += 1) {
      const found = complete(kinds, kinds.counts, stock, least, worths, few)
      if (found === undefined) break
      if (found) return { batches: found, least, worths }
    }
  }
  steps.left = STEPS
  const aim = { basis, worths, stems: least }
  ASIDES.forEach((aside, turn) => {
    if (stemsOf(best) <= least || steps.left <= 0) return
    const found = (turn === 1 && released(all, aim, steps)) || rounded(all, aim, aside, steps)
    if (stemsOf(found) < stemsOf(best)) best = found
  })
  return { batches: best, least, worths }
}
