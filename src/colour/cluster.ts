import type { ColourCell } from './count-colours.ts'
import type { Oklab } from './oklab.ts'

/** Pixels that belong together by colour. */
export interface ColourCluster {
  oklab: Oklab
  /** Of all pixels that were counted, 0–1. */
  share: number
  /** Of all that lie along the edge of the picture, 0–1. */
  edgeShare: number
}

/** Lloyd's steps come to rest long before; for pictures that would go on and on. */
const MOST_STEPS = 60
/** How often k-means begins anew; the closest fit is kept. Ours. */
const STARTS = 2

/** Numbers 0–1 that look like chance and are the same every time. Mulberry32, T. Ettinger, public domain. */
const chance = (seed: number) => (): number => {
  seed = (seed + 0x6d2b79f5) | 0
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed)
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296
}

/** The cells as numbers in a row: l, a, b of each, and its pixels. */
interface Points {
  n: number
  lab: Float64Array
  pixels: Float64Array
}

const pointsOf = (cells: readonly ColourCell[]): Points => ({
  n: cells.length,
  lab: Float64Array.from(cells.flatMap((c) => c.oklab)),
  pixels: Float64Array.from(cells, (c) => c.pixels),
})

/** First centres: each next cell is drawn by its pixels times its squared distance to the centres that are there. */
const firstCentres = ({ n, lab, pixels }: Points, k: number, random: () => number): number[] => {
  const pull = pixels.slice()
  const near = new Float64Array(n).fill(Number.POSITIVE_INFINITY)
  const centres: number[] = []
  while (centres.length < k * 3) {
    let total = 0
    for (let i = 0; i < n; i++) total += pull[i]!
    if (!(total > 0)) break
    let left = random() * total
    let at = 0
    while (at < n - 1 && left >= pull[at]!) left -= pull[at++]!
    const [l, a, b] = [lab[at * 3]!, lab[at * 3 + 1]!, lab[at * 3 + 2]!]
    centres.push(l, a, b)
    for (let i = 0; i < n; i++) {
      const d = (lab[i * 3]! - l) ** 2 + (lab[i * 3 + 1]! - a) ** 2 + (lab[i * 3 + 2]! - b) ** 2
      if (d < near[i]!) near[i] = d
      pull[i] = pixels[i]! * near[i]!
    }
  }
  return centres
}

/** Lloyd's steps, in place, until no cell changes its centre. @returns the squared distances in all, by pixels */
const settle = ({ n, lab, pixels }: Points, centres: Float64Array, of: Uint8Array): number => {
  const k = centres.length / 3
  const totals = new Float64Array(k * 4)
  let sum = 0
  for (let step = 0; step < MOST_STEPS; step++) {
    totals.fill(0)
    let changed = false
    sum = 0
    for (let i = 0; i < n; i++) {
      const l = lab[i * 3]!
      const a = lab[i * 3 + 1]!
      const b = lab[i * 3 + 2]!
      let best = 0
      let least = Number.POSITIVE_INFINITY
      for (let c = 0; c < k; c++) {
        const dl = l - centres[c * 3]!
        const da = a - centres[c * 3 + 1]!
        const db = b - centres[c * 3 + 2]!
        const d = dl * dl + da * da + db * db
        if (d < least) {
          least = d
          best = c
        }
      }
      if (of[i] !== best) changed = true
      of[i] = best
      const p = pixels[i]!
      sum += p * least
      totals[best * 4]! += l * p
      totals[best * 4 + 1]! += a * p
      totals[best * 4 + 2]! += b * p
      totals[best * 4 + 3]! += p
    }
    for (let c = 0; c < k; c++) {
      const p = totals[c * 4 + 3]!
      if (p > 0) for (let j = 0; j < 3; j++) centres[c * 3 + j] = totals[c * 4 + j]! / p
    }
    if (!changed && step > 0) break
  }
  return sum
}

/**
 * k-means in Oklab, weighted by pixels, begun by k-means++ (Arthur and Vassilvitskii, SODA 2007) with a fixed seed: the
 * same cells give the same clusters. At most `k` of them (1–255), largest first; fewer where there are not so many colours.
 */
export const clusterColours = (cells: readonly ColourCell[], k: number): ColourCluster[] => {
  const points = pointsOf(cells)
  let best: { sum: number; centres: Float64Array; of: Uint8Array } | null = null
  for (let start = 0; start < STARTS; start++) {
    const centres = Float64Array.from(firstCentres(points, k, chance(start + 1)))
    const of = new Uint8Array(cells.length)
    const sum = settle(points, centres, of)
    if (!best || sum < best.sum) best = { sum, centres, of }
  }
  if (!best || cells.length === 0) return []
  const { centres, of } = best
  const found = Array.from({ length: centres.length / 3 }, (_, c): ColourCluster => {
    const [l, a, b] = centres.subarray(c * 3, c * 3 + 3)
    return { oklab: [l!, a!, b!], share: 0, edgeShare: 0 }
  })
  let [pixels, edge] = [0, 0]
  cells.forEach((cell, i) => {
    const cluster = found[of[i]!]!
    cluster.share += cell.pixels
    cluster.edgeShare += cell.onEdge
    pixels += cell.pixels
    edge += cell.onEdge
  })
  return found
    .filter((c) => c.share > 0)
    .map(({ oklab, share, edgeShare }) => ({
      oklab,
      share: share / pixels,
      edgeShare: edge > 0 ? edgeShare / edge : 0,
    }))
    .sort((p, q) => q.share - p.share || p.oklab[0] - q.oklab[0] || p.oklab[1] - q.oklab[1] || p.oklab[2] - q.oklab[2])
}
