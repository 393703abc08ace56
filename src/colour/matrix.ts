/** A 3 × 3 matrix, row by row. */
export type Matrix3 = readonly [number, number, number, number, number, number, number, number, number]
export type Triple = [number, number, number]

export const apply = (m: Matrix3, [x, y, z]: readonly [number, number, number]): Triple => [
  m[0] * x + m[1] * y + m[2] * z,
  m[3] * x + m[4] * y + m[5] * z,
  m[6] * x + m[7] * y + m[8] * z,
]

/** The product a · b: b is applied first. */
export const multiply = (a: Matrix3, b: Matrix3): Matrix3 => {
  const column = (i: 0 | 1 | 2): Triple =>
    apply(a, [b[i], b[i === 0 ? 3 : i === 1 ? 4 : 5], b[i === 0 ? 6 : i === 1 ? 7 : 8]])
  const [p, q, r] = [column(0), column(1), column(2)]
  return [p[0], q[0], r[0], p[1], q[1], r[1], p[2], q[2], r[2]]
}

export const diagonal = (a: number, b: number, c: number): Matrix3 => [a, 0, 0, 0, b, 0, 0, 0, c]

/** By cofactors; the matrices of this room are all far from singular. */
export const invert = (m: Matrix3): Matrix3 => {
  const [a, b, c, d, e, f, g, h, i] = m
  const [A, B, C] = [e * i - f * h, f * g - d * i, d * h - e * g]
  const s = 1 / (a * A + b * B + c * C)
  return [
    A * s,
    (c * h - b * i) * s,
    (b * f - c * e) * s,
    B * s,
    (a * i - c * g) * s,
    (c * d - a * f) * s,
    C * s,
    (b * g - a * h) * s,
    (a * e - b * d) * s,
  ]
}
