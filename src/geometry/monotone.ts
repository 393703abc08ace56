/** A smooth curve through given points that never overshoots them. */
export interface MonotoneCurve {
  x: number[]
  y: number[]
  slope: number[]
}

/**
 * Monotone cubic interpolation through (x, y), x rising.
 * Source: Fritsch and Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980); the slopes by
 * the weighted harmonic mean of Fritsch and Butland (1984).
 */
export const monotoneCurve = (points: readonly (readonly [number, number])[]): MonotoneCurve => {
  const x = points.map((p) => p[0])
  const y = points.map((p) => p[1])
  const n = x.length
  if (n < 2) return { x, y, slope: y.map(() => 0) }
  const step = x.slice(1).map((v, i) => v - x[i]!)
  const rise = step.map((h, i) => (h > 0 ? (y[i + 1]! - y[i]!) / h : 0))
  const slope = y.map((_, i) => {
    if (i === 0) return rise[0]!
    if (i === n - 1) return rise[n - 2]!
    const [a, b] = [rise[i - 1]!, rise[i]!]
    if (a * b <= 0) return 0
    const [w1, w2] = [2 * step[i]! + step[i - 1]!, step[i]! + 2 * step[i - 1]!]
    return (w1 + w2) / (w1 / a + w2 / b)
  })
  return { x, y, slope }
}

/** The curve at `at`; beyond its ends it stays at the end's value. */
export const alongCurve = (curve: MonotoneCurve, at: number): number => {
  const { x, y, slope } = curve
  const last = x.length - 1
  if (last < 0) return 0
  if (at <= x[0]!) return y[0]!
  if (at >= x[last]!) return y[last]!
  let i = 0
  while (i < last - 1 && at > x[i + 1]!) i += 1
  const h = x[i + 1]! - x[i]!
  if (h <= 0) return y[i + 1]!
  const t = (at - x[i]!) / h
  const [t2, t3] = [t * t, t * t * t]
  return (
    (2 * t3 - 3 * t2 + 1) * y[i]! +
    (t3 - 2 * t2 + t) * h * slope[i]! +
    (3 * t2 - 2 * t3) * y[i + 1]! +
    (t3 - t2) * h * slope[i + 1]!
  )
}
