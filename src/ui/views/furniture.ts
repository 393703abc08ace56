import type { Vessel } from '../../arrangement/index.ts'
import type { Reach } from '../../drawing/index.ts'
import {
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
import { overlap } from './labels.ts'
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

/** The turn ring: what stands at the arrow is the turn. It goes round with the arrangement, anticlockwise from above. */
const drawRing = (pen: Pen, layout: Layout, turn: number): void => {
  const { axisX, planY, compact } = layout
  const ring = layout.ring_mm * layout.scale
  pen.beginPath()
  pen.arc(axisX, planY, ring, 0, 2 * Math.PI)
  pen.strokeStyle = TOKENS.line
  pen.lineWidth = 0.9
  pen.stroke()
  for (let a = 0; a < 360; a += 5) {
    const long = a % 45 === 0 ? 9 : a % 15 === 0 ? 6 : 3
    const at = (270 - a + turn) * RAD
    const [ux, uy] = [Math.cos(at), -Math.sin(at)]
    line(pen, axisX + ux * ring, planY + uy * ring, axisX + ux * (ring - long), planY + uy * (ring - long), {
      colour: a % 15 === 0 ? TOKENS.ink2 : TOKENS.line,
      width: a % 45 === 0 ? 1.1 : 0.8,
    })
    const fromFront = Math.abs(((a - turn + 540) % 360) - 180)
    if (a % 45 || compact || fromFront < 20) continue
    const align = Math.abs(ux) < 0.3 ? 'center' : ux > 0 ? 'left' : 'right'
    const [x, y] = [axisX + ux * (ring + 6), planY + uy * (ring + 10) + 4]
    // Where the view's name or the buttons stand, the tick says it alone.
    const words = { x: x - (align === 'left' ? 0 : align === 'right' ? 30 : 15), y: y - 12, width: 30, height: 16 }
    if (overlap(words, headBox(layout, 'plan')) || overlap(words, turnBox(layout))) continue
    text(pen, x, y, `${a}°`, { align, colour: TOKENS.ink2, plate: true })
  }
}

/** What stands over the flowers and stays while one is moved: words, arrow A, the scale. */
export const drawLettering = (pen: Pen, layout: Layout, turn: number, vessel: Vessel, units: Units): void => {
  const { axisX, rimY, planY, width, height, scale, compact } = layout
  text(pen, compact ? 10 : 14, rimY - 5, 'rim', { colour: TOKENS.ink2, plate: true })
  if (!compact) drawWater(pen, layout, turn, vessel, units)
  const foot = planY + layout.ring_mm * scale
  const [from, to] = compact ? [foot + 18, foot + 4] : [foot + 26, foot + 4]
  line(pen, axisX, from, axisX, to + 8, { colour: TOKENS.ink, width: 1.2 })
  arrow(pen, axisX, to, -Math.PI / 2, TOKENS.ink, 11, 3.2)
  text(pen, axisX + 9, from - 3, 'A', { font: lettering(650, 14), plate: true })
  const said = `${Math.round(turn * 10) / 10}°${turn === 0 ? ' front' : ''}`
  text(pen, axisX - 9, from - 3, said, { align: 'right', colour: TOKENS.ink2, plate: true })
  if (!compact) drawScale(pen, width - 18, height - 15, scale, units)
}

const drawWater = (pen: Pen, layout: Layout, turn: number, vessel: Vessel, units: Units): void => {
  const z = waterlineZ(vessel)
  const { right } = viewAxes(angleOf('elevation', turn))
  const half = shownHalfWidth(vessel, innerSection(vessel, heightFraction(vessel, z)), right[0], -right[1])
  const deep = z + vessel.height - vessel.wall
  if (half <= 0 || deep <= 0) return
  const outer = shownHalfWidth(vessel, outerSection(vessel, heightFraction(vessel, z)), right[0], -right[1])
  const [x, y] = toSheet(layout, 'elevation', half, z)
  const words = `water ${bare(deep, units)} deep`
  pen.font = lettering()
  // Clear of the dimensions at the right.
  const most = layout.width - 64 - pen.measureText(words).width
  const end = Math.min(toSheet(layout, 'elevation', outer, z)[0] + 52, most)
  if (end < x) return
  line(pen, x, y, end, y)
  text(pen, end + 4, y + 4, words, { colour: TOKENS.ink2, plate: true })
}

/** Four steps of a bar at true scale; the unit of every dimension stands here. */
const drawScale = (pen: Pen, right: number, y: number, scale: number, units: Units): void => {
  const step = units === 'in' ? 1 : 25
  const step_mm = units === 'in' ? fromUnit(step, 'in') : step
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
  for (const k of [0, 2, 4]) {
    const words =
      k === 4 ? formatLength(4 * step_mm, units).replace('.0', '') : bare(k * step_mm, units).replace('.0', '')
    const look = { align: k === 4 ? ('right' as const) : ('center' as const), colour: TOKENS.ink2, plate: true }
    text(pen, x0 + k * step_mm * scale + (k === 4 ? 8 : 0), y - 4, words, look)
  }
}

/** The mouth under the flowers as hidden edges, outer and inner, with its size. */
export const drawMouth = (pen: Pen, layout: Layout, turn: number, vessel: Vessel, units: Units): void => {
  const angle = angleOf('plan', turn)
  const at = (a: number, b: number, t: number): [number, number] => {
    const [c, s] = [Math.cos(t), Math.sin(t)]
    const k = vessel.plan === 'rectangular' ? 1 / Math.max(Math.abs(c), Math.abs(s)) : 1
    const [right, up] = projectPoint([a * k * c, b * k * s, 0], angle)
    return toSheet(layout, 'plan', right, up)
  }
  for (const { a, b } of [outerSection(vessel, 1), innerSection(vessel, 1)]) {
    pathOf(
      pen,
      Array.from({ length: 96 }, (_, i) => at(a, b, (i / 96) * 2 * Math.PI)),
      true,
    )
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
  if (layout.compact) return
  const { a, b } = outerSection(vessel, 1)
  const from = at(a, b, (212 - turn) * RAD)
  const foot: [number, number] = [
    layout.axisX - layout.ring_mm * layout.scale * 0.94,
    layout.planY + layout.ring_mm * layout.scale * 0.72,
  ]
  const words = vessel.plan === 'round' ? `⌀ ${bare(2 * a, units)}` : `${bare(2 * a, units)} × ${bare(2 * b, units)}`
  pathOf(pen, [from, foot, [foot[0] - 34, foot[1]]])
  strokeTwo(pen, { core: 0.8, halo: 2.6 })
  arrow(pen, from[0], from[1], Math.atan2(from[1] - foot[1], from[0] - foot[0]), TOKENS.core)
  text(pen, foot[0] - 34, foot[1] - 4, words, { plate: true })
}

/** Heights over rim and table, and the width as seen. With no stem only the vessel's own height. */
export const drawDimensions = (pen: Pen, layout: Layout, vessel: Vessel, reach: Reach | null, units: Units): void => {
  const { width, rimY, tableY, scale, axisX, compact } = layout
  // Without a scale bar the unit stands with the figure.
  const figure = compact ? formatLength : bare
  const outer = width - 18
  const inner = compact ? outer : width - 42
  const topY = reach && reach.top > 0 ? rimY - reach.top * scale : null
  if (!compact) {
    if (topY !== null) uprightDimension(pen, [topY, rimY], inner, [axisX + 60 * scale, null], figure(reach!.top, units))
    uprightDimension(pen, [rimY, tableY], inner, [null, null], figure(vessel.height, units))
  }
  if (topY !== null) {
    const from = compact ? axisX + 60 * scale : inner
    uprightDimension(pen, [topY, tableY], outer, [from, null], figure(reach!.top + vessel.height, units))
  }
  if (!reach) return
  const [x1, x2] = [axisX + reach.left * scale, axisX + reach.right * scale]
  const y = tableY + (compact ? 18 : 22)
  levelDimension(
    pen,
    [x1, x2],
    y,
    tableY + 2,
    figure(reach.right - reach.left, units),
    axisX - Math.min(110, (x2 - x1) / 4),
  )
}
