import { alongStems } from './along.ts'
import { fewestOf } from './cutting.ts'
import type { Wanted, Yield } from './pieces.ts'

/** Pieces of one kind out of one stem: `count` of them, for the copies numbered from `first` (1 is the first copy). */
export interface CutPiece {
  /** Index into what was wanted. */
  wanted: number
  count: number
  first: number
  from: 'main' | 'side'
}

/** `times` stems in a row that are cut alike; the copies they serve follow on from one stem to the next. */
export interface Cut {
  times: number
  pieces: CutPiece[]
}

/** Pieces of one kind that are still to be given out, in order of the copies. */
interface Run {
  wanted: number
  left: number
  next: number
}

const take = (run: Run, count: number, from: CutPiece['from']): CutPiece => {
  const piece = { wanted: run.wanted, count, first: run.next, from }
  run.left -= count
  run.next += count
  return piece
}

const runsOf = (wanted: readonly Wanted[], piece: Wanted['piece']): Run[] =>
  wanted
    .map(({ count }, i) => ({ wanted: i, left: count, next: 1 }))
    .filter((run) => wanted[run.wanted]!.piece === piece && run.left > 0)
    // Longest first; among equals as they were asked for.
    .sort((a, b) => wanted[b.wanted]!.length_mm - wanted[a.wanted]!.length_mm || a.wanted - b.wanted)

/** One kind after another, as long as there is any; `at` moves on past those that are used up. */
const feed = (runs: Run[]): (() => Run | undefined) => {
  let at = 0
  return () => {
    while (at < runs.length && runs[at]!.left === 0) at += 1
    return runs[at]
  }
}

/** What the side stems of one stem give: the next pieces, up to `sides`. */
const sidesOf = (next: () => Run | undefined, sides: number): CutPiece[] => {
  const pieces: CutPiece[] = []
  for (let room = sides, run = next(); room > 0 && run; run = next()) {
    const count = Math.min(room, run.left)
    pieces.push(take(run, count, 'side'))
    room -= count
  }
  return pieces
}

/** Greens cut along their length: each way of cutting as often as it comes, the copies one after the other. */
const alongPlan = (wanted: readonly Wanted[], stock: { main_mm: number; along: number }): Cut[] => {
  const next = wanted.map(() => 1)
  return alongStems(wanted, stock).patterns.map(({ times, pieces }) => ({
    times,
    pieces: pieces.map(({ wanted: i, count }) => {
      const first = next[i]!
      next[i] = first + times * count
      return { wanted: i, count, first, from: 'main' }
    }),
  }))
}

/**
 * Which stem gives which pieces, by as few stems as there can be (fewestOf): the longest laterals from the main axes, the
 * others from side stems, longest first, so that what is left over is short. Stems that are cut alike are one row.
 * @returns rows whose `times` add up to the count of stems; every wanted piece is in exactly one
 */
export const cutPlan = (wanted: readonly Wanted[], given: Yield): Cut[] => {
  const { main_mm, along = 1 } = given
  if (along > 1) return alongPlan(wanted, { main_mm, along })
  const { stems, wholes } = fewestOf(wanted, given)
  const cuts: Cut[] = runsOf(wanted, 'whole').map((run) => ({
    times: run.left,
    pieces: [{ wanted: run.wanted, count: 1, first: 1, from: 'main' }],
  }))
  const laterals = runsOf(wanted, 'lateral')
  const mains: Run[] = []
  // The first pieces, in order of length, lie along the main axes: one for each stem.
  for (let room = stems - wholes, i = 0; room > 0 && i < laterals.length; i += 1) {
    const run = laterals[i]!
    const count = Math.min(room, run.left)
    mains.push({ wanted: run.wanted, left: count, next: run.next })
    take(run, count, 'main')
    room -= count
  }
  const nextMain = feed(mains)
  const nextSide = feed(laterals)
  for (let main = nextMain(); main; main = nextMain()) {
    const side = nextSide()
    const alike = !side || given.sides === 0 ? main.left : Math.min(main.left, Math.floor(side.left / given.sides))
    const times = Math.max(1, alike)
    const pieces = [{ ...take(main, times, 'main'), count: 1 }]
    if (alike >= 1 && side && given.sides > 0)
      pieces.push({ ...take(side, times * given.sides, 'side'), count: given.sides })
    else pieces.push(...sidesOf(nextSide, given.sides))
    cuts.push({ times, pieces })
  }
  return cuts
}
