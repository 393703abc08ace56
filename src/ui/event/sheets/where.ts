import { fittingFrame, stillBox } from '../../../drawing/index.ts'
import { innerSection, outerSection, projectPoint, type Resolved } from '../../../geometry/index.ts'
import type { Placing } from '../../../work-plan/index.ts'
import type { Box, Item, Place } from '../../picture/types.ts'
import { INK, LINE } from '../../picture/types.ts'
import { numbers } from './numbers.ts'
import { ASIDE, HEAD, type Pen, words } from './pen.ts'

const ABOVE = { turn: 0, pitch: 90 }

/** The plan with the number of each stem at its head. */
export const headsPlan = (pen: Pen, resolved: Resolved, placings: readonly Placing[], box: Box): Item[] => {
  const inner: Box = { x: box.x, y: box.y + 60, w: box.w, h: box.h - 110 }
  const frame = fittingFrame(stillBox(resolved, ABOVE), { width: inner.w, height: inner.h }, 0.04)
  const px = (x: number, y: number): Place => [
    inner.x + (x - frame.left) * frame.scale,
    inner.y + (frame.top - y) * frame.scale,
  ]
  const marks = placings.map(({ number, stem }) => {
    const [x, y] = projectPoint(stem.stem.tip, ABOVE)
    return { number, at: px(x, y), colour: stem.colour }
  })
  return [
    words(pen, 'Where the heads go', HEAD, box.x, box.y + 24),
    { kind: 'view', angle: ABOVE, box: inner, frame },
    ...numbers(pen, marks),
    words(pen, 'front', ASIDE, box.x + box.w / 2, box.y + box.h - 4, 'centre'),
  ]
}

/** The outline of the mouth: a circle, an ellipse or a rectangle. */
const mouthPath = (
  plan: Resolved['vessel']['plan'],
  a: number,
  b: number,
  px: (x: number, y: number) => Place,
): Place[] =>
  plan === 'rectangular'
    ? [px(-a, -b), px(a, -b), px(a, b), px(-a, b), px(-a, -b)]
    : Array.from({ length: 73 }, (_, i) => px(a * Math.cos((i * Math.PI) / 36), b * Math.sin((i * Math.PI) / 36)))

/** The mouth with the number of each stem where it enters, as large as the space allows. */
export const mouthPlan = (
  pen: Pen,
  resolved: Resolved,
  placings: readonly Placing[],
  box: Box,
  measure: string,
): Item[] => {
  const { vessel } = resolved
  const [outer, inside] = [outerSection(vessel, 1), innerSection(vessel, 1)]
  const inner: Box = { x: box.x, y: box.y + 60, w: box.w, h: box.h - 150 }
  const scale = Math.min(inner.w / (2 * outer.a), inner.h / (2 * outer.b)) * 0.97
  const px = (x: number, y: number): Place => [inner.x + inner.w / 2 + x * scale, inner.y + inner.h / 2 - y * scale]
  return [
    words(pen, 'Where the stems enter', HEAD, box.x, box.y + 24),
    { kind: 'path', points: mouthPath(vessel.plan, outer.a, outer.b, px), weight: 4, colour: INK },
    { kind: 'path', points: mouthPath(vessel.plan, inside.a, inside.b, px), weight: 2, colour: LINE },
    ...numbers(
      pen,
      placings.map(({ number, stem }) => ({ number, at: px(...stem.stem.mouth), colour: stem.colour })),
    ),
    words(pen, measure, ASIDE, box.x + box.w / 2, box.y + box.h - 4, 'centre'),
  ]
}
