import type { Point3 } from '../../src/arrangement/index.ts'
import { type Builder, TISSUE_NUMBER } from '../../src/geometry/habits/builder.ts'
import { cross, scale, unit } from '../../src/geometry/habits/vector.ts'
import type { Bounds } from './bounds.ts'
import { coverMesh, type Raster, type Slab } from './silhouette.ts'

/** Cut an upright mesh into slabs by height: each as wide as the mesh is there, seen from two sides. */
export const cutSlabs = (raster: Raster, b: Builder, count: number, { least, most, middle, half }: Bounds): Slab[] => {
  const { size } = raster
  const front = new Int32Array(3 * size)
  const side = new Int32Array(3 * size)
  coverMesh(raster, b, { right: [1, 0, 0], up: [0, 0, 1] }, middle, half, front)
  coverMesh(raster, b, { right: [0, 1, 0], up: [0, 0, 1] }, middle, half, side)
  const mm = (2 * half) / size
  const tall = (most[2] - least[2]) / count
  const slabs: Slab[] = []
  for (let s = 0; s < count; s++) {
    const z0 = least[2] + s * tall
    const from = Math.max(0, Math.floor((z0 - middle[2] + half) / mm))
    const to = Math.min(size - 1, Math.max(from, Math.ceil((z0 + tall - middle[2] + half) / mm) - 1))
    const wide = (rows: Int32Array): [centre: number, half: number] => {
      let [sum, widest, best] = [0, 0, from]
      for (let r = from; r <= to; r++) {
        const n = rows[3 * r + 2]!
        sum += n
        if (n > widest) [widest, best] = [n, r]
      }
      const mean = sum / (to - from + 1)
      const centre = widest > 0 ? ((rows[3 * best]! + rows[3 * best + 1]! + 1) / 2) * mm - half : 0
      return [centre, Math.max(0.5 * mm, ((widest + mean) / 4) * mm)]
    }
    const [x, rx] = wide(front)
    const [y, ry] = wide(side)
    const o: Point3 = [x + middle[0], y + middle[1], z0 + tall / 2]
    slabs.push({ o, a: [rx, 0, 0], b: [0, ry, 0], c: [0, 0, tall * 0.58] })
  }
  return slabs
}

/** Directions of a symmetric 3 × 3 (xx, yy, zz, xy, xz, yz) by power iteration: largest first, with its value. */
const principal = (m: readonly number[], start: Point3, clear?: Point3): [Point3, number] => {
  let v = start
  let l = 0
  for (let i = 0; i < 24; i++) {
    let w: Point3 = [
      m[0]! * v[0] + m[3]! * v[1] + m[4]! * v[2],
      m[3]! * v[0] + m[1]! * v[1] + m[5]! * v[2],
      m[4]! * v[0] + m[5]! * v[1] + m[2]! * v[2],
    ]
    if (clear) {
      const k = w[0] * clear[0] + w[1] * clear[1] + w[2] * clear[2]
      w = [w[0] - k * clear[0], w[1] - k * clear[1], w[2] - k * clear[2]]
    }
    l = Math.hypot(...w)
    if (l < 1e-12) return [v, 0]
    v = [w[0] / l, w[1] / l, w[2] / l]
  }
  return [v, l]
}

/** Middle and area of each triangle that is not bare stem: x, y, z, area; area 0 for bare ones. */
const middlesOf = (b: Builder): Float64Array => {
  const P = b.positions
  const out = new Float64Array(4 * b.faces)
  for (let t = 0; t < b.faces; t++) {
    const [i, j, k] = [3 * b.triangles[3 * t]!, 3 * b.triangles[3 * t + 1]!, 3 * b.triangles[3 * t + 2]!]
    const e: Point3 = [P[j]! - P[i]!, P[j + 1]! - P[i + 1]!, P[j + 2]! - P[i + 2]!]
    const g: Point3 = [P[k]! - P[i]!, P[k + 1]! - P[i + 1]!, P[k + 2]! - P[i + 2]!]
    for (let c = 0; c < 3; c++) out[4 * t + c] = (P[i + c]! + P[j + c]! + P[k + c]!) / 3
    const bare = b.tissues[t] === TISSUE_NUMBER.stem || b.tissues[t] === TISSUE_NUMBER.bark
    out[4 * t + 3] = bare ? 0 : Math.hypot(...cross(e, g)) / 2
  }
  return out
}

