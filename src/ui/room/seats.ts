import type { TableShape } from '../../arrangement/index.ts'

/** Room that a guest has along the edge: 24 in, common practice. */
const EACH_mm = 610
/** A dinner plate across, and how far it stands from the edge: common practice (about 10½ in and 1 in). */
export const PLATE_mm = 270
const FROM_EDGE_mm = 25

/** Where plates stand, mm from the middle of the table: x along a long table's length, y away from the viewer. */
export const platesOf = (table: TableShape): [x: number, y: number][] => {
  const inward = FROM_EDGE_mm + PLATE_mm / 2
  if (table.shape === 'round') {
    const n = Math.floor((Math.PI * table.diameter) / EACH_mm)
    const r = table.diameter / 2 - inward
    if (r < PLATE_mm / 2) return []
    return Array.from({ length: n }, (_, i) => {
      const a = (2 * Math.PI * i) / n - Math.PI / 2
      return [r * Math.cos(a), r * Math.sin(a)]
    })
  }
  const y = table.width / 2 - inward
  if (y < PLATE_mm / 2) return []
  const n = Math.floor(table.length / EACH_mm)
  const step = table.length / Math.max(1, n)
  return [-y, y].flatMap((side) =>
    Array.from({ length: n }, (_, i): [number, number] => [(i - (n - 1) / 2) * step, side]),
  )
}
