import type { TableShape, Vessel } from '../arrangement/index.ts'
import { widestSection } from '../geometry/index.ts'

export const WIDER_THAN_TABLE = 'The vessel is wider than the table: choose another vessel or table.'

/**
 * Does a vessel stand on its table with all of itself, set in the middle, its longer side along the longer side? Over an edge
 * neither its foot nor what it carries can be judged. Of a rectangle on a round table the corners count.
 */
export const standsOnTable = (vessel: Vessel, table: TableShape): boolean => {
  const { a, b } = widestSection(vessel)
  const [long, short] = [2 * Math.max(a, b), 2 * Math.min(a, b)]
  if (table.shape === 'rectangular')
    return long <= Math.max(table.length, table.width) && short <= Math.min(table.length, table.width)
  return (vessel.plan === 'rectangular' ? Math.hypot(long, short) : long) <= table.diameter
}
