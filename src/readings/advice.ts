import { adviseBalance } from './advise-balance.ts'
import { adviseColours } from './advise-colours.ts'
import { adviseFocal } from './advise-focal.ts'
import { adviseMechanics } from './advise-mechanics.ts'
import { adviseProportion } from './advise-proportion.ts'
import { adviseSight } from './advise-sight.ts'
import { adviseSpace } from './advise-space.ts'
import { adviseStability } from './advise-stability.ts'
import type { Engine } from './engine.ts'
import { type Helped, type Readers, type Topic, tryIdea } from './trial.ts'
import type { Advice, ReadingId, ReadingResult } from './types.ts'
import type { Lengths } from './words.ts'

const ADVISERS: Record<ReadingId, (engine: Engine, lengths: Lengths) => Topic[]> = {
  'focal-prominence': adviseFocal,
  'negative-space': adviseSpace,
  'palette-harmony': adviseColours,
  proportion: adviseProportion,
  'visual-balance': adviseBalance,
  stability: adviseStability,
  mechanics: adviseMechanics,
  'sight-line': adviseSight,
}

/** So near to full that there is nothing to say. Ours. */
const ENOUGH = 98
/** Ideas tried for one reading at most: looking for advice must stay quick. Ours. */
const MOST_IDEAS = 12
const MOST_ADVICE = 3

const adviseOne = (
  engine: Engine,
  result: ReadingResult,
  results: readonly ReadingResult[],
  readers: Readers,
  lengths: Lengths,
): Advice[] => {
  const before = engine.resolved
  const topics = ADVISERS[result.id](engine, lengths)
  const each = Math.max(1, Math.floor(MOST_IDEAS / Math.max(1, topics.length)))
  const helped: Helped[] = []
  const words: Advice[] = []
  for (const { ideas, otherwise } of topics) {
    let best: Helped | null = null
    for (const idea of ideas.slice(0, each)) {
      const tried = tryIdea(engine, before, result.id, results, idea, readers)
      if (tried && (!best || tried.gain > best.gain)) best = tried
    }
    if (best) helped.push(best)
    else if (otherwise) words.push(otherwise)
  }
  engine.update(before)
  const edits = helped.sort((a, b) => b.gain - a.gain).map((h) => h.advice)
  return [...edits, ...words].slice(0, MOST_ADVICE)
}

/**
 * Adds up to three pieces of advice to every reading that has a score, the one that gains most first. Every edit in them
 * was carried out and measured: it lifts its own reading and costs no other one more than two points; the numbers in
 * its words are those measured after it.
 */
export const adviseAll = (
  engine: Engine,
  results: ReadingResult[],
  readers: Readers,
  lengths: Lengths,
): ReadingResult[] =>
  results.map((r) =>
    r.score === null || r.score >= ENOUGH ? r : { ...r, advice: adviseOne(engine, r, results, readers, lengths) },
  )
