import type { Point2 } from '../../arrangement/index.ts'
import { type ResolvedStem, resolveArrangement } from '../../geometry/index.ts'
import type { StudioState } from '../../state/index.ts'
import { TOKENS } from '../theme/tokens.ts'
import { drawDimensions, drawMouth } from './furniture.ts'
import { placeOf, tipPoint } from './handles.ts'
import { isCovered, joinExtents } from './hit.ts'
import { type Box, overlap } from './labels.ts'
import { headBox, type Layout, splitOf, VIEWS, type ViewName } from './layout.ts'
import { pathAt } from './outlines.ts'
import { arrow, type Pen, pathOf, strokeTwo, TONES } from './pen.ts'
import { drawLabels, drawMark, type Wish } from './reading-marks.ts'
import type { Scene } from './scene.ts'
import { drawDropped, drawFocus, drawGhost, drawHandles } from './selection-marks.ts'

/**
 * Everything that may change while the hand moves, over the still pictures.
 * @returns the marks that were drawn, in words: the kind of each mark of a reading, `stem` and its id for each outline that
 * is lit by one, `phantom` for where advice would put a stem
 */
export const drawLive = (pen: Pen, scene: Scene, state: StudioState): string => {
  const drawn = new Set<string>()
  const { layout, shown, turn } = scene
  const byId = new Map(shown.stems.map((s) => [s.id, s]))
  const known = (ids: readonly string[]) => ids.flatMap((id) => byId.get(id) ?? [])
  const lifted = known(scene.lifted)
  for (const view of VIEWS) scene.moving.draw(pen, layout, view, turn, lifted, scene.stills.of(view))
  drawMouth(pen, layout, turn, shown.vessel, state.units)
  const moved = scene.moving.extent(turn, lifted, layout.scale * layout.ratio)
  drawDimensions(
    pen,
    layout,
    shown.vessel,
    joinExtents(scene.stills.of('elevation')?.extent ?? null, moved),
    state.units,
  )

  const reading = state.readings.find((r) => r.id === (state.markedReading ?? state.openReading))
  const marks = reading?.marks ?? []
  const selected = known(state.selection)
  const marked = known(marks.flatMap((m) => (m.kind === 'stems' ? m.ids : [])))
  const lit = new Set([...known(state.lit), ...marked, ...known(scene.hover ? [scene.hover] : [])])
  for (const stem of selected) lit.delete(stem)
  for (const view of VIEWS) {
    for (const stem of lit)
      if (atOutline(pen, scene, view, stem, (path) => strokeTwo(pen, TONES.lit, path))) drawn.add(`stem ${stem.id}`)
    for (const stem of known(state.focused ? [state.focused] : []))
      atOutline(pen, scene, view, stem, (path, at) => drawFocus(pen, path, at, layout))
    for (const stem of selected)
      if (scene.lifted.includes(stem.id)) setDownOutline(pen, scene, view, stem)
      else atOutline(pen, scene, view, stem, (path) => strokeTwo(pen, TONES.select, path))
  }
  const named = marks.flatMap((mark): Wish[] => {
    const wish = drawMark(pen, layout, turn, mark)
    if (!wish) return []
    drawn.add(mark.kind)
    return [wish]
  })
  const wishes = drawPhantom(pen, scene, byId, drawn)
  if (selected.length <= 2) {
    drawDropped(pen, layout, turn, selected)
    for (const stem of selected) wishes.push(numberOf(layout, turn, stem.index, stem))
  }
  drawHandles(pen, layout, turn, selected)
  if (lifted.length === 0) drawLabels(pen, [...wishes, ...named], boundsOf(layout), freeIn(scene))
  if (scene.ghost) {
    const alone = resolveArrangement({ ...shown.document, stems: [scene.ghost] }).stems[0]
    if (alone) drawGhost(pen, layout, turn, alone)
  }
  if (scene.marquee) drawMarquee(pen, scene.marquee)
  return [...drawn].join(', ')
}

