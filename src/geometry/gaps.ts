import { hullOfRows, latticePoints } from './hull.ts'

/** Buffers that are used again for every picture; `size` pixels at most. */
export interface GapSpace {
  /** First and last pixel of mass of each row; `width` and −1 where there is none. */
  first: Int32Array
  last: Int32Array
  /** Stretches of air between mass on both sides in one row: row, columns from–to, and which stretch they belong with. */
  row: Int32Array
  from: Int32Array
  to: Int32Array
  root: Int32Array
  /** 1 where a stretch, or one that belongs with it, is joined with the outside. */
  open: Uint8Array
  /** Pixels up or down to the nearest mass in the same column, for enclosed pixels. */
  column: Int32Array
}

export const createGapSpace = (size: number): GapSpace => ({
  first: new Int32Array(size),
  last: new Int32Array(size),
  row: new Int32Array(size),
  from: new Int32Array(size),
  to: new Int32Array(size),
  root: new Int32Array(size),
  open: new Uint8Array(size),
  column: new Int32Array(size),
})

export interface Air {
  /** Pixels of mass, and pixels that their convex hull covers. */
  massPixels: number
  hullPixels: number
  /** Corners of the hull, pixel columns and rows. */
  hull: number[]
  /** Enclosed pixels. */
  enclosed: number
  /** Radius of the largest circle within an enclosed gap, in pixels, and the pixel at its centre; 0 where there is none. */
  radius: number
  column: number
  row: number
}

const rootOf = (root: Int32Array, k: number): number => {
  let at = k
  while (root[at] !== at) {
    root[at] = root[root[at]!]!
    at = root[at]!
  }
  return at
}

/** Finds the rows' ends and the stretches of air between; gives how many stretches, and the pixels of mass. */
const findGaps = (mass: Uint8Array, width: number, from: number, height: number, s: GapSpace): [number, number] => {
  let gaps = 0
  let pixels = 0
  for (let r = from; r < height; r++) {
    const row = r * width
    let first = width
    let last = -1
    for (let c = 0; c < width; c++) {
      if (mass[row + c] === 0) continue
      pixels += 1
      if (last < 0) first = c
      else if (c > last + 1) {
        s.row[gaps] = r
        s.from[gaps] = last + 1
        s.to[gaps] = c - 1
        s.root[gaps] = gaps
        s.open[gaps] = 0
        gaps += 1
      }
      last = c
    }
    s.first[r] = first
    s.last[r] = last
  }
  return [gaps, pixels]
}

/**
 * Joins stretches that touch up or down (4 neighbours), and marks those that reach the outside: what lies left of a
 * row's first pixel of mass, right of its last, or beyond the rows that are looked at.
 */
const joinGaps = (gaps: number, bottom: number, top: number, s: GapSpace): void => {
  let below = 0
  for (let k = 0; k < gaps; k++) {
    const r = s.row[k]!
    const [a, b] = [s.from[k]!, s.to[k]!]
    const out =
      r === bottom ||
      r === top ||
      a < s.first[r - 1]! ||
      b > s.last[r - 1]! ||
      a < s.first[r + 1]! ||
      b > s.last[r + 1]!
    if (out) s.open[rootOf(s.root, k)] = 1
    while (s.row[below]! < r - 1) below += 1
    while (s.row[below] === r - 1 && s.to[below]! < a) below += 1
    for (let j = below; s.row[j] === r - 1 && s.from[j]! <= b; j++) {
      const p = rootOf(s.root, j)
      const q = rootOf(s.root, k)
      if (p === q) continue
      s.root[q] = p
      if (s.open[q] === 1) s.open[p] = 1
    }
  }
}

/** Squared distance to the nearest mass, searched outwards along the row until the sideways step alone is farther. */
const squaredDistance = (column: Int32Array, i: number, left: number, right: number): number => {
  let best = column[i]! * column[i]!
  // Beyond the ends of the stretch lies mass, at these steps.
  const near = Math.min(left, right)
  if (near * near < best) best = near * near
  for (let k = 1; k * k < best; k++) {
    if (k < left) best = Math.min(best, column[i - k]! * column[i - k]! + k * k)
    if (k < right) best = Math.min(best, column[i + k]! * column[i + k]! + k * k)
  }
  return best
}

/**
 * The air of one picture: `mass` is 1 where there is mass, row by row from `firstRow` (what lies in lower rows is not
 * looked at). Distances are exact: two passes after Felzenszwalb and Huttenlocher (Distance transforms of sampled
 * functions, 2012), the second as a search, and only where air is enclosed: there mass lies both up and down, and to
 * either side. The radius runs from the middle of one pixel to the middle of the first one
 * of mass: a middle that lies off the true one and an edge that lies before that pixel's middle about make up for each
 * other (within half a pixel on rings whose hole is known).
 */
export const measureAir = (mass: Uint8Array, width: number, height: number, firstRow: number, space: GapSpace): Air => {
  const from = Math.max(0, firstRow)
  const [gaps, massPixels] = findGaps(mass, width, from, height, space)
  let bottom = from
  let top = height - 1
  while (bottom < height && space.last[bottom]! < 0) bottom += 1
  while (top > bottom && space.last[top]! < 0) top -= 1
  const hull = hullOfRows(space.first, space.last, bottom, top)
  const air: Air = { massPixels, hullPixels: latticePoints(hull), hull, enclosed: 0, radius: 0, column: 0, row: 0 }
  joinGaps(gaps, bottom, top, space)
  const { column, root, open } = space
  const enclosed = (k: number): boolean => open[rootOf(root, k)] === 0
  for (let k = 0; k < gaps; k++) {
    if (!enclosed(k)) continue
    const at = space.row[k]! * width
    air.enclosed += space.to[k]! - space.from[k]! + 1
    for (let i = at + space.from[k]!; i <= at + space.to[k]!; i++)
      column[i] = mass[i - width] ? 1 : column[i - width]! + 1
  }
  for (let k = gaps - 1; k >= 0; k--) {
    if (!enclosed(k)) continue
    const at = space.row[k]! * width
    for (let i = at + space.from[k]!; i <= at + space.to[k]!; i++) {
      const up = mass[i + width] ? 1 : column[i + width]! + 1
      if (up < column[i]!) column[i] = up
    }
  }
  let best = 0
  for (let k = 0; k < gaps; k++) {
    if (!enclosed(k)) continue
    const r = space.row[k]!
    const [a, b] = [space.from[k]!, space.to[k]!]
    for (let c = a; c <= b; c++) {
      const i = r * width + c
      if (column[i]! * column[i]! <= best) continue
      const d = squaredDistance(column, i, c - a + 1, b - c + 1)
      if (d <= best) continue
      best = d
      air.column = c
      air.row = r
    }
  }
  if (best > 0) air.radius = Math.sqrt(best)
  return air
}
