import type { Point2, Vessel } from '../../arrangement/index.ts'
import type { Reach } from '../../drawing/index.ts'
import {
  type HalfSection,
  heightFraction,
  innerSection,
  outerSection,
  projectPoint,
  shownHalfWidth,
  viewAxes,
  waterlineZ,
} from '../../geometry/index.ts'
import { formatLength, fromUnit, type Units } from '../../units/index.ts'
import { TOKENS } from '../theme/tokens.ts'
import { type Box, overlap } from './labels.ts'
import { angleOf, headBox, type Layout, toSheet, turnBox } from './layout.ts'
import {
  arrow,
  DASH,
  lettering,
  levelDimension,
  line,
  type Pen,
  pathOf,
  strokeTwo,
  text,
  uprightDimension,
  WEIGHT,
} from './pen.ts'

const RAD = Math.PI / 180
const bare = (mm: number, units: Units): string => formatLength(mm, units).replace(` ${units}`, '')

/** What stands under the flowers: centre lines, table, rim, ring. Changes with size and turn only. */
export const drawGround = (pen: Pen, layout: Layout, turn: number): void => {
  const { axisX, rimY, tableY, planY, width, scale, ring_mm, compact } = layout
  const ring = ring_mm * scale
  const edge = compact ? 8 : 10
  line(pen, axisX, rimY - layout.top_mm * scale, axisX, planY + ring - 6, {
    dash: DASH.centre,
    width: WEIGHT.centre,
    colour: TOKENS.line,
  })
  line(pen, axisX - ring - 5, planY, axisX + ring + 5, planY, {
    dash: DASH.centre,
    width: WEIGHT.centre,
    colour: TOKENS.line,
  })
  line(pen, edge, rimY, width - edge, rimY, { dash: DASH.rim, width: WEIGHT.rim, colour: TOKENS.line })
  line(pen, edge, tableY, width - edge, tableY, { colour: TOKENS.ink, width: WEIGHT.outline })
  for (let x = edge + 10; x < width - edge; x += 14)
    line(pen, x, tableY + 1, x - 5, tableY + 6, { colour: TOKENS.line, width: WEIGHT.centre })
  drawRing(pen, layout, turn)
}

/** Which way a mark of the ring lies from its middle, as a unit vector of the sheet, y down. */
const ringAt = (a: number, turn: number): [ux: number, uy: number] => {
  const at = (270 - a + turn) * RAD
  return [Math.cos(at), -Math.sin(at)]
}

/** The turn ring: what stands at the arrow is the turn. It goes round with the arrangement, anticlockwise from above. */
const drawRing = (pen: Pen, layout: Layout, turn: number): void => {
  const { axisX, planY } = layout
  const ring = layout.ring_mm * layout.scale
  pen.beginPath()
  pen.arc(axisX, planY, ring, 0, 2 * Math.PI)
  pen.strokeStyle = TOKENS.line
  pen.lineWidth = 0.9
  pen.stroke()
  for (let a = 0; a < 360; a += 5) {
    const long = a % 45 === 0 ? 9 : a % 15 === 0 ? 6 : 3
    const [ux, uy] = ringAt(a, turn)
    line(pen, axisX + ux * ring, planY + uy * ring, axisX + ux * (ring - long), planY + uy * (ring - long), {
      colour: a % 15 === 0 ? TOKENS.ink2 : TOKENS.line,
      width: a % 45 === 0 ? 1.1 : 0.8,
    })
  }
}

/** Figures of the ring, over the flowers that reach beyond it. */
const drawRingFigures = (pen: Pen, layout: Layout, turn: number): Box[] => {
  const { axisX, planY } = layout
  const ring = layout.ring_mm * layout.scale
  const said: Box[] = []
  for (let a = 0; a < 360; a += 45) {
    const fromFront = Math.abs(((a - turn + 540) % 360) - 180)
    if (fromFront < 20) continue
    const [ux, uy] = ringAt(a, turn)
    const align = Math.abs(ux) < 0.3 ? 'center' : ux > 0 ? 'left' : 'right'
    const [x, y] = [axisX + ux * (ring + 6), planY + uy * (ring + 10) + 4]
    // Where the view's name or the buttons stand, the tick says it alone.
    const words = { x: x - (align === 'left' ? 0 : align === 'right' ? 30 : 15), y: y - 12, width: 30, height: 16 }
    if (overlap(words, headBox(layout, 'plan')) || overlap(words, turnBox(layout))) continue
    said.push(text(pen, x, y, `${a}°`, { align, colour: TOKENS.ink2, plate: true }))
  }
  return said
}

