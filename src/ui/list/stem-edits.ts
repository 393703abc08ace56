import type { Edit } from '../../arrangement/index.ts'
import type { ResolvedStem } from '../../geometry/index.ts'
import { fromUnit, type Units } from '../../units/index.ts'

/** The value all of them share, or their mean where they differ. */
export const shared = (stems: readonly ResolvedStem[], of: (s: ResolvedStem) => number): number =>
  stems.reduce((sum, s) => sum + of(s), 0) / Math.max(1, stems.length)

/** What a number field says: the value it then shows, in the field's unit, and by how much, if it was stepped. */
export interface Said {
  value: number
  by?: number | undefined
}

/** How far, mm: a step goes just as far as it says, for each stem; what is typed is reached by the mean. */
const far = ({ value, by }: Said, mean: number, units: Units): number =>
  by === undefined ? fromUnit(value, units) - mean : fromUnit(by, units)

const idsOf = (stems: readonly ResolvedStem[]): string[] => stems.map((s) => s.id)
const each = (stems: readonly ResolvedStem[], what: string, edit: (s: ResolvedStem) => Edit): Edit =>
  stems.length === 1
    ? edit(stems[0]!)
    : { do: 'many', label: `${stems.length} stems ${what}`, edits: stems.map((s) => edit(s)) }

/** Heads along an axis (0 across, 1 away, 2 up), all by the same. */
export const shiftEdit = (stems: readonly ResolvedStem[], axis: 0 | 1 | 2, said: Said, units: Units): Edit => {
  const by: [number, number, number] = [0, 0, 0]
  const mean = shared(stems, (s) => s.stem.tip[axis])
  by[axis] = far(said, mean, units)
  return { do: 'shift-stems', ids: idsOf(stems), by }
}

/** Crossings along an axis, all by the same. */
export const crossEdit = (stems: readonly ResolvedStem[], axis: 0 | 1, said: Said, units: Units): Edit => {
  const mean = shared(stems, (s) => s.stem.mouth[axis])
  const by = far(said, mean, units)
  const edits: Edit[] = stems.map((s) => {
    const mouth: [number, number] = [...s.stem.mouth]
    mouth[axis] += by
    return { do: 'set-stems', ids: [s.id], set: { mouth } }
  })
  return { do: 'many', label: 'crossing moved', edits }
}

/** Least part of a length that is left, ours: a stem is not shortened to nothing. */
const LEAST_FACTOR = 0.05

/** Length over the rim: a step lengthens each by as much, what is typed all in proportion. */
export const lengthEdit = (stems: readonly ResolvedStem[], said: Said, units: Units): Edit => {
  const { by, value } = said
  const factor = (to: number, from: number): number => Math.max(LEAST_FACTOR, to / Math.max(1, from))
  if (by === undefined) {
    const mean = shared(stems, (s) => s.curve.above_mm)
    return { do: 'lengthen-stems', ids: idsOf(stems), factor: factor(fromUnit(value, units), mean) }
  }
  return each(stems, by < 0 ? 'shortened' : 'lengthened', ({ id, curve }) => ({
    do: 'lengthen-stems',
    ids: [id],
    factor: factor(curve.above_mm + fromUnit(by, units), curve.above_mm),
  }))
}

/** Bow or openness, in hundredths: a step changes each by as much, what is typed is the same for all. */
export const partEdit = (stems: readonly ResolvedStem[], part: 'bend' | 'openness', { value, by }: Said): Edit => {
  if (by === undefined) return { do: 'set-stems', ids: idsOf(stems), set: { [part]: value / 100 } }
  const least = part === 'bend' ? -1 : 0
  return each(stems, part === 'bend' ? 'bent' : by < 0 ? 'closed' : 'opened', (s) => {
    const now = part === 'bend' ? s.stem.bend : s.openness
    // Ten steps of 0.05 make a half, not 0.4999.
    const to = Number(Math.min(1, Math.max(least, now + by / 100)).toFixed(4))
    return { do: 'set-stems', ids: [s.id], set: { [part]: to } }
  })
}

/** Least head that a step leaves, mm; the field's own least. */
export const LEAST_HEAD = 3

/** Head: a step changes each by as much, what is typed is the same for all. */
export const headEdit = (stems: readonly ResolvedStem[], { value, by }: Said, units: Units): Edit =>
  by === undefined
    ? { do: 'set-stems', ids: idsOf(stems), set: { head: fromUnit(value, units) } }
    : each(stems, 'resized', (s) => ({
        do: 'set-stems',
        ids: [s.id],
        set: { head: Math.max(LEAST_HEAD, s.head_mm + fromUnit(by, units)) },
      }))
