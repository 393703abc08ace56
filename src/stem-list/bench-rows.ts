import type { Cut } from './cut-plan.ts'
import type { Place } from './order.ts'

/** Pieces of one kind, as they are cut at the bench. */
export interface BenchPiece {
  from: 'main' | 'side'
  /** Out of each stem of its row. */
  each: number
  /** What to cut it to, allowance included, mm. */
  length_mm: number
  design: string
  /** Stems of the design that it is for. */
  stems: string[]
  /** For these copies of it, from the first one, 1, on. */
  copies: [first: number, last: number]
}

/** Stems that are cut alike. */
export interface BenchRow {
  stems: number
  pieces: BenchPiece[]
}

/** Rows of one piece each that read the same at the bench: same design, same copies, same length as it is written. */
const alike = (a: BenchRow, b: BenchRow, written: (mm: number) => string): boolean => {
  const [p, q] = [a.pieces[0], b.pieces[0]]
  return (
    a.pieces.length === 1 &&
    b.pieces.length === 1 &&
    p !== undefined &&
    q !== undefined &&
    p.from === q.from &&
    p.design === q.design &&
    p.copies[0] === q.copies[0] &&
    p.copies[1] === q.copies[1] &&
    written(p.length_mm) === written(q.length_mm)
  )
}

/**
 * A cutting plan as it is read at the bench: a row for each way of cutting, which stems of which design and copies it serves.
 * Stems that give a single piece are one row where their lengths are written the same; the longest of them is cut, so that all fit.
 * @param written a length as it stands on screen or paper
 */
export const benchRows = (
  cuts: readonly Cut[],
  places: readonly Place[],
  written: (mm: number) => string,
): BenchRow[] => {
  const rows: BenchRow[] = []
  for (const { times, pieces } of cuts) {
    const row: BenchRow = {
      stems: times,
      pieces: pieces.map(({ wanted, count, first, from }) => {
        const { design, stem, length_mm } = places[wanted]!
        return { from, each: count, length_mm, design, stems: [stem], copies: [first, first + times * count - 1] }
      }),
    }
    const same = rows.find((other) => alike(other, row, written))
    if (!same) {
      rows.push(row)
      continue
    }
    const [into, more] = [same.pieces[0]!, row.pieces[0]!]
    same.stems += row.stems
    into.stems.push(...more.stems)
    into.length_mm = Math.max(into.length_mm, more.length_mm)
  }
  return rows
}
