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
const MOST_STEPS = 20_000

const sum = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0)

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

/**
 * The longest piece that is left, then the longest beside it that fits, until nothing does (first fit decreasing). With two pieces a
 * stem no way is better: whatever fits beside the longest piece fits beside any other, and the largest of it is the hardest to
 * place (ours; an exchange argument, and tried against every way).
 */
const greedy = (wanted: readonly Wanted[], { main_mm, along }: Stock): Pattern[] => {
  const left = wanted.map((w) => w.count)
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[b]!.length_mm - wanted[a]!.length_mm || a - b)
  const patterns: Pattern[] = []
  for (let at = 0; at < order.length; ) {
    if (left[order[at]!] === 0) {
      at += 1
      continue
    }
    const pieces: Pattern['pieces'] = []
    let [room, places] = [main_mm, along]
    for (const i of order.slice(at)) {
      const { length_mm } = wanted[i]!
      let count = 0
      // One that is longer than any stem has one to itself.
      const alone = pieces.length === 0 && !fitsIn(length_mm, main_mm)
      while (count < left[i]! && places > 0 && (fitsIn(length_mm, room) || (alone && count === 0))) {
        count += 1
        places -= 1
        room -= length_mm
      }
      if (count > 0) pieces.push({ wanted: i, count })
      if (places === 0) break
    }
    const times = Math.min(...pieces.map((p) => Math.floor(left[p.wanted]! / p.count)))
    for (const p of pieces) left[p.wanted]! -= times * p.count
    patterns.push({ times, pieces })
  }
  return patterns
}

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
  return laid.map((stem) => ({
    times: 1,
    pieces: [...new Set(stem.items)].map((i) => ({ wanted: i, count: stem.items.filter((j) => j === i).length })),
  }))
}

/**
 * The fewest stems that give all the pieces one after the other along their length, at most `along` to a stem. Two to a stem are exact.
 * More is cutting stock, for which no short way is known: what the rule of thumb gives is proven by a bound, or else every way is
 * tried where there are few pieces; where neither tells, `least` is under `stems`.
 */
export const alongStems = (wanted: readonly Wanted[], stock: Stock): Along => {
  const patterns = greedy(wanted, stock)
  const stems = sum(patterns.map((p) => p.times))
  if (mostOf(wanted, stock) <= 2) return { patterns, stems, least: stems }
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
