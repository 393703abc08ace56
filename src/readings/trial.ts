import { applyEdit, type Edit } from '../arrangement/index.ts'
import { resolveArrangement } from '../geometry/index.ts'
import type { Engine } from './engine.ts'
import type { Advice, ReadingId, ReadingResult } from './types.ts'
import type { Lengths } from './words.ts'

export type Readers = Record<ReadingId, (engine: Engine, lengths?: Lengths) => ReadingResult>
export type Values = ReadingResult['values']

/** Something to be tried: the edit, the stems it is about, and what to say of it once it was measured. */
export interface Idea {
  edit: Edit
  stems: string[]
  /** A sentence from the values of the reading as measured after the edit. */
  say: (after: Values) => string
}

/** One thing that is amiss, with ideas against it, and what to say if none of them helps. */
export interface Topic {
  ideas: Idea[]
  otherwise: Advice | null
}

/** An edit must lift its own reading by this much, points. Ours. */
export const LIFT = 0.5
/** And may lower no other reading by more than this, points. */
export const HARM = 2

/** Does the edit change colours and nothing else? Then how the palette reads is what it is meant to change. */
const recolours = (edit: Edit): boolean =>
  edit.do === 'set-slot' || (edit.do === 'set-stems' && Object.keys(edit.set).every((k) => k === 'colour'))

/** An idea that was carried out, measured and found to help. */
export interface Helped {
  advice: Advice
  /** Points gained in its own reading. */
  gain: number
}

/**
 * Carries an idea out on the document that the engine looks at, and measures: its own reading first, the others only
 * where that is better. The engine is left on the tried document.
 */
export const tryIdea = (
  engine: Engine,
  before: Engine['resolved'],
  id: ReadingId,
  results: readonly ReadingResult[],
  idea: Idea,
  readers: Readers,
): Helped | null => {
  const plants = new Map(before.stems.map((s) => [s.stem.plant, s.plant]))
  engine.update(resolveArrangement(applyEdit(before.document, idea.edit), (plant) => plants.get(plant)))
  const own = readers[id](engine)
  const gain = (own.score ?? 0) - (results.find((r) => r.id === id)?.score ?? 0)
  if (own.score === null || !own.because || gain < LIFT) return null
  const scores: NonNullable<Advice['after']>['scores'] = { [id]: own.score }
  for (const other of results) {
    if (other.id === id || other.score === null) continue
    if (other.id === 'palette-harmony' && recolours(idea.edit)) continue
    const after = readers[other.id](engine).score
    if (after === null || after < other.score - HARM) return null
    scores[other.id] = after
  }
  const after = { value: own.because.main.value, scores }
  return { advice: { text: idea.say(own.values), stems: idea.stems, edit: idea.edit, after }, gain }
}
