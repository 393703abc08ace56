import type { Point2, Vessel } from '../../arrangement/index.ts'
import { outerSection, shownHalfWidth, viewAxes } from '../../geometry/index.ts'
import { TOKENS } from '../theme/tokens.ts'
import { sectionOutline } from './furniture.ts'
import { angleOf, type Layout } from './layout.ts'
import { line, type Pen, WEIGHT } from './pen.ts'

/** Where the light lets its shade fall: mm right and away for each mm of height, as on the laid table. Ours. */
const SHIFT = { across: 0.42, away: 0.3 }
/** What is higher than this casts no shade on the plan, or a tall vase would lie all over it, mm. Ours. */
const LOW = 60
/** Sections of the vessel that cast, and CSS px from one line of the plan's shade to the next. Ours. */
const SECTIONS = 8
const STEP_PX = 5
/** Under the foot the ground is hatched this close, CSS px, and so far over it to the side away from the light, of its half width. Ours. */
const CLOSE_PX = 3.5
const ASIDE = 0.3

/** Where a level line crosses a convex outline; null where it does not. */
export const across = (outline: readonly Point2[], y: number): [from: number, to: number] | null => {
  let [from, to] = [Infinity, -Infinity]
  outline.forEach(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length]!
    if (ay > y === by > y) return
    const x = ax + ((y - ay) / (by - ay)) * (bx - ax)
    from = Math.min(from, x)
    to = Math.max(to, x)
  })
  return from < to ? [from, to] : null
}

/** The vessel stands on its table: under its foot the hatched ground is closer, and its shade lies round it in the plan. */
export const drawGroundShade = (pen: Pen, layout: Layout, turn: number, vessel: Vessel): void => {
  const { axisX, tableY, scale } = layout
  const { right } = viewAxes(angleOf('elevation', turn))
  const foot = shownHalfWidth(vessel, outerSection(vessel, 0), right[0], -right[1]) * scale
  for (let x = axisX - foot; x < axisX + foot * (1 + ASIDE); x += CLOSE_PX)
    line(pen, x, tableY + 1, x - 4, tableY + 5, { colour: TOKENS.ink2, width: WEIGHT.centre })

  const outlines = Array.from({ length: SECTIONS + 1 }, (_, i) => {
    const share = (i / SECTIONS) * Math.min(1, LOW / vessel.height)
    const up = share * vessel.height * scale
    return sectionOutline(layout, turn, vessel.plan, outerSection(vessel, share)).map(
      ([x, y]): Point2 => [x + SHIFT.across * up, y - SHIFT.away * up],
    )
  })
  const ys = outlines.flat().map(([, y]) => y)
  for (let y = Math.min(...ys) + STEP_PX / 2; y < Math.max(...ys); y += STEP_PX) {
    // Neighbouring sections overlap, so that a line has one stretch.
    const spans = outlines.map((outline) => across(outline, y)).filter((span) => span !== null)
    if (spans.length === 0) continue
    line(pen, Math.min(...spans.map(([from]) => from)), y, Math.max(...spans.map(([, to]) => to)), y, {
      colour: TOKENS.faint,
      width: WEIGHT.outline,
    })
  }
}
