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
  /** The nearest other one, −1 where none is near enough to join, and how near. */
  near: number
  distance: number
}

const NONE = -1

/** Are two colours in one order: by L, a, b, then area? */
const inOrder = (p: ColourArea, q: ColourArea): boolean => {
  for (let i = 0; i < 3; i++) if (p.lab[i] !== q.lab[i]) return p.lab[i]! < q.lab[i]!
  return p.area <= q.area
}

const counts = ({ lab, area }: ColourArea): boolean =>
  area > 0 && Number.isFinite(area) && Number.isFinite(lab[0]) && Number.isFinite(lab[1]) && Number.isFinite(lab[2])

/** What counts, in order. Put in one by one: lists are short, and mostly come nearly in order. */
const sortedOf = (items: readonly ColourArea[]): ColourArea[] => {
  const sorted: ColourArea[] = []
  for (const item of items) {
    if (!counts(item)) continue
    let at = sorted.push(item) - 1
    for (; at > 0 && !inOrder(sorted[at - 1]!, item); at--) sorted[at] = sorted[at - 1]!
    sorted[at] = item
  }
  return sorted
}

/** One cluster for each colour; the same colour again adds to it. */
const clustersOf = (sorted: readonly ColourArea[]): (Cluster | null)[] => {
  const all: (Cluster | null)[] = []
  let last: Cluster | null = null
  for (const { lab, area, id } of sorted) {
    if (last && last.lab[0] === lab[0] && last.lab[1] === lab[1] && last.lab[2] === lab[2]) {
      last.area += area
      if (id !== undefined) last.ids.push(id)
    } else {
      last = {
        lab: [lab[0], lab[1], lab[2]],
        area,
        ids: id === undefined ? [] : [id],
        near: NONE,
        distance: SAME_COLOUR,
      }
      all.push(last)
    }
  }
  return all
}

const join = (p: Cluster, q: Cluster): void => {
  const total = p.area + q.area
  for (let i = 0; i < 3; i++) p.lab[i] = (p.lab[i]! * p.area + q.lab[i]! * q.area) / total
  p.area = total
  for (let i = 0; i < q.ids.length; i++) p.ids.push(q.ids[i]!)
}

/** The difference of two colours if it is less than `limit`, else `limit`; most pairs are told apart the quick way. */
const differenceUnder = (p: Readonly<Lab>, q: Readonly<Lab>, limit: number): number => {
  if (Math.abs(p[0] - q[0]) > FAR_IN_L || leastDifference(p, q) >= limit) return limit
  return Math.min(limit, deltaE2000(p, q))
}

const findNear = (all: (Cluster | null)[], i: number): void => {
  const me = all[i]
  if (!me) return
  me.near = NONE
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
      const p = all[i]!
      const q = all[j]!
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

/** The one of the nearest pair that comes first; −1 where no two are near enough. */
const nearestOf = (all: (Cluster | null)[]): number => {
  let best = NONE
  for (let i = 0; i < all.length; i++) {
    const c = all[i]
    if (c && c.near >= 0 && (best < 0 || c.distance < all[best]!.distance)) best = i
  }
  return best
}

/**
 * Joins the nearest two colours, as long as two are nearer than ΔE00 5, into their mean by area: so that ten stems of one
 * colour count as one colour. The order of the items makes no difference. Groups come largest first.
 */
export const mergeColours = (items: readonly ColourArea[]): ColourGroup[] => {
  const all = clustersOf(sortedOf(items))
  findAllNear(all)
  for (let best = nearestOf(all); best >= 0; best = nearestOf(all)) {
    const kept = all[best]!
    const gone = kept.near
    join(kept, all[gone]!)
    all[gone] = null
    findNear(all, best)
    for (let i = 0; i < all.length; i++) {
      const c = all[i]
      if (!c || i === best) continue
      const touched = c.near === gone || c.near === best
      if (touched || differenceUnder(c.lab, kept.lab, c.distance) < c.distance) findNear(all, i)
    }
  }
  let total = 0
  const groups: ColourGroup[] = []
  for (const c of all) {
    if (!c) continue
    total += c.area
    groups.push({ lab: c.lab, share: c.area, ids: c.ids })
  }
  for (const group of groups) group.share /= total
  return groups.sort((p, q) => q.share - p.share || p.lab[0] - q.lab[0] || p.lab[1] - q.lab[1] || p.lab[2] - q.lab[2])
}
