import type { Pattern, Stock } from './along-kinds.ts'
import { fitsIn, type Wanted } from './pieces.ts'

/** The pieces of one stem, alike ones together. */
const counted = (items: readonly number[]): Pattern['pieces'] =>
  [...new Set(items)].map((i) => ({ wanted: i, count: items.filter((j) => j === i).length }))

/** So many pieces does no stem give more than: the shortest of them, one after the other. */
export const mostOf = (wanted: readonly Wanted[], { main_mm, along }: Stock): number => {
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
export const stemByStem = (wanted: readonly Wanted[], stock: Stock, steps: number): Pattern[] => {
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
