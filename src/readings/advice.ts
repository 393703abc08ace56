import { adviseColours } from './advise-colours.ts'
import { adviseFocal } from './advise-focal.ts'
import { adviseProportion } from './advise-proportion.ts'
import { adviseSpace } from './advise-space.ts'
import type { Engine } from './engine.ts'
import type { Advice, ReadingId, ReadingResult } from './types.ts'

const ADVISERS: Record<ReadingId, (engine: Engine) => Advice[]> = {
  'focal-prominence': adviseFocal,
  'negative-space': adviseSpace,
  'palette-harmony': adviseColours,
  proportion: adviseProportion,
}

/** Adds up to three pieces of advice to every reading that has a score. Every edit in them was carried out and measured. */
export const adviseAll = (engine: Engine, results: ReadingResult[]): ReadingResult[] =>
  results.map((r) => (r.score === null ? r : { ...r, advice: ADVISERS[r.id](engine).slice(0, 3) }))