/** Draws with a stem's outline, the pen's origin moved to its tip. @returns whether there is an outline to draw with */
const atOutline = (
  pen: Pen,
  { layout, outlines, turn }: Scene,
  view: ViewName,
  stem: ResolvedStem,
  draw: (outline: Path2D, at: Point2) => void,
): boolean => {
  const outline = outlines.path(layout, view, turn, stem)
  if (!outline) return false
  const at = placeOf(layout, view, turn, tipPoint(stem))
  pen.translate(at[0], at[1])
  draw(outline, at)
  pen.translate(-at[0], -at[1])
  return true
}

/** The outline of a selected stem in the hand, on whole device px. */
const setDownOutline = (pen: Pen, { layout, outlines, turn }: Scene, view: ViewName, stem: ResolvedStem): void => {
  const stamp = outlines.stamp(layout, view, turn, stem)
  if (!stamp) return
  const [x, y] = placeOf(layout, view, turn, tipPoint(stem))
  pen.save()
  pen.setTransform(1, 0, 0, 1, 0, 0)
  pen.drawImage(stamp.canvas, Math.round(x * layout.ratio) + stamp.left, Math.round(y * layout.ratio) + stamp.top)
  pen.restore()
}

const numberOf = (layout: Layout, turn: number, index: number, stem: Parameters<typeof tipPoint>[0]): Wish => ({
  words: String(index + 1),
  anchor: placeOf(layout, 'elevation', turn, tipPoint(stem)),
  clear: 9,
  view: 'elevation',
})

/** The advised position: outline in phantom line in both views, an arrow from where the head is now. */
const drawPhantom = (
  pen: Pen,
  scene: Scene,
  now: ReadonlyMap<string, Parameters<typeof tipPoint>[0]>,
  drawn: Set<string>,
): Wish[] => {
  const { phantom, layout, turn } = scene
  if (!phantom) return []
  const wishes: Wish[] = []
  for (const stem of phantom.resolved.stems) {
    if (!phantom.ids.includes(stem.id)) continue
    for (const view of VIEWS) {
      const to = placeOf(layout, view, turn, tipPoint(stem))
      const lines = phantom.outlines?.[view].get(stem.id)
      if (lines) {
        const path = new Path2D()
        path.addPath(pathAt(lines, layout.scale), new DOMMatrix([1, 0, 0, 1, to[0], to[1]]))
        strokeTwo(pen, TONES.phantom, path)
        drawn.add('phantom')
      }
      const old = now.get(stem.id)
      if (!old) continue
      const from = placeOf(layout, view, turn, tipPoint(old))
      if (Math.hypot(to[0] - from[0], to[1] - from[1]) < 6) continue
      pathOf(pen, [from, to])
      strokeTwo(pen, { core: 1, halo: 2.6 })
      arrow(pen, to[0], to[1], Math.atan2(to[1] - from[1], to[0] - from[0]), TOKENS.core, 9, 2.4)
      if (view === 'elevation') wishes.push({ ...numberOf(layout, turn, old.index, old), clear: 3 })
    }
  }
  return wishes
}

const drawMarquee = (pen: Pen, { from, to }: { from: Point2; to: Point2 }): void => {
  pathOf(pen, [from, [to[0], from[1]], to, [from[0], to[1]]], true)
  strokeTwo(pen, TONES.mark)
}

/** The parts of the sheet where words may stand: clear of the dimensions at the right. */
const boundsOf = (layout: Layout): Record<ViewName, Box> => {
  const split = splitOf(layout)
  const right = layout.compact ? 34 : 62
  return {
    elevation: { x: 6, y: 6, width: layout.width - right - 6, height: layout.tableY - 12 },
    plan: { x: 6, y: split + 20, width: layout.width - 12, height: layout.height - split - 56 },
  }
}

const freeIn =
  ({ layout, stills }: Scene) =>
  (box: Box): boolean => {
    for (const view of VIEWS) {
      if (overlap(box, headBox(layout, view))) return false
      const picture = stills.of(view)?.picture
      if (!picture) continue
      const { frame } = picture
      const base = view === 'elevation' ? layout.rimY : layout.planY
      const x = (box.x - layout.axisX) * layout.ratio - frame.left * frame.scale
      const y = (box.y - base) * layout.ratio + frame.top * frame.scale
      if (isCovered(picture, x, y, x + box.width * layout.ratio, y + box.height * layout.ratio)) return false
    }
    return true
  }
