import { fitsIn, type Wanted } from './pieces.ts'

/** How long a stem is, and most pieces of it. */
export interface Stock {
  main_mm: number
  along: number
}

/** Stems that are cut alike along their length: `pieces` of each, by index into what was wanted. */
export interface Pattern {
  times: number
  pieces: { wanted: number; count: number }[]
}

/** Pieces that count as equally long, longest kind first; none is longer than a stem. */
export interface Kinds {
  /** The longest of each kind, mm. */
  lengths: readonly number[]
  counts: readonly number[]
}

/** The pieces of one stem: a kind stands as often as it comes. */
export type Way = readonly number[]

export interface Batch {
  way: Way
  times: number
}

export const sum = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0)
export const stemsOf = (batches: readonly { times: number }[]): number => sum(batches.map((b) => b.times))

/** What is wanted of each length that a stem gives: indices into what was wanted, longest first. */
export const byLength = (wanted: readonly Wanted[], { main_mm }: Stock): number[][] => {
  const groups = new Map<number, number[]>()
  wanted.forEach(({ count, length_mm }, i) => {
    if (count > 0 && fitsIn(length_mm, main_mm)) groups.set(length_mm, [...(groups.get(length_mm) ?? []), i])
  })
  return [...groups].sort(([a], [b]) => b - a).map(([, some]) => some)
}

/** No more than `most` groups: lengths that are near each other go together, within as few tenths of a mm as will do (ours). */
export const joined = (groups: readonly number[][], wanted: readonly Wanted[], most: number): number[][] => {
  const lengthOf = (group: readonly number[]): number => wanted[group[0]!]!.length_mm
  let few = [...groups]
  for (let within_mm = 0.1; few.length > most; within_mm *= 1.25) {
    few = []
    for (const group of groups) {
      const last = few.at(-1)
      if (last && lengthOf(last) - lengthOf(group) <= within_mm) few[few.length - 1] = [...last, ...group]
      else few.push(group)
    }
  }
  return few
}

export const kindsOf = (groups: readonly number[][], wanted: readonly Wanted[]): Kinds => ({
  lengths: groups.map((group) => wanted[group[0]!]!.length_mm),
  counts: groups.map((group) => sum(group.map((i) => wanted[i]!.count))),
})

/** Batches of kinds as patterns of what was wanted, one after the other in each group. */
export const patternsOf = (
  batches: readonly Batch[],
  groups: readonly number[][],
  wanted: readonly Wanted[],
): Pattern[] => {
  const left = wanted.map((w) => w.count)
  const patterns: Pattern[] = []
  for (const { way, times } of batches)
    for (let more = times; more > 0; ) {
      const now = new Map<number, number>()
      for (const kind of way) {
        const i = groups[kind]!.find((j) => left[j]! > (now.get(j) ?? 0))!
        now.set(i, (now.get(i) ?? 0) + 1)
      }
      const pieces = [...now].map(([i, count]) => ({ wanted: i, count }))
      const often = Math.min(more, ...pieces.map((p) => Math.floor(left[p.wanted]! / p.count)))
      for (const p of pieces) left[p.wanted]! -= often * p.count
      patterns.push({ times: often, pieces })
      more -= often
    }
  return patterns
}
