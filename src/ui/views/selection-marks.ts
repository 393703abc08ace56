import type { Point2 } from '../../arrangement/index.ts'
import type { ResolvedStem } from '../../geometry/index.ts'
import { TOKENS } from '../theme/tokens.ts'
import { type Handle, handlesOf, mouthPoint, placeOf, tipPoint } from './handles.ts'
import { type Layout, VIEWS } from './layout.ts'
import { type Pen, pathOf, strokeTwo, TONES } from './pen.ts'

/** A ring with four ticks: the head. */
export const drawTip = (pen: Pen, [x, y]: Point2): void => {
  pen.beginPath()
  pen.arc(x, y, 6.5, 0, 2 * Math.PI)
  for (const [dx, dy] of [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const) {
    pen.moveTo(x + dx * 4.5, y + dy * 4.5)
    pen.lineTo(x + dx * 10.5, y + dy * 10.5)
  }
  strokeTwo(pen, TONES.handle)
}

/** A lozenge: the bow. */
export const drawBend = (pen: Pen, [x, y]: Point2): void => {
  pathOf(
    pen,
    [
      [x, y - 5.5],
      [x + 5.5, y],
      [x, y + 5.5],
      [x - 5.5, y],
    ],
    true,
  )
  strokeTwo(pen, TONES.handle)
  pen.fillStyle = TOKENS.white
  pen.fill()
}

/** Two bars: the crossing at the mouth. */
export const drawCrossing = (pen: Pen, [x, y]: Point2): void => {
  pen.beginPath()
  for (const dy of [-3, 3]) {
    pen.moveTo(x - 7, y + dy)
    pen.lineTo(x + 7, y + dy)
  }
  strokeTwo(pen, TONES.handle)
}

const DRAW = { tip: drawTip, bend: drawBend, mouth: drawCrossing }

/** With more stems selected than this, only heads carry a handle. Ours. */
export const MOST_FULL = 4
/** With more than this, none does: the stems are dragged by their bodies. Ours. */
export const MOST_TIPS = 24

export const shownHandles = (layout: Layout, turn: number, stems: readonly ResolvedStem[]) =>
  stems.length > MOST_TIPS
    ? []
    : VIEWS.flatMap((view) => stems.flatMap((s) => handlesOf(layout, view, turn, s))).filter(
        (h) => stems.length <= MOST_FULL || h.kind === 'tip',
      )

/** Thin dropped lines that join a stem's head and crossing in both views. */
export const drawDropped = (pen: Pen, layout: Layout, turn: number, stems: readonly ResolvedStem[]): void => {
  for (const stem of stems)
    for (const p of [tipPoint(stem), mouthPoint(stem)]) {
      pathOf(pen, [placeOf(layout, 'elevation', turn, p), placeOf(layout, 'plan', turn, p)])
      strokeTwo(pen, TONES.dropped)
    }
}

export const drawHandles = (pen: Pen, handles: readonly Handle[]): void => {
  for (const handle of handles) DRAW[handle.kind](pen, handle.at)
}

/** The line of a stem and its head as a plain circle: what is about to be placed. */
export const drawGhost = (pen: Pen, layout: Layout, turn: number, stem: ResolvedStem): void => {
  const { points, mouthIndex } = stem.curve
  for (const view of VIEWS) {
    const line: Point2[] = []
    for (let i = mouthIndex; 3 * i < points.length; i++)
      line.push(placeOf(layout, view, turn, [points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!]))
    pathOf(pen, line)
    strokeTwo(pen, TONES.phantom)
    const [x, y] = placeOf(layout, view, turn, tipPoint(stem))
    pen.beginPath()
    pen.arc(x, y, Math.max(4, (stem.head_mm / 2) * layout.scale), 0, 2 * Math.PI)
    strokeTwo(pen, TONES.phantom)
    drawTip(pen, [x, y])
  }
  drawDropped(pen, layout, turn, [stem])
}

/**
 * A second, outer ring at 3 px from the outline, 2 px wide: where the keyboard stands. Needs a path closed round the stem,
 * and the pen's origin where that path begins to count, `at` on the sheet.
 */
export const drawFocus = (pen: Pen, outline: Path2D, [x, y]: Point2, layout: Layout): void => {
  const outside = new Path2D()
  outside.rect(-x, -y, layout.width, layout.height)
  outside.addPath(outline)
  pen.save()
  pen.clip(outside, 'evenodd')
  pen.lineJoin = 'round'
  // Strokes lie half inside the outline, which is clipped away: 14 px wide reach 7 px out.
  for (const [width, colour] of [
    [14, TOKENS.halo],
    [11, TOKENS.core],
    [7, TOKENS.halo],
  ] as const) {
    pen.lineWidth = width
    pen.strokeStyle = colour
    pen.stroke(outline)
  }
  pen.restore()
}
