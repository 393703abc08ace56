/**
 * Shares a whole amount out by weight so that the parts are whole and add up to it exactly: each gets its quota rounded
 * down, and what is left goes one by one to the largest remainders, the first among equals (Hamilton's method; Balinski &
 * Young, Fair Representation, 1982). No weight at all: the first gets everything.
 * @param amount whole number from 0 up
 * @param weights from 0 up
 */
export const shareOut = (amount: number, weights: ReadonlyMap<string, number>): Record<string, number> => {
  const all = [...weights.values()].reduce((sum, w) => sum + w, 0)
  const keys = [...weights.keys()]
  if (all === 0) return Object.fromEntries(keys.map((key, i) => [key, i === 0 ? amount : 0]))
  // Whole numbers beyond 2^53 would be rounded: amounts × weights may be as large as that.
  const quotas = keys.map((key) => BigInt(amount) * BigInt(weights.get(key) ?? 0))
  const whole = BigInt(all)
  const parts = quotas.map((q) => Number(q / whole))
  const rest = amount - parts.reduce((sum, p) => sum + p, 0)
  const order = keys
    .map((_, i) => i)
    .sort((a, b) => {
      const by = (quotas[b]! % whole) - (quotas[a]! % whole)
      return by > 0n ? 1 : by < 0n ? -1 : a - b
    })
  for (const i of order.slice(0, rest)) parts[i] = parts[i]! + 1
  return Object.fromEntries(keys.map((key, i) => [key, parts[i]!]))
}
