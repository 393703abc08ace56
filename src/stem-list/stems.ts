import type { Plant } from '../catalogue/index.ts'

/** Pieces of one plant and colour. */
export interface Pieces {
  /** Pieces that are a stem each, with all their heads. */
  wholes: number
  /** Pieces cut from a stem, one head each. */
  laterals: number
}

/** How many laterals one stem gives: its blooms (the catalogue's working figure), or 1 where it bears a single head. */
export const lateralsPerStem = (plant: Pick<Plant, 'manyHeaded' | 'bloomsPerStem'>): number =>
  plant.manyHeaded ? Math.max(1, plant.bloomsPerStem.value) : 1

/**
 * The fewest stems that give the pieces of `copies` arrangements together. A whole piece uses up its stem; laterals of all
 * the copies are cut from the same stems, so only the last one may have heads to spare: no fewer can do, since k stems
 * have k × perStem heads. (Rule: ours.)
 */
export const fewestStems = ({ wholes, laterals }: Pieces, perStem: number, copies: number): number =>
  // The hair keeps a quotient such as 3.0000000000000004 from asking for a fourth stem.
  wholes * copies + Math.ceil((laterals * copies) / perStem - 1e-9)