/**
 * Share the triangles of a mesh out among `count` neighbourhoods (Lloyd's method, IEEE Trans. Inf. Theory 28, 1982, from
 * the points farthest apart): the number of its own for each.
 */
export const shareOut = (b: Builder, count: number): Uint8Array => {
  const M = middlesOf(b)
  const own = new Uint8Array(b.faces)
  const far = (t: number, [x, y, z]: number[]): number =>
    Math.hypot(M[4 * t]! - x!, M[4 * t + 1]! - y!, M[4 * t + 2]! - z!)
  const places: number[][] = [[0, 0, -1e3]]
  const real = Array.from({ length: b.faces }, (_, t) => t).filter((t) => M[4 * t + 3]! > 0)
  while (places.length <= count) {
    const reach = (t: number): number => Math.min(...places.map((p) => far(t, p)))
    const next = real.reduce((best, t) => (reach(t) > reach(best) ? t : best), real[0]!)
    places.push([M[4 * next]!, M[4 * next + 1]!, M[4 * next + 2]!])
  }
  places.shift()
  for (let round = 0; round < 30; round++) {
    const sums = places.map(() => [0, 0, 0, 0])
    for (const t of real) {
      let best = 0
      for (let k = 1; k < count; k++) if (far(t, places[k]!) < far(t, places[best]!)) best = k
      own[t] = best
      const area = M[4 * t + 3]!
      for (let c = 0; c < 3; c++) sums[best]![c]! += area * M[4 * t + c]!
      sums[best]![3]! += area
    }
    sums.forEach(([x, y, z, n], k) => {
      if (n! > 0) places[k] = [x! / n!, y! / n!, z! / n!]
    })
  }
  return own
}

/** An ellipsoid for each neighbourhood: centre and spread of its surface (a flat disc reaches twice its spread). */
export const cutShares = (b: Builder, own: Uint8Array, count: number): Slab[] => {
  const M = middlesOf(b)
  return Array.from({ length: count }, (_, k): Slab => {
    const s = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0]
    for (let t = 0; t < b.faces; t++) {
      if (own[t] !== k) continue
      const [x, y, z, area] = [M[4 * t]!, M[4 * t + 1]!, M[4 * t + 2]!, M[4 * t + 3]!]
      const terms = [1, x, y, z, x * x, y * y, z * z, x * y, x * z, y * z]
      for (let c = 0; c < 10; c++) s[c]! += area * terms[c]!
    }
    const n = Math.max(1e-9, s[0]!)
    const [x, y, z] = [s[1]! / n, s[2]! / n, s[3]! / n]
    const moments = [
      s[4]! / n - x * x,
      s[5]! / n - y * y,
      s[6]! / n - z * z,
      s[7]! / n - x * y,
      s[8]! / n - x * z,
      s[9]! / n - y * z,
    ]
    const [a, va] = principal(moments, unit([0.61, 0.53, 0.59]))
    const [c0, vb] = principal(moments, unit(cross(a, Math.abs(a[2]) < 0.8 ? [0, 0, 1] : [1, 0, 0])), a)
    const rest = Math.max(0, moments[0]! + moments[1]! + moments[2]! - va - vb)
    return {
      o: [x, y, z],
      a: scale(a, 2 * Math.sqrt(Math.max(0, va))),
      b: scale(c0, 2 * Math.sqrt(Math.max(0, vb))),
      c: scale(unit(cross(a, c0)), Math.max(2 * Math.sqrt(rest), 0.01 * Math.sqrt(n))),
    }
  })
}
