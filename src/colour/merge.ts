import { deltaE2000, leastDifference } from './difference.ts'
import type { Lab } from './lab.ts'

export interface ColourArea {
  lab: Readonly<Lab>
  /** Visible area, any unit; nothing or less is left out. */
  area: number
  id?: string
}

/** Colours that the eye takes as one. */
export interface ColourGroup {
  /** Mean by area. */
  lab: Lab
  /** Share of the whole area, 0–1. */
  share: number
  ids: string[]
}

/** Colours nearer than this are one colour to the eye across a table; ours. */
export const SAME_COLOUR = 5
/** No two colours further apart than this in L are nearer than SAME_COLOUR: S_L is 1.747 at most. */
const FAR_IN_L = SAME_COLOUR * 1.75

interface Cluster {
  lab: Lab
  area: number
  ids: string[]
  near: number
  distance: number
}

const compare = (p: ColourArea, q: ColourArea): number =>
  p.lab[0] - q.lab[0] || p.lab[1] - q.lab[1] || p.lab[2] - q.lab[2] || p.area - q.area

const join = (p: Cluster, lab: Readonly<Lab>, area: number, ids: string[]): void => {
  const total = p.area + area
  const mean = (i: 0 | 1 | 2): number => (p.lab[i] * p.area + lab[i] * area) / total
  p.lab = [mean(0), mean(1), mean(2)]
  p.area = total
  p.ids.push(...ids)
}

/** The difference of two colours if it is less than `limit`, else `limit`; most pairs are told apart the quick way. */
const differenceUnder = (p: Readonly<Lab>, q: Readonly<Lab>, limit: number): number => {
  if (Math.abs(p[0] - q[0]) > FAR_IN_L || leastDifference(p, q) >= limit) return limit
  return Math.min(limit, deltaE2000(p, q))
}

const findNear = (all: (Cluster | null)[], i: number): void => {
  const me = all[i]
  if (!me) return
  me.near = -1
  me.distance = SAME_COLOUR
  for (let j = 0; j < all.length; j++) {
    const other = all[j]
    if (!other || j === i) continue
    const distance = differenceUnder(me.lab, other.lab, me.distance)
    if (distance >= me.distance) continue
    me.near = j
    me.distance = distance
  }
}

/** The same for all at once, each pair worked out one time; `all` is in the order of L. */
const findAllNear = (all: (Cluster | null)[]): void => {
  for (let i = 0; i < all.length; i++)
    for (let j = i + 1; j < all.length; j++) {
      const [p, q] = [all[i] as Cluster, all[j] as Cluster]
      if (q.lab[0] - p.lab[0] > FAR_IN_L) break
      const distance = differenceUnder(p.lab, q.lab, Math.max(p.distance, q.distance))
      if (distance < p.distance) {
        p.near = j
        p.distance = distance
      }
      if (distance < q.distance) {
        q.near = i
        q.distance = distance
      }
    }
}

/**
 * Joins the nearest two colours, as long as two are nearer than ΔE00 5, into their mean by area: so that ten stems of one
 * colour count as one colour. The order of the items makes no difference. Groups come largest first.
 */
export const mergeColours = (items: readonly ColourArea[]): ColourGroup[] => {
  const sorted = items
    .filter((i) => i.area > 0 && Number.isFinite(i.area) && i.lab.every(Number.isFinite))
    .sort(compare)
  const all: (Cluster | null)[] = []
  for (const { lab, area, id } of sorted) {
    const last = all.at(-1)
    const ids = id === undefined ? [] : [id]
    if (last?.lab.every((v, i) => v === lab[i])) {
      last.area += area
      last.ids.push(...ids)
    } else all.push({ lab: [...lab], area, ids, near: -1, distance: SAME_COLOUR })
  }
  findAllNear(all)
  for (;;) {
    let best = -1
    all.forEach((c, i) => {
      if (c && c.near >= 0 && (best < 0 || c.distance < (all[best] as Cluster).distance)) best = i
    })
    if (best < 0) break
    const kept = all[best] as Cluster
    const gone = kept.near
    const other = all[gone] as Cluster
    join(kept, other.lab, other.area, other.ids)
    all[gone] = null
    findNear(all, best)
    all.forEach((c, i) => {
      if (!c || i === best) return
      const touched = c.near === gone || c.near === best
      if (touched || differenceUnder(c.lab, kept.lab, c.distance) < c.distance) findNear(all, i)
    })
  }
  const left = all.filter((c) => c !== null)
  const total = left.reduce((sum, c) => sum + c.area, 0)
  return left
    .map(({ lab, area, ids }) => ({ lab, share: area / total, ids }))
    .sort((p, q) => q.share - p.share || p.lab[0] - q.lab[0] || p.lab[1] - q.lab[1] || p.lab[2] - q.lab[2])
}
