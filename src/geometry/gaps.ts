import { convexHull, latticePoints } from './hull.ts'

/** Buffers that are used again for every picture; `size` pixels at most. */
export interface GapSpace {
  /** 1 where air is joined with the outside. */
  open: Uint8Array
  stack: Int32Array
  /** Pixels up or down to the nearest mass in the same column. */
  column: Int32Array
}

export const createGapSpace = (size: number): GapSpace => ({
  open: new Uint8Array(size),
  stack: new Int32Array(size),
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

interface Box {
  left: number
  right: number
  bottom: number
  top: number
}

/** Enclosed air gets open = 0 within the box; air that reaches the box's edge is open (4 neighbours). */
const markOpen = (mass: Uint8Array, width: number, box: Box, { open, stack }: GapSpace): void => {
  for (let r = box.bottom; r <= box.top; r++) open.fill(0, r * width + box.left, r * width + box.right + 1)
  let depth = 0
  const push = (i: number): void => {
    if (mass[i] === 0 && open[i] === 0) {
      open[i] = 1
      stack[depth++] = i
    }
  }
  for (let c = box.left; c <= box.right; c++) {
    push(box.bottom * width + c)
    push(box.top * width + c)
  }
  for (let r = box.bottom; r <= box.top; r++) {
    push(r * width + box.left)
    push(r * width + box.right)
  }
  while (depth > 0) {
    const i = stack[--depth]!
    const c = i % width
    if (c > box.left) push(i - 1)
    if (c < box.right) push(i + 1)
    if (i - width >= box.bottom * width) push(i - width)
    if (i + width < (box.top + 1) * width) push(i + width)
  }
}

/**
 * Fills `column` with the distance to the nearest mass in the same column, for the pixels of the box. Pixels that see
 * none get a number larger than the picture.
 */
const columnDistances = (mass: Uint8Array, width: number, box: Box, column: Int32Array): void => {
  const far = 4 * width + 4 * (box.top + 1)
  for (let c = box.left; c <= box.right; c++) {
    let d = far
    for (let r = box.bottom; r <= box.top; r++) {
      const i = r * width + c
      d = mass[i] ? 0 : Math.min(far, d + 1)
      column[i] = d
    }
    d = far
    for (let r = box.top; r >= box.bottom; r--) {
      const i = r * width + c
      d = mass[i] ? 0 : Math.min(far, d + 1)
      if (d < column[i]!) column[i] = d
    }
  }
}

/** Squared distance to the nearest mass, searched outwards along the row until the sideways step alone is farther. */
const squaredDistance = (column: Int32Array, i: number, c: number, box: Box): number => {
  let best = column[i]! * column[i]!
  for (let k = 1; k * k < best; k++) {
    if (c - k >= box.left) {
      const d = column[i - k]! * column[i - k]! + k * k
      if (d < best) best = d
    }
    if (c + k <= box.right) {
      const d = column[i + k]! * column[i + k]! + k * k
      if (d < best) best = d
    }
  }
  return best
}

/**
 * The air of one picture: `mass` is 1 where there is mass, row by row from `firstRow` (what lies in lower rows is not
 * looked at). Distances are exact: two passes after Felzenszwalb and Huttenlocher (Distance transforms of sampled
 * functions, 2012), the second as a search. The radius runs from the middle of one pixel to the middle of the first one
 * of mass: a middle that lies off the true one and an edge that lies before that pixel's middle about make up for each
 * other (within half a pixel on rings whose hole is known).
 */
export const measureAir = (mass: Uint8Array, width: number, height: number, firstRow: number, space: GapSpace): Air => {
  const box: Box = { left: width, right: -1, bottom: height, top: -1 }
  const ends: number[] = []
  let massPixels = 0
  for (let r = Math.max(0, firstRow); r < height; r++) {
    const from = r * width
    let [first, last] = [-1, -1]
    for (let c = 0; c < width; c++)
      if (mass[from + c]) {
        massPixels += 1
        if (first < 0) first = c
        last = c
      }
    if (first < 0) continue
    ends.push(first, r, last, r)
    if (first < box.left) box.left = first
    if (last > box.right) box.right = last
    if (r < box.bottom) box.bottom = r
    box.top = r
  }
  const hull = convexHull(ends).flatMap((i) => [ends[2 * i]!, ends[2 * i + 1]!])
  const air: Air = { massPixels, hullPixels: latticePoints(hull), hull, enclosed: 0, radius: 0, column: 0, row: 0 }
  if (massPixels === 0) return air
  markOpen(mass, width, box, space)
  let searched = false
  let best = 0
  for (let r = box.bottom; r <= box.top; r++)
    for (let c = box.left; c <= box.right; c++) {
      const i = r * width + c
      if (mass[i] || space.open[i]) continue
      if (!searched) columnDistances(mass, width, box, space.column)
      searched = true
      air.enclosed += 1
      if (space.column[i]! * space.column[i]! <= best) continue
      const d = squaredDistance(space.column, i, c, box)
      if (d > best) {
        best = d
        air.column = c
        air.row = r
      }
    }
  if (best > 0) air.radius = Math.sqrt(best)
  return air
}
