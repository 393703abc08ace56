import type { Point2, Point3 } from '../../arrangement/index.ts'
import { projectPoint, type ResolvedStem } from '../../geometry/index.ts'
import { angleOf, type Layout, toSheet, type ViewName } from './layout.ts'

export type HandleKind = 'tip' | 'bend' | 'mouth'
export interface Handle {
  kind: HandleKind
  id: string
  view: ViewName
  /** CSS px on the sheet. */
  at: Point2
}

export const tipPoint = ({ stem }: ResolvedStem): Point3 => stem.tip
export const mouthPoint = ({ stem }: ResolvedStem): Point3 => [stem.mouth[0], stem.mouth[1], 0]

/** A point of the arrangement on the sheet. */
export const placeOf = (layout: Layout, view: ViewName, turn: number, p: Point3): Point2 => {
  const [right, up] = projectPoint(p, angleOf(view, turn))
  return toSheet(layout, view, right, up)
}

/** The three handles of a stem in a view. */
export const handlesOf = (layout: Layout, view: ViewName, turn: number, stem: ResolvedStem): Handle[] => [
  { kind: 'tip', id: stem.id, view, at: placeOf(layout, view, turn, tipPoint(stem)) },
  { kind: 'bend', id: stem.id, view, at: placeOf(layout, view, turn, stem.curve.middle) },
  { kind: 'mouth', id: stem.id, view, at: placeOf(layout, view, turn, mouthPoint(stem)) },
]

/** Half of the least target: 24 px by pointer (WCAG 2.2, 2.5.8), 44 px by finger. */
export const REACH = { mouse: 12, pen: 14, touch: 22 } as const
export const reachOf = (pointerType: string): number => REACH[pointerType as keyof typeof REACH] ?? REACH.mouse

/** The handle nearest to a place, if within reach; of equally near ones the first (the head before the bow). */
export const nearestHandle = (handles: readonly Handle[], x: number, y: number, reach: number): Handle | null => {
  let best: Handle | null = null
  let nearest = reach
  for (const handle of handles) {
    const d = Math.hypot(handle.at[0] - x, handle.at[1] - y)
    if (d < nearest - 1e-9 || (best === null && d <= nearest)) {
      best = handle
      nearest = d
    }
  }
  return best
}
