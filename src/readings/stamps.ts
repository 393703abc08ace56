import { type Axes, createLayer, cutStamp, type Grid, type Layer, type Stamp } from '../geometry/index.ts'
import { HALF_WAYS, type Ready, SIDE, SIDE_AXES } from './extents.ts'
import { type MouthStamp, type MouthView, stampMouth } from './mouth.ts'

/** A stem's own pictures: the first six ways round, the plan, and what it covers of the mouth. */
export interface Stamps {
  views: Stamp[]
  mouth: MouthStamp
}

interface Known {
  mm: number
  zeroRow: number
  /** null while the stem was painted but one time. */
  stamps: Stamps | null
}

/** By stem made ready, which belongs to one shape and one vessel. */
const known = new WeakMap<Ready, Known>()
let side: Layer | null = null
let above: Layer | null = null

/**
 * The stamps of a stem that is painted in the same shape and at the same scale again, cut the second time; null the first
 * time, when it is painted straight away: what moves is never painted twice.
 */
export const stampsOf = (
  ready: Ready,
  grid: Grid,
  plan: Grid,
  planAxes: Axes,
  mouths: readonly MouthView[],
): Stamps | null => {
  const before = known.get(ready)
  if (!before || before.mm !== grid.mm || before.zeroRow !== grid.zeroRow) {
    known.set(ready, { mm: grid.mm, zeroRow: grid.zeroRow, stamps: null })
    return null
  }
  if (before.stamps) return before.stamps
  side ??= createLayer(SIDE * SIDE, true, true)
  above ??= createLayer(SIDE * SIDE, false, false)
  const views: Stamp[] = []
  for (let way = 0; way < HALF_WAYS; way++) views.push(cutStamp(side, grid, SIDE_AXES[way]!, ready.parts))
  views.push(cutStamp(above, plan, planAxes, ready.parts))
  before.stamps = { views, mouth: stampMouth(ready, mouths) }
  return before.stamps
}
