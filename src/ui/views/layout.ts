import type { Arrangement, Point2, Vessel } from '../../arrangement/index.ts'
import { findPlant } from '../../catalogue/index.ts'
import type { Frame, ViewAngle } from '../../drawing/index.ts'
import { headOf } from '../../geometry/index.ts'
import type { Box } from './labels.ts'

export type ViewName = 'elevation' | 'plan'
export const VIEWS: readonly ViewName[] = ['elevation', 'plan']

/** Where both views stand on the sheet. Lengths in CSS px unless the name says otherwise; lines fall on whole device px. */
export interface Layout {
  width: number
  height: number
  /** Device px per CSS px. */
  ratio: number
  /** CSS px per mm, the same in both views. */
  scale: number
  /** The vessel's axis in both views. */
  axisX: number
  rimY: number
  tableY: number
  /** The axis in the plan. */
  planY: number
  ring_mm: number
  reach_mm: number
  top_mm: number
  vessel_mm: number
  /** Little room: fewer dimensions, no names beside the ring. */
  compact: boolean
}

export interface Sizes {
  /** From the rim to the highest tip. */
  top_mm: number
  /** From the axis to the farthest tip. */
  reach_mm: number
}

/** Sizes grow by steps, and shrink only when much is free, so that a small move leaves the scale of the sheet alone. Ours. */
const STEP_MM = 20
const SLACK_MM = 70
const stepped = (mm: number, before: number | undefined): number => {
  const next = Math.ceil((mm - 1e-6) / STEP_MM) * STEP_MM
  return before !== undefined && before >= next && before - next <= SLACK_MM ? before : next
}

/**
 * Room that the views have to give, with room for a first sketch: flowers stand one and a half times the vessel's larger
 * dimension over the rim (common practice, 1.5 to 2 times; the factors here are ours). Needs no stem worked out.
 * @param before sizes of the same design before the last step
 */
export const sizesOf = ({ vessel, stems }: Arrangement, before?: Sizes): Sizes => {
  const larger = Math.max(vessel.width, vessel.depth, vessel.height)
  let top = larger * 1.3
  let reach = Math.max(vessel.width, vessel.depth) * 0.5 + larger * 0.5
  for (const stem of stems) {
    const plant = findPlant(stem.plant)
    if (!plant) continue
    // The tip is the end of a line or leaf, and the centre of a head.
    const beyond = plant.headLength_mm ? 0 : headOf(stem, plant) / 2
    top = Math.max(top, stem.tip[2] + beyond)
    reach = Math.max(reach, Math.hypot(stem.tip[0], stem.tip[1]) + beyond)
  }
  return { top_mm: stepped(top, before?.top_mm), reach_mm: stepped(reach, before?.reach_mm) }
}

/** The tips break the ring a little, as a plate breaks its frame. Ours. */
const RING_OF_REACH = 0.9

const clamp = (x: number, least: number, most: number): number => Math.min(most, Math.max(least, x))

/**
 * Both views in a column of `width` × `height` CSS px: elevation above, plan below, one scale, x in line
 * (first-angle projection, ISO 5456-2).
 */
export const layOut = (
  width: number,
  height: number,
  ratio: number,
  sizes: Sizes,
  vessel: Pick<Vessel, 'height'>,
): Layout => {
  const compact = width < 480 || height < 640
  const ring_mm = sizes.reach_mm * RING_OF_REACH
  // Over the elevation; table line, ground hatch, spread dimension and (where there is room) 180°; arrow A.
  const [above, between, under] = compact ? [10, 34, 28] : [26, 60, 34]
  const tall = sizes.top_mm + vessel.height + 2 * ring_mm
  const beside = compact ? 4 : 34
  const scale = Math.max(
    0.05,
    Math.min(
      (height - above - between - under) / tall,
      (width / 2 - 4) / sizes.reach_mm,
      (width / 2 - beside) / ring_mm,
    ),
  )
  const spare = Math.max(0, height - above - between - under - tall * scale)
  const whole = (css: number): number => Math.round(css * ratio) / ratio
  const rimY = whole(above + spare * 0.3 + sizes.top_mm * scale)
  const tableY = whole(rimY + vessel.height * scale)
  const planY = whole(tableY + between + spare * 0.3 + ring_mm * scale)
  return {
    width,
    height,
    ratio,
    scale,
    axisX: whole(width / 2),
    rimY,
    tableY,
    planY,
    ring_mm,
    reach_mm: sizes.reach_mm,
    top_mm: sizes.top_mm,
    vessel_mm: vessel.height,
    compact,
  }
}

/** The view that a place on the sheet belongs to. */
export const viewAt = (layout: Layout, y: number): ViewName => (y < splitOf(layout) ? 'elevation' : 'plan')

/** Where the elevation's ground ends and the plan's begins. */
export const splitOf = ({ tableY, compact }: Layout): number => tableY + (compact ? 22 : 30)

/** Room of the view's name and what it is seen from, at the upper left of each view, CSS px. */
export const headBox = (layout: Layout, view: ViewName): Box => ({
  x: 0,
  y: view === 'elevation' ? 0 : splitOf(layout) + 2,
  width: 165,
  height: layout.compact ? 30 : 66,
})

/** Room of the upright dimensions at the right, CSS px. */
export const dimensionRoom = ({ compact }: Layout): number => (compact ? 34 : 62)

/** Room of the buttons that turn, at the lower left. */
export const turnBox = ({ height }: Layout): Box => ({ x: 0, y: height - 66, width: 160, height: 66 })

/** A place of a view, mm right of the axis and up, on the sheet. */
export const toSheet = (layout: Layout, view: ViewName, right: number, up: number): Point2 => [
  layout.axisX + right * layout.scale,
  (view === 'elevation' ? layout.rimY : layout.planY) - up * layout.scale,
]

/** A place on the sheet, mm right of the axis and up in that view. */
export const toView = (layout: Layout, view: ViewName, x: number, y: number): Point2 => [
  (x - layout.axisX) / layout.scale,
  ((view === 'elevation' ? layout.rimY : layout.planY) - y) / layout.scale,
]

export const angleOf = (view: ViewName, turn: number): ViewAngle => ({ turn, pitch: view === 'elevation' ? 0 : 90 })

/** The rectangle that is painted for a view: the column's width, with the axis on a whole device px. */
export const frameOf = (layout: Layout, view: ViewName): Frame => {
  const scale = layout.scale * layout.ratio
  const px = (css: number): number => Math.round(css * layout.ratio)
  const half = px(clamp(layout.axisX, 1, 2000))
  const [base, first, last] =
    view === 'elevation'
      ? [px(layout.rimY), 0, Math.min(px(layout.height), px(layout.tableY) + 1)]
      : [px(layout.planY), px(layout.tableY), px(layout.height)]
  return { left: -half / scale, right: half / scale, top: (base - first) / scale, bottom: (base - last) / scale, scale }
}
