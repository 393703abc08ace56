import type { Arrangement, Edit, Point2, Point3, Stem, Vessel } from '../../arrangement/index.ts'
import { cosSin, innerSection, projectPoint, reachIn, stemCurve } from '../../geometry/index.ts'
import type { HandleKind } from './handles.ts'
import { angleOf, type ViewName } from './layout.ts'

export type Move =
  | { kind: Exclude<HandleKind, 'tip'>; view: ViewName; id: string }
  | { kind: 'body'; view: ViewName; ids: string[] }

/** Steps of a drag, mm: finer than any screen pixel shows. Ours. */
const STEP_MM = 0.1
const rounded = (mm: number): number => Math.round(mm / STEP_MM) * STEP_MM + 0
const neat = (mm: number): number => Number(rounded(mm).toFixed(1))

/** A shift seen in a view (mm right, mm up) as a shift of the arrangement. */
export const shiftOf = (view: ViewName, turn: number, right: number, up: number): Point3 => {
  const [c, s] = cosSin(turn)
  return view === 'elevation'
    ? [neat(right * c), neat(-right * s), neat(up)]
    : [neat(right * c + up * s), neat(-right * s + up * c), 0]
}

/** Stems stand clear of the wall by this much, mm: about the half of a stem. Ours. */
const STEM_ROOM = 3

/** The nearest place inside the mouth along the line to its centre, mm. */
export const insideMouth = (vessel: Vessel, p: Point2): Point2 => {
  const { a, b } = innerSection(vessel, 1)
  const section = { a: Math.max(0.5, a - STEM_ROOM), b: Math.max(0.5, b - STEM_ROOM) }
  if (vessel.plan === 'rectangular')
    return [
      neat(Math.max(-section.a, Math.min(section.a, p[0]))),
      neat(Math.max(-section.b, Math.min(section.b, p[1]))),
    ]
  const reach = reachIn(vessel, section, p[0], p[1])
  const k = reach > 1 ? 1 / reach : 1
  return [neat(p[0] * k), neat(p[1] * k)]
}

/** Tips stay over the table, mm. */
const overTable = (vessel: Vessel, stems: readonly Stem[], by: Point3): Point3 => {
  const lowest = Math.min(...stems.map((s) => s.tip[2]))
  const least = Math.min(0, -vessel.height - lowest)
  return [by[0], by[1], Math.max(by[2], neat(least))]
}

/**
 * How a stem bows when the middle handle is drawn by (right, up) mm in a view: along the way that the middle itself
 * moves when the stem bows more. No change where that way points at the eye.
 */
const bentBy = (stem: Stem, vessel: Vessel, view: ViewName, turn: number, right: number, up: number): number => {
  const middle = (bend: number): Point3 =>
    projectPoint(stemCurve({ ...stem, bend }, vessel).middle, angleOf(view, turn))
  const [from, to] = [middle(stem.bend - 0.05), middle(stem.bend + 0.05)]
  const way: Point2 = [(to[0] - from[0]) / 0.1, (to[1] - from[1]) / 0.1]
  const size = way[0] ** 2 + way[1] ** 2
  // A bow of the whole length would move the middle by about the length; under a tenth of that it can't be steered.
  const long = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]) / 0.1
  if (size < (0.1 * long) ** 2 || size === 0) return stem.bend
  const bend = stem.bend + (right * way[0] + up * way[1]) / size
  return Number(Math.max(-0.5, Math.min(0.5, bend)).toFixed(3))
}

/**
 * The edit that a drag amounts to.
 * @param document as it was when the drag began
 * @param right, up how far the pointer has moved in the view, mm
 * @param whole the crossings at the mouth go along
 * @returns null when the stem is no longer there
 */
export const editOf = (
  document: Arrangement,
  move: Move,
  turn: number,
  right: number,
  up: number,
  whole: boolean,
): Edit | null => {
  const { vessel } = document
  const ids = move.kind === 'body' ? move.ids : [move.id]
  const stems = document.stems.filter((s) => ids.includes(s.id))
  const first = stems[0]
  if (!first) return null
  if (move.kind === 'body')
    return { do: 'shift-stems', ids, by: overTable(vessel, stems, shiftOf(move.view, turn, right, up)), whole }
  if (move.kind === 'bend')
    return { do: 'set-stems', ids, set: { bend: bentBy(first, vessel, move.view, turn, right, up) } }
  const by = shiftOf(move.view, turn, right, move.view === 'plan' ? up : 0)
  return { do: 'set-stems', ids, set: { mouth: insideMouth(vessel, [first.mouth[0] + by[0], first.mouth[1] + by[1]]) } }
}
