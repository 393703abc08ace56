import type { ResolvedStem } from '../geometry/index.ts'
import { listed, numbered } from './words.ts'

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve']

/** `three`; in figures from thirteen on. */
export const counted = (n: number): string => COUNTS[n] ?? String(n)

/** `five stems of rose`, `one stem of salal` */
export const stemsOf = (n: number, plant: string): string =>
  `${counted(n)} ${n === 1 ? 'stem' : 'stems'} of ${plant.toLowerCase()}`

/** How many of which plant: `five stems of rose and two stems of salal`; one alone by its number, `14, a rose`. */
export const grouped = (stems: readonly ResolvedStem[]): string => {
  if (stems.length === 1) return numbered(stems[0]!)
  const counts = new Map<string, number>()
  for (const { plant } of stems) counts.set(plant.name, (counts.get(plant.name) ?? 0) + 1)
  return listed([...counts].map(([plant, n]) => stemsOf(n, plant)))
}
