import { adviseBalance } from './advise-balance.ts'
import { adviseColours } from './advise-colours.ts'
import { adviseFocal } from './advise-focal.ts'
import { adviseMechanics } from './advise-mechanics.ts'
import { type Advisers, pairsFor } from './advise-pairs.ts'
import { adviseProportion } from './advise-proportion.ts'
import { adviseSight } from './advise-sight.ts'
import { adviseSpace } from './advise-space.ts'
import { adviseStability } from './advise-stability.ts'
import type { Engine } from './engine.ts'
import { TRADE } from './harm.ts'
import { touchedBy, worthOf } from './touched.ts'
import { type Harmful, type Helped, type Idea, type Readers, tryIdea } from './trial.ts'
import type { Advice, ReadingResult } from './types.ts'
import type { Lengths } from './words.ts'

const ADVISERS: Advisers = {
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
/** Ideas tried for one reading at most, two steps as one among them: looking for advice must stay quick. Ours. */
const MOST_IDEAS = 12
/** Of these, kept for two steps as one where no single step serves; and how many first steps are followed. Ours. */
const FOR_PAIRS = 5
const FIRSTS = 2
const MOST_ADVICE = 3
/** An idea that brings its reading to the full with no more stems than this ends the search. Ours. */
const FEW = 4
/** Two steps as one are looked for, and a trade is offered, only where they gain so many times what a single step does that harms nothing. Ours. */
const AHEAD = 2

const netOf = ({ gain, costs }: Helped): number => gain - costs
const worth = (helped: Helped): number => worthOf(netOf(helped), helped.advice.edit!)

const better = (a: Helped | null, b: Helped): Helped => (a && worth(a) >= worth(b) ? a : b)

const adviseOne = (
  engine: Engine,
  result: ReadingResult,
  results: readonly ReadingResult[],
  readers: Readers,
  lengths: Lengths,
): Advice[] => {
  const before = engine.resolved
  const score = result.score!
  const helped: Helped[] = []
  const words: Advice[] = []
  const harmful: { idea: Idea; harm: Harmful }[] = []
  const seen = new Set<string>()
  let trade: Helped | null = null
  let left = MOST_IDEAS
  /** The best of some ideas that harm nothing; the best trade, and what harms too much, are noted by the way. */
  const search = (ideas: readonly Idea[]): Helped | null => {
    let best: Helped | null = null
    for (const idea of ideas) {
      const key = JSON.stringify(idea.edit)
      if (seen.has(key)) continue
      seen.add(key)
      left -= 1
      const tried = tryIdea(engine, before, result.id, results, idea, readers)
      if (!tried) continue
      if ('harmed' in tried) harmful.push({ idea, harm: tried })
      else if (tried.costs > 0) trade = better(trade, tried)
      else best = better(best, tried)
      if (best === tried && score + tried.gain >= ENOUGH && touchedBy(idea.edit) <= FEW) break
    }
    return best
  }
  const topics = ADVISERS[result.id](engine, lengths)
  let room = MOST_IDEAS
  topics.forEach(({ ideas, otherwise }, i) => {
    const some = ideas.slice(0, Math.max(1, Math.floor(room / (topics.length - i))))
    room -= some.length
    const best = search(some)
    if (best) helped.push(best)
    else if (otherwise) words.push(otherwise)
  })
  const most = (): number => Math.max(0, ...helped.map((h) => h.gain))
  harmful.sort((a, b) => b.harm.gain - a.harm.gain)
  let pair: Helped | null = null
  for (const { idea, harm } of harmful.slice(0, FIRSTS)) {
    // Two steps are worth looking for where one gains little beside what it would if it harmed nothing.
    if (harm.gain < TRADE + AHEAD * most()) break
    const best = search(pairsFor(engine, before, idea, harm, ADVISERS, lengths).slice(0, Math.max(0, left + FOR_PAIRS)))
    if (best) pair = better(pair, best)
  }
  if (pair) helped.push(pair)
  if (trade && netOf(trade) >= AHEAD * most()) helped.push(trade)
  engine.update(before)
  const edits = helped.sort((a, b) => b.gain - a.gain).map((h) => h.advice)
  return [...edits, ...words].slice(0, MOST_ADVICE)
}

/**
 * Adds up to three pieces of advice to every reading that has a score, the one that gains most first. Every edit in them
 * was carried out and measured: it lifts its own reading and costs no other one more than two points, or says what it
 * costs (harm.ts); the numbers in its words are those measured after it.
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
