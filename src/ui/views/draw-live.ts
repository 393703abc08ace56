import type { Point2 } from '../../arrangement/index.ts'
import { type ResolvedStem, resolveArrangement } from '../../geometry/index.ts'
import type { Mark } from '../../readings/index.ts'
import type { StudioState } from '../../state/index.ts'
import { drawDimensions, drawMouth } from './furniture.ts'
import { placeOf, tipPoint } from './handles.ts'
import { isCovered } from './hit.ts'
import { type Box, overlap } from './labels.ts'
import { dimensionRoom, headBox, type Layout, splitOf, VIEWS, type ViewName } from './layout.ts'
import type { Stamp } from './outlines.ts'
import { emptyPatch, type Patch, widenPatch } from './patch.ts'
import { type Pen, pathOf, strokeTwo, TONES } from './pen.ts'
import { drawLabels, drawMark, type Wish } from './reading-marks.ts'
import type { Scene } from './scene.ts'
import { drawDropped, drawFocus, drawGhost, drawHandles, shownHandles } from './selection-marks.ts'

/** Stems of the shown document by their ids, as far as it has them. */
export const known = ({ shown }: Scene, ids: readonly string[]): ResolvedStem[] =>
  ids.length === 0 ? [] : shown.stems.filter((s) => ids.includes(s.id))

/** Marks of the reading that is open or pointed at. */
const marksOf = ({ readings, markedReading, openReading }: StudioState): readonly Mark[] =>
  readings.find((r) => r.id === (markedReading ?? openReading))?.marks ?? NO_MARKS
const NO_MARKS: readonly Mark[] = []

/**
 * All that the marks depend on while something is in the hand, to be compared one by one: as long as none changes they
 * are not drawn again.
 */
export const marksKey = (scene: Scene, state: StudioState): readonly unknown[] => {
  const { layout, turn, shown, hover, phantom, ghost, marquee, outlines, reaches } = scene
  const own = [
    layout,
    turn,
    shown.vessel,
    hover,
    phantom,
    phantom?.outlines,
    ghost,
    marquee,
    outlines.count(scene.lifted),
  ]
  const { units, lit, focused, selection } = state
  return [...own, units, lit, focused, selection, marksOf(state), reaches.now()]
}

/**
 * What is drawn over the flowers and does not go along with the hand: mouth, dimensions, what is lit, marks and words.
 * @returns the marks that were drawn, in words: the kind of each mark of a reading, `stem` and its id for each outline that
 * is lit by one, `phantom` for what advice would change
 */
export const drawMarks = (pen: Pen, scene: Scene, state: StudioState): string => {
  const drawn = new Set<string>()
  const { layout, shown, turn } = scene
  const lifted = known(scene, scene.lifted)
  const taken = [
    ...scene.lettering,
    ...drawMouth(pen, layout, turn, shown.vessel, state.units),
    ...drawDimensions(pen, layout, shown.vessel, scene.reaches.now(), state.units),
  ]

  const marks = marksOf(state)
  const selected = known(scene, state.selection)
  const marked = marks.flatMap((m) => (m.kind === 'stems' ? m.ids : []))
  const lit = known(scene, [...state.lit, ...marked, scene.hover]).filter((s) => !selected.includes(s))
  const focused = known(scene, [state.focused])
  for (const view of VIEWS) {
    for (const stem of lit)
      if (atOutline(pen, scene, view, stem, (path) => strokeTwo(pen, TONES.lit, path))) drawn.add(`stem ${stem.id}`)
    for (const stem of focused) atOutline(pen, scene, view, stem, (path, at) => drawFocus(pen, path, at, layout))
  }
  const named = marks.flatMap((mark): Wish[] => {
    const wish = drawMark(pen, layout, turn, mark)
    if (!wish) return []
    drawn.add(mark.kind)
    return [wish]
  })
  const wishes = phantomWishes(pen, scene, drawn)
  drawGrips(pen, scene, state, false, null)
  if (selected.length <= 2) for (const stem of selected) wishes.push(numberOf(layout, turn, stem.index, stem))
  if (lifted.length === 0) drawLabels(pen, [...wishes, ...named], boundsOf(layout), freeIn(scene), taken)
  if (scene.ghost) {
    const alone = resolveArrangement({ ...shown.document, stems: [scene.ghost] }).stems[0]
    if (alone) drawGhost(pen, layout, turn, alone)
  }
  if (scene.marquee) drawMarquee(pen, scene.marquee)
  return [...drawn].join(', ')
}

/** Half of what a handle takes up, CSS px, with a px for soft edges; dropped lines are slimmer and end at handles. */
const HANDLE_PX = 14

/** Outlines, dropped lines and handles of selected stems: of those in the hand, or of the others. */
const drawGrips = (pen: Pen, scene: Scene, state: StudioState, inHand: boolean, corner: Patch | null): void => {
  const { layout, turn, lifted } = scene
  const selected = known(scene, state.selection)
  const those = selected.filter((s) => lifted.includes(s.id) === inHand)
  for (const view of VIEWS)
    for (const stem of those)
      if (corner) setDownOutline(pen, scene, view, stem, corner)
      else atOutline(pen, scene, view, stem, (path) => strokeTwo(pen, TONES.select, path))
  if (selected.length <= 2) drawDropped(pen, layout, turn, those)
  drawHandles(pen, gripsOf(scene, selected, those))
}

