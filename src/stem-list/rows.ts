import { TRIM_mm } from '../catalogue/index.ts'
import type { Resolved, ResolvedStem } from '../geometry/index.ts'
import { fewestOf } from './cutting.ts'
import type { Wanted } from './pieces.ts'
import type { StemRow } from './types.ts'
import { yieldOf } from './yield.ts'

/** Stems that share a key, in order of first appearance in the document. */
export const grouped = (resolved: Resolved, keyOf: (stem: ResolvedStem) => string): ResolvedStem[][] => {
  const groups = new Map<string, ResolvedStem[]>()
  for (const stem of resolved.stems) {
    const key = keyOf(stem)
    const group = groups.get(key)
    if (group) group.push(stem)
    else groups.set(key, [stem])
  }
  return [...groups.values()]
}

export const colourKey = (stem: ResolvedStem): string => stem.colour.toLowerCase()

const wantedOf = ({ stem, curve }: ResolvedStem): Wanted => ({
  count: 1,
  length_mm: curve.cut_mm + TRIM_mm,
  piece: stem.piece,
})

/** The list of one arrangement: a row for each plant, colour and role, in order of first appearance. Lengths in mm. */
export const stemList = (resolved: Resolved): StemRow[] =>
  grouped(resolved, (s) => `${s.plant.id} ${colourKey(s)} ${s.role}`).map((stems) => {
    const first = stems[0] as ResolvedStem
    const lengths = stems.map((s) => s.curve.cut_mm)
    const count = fewestOf(stems.map(wantedOf), yieldOf(first.plant))
    return {
      plant: first.plant.id,
      colour: colourKey(first),
      role: first.role,
      pieces: stems.length,
      stems: count.stems,
      cut_mm: [Math.min(...lengths), Math.max(...lengths)],
      ...(count.tooLong > 0 ? { tooLong: count.tooLong } : {}),
      ids: stems.map((s) => s.id),
    }
  })

/** The row that a stem is in. */
export const rowOf = (rows: readonly StemRow[], stemId: string): StemRow | undefined =>
  rows.find((row) => row.ids.includes(stemId))
