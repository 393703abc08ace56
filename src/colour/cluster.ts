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
const STARTS = 4

/** Numbers 0–1 that look like chance and are the same every time. Mulberry32, T. Ettinger, public domain. */
const chance = (seed: number) => (): number => {
  seed = (seed + 0x6d2b79f5) | 0
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed)
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296
}

const apart2 = (p: Readonly<Oklab>, q: Readonly<Oklab>): number =>
  (p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2 + (p[2] - q[2]) ** 2

/** First centres: each next cell is drawn by its pixels times its squared distance to the centres that are there. */
const firstCentres = (cells: readonly ColourCell[], k: number, random: () => number): Oklab[] => {
  const pull = cells.map((c) => c.pixels)
  const near = new Float64Array(cells.length).fill(Number.POSITIVE_INFINITY)
  const centres: Oklab[] = []
  while (centres.length < k) {
    const total = pull.reduce((sum, p) => sum + p, 0)
    if (!(total > 0)) break
    let left = random() * total
    let at = 0
    while (at < cells.length - 1 && left >= pull[at]!) left -= pull[at++]!
    const centre = cells[at]!.oklab
    centres.push([...centre])
    cells.forEach((c, i) => {
      near[i] = Math.min(near[i]!, apart2(c.oklab, centre))
      pull[i] = c.pixels * near[i]!
    })
  }
  return centres
}

/** Lloyd's steps, in place, until no cell changes its centre. @returns the squared distances in all, by pixels */
const settle = (cells: readonly ColourCell[], centres: Oklab[], of: Uint8Array): number => {
  let sum = 0
  for (let step = 0; step < MOST_STEPS; step++) {
    const totals = centres.map(() => [0, 0, 0, 0])
    let changed = false
    sum = 0
    for (let i = 0; i < cells.length; i++) {
      const { oklab, pixels } = cells[i]!
      let best = 0
      let least = Number.POSITIVE_INFINITY
      for (let k = 0; k < centres.length; k++) {
        const d = apart2(oklab, centres[k]!)
        if (d < least) {
          least = d
          best = k
        }
      }
      if (of[i] !== best) changed = true
      of[i] = best
      sum += pixels * least
      const total = totals[best]!
      for (let j = 0; j < 3; j++) total[j]! += oklab[j]! * pixels
      total[3]! += pixels
    }
    totals.forEach(([l, a, b, n], k) => {
      if (n! > 0) centres[k] = [l! / n!, a! / n!, b! / n!]
    })
    if (!changed && step > 0) break
  }
  return sum
}

/**
 * k-means in Oklab, weighted by pixels, begun by k-means++ (Arthur and Vassilvitskii, SODA 2007) with a fixed seed: the
 * same cells give the same clusters. At most `k` of them (1–255), largest first; fewer where there are not so many colours.
 */
export const clusterColours = (cells: readonly ColourCell[], k: number): ColourCluster[] => {
  let best: { sum: number; centres: Oklab[]; of: Uint8Array } | null = null
  for (let start = 0; start < STARTS; start++) {
    const centres = firstCentres(cells, k, chance(start + 1))
    const of = new Uint8Array(cells.length)
    const sum = settle(cells, centres, of)
    if (!best || sum < best.sum) best = { sum, centres, of }
  }
  if (!best || cells.length === 0) return []
  const found = best.centres.map((oklab): ColourCluster => ({ oklab, share: 0, edgeShare: 0 }))
  let [pixels, edge] = [0, 0]
  cells.forEach((cell, i) => {
    const cluster = found[best.of[i]!]!
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
