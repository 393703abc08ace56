import { fewest } from './along-fewest.ts'
import {
  byLength,
  joined,
  type Kinds,
  kindsOf,
  type Pattern,
  patternsOf,
  type Stock,
  stemsOf,
  sum,
} from './along-kinds.ts'
import { leastStems } from './along-least.ts'
import { atLeast, bestStems } from './along-price.ts'
import { firstFit } from './along-round.ts'
import { mostOf, stemByStem } from './along-rules.ts'
import { fitsIn, type Wanted } from './pieces.ts'

export interface Along {
  patterns: Pattern[]
  stems: number
  /** Fewer than these can't do; as many as `stems` where those are proven to be the fewest. */
  least: number
}

/** In filling stems well so many pieces are tried in all, and the programme tells so many lengths apart. Ours: some milliseconds. */
const MOST_STEPS = 50_000
const MOST_KINDS = 48

/**
 * A bound for lengths that were joined: a length is worth what its place between the joined ones says, or what the next shorter of
 * them is worth, and no stem more than the best of it.
 */
const leastApart = (exact: Kinds, kinds: Kinds, pieces: readonly number[], stock: Stock): number => {
  const next = exact.lengths.map((mm) => kinds.lengths.findIndex((l) => l <= mm))
  const shorter = next.map((g) => (g < 0 ? 0 : pieces[g]!))
  const between = exact.lengths.map((mm, i) => {
    const g = next[i]! < 0 ? kinds.lengths.length : next[i]!
    const [low, high] = [kinds.lengths[g] ?? 0, kinds.lengths[g - 1] ?? 0]
    if (g === 0 || low === mm) return shorter[i]!
    const more = Math.max(0, pieces[g - 1]! - shorter[i]!)
    return Math.floor(shorter[i]! + (more * (mm - low)) / (high - low))
  })
  const bounds = [shorter, between].map((worths) => {
    const { most } = bestStems(exact, exact.counts, worths, stock, 1, { left: 0 })
    return atLeast(exact.counts, { pieces: worths, stem: Math.max(1, most) })
  })
  return Math.max(...bounds)
}

/** By the linear programme; `known` stems are needed at least, and `rules` are patterns for all. */
const byProgramme = (wanted: readonly Wanted[], stock: Stock, known: number, rules: readonly Pattern[]): Along => {
  const alone = wanted.map(({ count, length_mm }) => (fitsIn(length_mm, stock.main_mm) ? 0 : count))
  const long = sum(alone)
  const exact = byLength(wanted, stock)
  const groups = joined(exact, wanted, MOST_KINDS)
  const kinds = kindsOf(groups, wanted)
  const kindOf = new Map(groups.flatMap((group, kind) => group.map((i) => [i, kind])))
  // The rules cut true lengths: where some were joined, their ways may be too long for a stem.
  const start =
    groups.length < exact.length
      ? firstFit(kinds, kinds.counts, stock)
      : rules
          .filter(({ pieces }) => pieces.every((p) => kindOf.has(p.wanted)))
          .map(({ times, pieces }) => ({
            times,
            way: pieces.flatMap((p) => new Array<number>(p.count).fill(kindOf.get(p.wanted)!)),
          }))
  const { batches, least, worths } = fewest(kinds, stock, start, known - long)
  const bound =
    groups.length === exact.length
      ? least
      : worths
        ? leastApart(kindsOf(exact, wanted), kinds, worths.pieces, stock)
        : 0
  const patterns = [
    ...alone.flatMap((times, i) => (times > 0 ? [{ times, pieces: [{ wanted: i, count: 1 }] }] : [])),
    ...patternsOf(batches, groups, wanted),
  ]
  return { patterns, stems: stemsOf(patterns), least: Math.max(known, bound + long) }
}

const find = (wanted: readonly Wanted[], stock: Stock): Along => {
  const first = stemByStem(wanted, stock, 0)
  if (mostOf(wanted, stock) <= 2) return { patterns: first, stems: stemsOf(first), least: stemsOf(first) }
  const filled = stemByStem(wanted, stock, MOST_STEPS / (wanted.length * stock.along))
  const patterns = stemsOf(filled) < stemsOf(first) ? filled : first
  const rules = { patterns, stems: stemsOf(patterns), least: leastStems(wanted, stock) }
  if (rules.least >= rules.stems) return rules
  const programme = byProgramme(wanted, stock, rules.least, patterns)
  return programme.stems < rules.stems ? programme : { ...rules, least: programme.least }
}

/** So many answers are remembered: an edit changes one line of many, and a line is asked for by the order and by the cut sheet. Ours. */
const REMEMBERED = 256
const remembered = new Map<string, Along>()

/** Together, whatever the designs. */
const together = (wanted: readonly Wanted[], stock: Stock): Along => {
  const key = [stock.main_mm, stock.along, ...wanted.map((w) => `${w.count}x${w.length_mm}`)].join(' ')
  const answer = remembered.get(key) ?? find(wanted, stock)
  remembered.set(key, answer)
  for (const oldest of remembered.keys()) {
    if (remembered.size <= REMEMBERED) break
    remembered.delete(oldest)
  }
  return answer
}

/** What each design needs by itself, one after the other; null where that is surely no fewer than `stems`. */
const apart = (wanted: readonly Wanted[], stock: Stock, stems: number): Pattern[] | null => {
  const designs = [...new Set(wanted.map((w) => w.design))].map((design) =>
    wanted.flatMap((w, i) => (w.design === design ? [i] : [])),
  )
  const of = (some: readonly number[]): Wanted[] => some.map((i) => wanted[i]!)
  if (designs.length < 2 || sum(designs.map((some) => leastStems(of(some), stock))) >= stems) return null
  return designs.flatMap((some) =>
    together(of(some), stock).patterns.map(({ times, pieces }) => ({
      times,
      pieces: pieces.map((p) => ({ ...p, wanted: some[p.wanted]! })),
    })),
  )
}

/**
 * The fewest stems that give all the pieces one after the other along their length, at most `along` to a stem. Two to a stem are exact.
 * More is cutting stock, for which no short way is known: two rules of thumb, then the linear programme, whose bound rounded up is
 * nearly always reached by rounding it (Scheithauer & Terno, European Journal of Operational Research 84:562–571, 1995: modified
 * integer round-up property, a conjecture); where few pieces are wanted, every way is tried. Where none of it tells, `least` is
 * under `stems`. Never more than the designs need apart.
 */
export const alongStems = (wanted: readonly Wanted[], stock: Stock): Along => {
  const all = together(wanted, stock)
  const patterns = all.least < all.stems ? apart(wanted, stock, all.stems) : null
  return patterns && stemsOf(patterns) < all.stems ? { ...all, patterns, stems: stemsOf(patterns) } : all
}
