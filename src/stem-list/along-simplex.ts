import type { Way } from './along-kinds.ts'

/** A way to cut a stem, or pieces of one kind that are cut on to serve as the next shorter one, at no cost. */
export type Column = { way: Way } | { spare: number }

/** A solution of the programme: `columns` that are taken so many `times`, the others not at all. */
export interface Basis {
  columns: Column[]
  times: Float64Array
  /** Inverse of the matrix of the columns, row by row. */
  inverse: Float64Array
  /** What one more piece of a kind costs, in stems. */
  prices: Float64Array
}

/** Under this a rate or a ratio is noise. */
const NONE = 1e-9
const SHORT = 1e-7

const costOf = (column: Column): number => ('way' in column ? 1 : 0)

/** What a column gives of each kind, times the value that stands for the kind. */
const valued = (column: Column, values: Float64Array, from: number, kinds: number): number => {
  let all = 0
  if ('way' in column) for (const i of column.way) all += values[from + i]!
  else all = (column.spare + 1 < kinds ? values[from + column.spare + 1]! : 0) - values[from + column.spare]!
  return all
}

/** One way for each kind, which holds nothing else. */
export const firstBasis = (ways: readonly Way[], counts: readonly number[]): Basis => {
  const inverse = new Float64Array(ways.length ** 2)
  ways.forEach((way, i) => {
    inverse[i * ways.length + i] = 1 / way.length
  })
  return {
    columns: ways.map((way) => ({ way })),
    times: Float64Array.from(ways, (way, i) => counts[i]! / way.length),
    inverse,
    prices: Float64Array.from(ways, (way) => 1 / way.length),
  }
}

export const copyOf = ({ columns, times, inverse, prices }: Basis): Basis => ({
  columns: [...columns],
  times: times.slice(),
  inverse: inverse.slice(),
  prices: prices.slice(),
})

const ratesOf = (column: Column, { inverse, times }: Basis): Float64Array =>
  times.map((_, r) => valued(column, inverse, r * times.length, times.length))

const swap = ({ columns, times, inverse, prices }: Basis, column: Column, rates: Float64Array, out: number): void => {
  const kinds = times.length
  const pivot = rates[out]!
  const gain = costOf(column) - valued(column, prices, 0, kinds)
  const by = times[out]! / pivot
  const row = inverse.subarray(out * kinds, (out + 1) * kinds)
  for (let c = 0; c < kinds; c += 1) row[c]! /= pivot
  for (let r = 0; r < kinds; r += 1) {
    const rate = rates[r]!
    if (r === out || rate === 0) continue
    times[r]! -= rate * by
    for (let c = 0, at = r * kinds; c < kinds; c += 1, at += 1) inverse[at]! -= rate * row[c]!
  }
  times[out] = by
  for (let c = 0; c < kinds; c += 1) prices[c]! += gain * row[c]!
  columns[out] = column
}

/** Takes a column in, as often as it goes, and another out (the simplex method: Dantzig, 1951); false where none goes. */
export const enter = (basis: Basis, column: Column): boolean => {
  const rates = ratesOf(column, basis)
  let out = -1
  let least = Number.POSITIVE_INFINITY
  rates.forEach((rate, r) => {
    if (rate <= NONE) return
    const ratio = Math.max(0, basis.times[r]!) / rate
    // Of equals the largest rate: it is divided by.
    if (ratio > least + NONE || (ratio > least - NONE && rate <= rates[out]!)) return
    least = Math.min(least, ratio)
    out = r
  })
  if (out < 0) return false
  swap(basis, column, rates, out)
  return true
}

/**
 * Makes the basis fit other counts, with the ways that are known (the dual simplex method: Lemke, Naval Research Logistics
 * Quarterly 1:36–47, 1954); false where it takes more than `most` columns.
 */
export const mend = (basis: Basis, counts: readonly number[], known: readonly Way[], most: number): boolean => {
  const { times, inverse, prices } = basis
  const kinds = counts.length
  const columns: Column[] = [...counts.map((_, i) => ({ spare: i })), ...known.map((way) => ({ way }))]
  times.forEach((_, r) => {
    let all = 0
    for (let c = 0; c < kinds; c += 1) all += inverse[r * kinds + c]! * counts[c]!
    times[r] = all
  })
  for (let n = 0; n < most; n += 1) {
    const out = times.indexOf(Math.min(...times))
    if (!(times[out]! < -SHORT)) return true
    let best: Column | null = null
    let [least, pivot] = [Number.POSITIVE_INFINITY, 0]
    for (const column of columns) {
      const rate = valued(column, inverse, out * kinds, kinds)
      if (rate >= -SHORT) continue
      const ratio = Math.max(0, costOf(column) - valued(column, prices, 0, kinds)) / -rate
      if (ratio < least - NONE || (ratio <= least + NONE && rate < pivot))
        [best, least, pivot] = [column, Math.min(ratio, least), rate]
    }
    if (!best) return false
    swap(basis, best, ratesOf(best, basis), out)
  }
  return false
}
