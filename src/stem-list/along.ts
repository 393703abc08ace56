import { leastStems } from './along-least.ts'
import { fitsIn, type Wanted } from './pieces.ts'

/** Stems that are cut alike along their length: `pieces` of each, by index into what was wanted. */
export interface Pattern {
  times: number
  pieces: { wanted: number; count: number }[]
}

export interface Along {
  patterns: Pattern[]
  stems: number
  /** Fewer than these can't do; as many as `stems` where those are proven to be the fewest. */
  least: number
}

/** How long a stem is, and most pieces of it. */
export interface Stock {
  main_mm: number
  along: number
}

/** So many pieces are tried in every way, in so many steps at most. Ours: some milliseconds. */
const MOST_PIECES = 40
const MOST_STEPS = 50_000

const sum = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0)

/** The pieces of one stem, alike ones together. */
const counted = (items: readonly number[]): Pattern['pieces'] =>
  [...new Set(items)].map((i) => ({ wanted: i, count: items.filter((j) => j === i).length }))

/** So many pieces does no stem give more than: the shortest of them, one after the other. */
const mostOf = (wanted: readonly Wanted[], { main_mm, along }: Stock): number => {
  let [room, most] = [main_mm, 0]
  for (const { count, length_mm } of [...wanted].sort((a, b) => a.length_mm - b.length_mm))
    for (let n = 0; n < count && most < along && fitsIn(length_mm, room); n += 1) {
      room -= length_mm
      most += 1
    }
  return most
}

/** What is left of each piece, and their order: longest first. */
interface Left {
  wanted: readonly Wanted[]
  order: readonly number[]
  left: number[]
}

/**
 * One stem: the longest piece that is left, and beside it the longest that fits, and so on; with more steps what fills the stem best.
 * @returns an index into what was wanted for each piece
 */
const oneStem = ({ wanted, order, left }: Left, from: number, stock: Stock, steps: number): number[] => {
  const laid = [order[from]!]
  let taken = 0
  let best = laid
  let most = wanted[order[from]!]!.length_mm
  const lay = (at: number, filled: number): void => {
    if (filled > most) [best, most] = [[...laid], filled]
    for (let k = at; k < order.length && laid.length < stock.along; k += 1) {
      taken += 1
      const i = order[k]!
      const { length_mm } = wanted[i]!
      if (left[i] === laid.filter((j) => j === i).length || !fitsIn(filled + length_mm, stock.main_mm)) continue
      // From here on all are shorter still.
      if (filled + (stock.along - laid.length) * length_mm <= most) return
      laid.push(i)
      lay(k, filled + length_mm)
      laid.pop()
      if (taken > steps) return
    }
  }
  lay(from, most)
  return best
}

/**
 * Stem after stem, the longest piece first. Without steps it is first fit decreasing, and with two pieces a stem no way is better than
 * that: whatever fits beside the longest piece fits beside any other, and the largest of it is the hardest to place (ours; an
 * exchange argument, and tried against every way). With steps each stem is filled as well as may be (Gupta & Ho, Production
 * Planning & Control 10:598–603, 1999: minimum bin slack).
 */
const stemByStem = (wanted: readonly Wanted[], stock: Stock, steps: number): Pattern[] => {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[b]!.length_mm - wanted[a]!.length_mm || a - b)
  const all = { wanted, order, left: wanted.map((w) => w.count) }
  const patterns: Pattern[] = []
  for (let at = 0; at < order.length; ) {
    if (all.left[order[at]!] === 0) {
      at += 1
      continue
    }
    const pieces = counted(oneStem(all, at, stock, steps))
    const times = Math.min(...pieces.map((p) => Math.floor(all.left[p.wanted]! / p.count)))
    for (const p of pieces) all.left[p.wanted]! -= times * p.count
    patterns.push({ times, pieces })
  }
  return patterns
}

const stemsOf = (patterns: readonly Pattern[]): number => sum(patterns.map((p) => p.times))

/** Tries every way to lay the pieces on so many stems, longest first; null: there is none; undefined: not found out in the steps left. */
const layOn = (
  wanted: readonly Wanted[],
  { main_mm, along }: Stock,
  stems: number,
  steps: { left: number },
): Pattern[] | null | undefined => {
  const items = wanted
    .flatMap((w, i) => Array.from({ length: w.count }, () => i))
    .sort((a, b) => wanted[b]!.length_mm - wanted[a]!.length_mm || a - b)
  const laid = Array.from({ length: stems }, () => ({ room: main_mm, items: [] as number[] }))
  const lay = (k: number): boolean | undefined => {
    const item = items[k]
    if (item === undefined) return true
    steps.left -= 1
    if (steps.left < 0) return undefined
    const { length_mm } = wanted[item]!
    const tried = new Set<string>()
    for (const stem of laid) {
      const state = `${stem.room} ${stem.items.length}`
      const alone = stem.items.length === 0 && !fitsIn(length_mm, main_mm)
      if (tried.has(state) || stem.items.length >= along || !(fitsIn(length_mm, stem.room) || alone)) continue
      tried.add(state)
      const before = stem.room
      stem.room -= length_mm
      stem.items.push(item)
      const done = lay(k + 1)
      if (done !== false) return done
      stem.items.pop()
      stem.room = before
    }
    return false
  }
  const done = lay(0)
  if (!done) return done === false ? null : undefined
  return laid.map((stem) => ({ times: 1, pieces: counted(stem.items) }))
}

/**
 * The fewest stems that give all the pieces one after the other along their length, at most `along` to a stem. Two to a stem are exact.
 * More is cutting stock, for which no short way is known: what two rules of thumb give is proven by a bound, or else every way is
 * tried where there are few pieces; where neither tells, `least` is under `stems`.
 */
export const alongStems = (wanted: readonly Wanted[], stock: Stock): Along => {
  const first = stemByStem(wanted, stock, 0)
  if (mostOf(wanted, stock) <= 2) return { patterns: first, stems: stemsOf(first), least: stemsOf(first) }
  const filled = stemByStem(wanted, stock, MOST_STEPS / (wanted.length * stock.along))
  const patterns = stemsOf(filled) < stemsOf(first) ? filled : first
  const stems = stemsOf(patterns)
  let least = leastStems(wanted, stock)
  if (sum(wanted.map((w) => w.count)) > MOST_PIECES) return { patterns, stems, least }
  const steps = { left: MOST_STEPS }
  for (; least < stems; least += 1) {
    const found = layOn(wanted, stock, least, steps)
    if (found) return { patterns: found, stems: least, least }
    if (found === undefined) break
  }
  return { patterns, stems, least }
}
