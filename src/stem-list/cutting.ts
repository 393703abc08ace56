import { alongStems } from './along.ts'
import { fitsIn, type Wanted, type Yield } from './pieces.ts'

export interface Count {
  stems: number
  /** Fewer than these can't do: as many as `stems`, but where many greens are cut along their length (alongStems). */
  least: number
  /** Of these, stems that a whole piece uses up. */
  wholes: number
  /** Side stems of the others that no piece takes; their main axes are all taken. */
  sidesLeft: number
  /** Pieces longer than the main axis of a stem: they are counted, a stem each, but no usual stem gives them. */
  tooLong: number
}

/**
 * The fewest stems that give all the pieces. A whole piece takes a stem, and so does a lateral that is longer than a side
 * stem, for a stem has one main axis; the others are cut from whatever is left of those stems and, beyond that, from new
 * ones. With k stems for laterals there are k main axes and k × (1 + sides) pieces in all; each short piece fits any of them
 * and each long one a main axis alone, so k stems do exactly if k ≥ the long ones and k × (1 + sides) ≥ all (Hall's
 * condition for nested sets: P. Hall, J. London Math. Soc. 10:26–30, 1935). Greens that are cut along their length: alongStems.
 */
export const fewestOf = (wanted: readonly Wanted[], given: Yield): Count => {
  const { main_mm, sides, side_mm, along = 1 } = given
  let wholes = 0
  let long = 0
  let laterals = 0
  let tooLong = 0
  for (const { count, length_mm, piece } of wanted) {
    if (!fitsIn(length_mm, main_mm)) tooLong += count
    if (piece === 'whole') wholes += count
    else {
      laterals += count
      if (!fitsIn(length_mm, side_mm)) long += count
    }
  }
  if (along > 1) {
    const { stems, least } = alongStems(wanted, { main_mm, along })
    return { stems, least, wholes: 0, sidesLeft: 0, tooLong }
  }
  const apart = Math.max(long, Math.ceil(laterals / (1 + sides)))
  const stems = wholes + apart
  return { stems, least: stems, wholes, sidesLeft: apart * (1 + sides) - laterals, tooLong }
}
