import type { BenchPiece } from '../../stem-list/index.ts'
import type { EventDesign } from '../../work-plan/index.ts'
import { type Plan, placeDaysOf, placingOf } from '../../work-plan/index.ts'

const copiesWords = ([first, last]: readonly [number, number], all: number): string => {
  if (all === 1) return ''
  if (first === 1 && last === all) return `, each of ${all}`
  return first === last ? `, copy ${first}` : `, copies ${first}–${last}`
}

/** A stem's number on the bench sheet of its design, by its id. */
export const benchNumbers = ({ resolved }: EventDesign, plan: Plan): Map<string, number> =>
  new Map(placingOf(resolved, placeDaysOf(plan, resolved)).map((p) => [p.id, p.number]))

/**
 * Whom a piece is for: `Orchard supper, stems 22, 24, each of 12`; a design that is alone is not named.
 * @param numbersOf see benchNumbers
 */
export const pieceWords = (
  { design: key, stems, copies }: BenchPiece,
  designs: readonly EventDesign[],
  numbersOf: (design: EventDesign) => ReadonlyMap<string, number>,
): string => {
  const design = designs.find((d) => d.design === key)
  if (!design) return ''
  const known = numbersOf(design)
  const numbers = stems.map((id) => known.get(id) ?? 0).sort((a, b) => a - b)
  const whose = designs.length > 1 ? `${design.title}, ` : ''
  return `${whose}${numbers.length > 1 ? 'stems' : 'stem'} ${numbers.join(', ')}${copiesWords(copies, design.copies)}`
}
