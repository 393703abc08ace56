import { complete } from './along-complete.ts'
import { type Batch, type Kinds, type Stock, stemsOf, type Way } from './along-kinds.ts'
import type { Steps, Worths } from './along-price.ts'
import { type Case, improve } from './along-programme.ts'
import { type Basis, copyOf, mend } from './along-simplex.ts'
import { HAIR_mm } from './pieces.ts'

/** Steps of one look for what is left over, and most columns of one mending. Ours. */
const A_LOOK = 40_000
const A_MENDING = 40
const NOISE = 1e-6

/** Cuts so many stems in one way; where a piece is no longer wanted, the next shorter one that is comes from its place. */
const takeOut = (left: number[], way: Way, times: number): Batch[] => {
  const batches: Batch[] = []
  for (let more = times; more > 0; ) {
    const now = new Map<number, number>()
    const some: number[] = []
    for (const kind of way) {
      const k = left.findIndex((n, i) => i >= kind && n > (now.get(i) ?? 0))
      if (k < 0) continue
      now.set(k, (now.get(k) ?? 0) + 1)
      some.push(k)
    }
    if (some.length === 0) break
    let often = more
    for (const [k, n] of now) often = Math.min(often, Math.floor(left[k]! / n))
    for (const [k, n] of now) left[k]! -= often * n
    batches.push({ way: some, times: often })
    more -= often
  }
  return batches
}

/** First fit decreasing: the longest piece that is left, and beside it the longest that fits, and so on. */
export const firstFit = ({ lengths }: Kinds, counts: readonly number[], { main_mm, along }: Stock): Batch[] => {
  const left = [...counts]
  const batches: Batch[] = []
  for (let longest = 0; longest < left.length; ) {
    if (left[longest] === 0) {
      longest += 1
      continue
    }
    const way: number[] = []
    let room_mm = main_mm + HAIR_mm
    for (let k = longest; k < left.length && way.length < along; k += 1)
      for (let n = 0; n < left[k]! && way.length < along && lengths[k]! <= room_mm; n += 1) {
        way.push(k)
        room_mm -= lengths[k]!
      }
    const often = way.map((k) => Math.floor(left[k]! / way.filter((j) => j === k).length))
    batches.push(...takeOut(left, way, Math.min(...often)))
  }
  return batches
}

/** What the basis cuts in whole stems, less `fewer` of each, and what is left to cut. */
const wholeOf = ({ columns, times }: Basis, counts: readonly number[], fewer: number) => {
  const left = [...counts]
  const batches = columns.flatMap((column, r) =>
    'way' in column ? takeOut(left, column.way, Math.floor(times[r]! + NOISE) - fewer) : [],
  )
  return { left, batches }
}

/** What is to be cut, a basis of its programme with worths that go with it, and as few stems as it might be. */
export interface Aim {
  basis: Basis
  worths: Worths | null
  stems: number
}

/** The whole stems of the basis but one of each way, and every way for the others: null where none is found. */
export const released = ({ kinds, stock }: Case, { basis, worths, stems }: Aim, steps: Steps): Batch[] | null => {
  const { left, batches } = wholeOf(basis, kinds.counts, 1)
  const look = { left: Math.min(10 * A_LOOK, steps.left) }
  steps.left -= look.left
  const rest = worths && complete(kinds, left, stock, stems - stemsOf(batches), worths, look)
  steps.left += look.left
  return rest ? [...batches, ...rest] : null
}

/**
 * Rounds the programme: takes its whole stems, tries whether the rest goes by first fit or by a short search, else takes a stem
 * of the way with the largest fraction and asks the programme for what is left (diving: Wäscher & Gau, OR Spektrum
 * 18:131–144, 1996, have it among the best of roundings).
 * @param aside at each turn so many ways with larger fractions are passed over; 0 where nothing is said
 * @returns the best that was found; more stems than were aimed at, where that fails
 */
export const rounded = (all: Case, aim: Aim, aside: readonly number[], steps: Steps): Batch[] => {
  const { kinds, stock, ways } = all
  const basis = copyOf(aim.basis)
  const cut: Batch[] = []
  let left = [...kinds.counts]
  let best: Batch[] | null = null
  const tried = (): boolean => {
    const whole = [...cut, ...firstFit(kinds, left, stock)]
    if (!best || stemsOf(whole) < stemsOf(best)) best = whole
    return stemsOf(best) <= aim.stems
  }
  for (let turn = 0; ; turn += 1) {
    const whole = wholeOf(basis, left, 0)
    cut.push(...whole.batches)
    left = whole.left
    steps.left -= A_MENDING * left.length
    if (tried() || left.every((n) => n === 0)) break
    const look = { left: A_LOOK }
    const rest = aim.worths && complete(kinds, left, stock, aim.stems - stemsOf(cut), aim.worths, look)
    if (rest) return [...cut, ...rest]
    steps.left -= A_LOOK - look.left
    const parts = basis.columns.flatMap((column, r) => {
      const part = basis.times[r]! - Math.floor(basis.times[r]! + NOISE)
      return 'way' in column && part > NOISE ? [{ way: column.way, part }] : []
    })
    parts.sort((a, b) => b.part - a.part)
    const next = parts[Math.min(aside[turn] ?? 0, parts.length - 1)]
    if (!next) break
    cut.push(...takeOut(left, next.way, 1))
    if (tried()) break
    steps.left -= ways.length * A_MENDING
    mend(basis, left, ways, A_MENDING)
    const more = aim.stems - stemsOf(cut)
    const { least } = improve(basis, all, left, { known: 0, enough: more + 1, good: more + NOISE }, steps)
    if (least > more || steps.left <= 0) break
  }
  return best ?? firstFit(kinds, kinds.counts, stock)
}
