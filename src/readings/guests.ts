import type { TableShape } from '../arrangement/index.ts'

/**
 * Heads and eyes of seated adults, mm: ANSUR II, the 2012 Anthropometric Survey of U.S. Army Personnel (Gordon et al. 2014,
 * NATICK/TR-15/007), public data of 1,986 women and 4,082 men, worked out by us. Fit adults, upright.
 */
const EYES_OVER_SEAT = {
  /** Women, 5th percentile. */
  short: 698,
  /** Mean of the medians of women, 748, and men, 804. */
  mid: 776,
  /** Men, 95th percentile. */
  tall: 860,
}
/** Means of women and men: head breadth 148 and 154; sitting height less eye height 109 and 114; menton to sellion 113 and 123. */
export const FACE = { width: 151, crown: 111, chin: 118 }
export const FACE_HEIGHT = FACE.crown + FACE.chin

/** Common practice: a chair's seat, and a table 30 in high. */
const SEAT = 450
const TABLE = 762
/** How far behind the table's edge a guest's eyes are. Ours. */
const BEHIND_EDGE = 100

/** Height of the eyes over the table top, mm, of three pairs of guests: short facing short, middling, tall. */
export const EYES: readonly number[] = Object.values(EYES_OVER_SEAT).map((eye) => eye + SEAT - TABLE)
export const GUESTS = EYES.length
export const EYE_LOW = EYES[0]!
export const EYE_HIGH = EYES[GUESTS - 1]!

/** Halfway between two guests their faces look half as large: what stays under, or over, these hides neither of any pair. */
export const CLEAR_UNDER = EYE_LOW - FACE.chin / 2
export const CLEAR_OVER = EYE_HIGH + FACE.crown / 2

/** From the middle of the table to its edge, mm: across the width of a long one. */
export const halfTable = (table: TableShape): number =>
  (table.shape === 'round' ? table.diameter : Math.min(table.width, table.length)) / 2

/** From the middle of the table to a guest's eyes, level, mm. */
export const seatDistance = (table: TableShape): number => halfTable(table) + BEHIND_EDGE
