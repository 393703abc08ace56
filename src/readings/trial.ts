import { applyEdit, type Edit } from '../arrangement/index.ts'
import { findPlant } from '../catalogue/index.ts'
import { type Resolved, resolveArrangement } from '../geometry/index.ts'
import type { Engine } from './engine.ts'
import { HARM, lifts, mayTrade } from './harm.ts'
import { READING_NAMES } from './names.ts'
import type { Advice, ReadingId, ReadingResult } from './types.ts'
import { type Lengths, listed, round } from './words.ts'

export type Readers = Record<ReadingId, (engine: Engine, lengths?: Lengths) => ReadingResult>
export type Values = ReadingResult['values']

/** Something to be tried: the edit, the stems it is about, and what to say of it once it was measured. */
export interface Idea {
  edit: Edit
  stems: string[]
  /** A sentence from the values of the reading, and of others where asked for, as measured after the edit. */
  say: (after: Values, of: (other: ReadingId) => Values) => string
}

/** One thing that is amiss, with ideas against it, and what to say if none of them helps. */
export interface Topic {
  ideas: Idea[]
  otherwise: Advice | null
}

/** An idea that was carried out, measured and found to help. */
export interface Helped {
  advice: Advice
  /** Points gained in its own reading. */
  gain: number
  /** Points that other readings lose where that is more than they may: a trade (harm.ts). 0 where none does. */
  costs: number
}

/** An idea that helps its own reading, but harms another too much. */
export interface Harmful {
  gain: number
  harmed: ReadingId
}

/** What a document looks like after an edit; its plants are those of the engine's own document, or of the catalogue. */
export const resolveAfter = (before: Resolved, edit: Edit): Resolved => {
  const plants = new Map(before.stems.map((s) => [s.stem.plant, s.plant]))
  return resolveArrangement(applyEdit(before.document, edit), (plant) => plants.get(plant) ?? findPlant(plant))
}

/** The cheaper ones first: what harms is found out early. */
const ORDER: ReadingId[] = ['proportion', 'stability', 'mechanics', 'negative-space', 'sight-line', 'visual-balance']
const byCost = (results: readonly ReadingResult[]): ReadingResult[] =>
  results.toSorted((a, b) => ((ORDER.indexOf(a.id) + 99) % 99) - ((ORDER.indexOf(b.id) + 99) % 99))

/** ` It costs “Balance of weight” 4 points.` */
const costWords = (lost: readonly [ReadingId, number][]): string =>
  lost.length === 0 ? '' : ` It costs ${listed(lost.map(([id, n]) => `“${READING_NAMES[id]}” ${round(n)} points`))}.`

/**
 * Carries an idea out on the document that the engine looks at, and measures: its own reading first, the others only
 * where that is better. The engine is left on the tried document. Null where it does not help.
 */
export const tryIdea = (
  engine: Engine,
  before: Resolved,
  id: ReadingId,
  results: readonly ReadingResult[],
  idea: Idea,
  readers: Readers,
): Helped | Harmful | null => {
  engine.update(resolveAfter(before, idea.edit))
  const own = readers[id](engine)
  const was = results.find((r) => r.id === id)?.score ?? 0
  const gain = (own.score ?? 0) - was
  if (own.score === null || !own.because || !lifts(gain, was)) return null
  const scores: NonNullable<Advice['after']>['scores'] = { [id]: own.score }
  const lost: [ReadingId, number][] = []
  let costs = 0
  for (const other of byCost(results)) {
    if (other.id === id || other.score === null) continue
    const after = readers[other.id](engine)
    if (other.id === 'palette-harmony') {
      // Foretold, but held against nothing: it has no good end.
      if (after.score !== null) scores[other.id] = after.score
      continue
    }
    const fall = other.score - (after.score ?? 0)
    if (fall > HARM) {
      costs += fall
      lost.push([other.id, fall])
      if (after.score === null || !mayTrade(was, gain, costs, other, after)) return { gain, harmed: other.id }
    }
    scores[other.id] = after.score!
  }
  const of = (other: ReadingId): Values => readers[other](engine).values
  const text = idea.say(own.values, of) + costWords(lost)
  return {
    advice: { text, stems: idea.stems, edit: idea.edit, after: { value: own.because.main.value, scores } },
    gain,
    costs,
  }
}
