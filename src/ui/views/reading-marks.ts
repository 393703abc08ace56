import type { Point2 } from '../../arrangement/index.ts'
import { cosSin } from '../../geometry/index.ts'
import type { Mark } from '../../readings/index.ts'
import { TOKENS } from '../theme/tokens.ts'
import { type Asked, type Box, crosses, leaderOf, overlap, placeLabel, placeOnLine } from './labels.ts'
import { dimensionRoom, headBox, type Layout, toSheet, type ViewName } from './layout.ts'
import { arrow, LETTER_PX, lettering, type Pen, pathOf, strokeTwo, TONES, text } from './pen.ts'

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
  /** The line that is drawn for the mark: other words keep off it. */
  line: readonly Point2[]
  /** Level lines have their words beside them, whatever is under these; others point at what they name. */
  beside?: true
  /** May stand on flowers where no paper is free. */
  must?: true
}

/** Corners of a circle as words keep off it. */
const round = ([x, y]: Point2, r: number): Point2[] =>
  Array.from({ length: 25 }, (_, i) => {
    const a = (i * Math.PI) / 12
    return [x + r * Math.cos(a), y + r * Math.sin(a)]
  })

/** Draws one mark; gives what its label points at. Stems are outlined by the caller. */
export const drawMark = (pen: Pen, layout: Layout, turn: number, mark: Mark): Wish | null => {
  if (mark.kind === 'stems' || !holdsAt(mark, turn)) return null
  const words = mark.label
  if (mark.kind === 'level') {
    const y = toSheet(layout, 'elevation', 0, mark.z)[1]
    // Over the sheet's edge.
    if (y < 1) return null
    const half = layout.reach_mm * layout.scale
    // Clear of the view's name, and of the dimensions.
    const clear = !layout.compact ? 158 : y > headBox(layout, 'elevation').height ? 8 : 90
    const left = Math.max(layout.axisX - half, clear)
    const right = Math.min(layout.axisX + half, layout.width - dimensionRoom(layout))
    const line: Point2[] = [
      [left, y],
      [right, y],
    ]
    pathOf(pen, line)
    strokeTwo(pen, TONES.mark)
    return { words, anchor: [right, y], clear: 0, view: 'elevation', line, beside: true }
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
    return { words, anchor: [x, y], clear: r, view, line: round([x, y], r), must: true }
  }
  if (mark.kind === 'outline') {
    const points = mark.points.map((p) => onSheet(layout, view, turn, p))
    pathOf(pen, points, true)
    strokeTwo(pen, TONES.mark)
    const corner = points.reduce((best, p) => (p[0] - p[1] > best[0] - best[1] ? p : best), points[0] ?? [0, 0])
    const line = [...points, ...points.slice(0, 1)]
    return points.length ? { words, anchor: corner, clear: 0, view, line, must: true } : null
  }
  const [from, to] = [onSheet(layout, view, turn, mark.from), onSheet(layout, view, turn, mark.to)]
  pathOf(pen, [from, to])
  strokeTwo(pen, { core: 1, halo: 3 })
  const way = Math.atan2(to[1] - from[1], to[0] - from[0])
  arrow(pen, to[0], to[1], way, TOKENS.core)
  arrow(pen, from[0], from[1], way + Math.PI, TOKENS.core)
  const anchor: Point2 = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
  return { words, anchor, clear: 0, view, line: [from, to], must: true }
}

/** At most so many words with leaders a view. Ours. */
const MOST_LABELS = 3
const LABEL_HEIGHT = LETTER_PX + 4

interface Placed {
  box: Box
  words: string
  leader: readonly Point2[]
}

/** How many quarters of a rectangle stand on flowers. */
const covered = (box: Box, isPaper: (box: Box) => boolean): number => {
  const width = box.width / 4
  return [0, 1, 2, 3].filter((i) => !isPaper({ ...box, x: box.x + i * width, width })).length
}

/**
 * Finds a place for words: for those of level lines first, beside these; for others in free paper. None stands on other
 * words, on `taken`, or on the line of another mark; those without a place, and beyond the third with a leader, are left out.
 */
export const placeWishes = (
  wishes: readonly Wish[],
  widthOf: (words: string) => number,
  bounds: Record<ViewName, Box>,
  isPaper: (box: Box) => boolean,
  taken: readonly Box[],
): Placed[] => {
  const placed: Placed[] = []
  const count = { elevation: 0, plan: 0 }
  const named = wishes.filter((w) => w.words !== '')
  const lines = wishes.map((w) => w.line)
  const isOpen = (box: Box): boolean =>
    taken.every((t) => !overlap(box, t)) &&
    placed.every((p) => !overlap(box, p.box) && !crosses(p.leader, box)) &&
    lines.every((line) => !crosses(line, box))
  for (const wish of named.filter((w) => w.beside)) {
    const [from, to] = [wish.line[0]![0], wish.line[1]![0]]
    const size = { width: widthOf(wish.words) + 4, height: LABEL_HEIGHT }
    const cost = (box: Box): number => (isOpen(box) ? covered(box, isPaper) : Infinity)
    const box = placeOnLine({ from, to, y: wish.anchor[1] }, size, bounds[wish.view], cost)
    placed.push({ box, words: wish.words, leader: [] })
  }
  for (const wish of named.filter((w) => !w.beside)) {
    if (count[wish.view] >= MOST_LABELS) continue
    const asked = { ...wish, width: widthOf(wish.words) + 4, height: LABEL_HEIGHT }
    const isClear = (box: Box): boolean => isOpen(box) && placed.every((p) => !crosses(leaderOf(asked, box), p.box))
    const within = bounds[wish.view]
    const box =
      placeLabel(asked, within, (b) => isPaper(b) && isClear(b)) ??
      (wish.must ? placeLabel(asked, within, isClear) : null)
    if (!box) continue
    count[wish.view] += 1
    placed.push({ box, words: wish.words, leader: leaderOf(asked, box) })
  }
  return placed
}

/** Sets words in their places, on plates, after all leaders: none is struck through. */
export const drawLabels = (
  pen: Pen,
  wishes: readonly Wish[],
  bounds: Record<ViewName, Box>,
  isPaper: (box: Box) => boolean,
  taken: readonly Box[],
): void => {
  const font = lettering(600)
  pen.font = font
  const placed = placeWishes(wishes, (words) => pen.measureText(words).width, bounds, isPaper, taken)
  for (const { leader } of placed) {
    if (leader.length === 0) continue
    pathOf(pen, leader)
    strokeTwo(pen, TONES.leader)
  }
  for (const { box, words } of placed) {
    pen.fillStyle = TOKENS.paper
    pen.globalAlpha = 0.88
    pen.fillRect(box.x, box.y, box.width, box.height)
    pen.globalAlpha = 1
    text(pen, box.x + 2, box.y + LETTER_PX, words, { font, plate: true })
  }
}
