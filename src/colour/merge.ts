import { deltaE2000 } from './difference.ts'
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
  p.lab = [0, 1, 2].map((i) => ((p.lab[i] as number) * p.area + (lab[i] as number) * area) / total) as Lab
  p.area = total
  p.ids.push(...ids)
}

const findNear = (all: (Cluster | null)[], i: number): void => {
  const me = all[i]
  if (!me) return
  me.near = -1
  me.distance = SAME_COLOUR
  all.forEach((other, j) => {
    if (!other || j === i || Math.abs(other.lab[0] - me.lab[0]) > FAR_IN_L) return
    const distance = deltaE2000(me.lab, other.lab)
    if (distance < me.distance) {
      me.near = j
      me.distance = distance
    }
  })
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
  all.forEach((_, i) => {
    findNear(all, i)
  })
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
      const mayBeNear = Math.abs(c.lab[0] - kept.lab[0]) <= FAR_IN_L
      if (touched || (mayBeNear && deltaE2000(c.lab, kept.lab) < c.distance)) findNear(all, i)
    })
  }
  const left = all.filter((c) => c !== null)
  const total = left.reduce((sum, c) => sum + c.area, 0)
  return left
    .map(({ lab, area, ids }) => ({ lab, share: area / total, ids }))
    .sort((p, q) => q.share - p.share || p.lab[0] - q.lab[0] || p.lab[1] - q.lab[1] || p.lab[2] - q.lab[2])
}
