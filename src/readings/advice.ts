import type { Edit } from '../arrangement/index.ts'
import { adviseColours } from './advise-colours.ts'
import { adviseFocal } from './advise-focal.ts'
import { adviseProportion } from './advise-proportion.ts'
import { adviseSpace } from './advise-space.ts'
import type { Engine } from './engine.ts'
import { tryOut } from './trial.ts'
import type { Advice, ReadingId, ReadingResult } from './types.ts'

export type Readers = Record<ReadingId, (engine: Engine) => ReadingResult>

const ADVISERS: Record<ReadingId, (engine: Engine) => Advice[]> = {
  'focal-prominence': adviseFocal,
  'negative-space': adviseSpace,
  'palette-harmony': adviseColours,
  proportion: adviseProportion,
}

/** An edit must lift its own reading by this much, points. Ours. */
const LIFT = 0.5

/** Does the edit, carried out and measured, lift its own reading? */
const helps = (engine: Engine, { id, score }: ReadingResult, edit: Edit, readers: Readers): boolean => {
  const [tried] = tryOut(engine, [edit], (e) => readers[id](e).score)
  return (tried?.value ?? 0) >= (score ?? 0) + LIFT
}

/**
 * Adds up to three pieces of advice to every reading that has a score. Every edit in them was carried out and measured:
 * one that does not lift its own reading is left out. What it does to the other readings is not weighed yet.
 */
export const adviseAll = (engine: Engine, results: ReadingResult[], readers: Readers): ReadingResult[] =>
  results.map((r) => {
    if (r.score === null) return r
    const advice = ADVISERS[r.id](engine).filter((a) => !a.edit || helps(engine, r, a.edit, readers))
    return { ...r, advice: advice.slice(0, 3) }
  })