/** Handles of some of the selected stems; how many are shown goes by all. */
const gripsOf = ({ layout, turn }: Scene, selected: readonly ResolvedStem[], those: readonly ResolvedStem[]) =>
  shownHandles(layout, turn, selected).filter((h) => those.some((s) => s.id === h.id))

/** The patch of the sheet that holds all that goes along with the hand; null when nothing is in it. */
export const handPatch = (scene: Scene, state: StudioState): Patch | null => {
  const lifted = known(scene, scene.lifted)
  if (lifted.length === 0) return null
  const { layout, turn, moving, outlines } = scene
  const { ratio } = layout
  const patch = emptyPatch()
  const selected = known(scene, state.selection)
  const those = lifted.filter((s) => selected.includes(s))
  for (const view of VIEWS) {
    moving.widen(patch, layout, view, turn, lifted)
    for (const stem of those) {
      const stamp = outlines.stamp(layout, view, turn, stem)
      if (!stamp) continue
      const [left, top] = cornerOf(layout, view, turn, stem, stamp)
      widenPatch(patch, left, top, left + stamp.canvas.width, top + stamp.canvas.height)
    }
  }
  for (const { at } of gripsOf(scene, selected, those)) {
    const [left, top] = [(at[0] - HANDLE_PX) * ratio, (at[1] - HANDLE_PX) * ratio]
    widenPatch(patch, left, top, left + 2 * HANDLE_PX * ratio, top + 2 * HANDLE_PX * ratio)
  }
  patch.left = Math.max(0, patch.left)
  patch.top = Math.max(0, patch.top)
  patch.right = Math.min(Math.ceil(layout.width * ratio), patch.right)
  patch.bottom = Math.min(Math.ceil(layout.height * ratio), patch.bottom)
  return patch.right > patch.left && patch.bottom > patch.top ? patch : null
}

/** Draws all that goes along with the hand on a canvas of its own, whose corner stands at that of the patch. */
export const drawHand = (pen: Pen, scene: Scene, state: StudioState, patch: Patch): void => {
  const { layout, turn, moving, stills } = scene
  const lifted = known(scene, scene.lifted)
  const taken: Patch[] = []
  for (const view of VIEWS) moving.draw(pen, patch, taken, layout, view, turn, lifted, stills.of(view))
  pen.setTransform(layout.ratio, 0, 0, layout.ratio, -patch.left, -patch.top)
  drawGrips(pen, scene, state, true, patch)
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

/** Where a stamp's corner comes to lie on the sheet, whole device px. */
const cornerOf = (layout: Layout, view: ViewName, turn: number, stem: ResolvedStem, stamp: Stamp): Point2 => {
  const [x, y] = placeOf(layout, view, turn, tipPoint(stem))
  return [Math.round(x * layout.ratio) + stamp.left, Math.round(y * layout.ratio) + stamp.top]
}

/** The outline of a selected stem in the hand, on whole device px. */
const setDownOutline = (
  pen: Pen,
  { layout, outlines, turn }: Scene,
  view: ViewName,
  stem: ResolvedStem,
  corner: Patch,
): void => {
  const stamp = outlines.stamp(layout, view, turn, stem)
  if (!stamp) return
  const [left, top] = cornerOf(layout, view, turn, stem, stamp)
  pen.save()
  pen.setTransform(1, 0, 0, 1, -corner.left, -corner.top)
  pen.drawImage(stamp.canvas, left, top)
  pen.restore()
}

const numberOf = (layout: Layout, turn: number, index: number, stem: Parameters<typeof tipPoint>[0]): Wish => ({
  words: String(index + 1),
  anchor: placeOf(layout, 'elevation', turn, tipPoint(stem)),
  clear: 9,
  view: 'elevation',
  line: [],
})

/** What advice would change, with the numbers of the stems that would move. */
const phantomWishes = (pen: Pen, scene: Scene, drawn: Set<string>): Wish[] => {
  const { phantom, drawPhantom, layout, turn, shown } = scene
  if (!phantom || !drawPhantom) return []
  const done = drawPhantom(pen, phantom, layout, turn, new Map(shown.stems.map((s) => [s.id, s])))
  if (done.drawn) drawn.add('phantom')
  return done.moved.map((old) => ({ ...numberOf(layout, turn, old.index, old), clear: 3 }))
}

const drawMarquee = (pen: Pen, { from, to }: { from: Point2; to: Point2 }): void => {
  pathOf(pen, [from, [to[0], from[1]], to, [from[0], to[1]]], true)
  strokeTwo(pen, TONES.mark)
}

/** The parts of the sheet where words may stand: clear of the dimensions at the right. */
const boundsOf = (layout: Layout): Record<ViewName, Box> => {
  const split = splitOf(layout)
  const right = dimensionRoom(layout)
  return {
    elevation: { x: 6, y: 2, width: layout.width - right - 6, height: layout.tableY - 8 },
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
