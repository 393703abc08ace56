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

/** What is being merged; used again for every list, since lists are merged many times a second. */
interface Cluster {
  lab: Lab
  area: number
  ids: string[]
  /** The nearest other one, −1 where none is near enough to join, and how near. */
  near: number
  distance: number
  /** Joined to another one. */
  gone: boolean
}

const NONE = -1
const clusters: Cluster[] = []
const newCluster = (): Cluster => ({ lab: [0.5, 0.5, 0.5], area: 0.5, ids: [], near: NONE, distance: 0.5, gone: false })

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

/** Makes one cluster for each colour, the same colour again adds to it; gives how many there are. */
const fillClusters = (sorted: readonly ColourArea[]): number => {
  let count = 0
  for (let i = 0; i < sorted.length; i++) {
    const { lab, area, id } = sorted[i]!
    const last = count > 0 ? clusters[count - 1]! : null
    if (last && last.lab[0] === lab[0] && last.lab[1] === lab[1] && last.lab[2] === lab[2]) {
      last.area += area
      if (id !== undefined) last.ids.push(id)
      continue
    }
    if (count === clusters.length) clusters.push(newCluster())
    const c = clusters[count++]!
    for (let k = 0; k < 3; k++) c.lab[k] = lab[k]!
    c.area = area
    c.ids = id === undefined ? [] : [id]
    c.near = NONE
    c.distance = SAME_COLOUR
    c.gone = false
  }
  return count
}

const join = (p: Cluster, q: Cluster): void => {
  const total = p.area + q.area
  for (let i = 0; i < 3; i++) p.lab[i] = (p.lab[i]! * p.area + q.lab[i]! * q.area) / total
  p.area = total
  for (let i = 0; i < q.ids.length; i++) p.ids.push(q.ids[i]!)
  q.gone = true
}

/** The difference of two colours if it is less than `limit`, else `limit`; most pairs are told apart the quick way. */
const differenceUnder = (p: Readonly<Lab>, q: Readonly<Lab>, limit: number): number => {
  if (Math.abs(p[0] - q[0]) > FAR_IN_L || leastDifference(p, q) >= limit) return limit
  return Math.min(limit, deltaE2000(p, q))
}

const findNear = (count: number, i: number): void => {
  const me = clusters[i]!
  me.near = NONE
  me.distance = SAME_COLOUR
  for (let j = 0; j < count; j++) {
    const other = clusters[j]!
    if (other.gone || j === i) continue
    const distance = differenceUnder(me.lab, other.lab, me.distance)
    if (distance >= me.distance) continue
    me.near = j
    me.distance = distance
  }
}

/** The same for all at once, each pair worked out one time; they are in the order of L. */
const findAllNear = (count: number): void => {
  for (let i = 0; i < count; i++)
    for (let j = i + 1; j < count; j++) {
      const p = clusters[i]!
      const q = clusters[j]!
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
const nearestOf = (count: number): number => {
  let best = NONE
  for (let i = 0; i < count; i++) {
    const c = clusters[i]!
    if (!c.gone && c.near >= 0 && (best < 0 || c.distance < clusters[best]!.distance)) best = i
  }
  return best
}

/** Largest first, then by L, a, b. Whole numbers are handed back: differences would be boxed. */
const largestFirst = (p: ColourGroup, q: ColourGroup): number => {
  if (p.share !== q.share) return p.share > q.share ? -1 : 1
  for (let i = 0; i < 3; i++) if (p.lab[i] !== q.lab[i]) return p.lab[i]! < q.lab[i]! ? -1 : 1
  return 0
}

/**
 * Joins the nearest two colours, as long as two are nearer than ΔE00 5, into their mean by area: so that ten stems of one
 * colour count as one colour. The order of the items makes no difference. Groups come largest first.
 */
export const mergeColours = (items: readonly ColourArea[]): ColourGroup[] => {
  const count = fillClusters(sortedOf(items))
  findAllNear(count)
  for (let best = nearestOf(count); best >= 0; best = nearestOf(count)) {
    const kept = clusters[best]!
    const gone = kept.near
    join(kept, clusters[gone]!)
    findNear(count, best)
    for (let i = 0; i < count; i++) {
      const c = clusters[i]!
      if (c.gone || i === best) continue
      const touched = c.near === gone || c.near === best
      if (touched || differenceUnder(c.lab, kept.lab, c.distance) < c.distance) findNear(count, i)
    }
  }
  let total = 0
  for (let i = 0; i < count; i++) if (!clusters[i]!.gone) total += clusters[i]!.area
  const groups: ColourGroup[] = []
  for (let i = 0; i < count; i++) {
    const { lab, area, ids, gone } = clusters[i]!
    if (!gone) groups.push({ lab: [lab[0], lab[1], lab[2]], share: area / total, ids })
  }
  return groups.sort(largestFirst)
}