/**
 * What stands over the flowers and stays while one is moved: words, arrow A, the scale.
 * @returns the rectangles of the words
 */
export const drawLettering = (pen: Pen, layout: Layout, turn: number, vessel: Vessel, units: Units): Box[] => {
  const { axisX, rimY, planY, width, height, scale, compact } = layout
  const said = [text(pen, compact ? 10 : 14, rimY - 5, 'rim', { colour: TOKENS.ink2, plate: true })]
  if (!compact) said.push(...drawWater(pen, layout, turn, vessel, units), ...drawRingFigures(pen, layout, turn))
  const foot = planY + layout.ring_mm * scale
  const [from, to] = compact ? [foot + 18, foot + 4] : [foot + 26, foot + 4]
  line(pen, axisX, from, axisX, to + 8, { colour: TOKENS.ink, width: 1.2 })
  arrow(pen, axisX, to, -Math.PI / 2, TOKENS.ink, 11, 3.2)
  said.push(text(pen, axisX + 9, from - 3, 'A', { font: lettering(650, 14), plate: true }))
  const turned = `${Math.round(turn * 10) / 10}°${turn === 0 ? ' front' : ''}`
  said.push(text(pen, axisX - 9, from - 3, turned, { align: 'right', colour: TOKENS.ink2, plate: true }))
  if (!compact) said.push(...drawScale(pen, width - 18, height - 15, scale, units))
  return said
}

const drawWater = (pen: Pen, layout: Layout, turn: number, vessel: Vessel, units: Units): Box[] => {
  const z = waterlineZ(vessel)
  const { right } = viewAxes(angleOf('elevation', turn))
  const half = shownHalfWidth(vessel, innerSection(vessel, heightFraction(vessel, z)), right[0], -right[1])
  const deep = z + vessel.height - vessel.wall
  if (half <= 0 || deep <= 0) return []
  const outer = shownHalfWidth(vessel, outerSection(vessel, heightFraction(vessel, z)), right[0], -right[1])
  const [x, y] = toSheet(layout, 'elevation', half, z)
  const words = `water ${bare(deep, units)} deep`
  pen.font = lettering()
  // Clear of the dimensions at the right.
  const most = layout.width - 64 - pen.measureText(words).width
  const end = Math.min(toSheet(layout, 'elevation', outer, z)[0] + 52, most)
  if (end < x) return []
  line(pen, x, y, end, y)
  return [text(pen, end + 4, y + 4, words, { colour: TOKENS.ink2, plate: true })]
}

/** Steps of the scale bar, in the unit that the person reads: round figures, at two steps too. Ours. */
const STEPS = { mm: [10, 25, 50, 100, 250, 500, 1000], in: [1, 2, 5, 10, 20, 40] } as const

/**
 * The smallest step of the scale bar, mm, at which none of its figures, under its beginning, middle and end, touches the next.
 * @param wide width of a figure, CSS px
 */
export const scaleStep = (scale: number, units: Units, wide: (mm: number, last: boolean) => number): number => {
  const steps = units === 'in' ? STEPS.in.map((n) => fromUnit(n, 'in')) : STEPS.mm
  const roomy = (step: number): boolean => {
    const two = 2 * step * scale
    const middle = wide(2 * step, false)
    return two >= (wide(0, false) + middle) / 2 + 8 && two + END_PX >= middle / 2 + wide(4 * step, true) + 8
  }
  return steps.find(roomy) ?? steps.at(-1)!
}
/** The last figure, with its unit, goes so far over the end of the bar, px. Ours. */
const END_PX = 8

const scaleFigure = (mm: number, last: boolean, units: Units): string =>
  (last ? formatLength(mm, units) : bare(mm, units)).replace('.0', '')

/** Four steps of a bar at true scale; the unit of every dimension stands here. */
const drawScale = (pen: Pen, right: number, y: number, scale: number, units: Units): Box[] => {
  pen.font = lettering()
  const step_mm = scaleStep(scale, units, (mm, last) => pen.measureText(scaleFigure(mm, last, units)).width)
  const x0 = right - 4 * step_mm * scale
  for (let i = 0; i < 4; i++) {
    pen.beginPath()
    pen.rect(x0 + i * step_mm * scale, y, step_mm * scale, 5)
    pen.fillStyle = i % 2 ? TOKENS.paper : TOKENS.ink
    pen.fill()
    pen.strokeStyle = TOKENS.ink
    pen.lineWidth = 0.9
    pen.stroke()
  }
  return [0, 2, 4].map((k) => {
    const last = k === 4
    const look = { align: last ? ('right' as const) : ('center' as const), colour: TOKENS.ink2, plate: true }
    return text(pen, x0 + k * step_mm * scale + (last ? END_PX : 0), y - 4, scaleFigure(k * step_mm, last, units), look)
  })
}

