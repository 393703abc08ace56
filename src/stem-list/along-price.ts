import { type Kinds, type Stock, sum, type Way } from './along-kinds.ts'
import { HAIR_mm } from './pieces.ts'

/** Steps that are left, each about as long as an addition: counted, so that the answer is the same on every machine. */
export interface Steps {
  left: number
}

/** A stem is looked at in cells of 1 mm, longer ones in so many cells. Ours. */
const CELLS = 1000
/** So many pieces are tried in looking for one stem, each of so many steps. Ours. */
const LOOKS = 3000
const STEPS_A_LOOK = 20

/** Whole worths of a piece of each kind, such that no way to cut a stem is worth more than `stem`. */
export interface Worths {
  pieces: readonly number[]
  stem: number
}

export const worthOf = (way: Way, worths: readonly number[]): number => {
  let all = 0
  for (const i of way) all += worths[i]!
  return all
}

/**
 * So many stems no cutting can do without: all pieces are worth so much, and no stem more than `stem` (Farley, Operations
 * Research 38:922–923, 1990). Worths and counts are whole numbers with products under 2^53, so that it is rounded up exactly.
 */
export const atLeast = (counts: readonly number[], { pieces, stem }: Worths): number => {
  const all = sum(counts.map((n, i) => n * pieces[i]!))
  const rest = all % stem
  return (all - rest) / stem + (rest > 0 ? 1 : 0)
}

/** No `c` pieces are worth more in so many cells: [c × cells + cell], lengths rounded down to cells. */
const mostIn = (
  worths: readonly number[],
  cellsOf: readonly number[],
  some: readonly number[],
  cells: number,
  along: number,
  steps: Steps,
): Float64Array => {
  const most = new Float64Array((along + 1) * cells)
  for (let now = cells; now < most.length; now += cells) {
    most.copyWithin(now, now - cells, now)
    let dearest = 0
    for (const i of some) {
      const worth = worths[i]!
      // A shorter piece is worth as much.
      if (worth <= dearest) continue
      dearest = worth
      const length = cellsOf[i]!
      steps.left -= cells - length
      for (let to = now + length, from = now - cells; to < now + cells; to += 1, from += 1) {
        const value = most[from]! + worth
        if (value > most[to]!) most[to] = value
      }
    }
  }
  return most
}

/**
 * Ways to cut one stem whose pieces are worth more than `over`, each worth more than the one before: a knapsack with a limit on
 * the number of pieces, by the longest path over cells and then piece by piece at the true lengths.
 * @param worths whole numbers from 0 up
 * @returns `most`: no way is worth more than this, nor than `over`
 */
export const bestStems = (
  { lengths }: Kinds,
  counts: readonly number[],
  worths: readonly number[],
  stock: Stock,
  over: number,
  steps: Steps,
): { ways: Way[]; most: number } => {
  const main_mm = stock.main_mm + HAIR_mm
  const cell_mm = Math.max(1, main_mm / CELLS)
  const cells = Math.floor(main_mm / cell_mm) + 1
  const cellsOf = lengths.map((mm) => Math.floor(mm / cell_mm))
  const some = lengths.map((_, i) => i).filter((i) => worths[i]! > 0 && counts[i]! > 0)
  // Shortest first.
  some.reverse()
  const shortest_mm = some.length > 0 ? lengths[some[0]!]! : 0
  const along = shortest_mm > 0 ? Math.min(stock.along, Math.floor(main_mm / shortest_mm)) : stock.along
  const mostOf = mostIn(worths, cellsOf, some, cells, along, steps)
  const most = mostOf[mostOf.length - 1]!
  if (most <= over) return { ways: [], most }
  some.sort((a, b) => worths[b]! * lengths[a]! - worths[a]! * lengths[b]! || a - b)
  const ways: Way[] = []
  const laid: number[] = []
  const used = lengths.map(() => 0)
  let best = over
  let looks = 0
  const lay = (from: number, room_mm: number, worth: number): void => {
    const more = along - laid.length
    if (more === 0) return
    for (let k = from; k < some.length && looks < LOOKS && best < most; k += 1) {
      looks += 1
      const i = some[k]!
      const left_mm = room_mm - lengths[i]!
      if (left_mm < 0 || used[i]! >= counts[i]!) continue
      const now = worth + worths[i]!
      if (now + mostOf[(more - 1) * cells + Math.floor(left_mm / cell_mm)]! <= best) continue
      laid.push(i)
      used[i]! += 1
      if (now > best) {
        best = now
        ways.push([...laid])
      }
      lay(k, left_mm, now)
      laid.pop()
      used[i]! -= 1
    }
  }
  lay(0, main_mm, 0)
  steps.left -= STEPS_A_LOOK * looks
  return { ways, most: looks < LOOKS ? best : most }
}
