/** Places that want the same piece: one stem of a design, once in each of its copies. */
export interface Wanted {
  /** How many of it, a whole number from 0 up. */
  count: number
  /** Length to cut first, trimming allowance included, mm. */
  length_mm: number
  /** `whole` keeps all its heads and so uses up a stem; `lateral` is one head with a stalk of its own. */
  piece: 'whole' | 'lateral'
  /** Key of the design it is for, where there are several. */
  design?: string
}

/** What one bought stem gives when it is cut apart: one long piece along the main axis, and side stems. Lengths in mm. */
export interface Yield {
  main_mm: number
  /** Side stems beside the main axis; 0 where a stem bears one head. */
  sides: number
  /** The longest piece that a side stem gives. */
  side_mm: number
  /** Of greens that may be cut one piece after the other along their length: most pieces of a stem. Missing: one. */
  along?: number
}

/** Lengths come from curves: a hair more than the stem has is no more. */
export const HAIR_mm = 1e-6

/** Does a piece come out of a part of so much? Both mm. */
export const fitsIn = (length_mm: number, room_mm: number): boolean => length_mm <= room_mm + HAIR_mm
