/** Solve a symmetric positive system in place (Cholesky); null when it is not positive. */
const solve = (A: Float64Array, b: Float64Array): Float64Array | null => {
  const n = b.length
  for (let j = 0; j < n; j++) {
    for (let k = 0; k < j; k++) for (let i = j; i < n; i++) A[i * n + j]! -= A[i * n + k]! * A[j * n + k]!
    const d = A[j * n + j]!
    if (!(d > 0)) return null
    const root = Math.sqrt(d)
    for (let i = j; i < n; i++) A[i * n + j]! /= root
  }
  const x = b.slice()
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i]! -= A[i * n + k]! * x[k]!
    x[i]! /= A[i * n + i]!
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i]! -= A[k * n + i]! * x[k]!
    x[i]! /= A[i * n + i]!
  }
  return x
}

/**
 * Levenberg and Marquardt's method (Marquardt, SIAM Journal 11, 1963) with numerical derivatives.
 * @param residuals each in units of what is tolerated
 */
export const leastSquares = (start: number[], residuals: (p: number[]) => number[], rounds = 7): number[] => {
  let best = start
  let r = residuals(best)
  const square = (v: number[]): number => v.reduce((s, x) => s + x * x, 0)
  let cost = square(r)
  let damp = 0.01
  const n = start.length
  for (let round = 0; round < rounds; round++) {
    const J = best.map((x, j) => {
      const h = 0.01
      const moved = residuals(best.map((y, k) => (k === j ? x + h : y)))
      return moved.map((m, i) => (m - r[i]!) / h)
    })
    const before = cost
    for (let attempt = 0; attempt < 6; attempt++) {
      const A = new Float64Array(n * n)
      const b = new Float64Array(n)
      for (let i = 0; i < n; i++) {
        for (let j = 0; j <= i; j++) {
          let sum = 0
          for (let k = 0; k < r.length; k++) sum += J[i]![k]! * J[j]![k]!
          A[i * n + j] = sum
        }
        A[i * n + i]! *= 1 + damp
        let sum = 0
        for (let k = 0; k < r.length; k++) sum -= J[i]![k]! * r[k]!
        b[i] = sum
      }
      const step = solve(A, b)
      const tried = step ? best.map((x, i) => x + step[i]!) : best
      const found = residuals(tried)
      if (step && square(found) < cost) {
        best = tried
        r = found
        cost = square(found)
        damp /= 4
        break
      }
      damp *= 5
    }
    if (before - cost < 4e-3 * before) break
  }
  return best
}
