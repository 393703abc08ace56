import type { Arrangement, Edit, Point2, Vessel } from '../../arrangement/index.ts'
import { applyEdit } from '../../arrangement/index.ts'
import { contourOf } from '../../drawing/index.ts'
import {
  outerSection,
  type Resolved,
  type ResolvedStem,
  resolveArrangement,
  shownHalfWidth,
  viewAxes,
} from '../../geometry/index.ts'
import type { Painter } from '../../state/index.ts'
import { TOKENS } from '../theme/tokens.ts'
import { sectionOutline } from './furniture.ts'
import { placeOf, tipPoint } from './handles.ts'
import { angleOf, type Layout, splitOf, toSheet, VIEWS, type ViewName } from './layout.ts'
import { MOST_OUTLINES, pathAt } from './outlines.ts'
import { arrow, type Pen, pathOf, strokeTwo, TONES } from './pen.ts'

/** What advice would make of the design. */
export interface Phantom {
  resolved: Resolved
  /** Stems that would stand otherwise. */
  ids: readonly string[]
  /** The vessel, where that would be another. */
  vessel: Vessel | null
  /** How much higher the rim would stand over the same table, mm. */
  raised: number
  /** Outlines relative to the tips, once they have come. */
  outlines: Record<ViewName, Map<string, number[][]>> | null
  /** All of a large change as it was drawn for this layout. */
  drawn: { layout: Layout; canvas: HTMLCanvasElement } | null
}

/** With more stems than this a change is drawn as one silhouette: each by itself would be a tangle. Ours. */
export const MOST_ALONE = 6

/** What an edit would change. Where the vessel's height would be another, everything in it stands higher or lower. */
export const phantomOf = (document: Arrangement, edit: Edit): Phantom => {
  const then = applyEdit(document, edit)
  const before = new Map(document.stems.map((s) => [s.id, s]))
  const raised = then.vessel.height - document.vessel.height
  const ids = then.stems.filter((s) => raised !== 0 || before.get(s.id) !== s).map((s) => s.id)
  const vessel = JSON.stringify(then.vessel) === JSON.stringify(document.vessel) ? null : then.vessel
  return { resolved: resolveArrangement(then), ids, vessel, raised, outlines: null, drawn: null }
}

/** Sprites for outlines alone need no more pixels a mm than this. Ours. */
const OUTLINE_SCALE = 2

/** Stems of which outlines are wanted; of more, the rest is drawn by their heads. */
export const outlinedOf = ({ ids }: Phantom): readonly string[] => ids.slice(0, MOST_OUTLINES)

/** Outlines of what would stand otherwise, by view and id, relative to the tips. */
export const outlinesOf = async (
  painter: Pick<Painter, 'sprites'>,
  phantom: Phantom,
  turn: number,
): Promise<NonNullable<Phantom['outlines']>> => {
  const ids = outlinedOf(phantom)
  const of = async (view: ViewName): Promise<Map<string, number[][]>> => {
    const { document } = phantom.resolved
    const come = await painter.sprites(`phantom ${view}`, document, ids, angleOf(view, turn), OUTLINE_SCALE, 'draft')
    return new Map([...(come ?? [])].map(([id, sprite]) => [id, contourOf(sprite, OUTLINE_SCALE)]))
  }
  const [elevation, plan] = await Promise.all([of('elevation'), of('plan')])
  return { elevation, plan }
}

const up = ([x, y]: Point2, view: ViewName, px: number): Point2 => [x, view === 'elevation' ? y - px : y]

/** The profile of a vessel that stands on the table of the layout, as seen from a turn; its outline on the sheet. */
export const profileOutline = (layout: Layout, turn: number, vessel: Vessel, raised: number): Point2[] => {
  const { right } = viewAxes(angleOf('elevation', turn))
  const side = Array.from({ length: 41 }, (_, i): [half: number, z: number] => [
    shownHalfWidth(vessel, outerSection(vessel, i / 40), right[0], -right[1]),
    raised + (i / 40 - 1) * vessel.height,
  ])
  return [
    ...side.map(([half, z]) => toSheet(layout, 'elevation', -half, z)),
    ...side.reverse().map(([half, z]) => toSheet(layout, 'elevation', half, z)),
  ]
}

const drawVessel = (pen: Pen, layout: Layout, turn: number, vessel: Vessel, raised: number): void => {
  pathOf(pen, profileOutline(layout, turn, vessel, raised), true)
  strokeTwo(pen, TONES.phantom)
  pathOf(pen, sectionOutline(layout, turn, vessel.plan, outerSection(vessel, 1)), true)
  strokeTwo(pen, TONES.phantom)
}

