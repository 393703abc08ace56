import type { CareRow } from './care.ts'
import { cite } from './sources.ts'
import type { Standing } from './types.ts'

/** A span that some sources give: least and most, with how well it is known. */
export interface Span {
  least: number
  most: number
  standing: Standing
  source: string
}

/** How quickly a plant fades or drops in ethylene: of fruit, exhaust and fading flowers. */
export interface Ethylene {
  level: string
  standing: Standing
  source: string
}

/** How long a plant takes and keeps, as far as it is known: days before the event, hours, °C. */
export interface Keeping {
  /** Hours in water before use. */
  water_h: Span | null
  /** Days from delivery until it is open enough; null: bought as it is wanted. */
  opens_d: Span | null
  /** Days before the event to have it in hand. */
  hand_d: Span | null
  /** Days before the event that it may stand in the finished piece. */
  placed_d: Span | null
  /** Days it keeps in the cool, and how cool, °C. */
  store_d: Span | null
  cool_C: Span | null
  /** Days it lasts in a vase. */
  vase_d: Span | null
  ethylene: Ethylene | null
}

const span = (row: readonly [number, number, string] | undefined): Span | null =>
  row ? { least: row[0], most: row[1], ...cite(row[2]) } : null

/** A row's care figures as spans; what is missing is not known. */
export const keepingOfRow = (care: CareRow): Keeping => ({
  water_h: span(care.cond),
  opens_d: span(care.opens),
  hand_d: span(care.hand),
  placed_d: span(care.early),
  store_d: span(care.keep),
  cool_C: span(care.cool),
  vase_d: span(care.vase),
  ethylene: care.ethylene ? { level: care.ethylene[0], ...cite(care.ethylene[1]) } : null,
})
