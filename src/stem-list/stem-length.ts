import { RECUT_mm } from '../catalogue/index.ts'
import { cutPlan } from './cut-plan.ts'
import type { OrderLine } from './order.ts'
import { fitsIn } from './pieces.ts'

/** How long the stems of a line have to be as they are sold, mm. */
export interface AskedLength {
  /** At least, for all the pieces that a usual stem gives; null where it gives none of them. */
  least_mm: number | null
  /** Pieces that no usual stem gives, and what they take; null where there are none. */
  longer: { pieces: number; least_mm: number } | null
  /** The usual stem. */
  usual_mm: number
  /** Side stems that are cut off have to give so much; null where none are. */
  side_mm: number | null
}

/**
 * The least length to ask a seller for: what is cut first along the main axis, allowance included, and the recut on arrival (RECUT_mm).
 * Where greens are cut into pieces one after the other it is all of them together.
 */
export const lengthToAsk = ({ places, given, tooLong }: OrderLine): AskedLength => {
  const mains: number[] = []
  const sides: number[] = []
  for (const { pieces } of cutPlan(places, given)) {
    const along = pieces.filter((p) => p.from === 'main')
    mains.push(along.reduce((sum, p) => sum + p.count * places[p.wanted]!.length_mm, 0))
    sides.push(...pieces.filter((p) => p.from === 'side').map((p) => places[p.wanted]!.length_mm))
  }
  const most = (lengths: readonly number[]): number => Math.max(...lengths) + RECUT_mm
  const usual = tooLong > 0 ? mains.filter((mm) => fitsIn(mm, given.main_mm)) : mains
  return {
    least_mm: usual.length > 0 ? most(usual) : null,
    longer: tooLong > 0 ? { pieces: tooLong, least_mm: most(mains) } : null,
    usual_mm: given.main_mm + RECUT_mm,
    side_mm: sides.length > 0 ? Math.max(...sides) : null,
  }
}
