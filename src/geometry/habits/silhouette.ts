import type { Point3 } from '../../arrangement/index.ts'
import { type Builder, TISSUE_NUMBER } from './builder.ts'
import { dot, sub } from './vector.ts'

/** A small raster to measure outlines: `size` × `size` points over a square of half width `half` mm round the middle. */
export interface Raster {
  size: number
  mask: Uint8Array
}
export const newRaster = (size: number): Raster => ({ size, mask: new Uint8Array(size * size) })

export interface Eye {
  right: Point3
  up: Point3
}

/** Looking at an upright head: `facing` degrees between its axis and the eye, `roll` radians round the axis. */
export const eyeAt = (facing: number, roll: number): Eye => {
  const a = (facing * Math.PI) / 180
  const [c, s] = [Math.cos(roll), Math.sin(roll)]
  return { right: [-s, c, 0], up: [-Math.cos(a) * c, -Math.cos(a) * s, Math.sin(a)] }
}

/** How many points a mesh covers (bare stem left out); `rows`, if given, gets each row's first, last and count. */
export const coverMesh = (
  { size: SIZE, mask }: Raster,
  b: Pick<Builder, 'positions' | 'triangles' | 'tissues' | 'vertices' | 'faces'>,
  { right, up }: Eye,
  middle: Point3,
  half: number,
  rows?: Int32Array,
): number => {
  mask.fill(0)
  const k = SIZE / (2 * half)
  const P = b.positions
  const x = new Float32Array(b.vertices)
  const y = new Float32Array(b.vertices)
  for (let i = 0; i < b.vertices; i++) {
    const dx = P[3 * i]! - middle[0]
    const dy = P[3 * i + 1]! - middle[1]
    const dz = P[3 * i + 2]! - middle[2]
    x[i] = (dx * right[0] + dy * right[1] + dz * right[2] + half) * k - 0.5
    y[i] = (dx * up[0] + dy * up[1] + dz * up[2] + half) * k - 0.5
  }
  for (let t = 0; t < b.faces; t++) {
    if (b.tissues[t] === TISSUE_NUMBER.stem || b.tissues[t] === TISSUE_NUMBER.bark) continue
    const [i, j, l] = [b.triangles[3 * t]!, b.triangles[3 * t + 1]!, b.triangles[3 * t + 2]!]
    fillTriangle(mask, SIZE, x[i]!, y[i]!, x[j]!, y[j]!, x[l]!, y[l]!)
  }
  let count = 0
  for (let r = 0; r < SIZE; r++) {
    let [first, last, n] = [-1, -1, 0]
    for (let c = 0; c < SIZE; c++) {
      if (mask[r * SIZE + c] === 0) continue
      if (first < 0) first = c
      last = c
      n++
    }
    count += n
    rows?.set([first, last, n], 3 * r)
  }
  return count
}

const fillTriangle = (
  mask: Uint8Array,
  SIZE: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
): void => {
  const y0 = Math.max(0, Math.ceil(Math.min(ay, by, cy)))
  const y1 = Math.min(SIZE - 1, Math.floor(Math.max(ay, by, cy)))
  for (let y = y0; y <= y1; y++) {
    let [from, to] = [SIZE, -1]
    const edge = (px: number, py: number, qx: number, qy: number): void => {
      if (py === qy || (y < py && y < qy) || (y > py && y > qy)) return
      const x = px + ((y - py) / (qy - py)) * (qx - px)
      if (x < from) from = x
      if (x > to) to = x
    }
    edge(ax, ay, bx, by)
    edge(bx, by, cx, cy)
    edge(cx, cy, ax, ay)
    for (let x = Math.max(0, Math.ceil(from)); x <= Math.min(SIZE - 1, Math.floor(to)); x++) mask[y * SIZE + x] = 1
  }
}

/** A ball drawn out along three directions: centre and three half-axis vectors. */
export interface Slab {
  o: Point3
  a: Point3
  b: Point3
  c: Point3
}

/** How many points ellipsoids cover together. */
export const coverSlabs = (
  { size, mask }: Raster,
  slabs: readonly Slab[],
  { right, up }: Eye,
  middle: Point3,
  half: number,
): number => {
  mask.fill(0)
  const k = size / (2 * half)
  for (const s of slabs) {
    const d = sub(s.o, middle)
    const cx = (dot(d, right) + half) * k - 0.5
    const cy = (dot(d, up) + half) * k - 0.5
    let [xx, xy, yy] = [0, 0, 0]
    for (const axis of [s.a, s.b, s.c]) {
      const x = dot(axis, right) * k
      const y = dot(axis, up) * k
      xx += x * x
      xy += x * y
      yy += y * y
    }
    if (yy < 1e-9) continue
    const reach = Math.sqrt(yy)
    for (let y = Math.max(0, Math.ceil(cy - reach)); y <= Math.min(size - 1, Math.floor(cy + reach)); y++) {
      const t = (y - cy) / reach
      const w = Math.sqrt(Math.max(0, (xx - (xy * xy) / yy) * (1 - t * t)))
      const m = cx + (xy / yy) * (y - cy)
      const from = Math.max(0, Math.ceil(m - w))
      const to = Math.min(size - 1, Math.floor(m + w))
      if (to >= from) mask.fill(1, y * size + from, y * size + to + 1)
    }
  }
  let count = 0
  for (let i = 0; i < mask.length; i++) count += mask[i]!
  return count
}
