import {
  PART_STRIDE,
  type Resolved,
  type ResolvedStem,
  reachAlong,
  type StemCurve,
  viewAxes,
} from '../geometry/index.ts'
import { BARE, partsOf } from './parts.ts'
import type { Reach } from './types.ts'

// Everything that a stem's shape depends on comes with its curve: see geometry's resolve.ts.
const known = new WeakMap<StemCurve, { turn: number; reach: Reach | null }>()

const reachOfStem = (stem: ResolvedStem, turn: number): Reach | null => {
  const before = known.get(stem.curve)
  if (before?.turn === turn) return before.reach
  const { right } = viewAxes({ turn, pitch: 0 })
  const parts = partsOf(stem)
  let reach: Reach | null = null
  for (let o = 0; o < parts.length; o += PART_STRIDE) {
    if (parts[o + 1] === BARE) continue
    const [from, to] = reachAlong(parts, o, right)
    reach = widest(reach, { left: from, right: to, top: reachAlong(parts, o, [0, 0, 1])[1] })
  }
  known.set(stem.curve, { turn, reach })
  return reach
}

const widest = (a: Reach | null, b: Reach): Reach =>
  a ? { left: Math.min(a.left, b.left), right: Math.max(a.right, b.right), top: Math.max(a.top, b.top) } : b

/**
 * How far blooms and leaves reach seen level from a turn, mm: what height and width are said to be, on every sheet. Taken from
 * the stand-ins, as the reading of proportion takes its own: the height is the reading's; the width is its spread where
 * that is widest from this turn and nothing that hangs below the rim reaches farther. Bare stems are left out.
 * @param turn degrees
 * @returns null where there is neither bloom nor leaf
 */
export const reachOf = ({ stems }: Resolved, turn: number): Reach | null => {
  let reach: Reach | null = null
  for (const stem of stems) {
    const own = reachOfStem(stem, turn)
    if (own) reach = widest(reach, own)
  }
  return reach
}
