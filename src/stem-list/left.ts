import { fitsIn, type Wanted, type Yield } from './pieces.ts'

/** What nothing takes: whole stems beyond those needed and spare, and side stems of those that are cut apart. */
export interface Left {
  stems: number
  sides: number
}

/** More pieces like one of a design that what is left over would still give. */
export interface Use {
  design: string
  /** What they are cut to first, as the piece they are like, mm. */
  length_mm: number
  /** More of them in each … */
  each: number
  /** … of so many copies. */
  copies: number
}

/** So many pieces like this one: of greens as many as follow one another along a stem; else a whole one takes a stem, a long one its main axis, a short one any part of it. */
const morePieces = (
  { piece, length_mm }: Wanted,
  { main_mm, sides, side_mm, along = 1 }: Yield,
  left: Left,
): number => {
  if (!fitsIn(length_mm, main_mm)) return 0
  if (along > 1) return left.stems * Math.min(along, Math.max(1, Math.floor(main_mm / length_mm)))
  if (piece === 'whole' || !fitsIn(length_mm, side_mm)) return left.stems
  return left.stems * (1 + sides) + left.sides
}

/** For each design the piece of it that there is most for; of equals the longest. */
export const usesOf = (places: readonly (Wanted & { design: string })[], given: Yield, left: Left): Use[] => {
  const best = new Map<string, Use & { pieces: number }>()
  for (const place of places) {
    const { design, count, length_mm } = place
    const pieces = morePieces(place, given, left)
    const so = best.get(design)
    if (pieces === 0 || (so && (so.pieces > pieces || (so.pieces === pieces && so.length_mm >= length_mm)))) continue
    const each = Math.floor(pieces / count)
    best.set(design, { design, length_mm, pieces, each: Math.max(1, each), copies: each > 0 ? count : pieces })
  }
  return [...best.values()].map(({ pieces: _, ...use }) => use)
}
