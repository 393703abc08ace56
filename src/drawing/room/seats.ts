import type { TableShape } from '../../arrangement/index.ts'
import type { Manner, Place } from './types.ts'

/** Room that a guest has along the edge: 24 in, common practice. */
export const EACH_mm = 610
/** A café table is no wider than this: 30 in, common practice; half an inch over, for tables sold by the centimetre. */
const CAFE_mm = 775
/** Two at a café table. Common practice. */
const CAFE_SEATS = 2
/**
 * From one piece to the next down a long table: 2 ft, a guest's room, and no nearer than twice as wide as they are, so that the table is not a hedge. Ours.
 */
const ROW = { apart_mm: EACH_mm, widths: 2 }
/** What is no wider than this stands as close as that: single stems in bottles, a hand or two from one to the next. Ours. */
const SLIM = { wide_mm: 150, apart_mm: 250 }

export interface Seat {
  /** On the table's edge. */
  edge: Place
  /** Toward the middle, a unit vector. */
  inward: Place
}

export const mannerOf = (table: TableShape): Manner => {
  if (table.shape === 'round') return table.diameter <= CAFE_mm ? 'café' : 'round'
  return Math.max(table.length, table.width) <= CAFE_mm ? 'café' : 'row'
}

const roundSeats = (diameter: number, count: number): Seat[] =>
  Array.from({ length: count }, (_, i) => {
    // The viewer looks between two guests.
    const a = (2 * Math.PI * (i + 0.5)) / count - Math.PI / 2
    const out: Place = [Math.cos(a), Math.sin(a)]
    return { edge: [(out[0] * diameter) / 2, (out[1] * diameter) / 2], inward: [-out[0], -out[1]] }
  })

/** Where guests sit: evenly round a round table, along both long sides of a long one. */
export const seatsOf = (table: TableShape): Seat[] => {
  const café = mannerOf(table) === 'café'
  if (table.shape === 'round')
    return roundSeats(table.diameter, café ? CAFE_SEATS : Math.floor((Math.PI * table.diameter) / EACH_mm))
  const n = café ? CAFE_SEATS / 2 : Math.floor(table.length / EACH_mm)
  const step = table.length / Math.max(1, n)
  return [-1, 1].flatMap((side) =>
    Array.from(
      { length: n },
      (_, i): Seat => ({
        edge: [(i - (n - 1) / 2) * step, (side * table.width) / 2],
        inward: [0, -side],
      }),
    ),
  )
}

/**
 * Where a piece stands again down a long table, at even distances with the designed one in the middle: an odd number of
 * pieces, and no more than are made.
 * @param wide how wide one is along the table, mm
 */
export const copiesOf = (table: TableShape, made: number, wide: number): Place[] => {
  if (table.shape === 'round' || mannerOf(table) === 'café') return []
  const least = wide <= SLIM.wide_mm ? SLIM.apart_mm : ROW.apart_mm
  const fit = Math.min(made, Math.floor(table.length / Math.max(least, ROW.widths * wide) + 0.05))
  const each = Math.floor((Math.max(1, fit) - 1) / 2)
  const step = table.length / (2 * each + 1)
  return Array.from({ length: each }, (_, i): Place[] => [
    [-(i + 1) * step, 0],
    [(i + 1) * step, 0],
  ]).flat()
}

/** How far inside the edge a point is, mm; negative over it. */
export const fromEdge = (table: TableShape, [x, y]: Place): number =>
  table.shape === 'round'
    ? table.diameter / 2 - Math.hypot(x, y)
    : Math.min(table.length / 2 - Math.abs(x), table.width / 2 - Math.abs(y))
