import type { Role } from '../arrangement/index.ts'
import type { Pack } from './packs.ts'

export interface StemRow {
  plant: string
  /** #rrggbb */
  colour: string
  role: Role
  /** Pieces in one arrangement. */
  pieces: number
  /** Stems to cut them from, one arrangement alone. */
  stems: number
  /** Least and most cut length, mm, from the real curves. */
  cut_mm: [number, number]
  /** Pieces longer than a stem of the catalogue's working length gives; only where there are any. */
  tooLong?: number
  ids: string[]
}

export interface PurchaseLine {
  plant: string
  colour: string
  pieces: number
  stems: number
  spareStems: number
  /** null: bought by the stem, or in bunches of more than one size. */
  bunchSize: number | null
  bunches: number | null
  leftover: number
  /** In the currency's main unit. */
  cost: number
}

export interface Purchase {
  copies: number
  currency: string
  lines: PurchaseLine[]
  total: number
}

/** The person's own prices; what is not in it falls back to the example prices, which are invented and say so. */
export interface PriceBook {
  /** ISO 4217 */
  currency: string
  /** Plant id → price of a bunch (of a stem where no bunch size is known), integer minor units. */
  perBunch: Record<string, number>
  /** Plant id → the sizes and prices it is sold in, instead of the one bunch of the catalogue. */
  packs?: Record<string, Pack[]>
}