/** Edge of a section in the plan, on the sheet, at angle `t` of its own axes, radians. */
export const sectionPoint = (
  layout: Layout,
  turn: number,
  plan: Vessel['plan'],
  { a, b }: HalfSection,
  t: number,
): Point2 => {
  const [c, s] = [Math.cos(t), Math.sin(t)]
  const k = plan === 'rectangular' ? 1 / Math.max(Math.abs(c), Math.abs(s)) : 1
  const [right, up] = projectPoint([a * k * c, b * k * s, 0], angleOf('plan', turn))
  return toSheet(layout, 'plan', right, up)
}

export const sectionOutline = (layout: Layout, turn: number, plan: Vessel['plan'], section: HalfSection): Point2[] =>
  Array.from({ length: 96 }, (_, i) => sectionPoint(layout, turn, plan, section, (i / 96) * 2 * Math.PI))

/**
 * The mouth under the flowers as hidden edges, outer and inner, with its size.
 * @returns the rectangles of the words
 */
export const drawMouth = (pen: Pen, layout: Layout, turn: number, vessel: Vessel, units: Units): Box[] => {
  for (const section of [outerSection(vessel, 1), innerSection(vessel, 1)]) {
    pathOf(pen, sectionOutline(layout, turn, vessel.plan, section), true)
    pen.setLineDash([])
    pen.strokeStyle = TOKENS.halo
    pen.globalAlpha = 0.5
    pen.lineWidth = 2
    pen.stroke()
    pen.globalAlpha = 1
    pen.strokeStyle = TOKENS.core
    pen.lineWidth = WEIGHT.hidden
    pen.setLineDash(DASH.hidden)
    pen.stroke()
    pen.setLineDash([])
  }
  if (layout.compact) return []
  const outer = outerSection(vessel, 1)
  const { a, b } = outer
  const from = sectionPoint(layout, turn, vessel.plan, outer, (212 - turn) * RAD)
  const foot: Point2 = [
    layout.axisX - layout.ring_mm * layout.scale * 0.94,
    layout.planY + layout.ring_mm * layout.scale * 0.72,
  ]
  const words = vessel.plan === 'round' ? `⌀ ${bare(2 * a, units)}` : `${bare(2 * a, units)} × ${bare(2 * b, units)}`
  pathOf(pen, [from, foot, [foot[0] - 34, foot[1]]])
  strokeTwo(pen, { core: 0.8, halo: 2.6 })
  arrow(pen, from[0], from[1], Math.atan2(from[1] - foot[1], from[0] - foot[0]), TOKENS.core)
  return [text(pen, foot[0] - 34, foot[1] - 4, words, { plate: true })]
}

/**
 * Heights over rim and table, and the width as seen. With no stem only the vessel's own height.
 * @returns the rectangles of their figures and of lines that cross the view
 */
export const drawDimensions = (pen: Pen, layout: Layout, vessel: Vessel, reach: Reach | null, units: Units): Box[] => {
  const taken: Box[] = []
  const { width, rimY, tableY, scale, axisX, compact } = layout
  // Without a scale bar the unit stands with the figure.
  const figure = compact ? formatLength : bare
  const outer = width - 18
  const inner = compact ? outer : width - 42
  const topY = reach && reach.top > 0 ? rimY - reach.top * scale : null
  if (!compact) {
    if (topY !== null) uprightDimension(pen, [topY, rimY], inner, [axisX + 60 * scale, null], figure(reach!.top, units))
    taken.push(uprightDimension(pen, [rimY, tableY], inner, [null, null], figure(vessel.height, units)))
  }
  if (topY !== null) {
    const from = axisX + 60 * scale
    taken.push({ x: from, y: topY - 2, width: outer - from, height: 4 })
    const whole = figure(reach!.top + vessel.height, units)
    taken.push(uprightDimension(pen, [topY, tableY], outer, [compact ? from : inner, null], whole))
  }
  if (!reach) return taken
  const [x1, x2] = [axisX + reach.left * scale, axisX + reach.right * scale]
  const y = tableY + (compact ? 18 : 22)
  taken.push(levelDimension(pen, [x1, x2], y, tableY + 2, figure(reach.right - reach.left, units), axisX))
  return taken
}
