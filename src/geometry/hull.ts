/** Adds one side of a hull, row by row from `from` to `to`; rows without a pixel (`last` under 0) are passed over. */
const addSide = (hull: number[], x: Int32Array, last: Int32Array, from: number, to: number): void => {
  const start = hull.length
  const step = from <= to ? 1 : -1
  for (let r = from; r !== to + step; r += step) {
    if (last[r]! < 0) continue
    const c = x[r]!
    for (let n = hull.length; n >= start + 4; n = hull.length) {
      const [ax, ay, bx, by] = [hull[n - 4]!, hull[n - 3]!, hull[n - 2]!, hull[n - 1]!]
      if ((bx - ax) * (r - ay) - (by - ay) * (c - ax) > 0) break
      hull.length = n - 2
    }
    hull.push(c, r)
  }
}

/**
 * Convex hull of a picture, from the first and last pixel of each row from `bottom` to `top` (−1 as last where there is
 * none): corners as column, row pairs, anticlockwise from the lower right, without points on its edges. Monotone chain
 * (Andrew, Another efficient algorithm for convex hulls in two dimensions, 1979); the rows are in order already.
 */
export const hullOfRows = (first: Int32Array, last: Int32Array, bottom: number, top: number): number[] => {
  const hull: number[] = []
  if (bottom > top || last[bottom]! < 0) return hull
  addSide(hull, last, last, bottom, top)
  if (first[top] === last[top]) hull.length -= 2
  addSide(hull, first, last, top, bottom)
  if (first[bottom] === last[bottom] && hull.length > 2) hull.length -= 2
  return hull
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
