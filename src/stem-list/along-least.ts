import { type Stock, sum } from './along-kinds.ts'
import { fitsIn, type Wanted } from './pieces.ts'

/** So many lengths are tried as t. Ours. */
const MOST_HALVES = 40

const counted = (all: readonly Wanted[]): number => sum(all.map((w) => w.count))
/** Rounded up, but for what reckoning in fractions adds. */
const up = (x: number): number => Math.ceil(x - 1e-6)

/** Pieces longer than `t` short of a stem bear none as long as t beside them; the rest of those over half a stem may be filled up. */
const byHalves = (some: readonly Wanted[], main_mm: number, t: number): number => {
  const large = some.filter((w) => w.length_mm > main_mm - t)
  const half = some.filter((w) => w.length_mm > main_mm / 2 && w.length_mm <= main_mm - t)
  const small = some.filter((w) => w.length_mm >= t && w.length_mm <= main_mm / 2)
  const length = (all: readonly Wanted[]): number => sum(all.map((w) => w.count * w.length_mm))
  const over = up((length(small) - (counted(half) * main_mm - length(half))) / main_mm)
  return counted(large) + counted(half) + Math.max(0, over)
}

/** Each piece counted as so many k-ths of a stem, so that no stem holds more than k of them. */
const byParts = (some: readonly Wanted[], main_mm: number, k: number): number =>
  up(
    sum(
      some.map(({ count, length_mm }) => {
        const parts = ((k + 1) * length_mm) / main_mm
        const even = Math.abs(parts - Math.round(parts)) < 1e-6
        return count * (even ? length_mm / main_mm : Math.floor(parts) / k)
      }),
    ),
  )

/**
 * So many stems no cutting can do without: by the number of pieces, by their length, and by two finer bounds (Martello & Toth,
 * Discrete Applied Mathematics 28:59–70, 1990, L2; Fekete & Schepers, Mathematical Programming 91:11–31, 2001, u^(k)). Pieces
 * longer than any stem take one each.
 */
export const leastStems = (wanted: readonly Wanted[], { main_mm, along }: Stock): number => {
  const some = wanted.filter((w) => w.count > 0 && fitsIn(w.length_mm, main_mm))
  const short = [...new Set(some.map((w) => w.length_mm).filter((mm) => mm <= main_mm / 2))].sort((a, b) => a - b)
  // Any of them is a bound: some, evenly, say nearly as much as all.
  const halves = [0, ...short.filter((_, i) => i % Math.ceil(short.length / MOST_HALVES) === 0)]
  const parts = Array.from({ length: along }, (_, i) => i + 1)
  return (
    counted(wanted) -
    counted(some) +
    Math.max(
      up(counted(some) / along),
      ...halves.map((t) => byHalves(some, main_mm, t)),
      ...parts.map((k) => byParts(some, main_mm, k)),
    )
  )
}
