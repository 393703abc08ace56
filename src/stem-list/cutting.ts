/** Places that want the same piece: one stem of a design, once in each of its copies. */
export interface Wanted {
  /** How many of it, a whole number from 0 up. */
  count: number
  /** Length to cut first, trimming allowance included, mm. */
  length_mm: number
  /** `whole` keeps all its heads and so uses up a stem; `lateral` is one head with a stalk of its own. */
  piece: 'whole' | 'lateral'
}

/** What one bought stem gives when it is cut apart: one long piece along the main axis, and side stems. Lengths in mm. */
export interface Yield {
  main_mm: number
  /** Side stems beside the main axis; 0 where a stem bears one head. */
  sides: number
  /** The longest piece that a side stem gives. */
  side_mm: number
}

export interface Count {
  stems: number
  /** Of these, stems that a whole piece uses up. */
  wholes: number
  /** Side stems of the others that no piece takes; their main axes are all taken. */
  sidesLeft: number
  /** Pieces longer than the main axis of a stem: they are counted, a stem each, but no usual stem gives them. */
  tooLong: number
}

/** Lengths come from curves: a hair more than the stem has is no more. */
const HAIR_mm = 1e-6

/** Does a piece come out of a part of so much? Both mm. */
export const fitsIn = (length_mm: number, room_mm: number): boolean => length_mm <= room_mm + HAIR_mm

/**
 * The fewest stems that give all the pieces. A whole piece takes a stem, and so does a lateral that is longer than a side
 * stem, for a stem has one main axis; the others are cut from whatever is left of those stems and, beyond that, from new
 * ones. With k stems for laterals there are k main axes and k × (1 + sides) pieces in all; each short piece fits any of them
 * and each long one a main axis alone, so k stems do exactly if k ≥ the long ones and k × (1 + sides) ≥ all (Hall's
 * condition for nested sets: P. Hall, J. London Math. Soc. 10:26–30, 1935).
 */
export const fewestOf = (wanted: readonly Wanted[], { main_mm, sides, side_mm }: Yield): Count => {
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
  const apart = Math.max(long, Math.ceil(laterals / (1 + sides)))
  return { stems: wholes + apart, wholes, sidesLeft: apart * (1 + sides) - laterals, tooLong }
}
