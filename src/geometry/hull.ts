/**
 * Convex hull of points in a plane, as indices into `points` (x, y pairs), anticlockwise, without points on its edges.
 * Monotone chain (Andrew, Another efficient algorithm for convex hulls in two dimensions, 1979).
 */
export const convexHull = (points: ArrayLike<number>, count = points.length / 2): number[] => {
  const order = Array.from({ length: count }, (_, i) => i).sort(
    (a, b) => points[2 * a]! - points[2 * b]! || points[2 * a + 1]! - points[2 * b + 1]!,
  )
  const cross = (o: number, a: number, b: number): number =>
    (points[2 * a]! - points[2 * o]!) * (points[2 * b + 1]! - points[2 * o + 1]!) -
    (points[2 * a + 1]! - points[2 * o + 1]!) * (points[2 * b]! - points[2 * o]!)
  const chain = (run: number[]): number[] => {
    const out: number[] = []
    for (const i of run) {
      while (out.length > 1 && cross(out[out.length - 2]!, out[out.length - 1]!, i) <= 0) out.pop()
      out.push(i)
    }
    out.pop()
    return out
  }
  if (count < 2) return order
  return [...chain(order), ...chain(order.reverse())]
}

/** Signed area of a polygon, x, y pairs, anticlockwise positive (shoelace). */
export const polygonArea = (polygon: ArrayLike<number>): number => {
  const n = polygon.length
  let sum = 0
  for (let i = 0; i < n; i += 2) {
    const j = (i + 2) % n
    sum += polygon[i]! * polygon[j + 1]! - polygon[j]! * polygon[i + 1]!
  }
  return sum / 2
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b))

/**
 * How many whole-number points lie in or on a polygon with whole-number corners: area + edge points / 2 + 1
 * (Pick's theorem, 1899). For pixels: how many a hull covers, counted in the same way as the mask itself.
 */
export const latticePoints = (polygon: ArrayLike<number>): number => {
  const n = polygon.length
  if (n === 0) return 0
  if (n === 2) return 1
  let edge = 0
  for (let i = 0; i < n; i += 2) {
    const j = (i + 2) % n
    edge += gcd(Math.abs(polygon[j]! - polygon[i]!), Math.abs(polygon[j + 1]! - polygon[i + 1]!))
  }
  // Two corners make a line there and back: both ways are counted, half of each is the line.
  return Math.abs(polygonArea(polygon)) + edge / 2 + 1
}