/** A stem of the phantom as closed paths on the sheet; its head alone where there is no outline. */
const pathsOf = (phantom: Phantom, layout: Layout, view: ViewName, turn: number, stem: ResolvedStem): Path2D[] => {
  const [x, y] = up(placeOf(layout, view, turn, tipPoint(stem)), view, phantom.raised * layout.scale)
  const lines = phantom.outlines?.[view].get(stem.id)
  if (lines)
    return lines.map((loop) => {
      const path = new Path2D()
      path.addPath(pathAt([loop], layout.scale), new DOMMatrix([1, 0, 0, 1, x, y]))
      return path
    })
  const head = new Path2D()
  head.arc(x, y, (stem.head_mm / 2) * layout.scale, 0, 2 * Math.PI)
  return [head]
}

/** The silhouette of many stems in both views: their outlines in two tones, and all that lies within any of them taken out. */
const silhouette = (
  phantom: Phantom,
  stems: readonly ResolvedStem[],
  layout: Layout,
  turn: number,
): HTMLCanvasElement => {
  const canvas = phantom.drawn?.canvas ?? document.createElement('canvas')
  canvas.width = Math.ceil(layout.width * layout.ratio)
  canvas.height = Math.ceil(layout.height * layout.ratio)
  const pen = canvas.getContext('2d')
  if (!pen) return canvas
  pen.setTransform(layout.ratio, 0, 0, layout.ratio, 0, 0)
  pen.lineJoin = 'round'
  for (const view of VIEWS) {
    pen.save()
    // What would hang below the table stays out of the plan.
    const split = splitOf(layout)
    pen.beginPath()
    pen.rect(0, view === 'elevation' ? 0 : split, layout.width, view === 'elevation' ? split : layout.height - split)
    pen.clip()
    const paths = stems.flatMap((stem) => pathsOf(phantom, layout, view, turn, stem))
    // Half of each stroke lies inside, and goes.
    for (const [width, colour] of [
      [2 * 2.6, TOKENS.halo],
      [2 * 1, TOKENS.core],
    ] as const) {
      pen.lineWidth = width
      pen.strokeStyle = colour
      for (const path of paths) pen.stroke(path)
    }
    pen.globalCompositeOperation = 'destination-out'
    for (const path of paths) pen.fill(path)
    pen.restore()
  }
  return canvas
}

const middleOf = (points: readonly Point2[]): Point2 => {
  let [x, y] = [0, 0]
  for (const p of points) {
    x += p[0] / points.length
    y += p[1] / points.length
  }
  return [x, y]
}

/** An arrow from where something stands to where it would; none where that is too near to be seen. */
const drawWay = (pen: Pen, from: Point2, to: Point2): boolean => {
  if (Math.hypot(to[0] - from[0], to[1] - from[1]) < 6) return false
  pathOf(pen, [from, to])
  strokeTwo(pen, { core: 1, halo: 2.6 })
  arrow(pen, to[0], to[1], Math.atan2(to[1] - from[1], to[0] - from[0]), TOKENS.core, 9, 2.4)
  return true
}

/**
 * Draws what advice would change: the vessel's outline; a few stems each by itself, with an arrow from where its head is
 * now; many as one silhouette with one arrow.
 * @returns whether anything was drawn, and the stems that stand now where an arrow begins in the elevation
 */
export const drawPhantom = (
  pen: Pen,
  phantom: Phantom,
  layout: Layout,
  turn: number,
  now: ReadonlyMap<string, ResolvedStem>,
): { drawn: boolean; moved: ResolvedStem[] } => {
  const wanted = new Set(phantom.ids)
  const stems = phantom.resolved.stems.filter((s) => wanted.has(s.id))
  if (phantom.vessel) drawVessel(pen, layout, turn, phantom.vessel, phantom.raised)
  const drawn = phantom.vessel !== null || (phantom.outlines !== null && stems.length > 0)
  const at = (view: ViewName, stem: ResolvedStem): Point2 =>
    up(placeOf(layout, view, turn, tipPoint(stem)), view, phantom.raised * layout.scale)
  if (stems.length > MOST_ALONE) {
    if (!phantom.outlines) return { drawn, moved: [] }
    if (phantom.drawn?.layout !== layout) phantom.drawn = { layout, canvas: silhouette(phantom, stems, layout, turn) }
    pen.save()
    pen.setTransform(1, 0, 0, 1, 0, 0)
    pen.drawImage(phantom.drawn.canvas, 0, 0)
    pen.restore()
    const both = stems.filter((s) => now.has(s.id))
    for (const view of VIEWS) {
      const before = both.map((s) => placeOf(layout, view, turn, tipPoint(now.get(s.id)!)))
      if (both.length > 0) drawWay(pen, middleOf(before), middleOf(both.map((s) => at(view, s))))
    }
    return { drawn, moved: [] }
  }
  const moved: ResolvedStem[] = []
  for (const stem of stems)
    for (const view of VIEWS) {
      if (phantom.outlines)
        for (const path of pathsOf(phantom, layout, view, turn, stem)) strokeTwo(pen, TONES.phantom, path)
      const old = now.get(stem.id)
      const shown = old !== undefined && drawWay(pen, placeOf(layout, view, turn, tipPoint(old)), at(view, stem))
      if (shown && view === 'elevation') moved.push(old)
    }
  return { drawn, moved }
}
