import type { Point2 } from '../../arrangement/index.ts'
import { cosSin } from '../../geometry/index.ts'
import type { Mark } from '../../readings/index.ts'
import { TOKENS } from '../theme/tokens.ts'
import { type Asked, type Box, leaderOf, placeLabel } from './labels.ts'
import { type Layout, toSheet, type ViewName } from './layout.ts'
import { arrow, lettering, type Pen, pathOf, strokeTwo, TONES, text } from './pen.ts'

/** Marks of the elevation hold at one turn; within this many degrees they are taken to hold. Ours. */
const SAME_TURN = 0.5

export const turnsApart = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180)

/** Whether a mark can be drawn at this turn. */
export const holdsAt = (mark: Mark, turn: number): boolean =>
  !('view' in mark) || mark.view === 'plan' || turnsApart(mark.turn, turn) <= SAME_TURN

/** The nearest turn from which the marks that do not hold now are seen; null when all hold. */
export const otherTurn = (marks: readonly Mark[], turn: number): number | null => {
  const turns = marks.flatMap((m) => ('view' in m && m.view === 'elevation' && !holdsAt(m, turn) ? [m.turn] : []))
  if (turns.length === 0 || marks.some((m) => 'view' in m && m.view === 'elevation' && holdsAt(m, turn))) return null
  return turns.reduce((best, t) => (turnsApart(t, turn) < turnsApart(best, turn) ? t : best))
}

const onSheet = (layout: Layout, view: ViewName, turn: number, p: Point2): Point2 => {
  if (view === 'elevation') return toSheet(layout, view, p[0], p[1])
  const [c, s] = cosSin(turn)
  return toSheet(layout, view, p[0] * c - p[1] * s, p[0] * s + p[1] * c)
}

/** Words that still want a place. */
export interface Wish extends Omit<Asked, 'width' | 'height'> {
  words: string
  view: ViewName
}

/** Draws one mark; gives what its label points at. Stems are outlined by the caller. */
export const drawMark = (pen: Pen, layout: Layout, turn: number, mark: Mark): Wish | null => {
  if (mark.kind === 'stems' || !holdsAt(mark, turn)) return null
  const words = mark.label
  if (mark.kind === 'level') {
    const y = toSheet(layout, 'elevation', 0, mark.z)[1]
    const half = layout.reach_mm * layout.scale
    pathOf(pen, [
      // Clear of the view's name.
      [Math.max(layout.axisX - half, layout.compact ? 8 : 158), y],
      [layout.axisX + half, y],
    ])
    strokeTwo(pen, TONES.mark)
    return { words, anchor: [layout.axisX + half * 0.75, y], clear: 2, view: 'elevation' }
  }
  const { view } = mark
  if (mark.kind === 'circle') {
    const [x, y] = onSheet(layout, view, turn, mark.centre)
    const r = mark.radius * layout.scale
    pen.beginPath()
    pen.arc(x, y, r, 0, 2 * Math.PI)
    strokeTwo(pen, TONES.mark)
    pen.beginPath()
    pen.moveTo(x - 4, y)
    pen.lineTo(x + 4, y)
    pen.moveTo(x, y - 4)
    pen.lineTo(x, y + 4)
    strokeTwo(pen, { core: 1, halo: 3 })
    return { words, anchor: [x, y], clear: r, view }
  }
  if (mark.kind === 'outline') {
    const points = mark.points.map((p) => onSheet(layout, view, turn, p))
    pathOf(pen, points, true)
    strokeTwo(pen, TONES.mark)
    const corner = points.reduce((best, p) => (p[0] - p[1] > best[0] - best[1] ? p : best), points[0] ?? [0, 0])
    return points.length ? { words, anchor: corner, clear: 0, view } : null
  }
  const [from, to] = [onSheet(layout, view, turn, mark.from), onSheet(layout, view, turn, mark.to)]
  pathOf(pen, [from, to])
  strokeTwo(pen, { core: 1, halo: 3 })
  const way = Math.atan2(to[1] - from[1], to[0] - from[0])
  arrow(pen, to[0], to[1], way, TOKENS.core)
  arrow(pen, from[0], from[1], way + Math.PI, TOKENS.core)
  return { words, anchor: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2], clear: 0, view }
}

/** At most so many words a view. Ours. */
const MOST_LABELS = 3

/** Places words in free paper and draws them with their leaders; those without a place, and beyond the third, are left out. */
export const drawLabels = (
  pen: Pen,
  wishes: readonly Wish[],
  bounds: Record<ViewName, Box>,
  isFree: (box: Box) => boolean,
): void => {
  const taken: Box[] = []
  const count = { elevation: 0, plan: 0 }
  const font = lettering(600)
  for (const wish of wishes) {
    if (wish.words === '' || count[wish.view] >= MOST_LABELS) continue
    pen.font = font
    const asked = { ...wish, width: pen.measureText(wish.words).width + 4, height: 16 }
    const free = (box: Box): boolean =>
      isFree(box) &&
      taken.every(
        (t) =>
          box.x >= t.x + t.width || t.x >= box.x + box.width || box.y >= t.y + t.height || t.y >= box.y + box.height,
      )
    const box = placeLabel(asked, bounds[wish.view], free)
    if (!box) continue
    count[wish.view] += 1
    taken.push(box)
    pathOf(pen, leaderOf(asked, box))
    strokeTwo(pen, TONES.leader)
    text(pen, box.x + 2, box.y + 12, wish.words, { font, plate: true })
  }
}
