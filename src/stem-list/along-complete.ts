import { type Batch, type Kinds, type Stock, sum, type Way } from './along-kinds.ts'
import { type Steps, type Worths, worthOf } from './along-price.ts'
import { HAIR_mm } from './pieces.ts'

/** Steps for each way that is looked at. */
const STEPS_A_LOOK = 20

/** A way to cut a stem, and by how much it is worth less than a stem may be. */
type Losing = { way: Way; loss: number }

/**
 * Tries every way to cut what is left from so many stems: the longest piece with whatever goes beside it, till nothing more does.
 * What all stems lose of their worth is known from the start, so that only stems that lose little are tried (bin completion:
 * Korf, AAAI 2002, 731–736; with the prices of the linear programme in place of lengths).
 * @param worths such that no way to cut a stem is worth more than a stem
 * @returns null: there is none; undefined: not found out in the steps left
 */
export const complete = (
  { lengths }: Kinds,
  counts: readonly number[],
  stock: Stock,
  stems: number,
  { pieces, stem }: Worths,
  steps: Steps,
): Batch[] | null | undefined => {
  const left = [...counts]
  const laid: Way[] = []
  // What a mm, and what a piece, is worth at most from this kind on.
  const [perMm, each] = [lengths.map(() => 0), lengths.map(() => 0)]
  for (let k = lengths.length - 1; k >= 0; k -= 1) {
    perMm[k] = Math.max(perMm[k + 1] ?? 0, pieces[k]! / Math.max(lengths[k]!, HAIR_mm))
    each[k] = Math.max(each[k + 1] ?? 0, pieces[k]!)
  }
  const waysWith = (longest: number, budget: number): Losing[] => {
    const ways: Losing[] = []
    const way: number[] = []
    const lay = (k: number, room_mm: number): void => {
      way.push(k)
      left[k]! -= 1
      fill(k, room_mm - lengths[k]!)
      left[k]! += 1
      way.pop()
    }
    const fill = (from: number, room_mm: number): void => {
      steps.left -= STEPS_A_LOOK
      const worth = worthOf(way, pieces)
      const more = stock.along - way.length
      const shortest = left.findLastIndex((n) => n > 0)
      if (more === 0 || shortest < 0 || lengths[shortest]! > room_mm) {
        if (stem - worth <= budget) ways.push({ way: [...way], loss: stem - worth })
        return
      }
      for (let k = from; k < left.length && steps.left > 0; k += 1) {
        // Worths are whole numbers, but for what reckoning in fractions adds.
        if (stem - worth - Math.min(room_mm * perMm[k]!, more * each[k]!) > budget + 0.5) return
        if (left[k]! > 0 && lengths[k]! <= room_mm) lay(k, room_mm)
      }
    }
    lay(longest, stock.main_mm + HAIR_mm)
    return ways.sort((a, b) => a.loss - b.loss)
  }
  const go = (from: number, more: number, budget: number): boolean | undefined => {
    const longest = left.findIndex((n, k) => k >= from && n > 0)
    if (longest < 0) return true
    if (more === 0) return false
    const ways = waysWith(longest, budget)
    if (steps.left <= 0) return undefined
    for (const { way, loss } of ways) {
      for (const k of way) left[k]! -= 1
      laid.push(way)
      const done = go(longest, more - 1, budget - loss)
      if (done !== false) return done
      laid.pop()
      for (const k of way) left[k]! += 1
    }
    return false
  }
  const budget = stems * stem - sum(counts.map((n, k) => n * pieces[k]!))
  const done = budget < 0 ? false : go(0, stems, budget)
  if (!done) return done === false ? null : undefined
  return laid.map((way) => ({ way, times: 1 }))
}
