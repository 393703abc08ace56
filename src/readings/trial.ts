import { applyEdit, type Edit } from '../arrangement/index.ts'
import { resolveArrangement } from '../geometry/index.ts'
import type { Engine } from './engine.ts'

/** An edit that was tried, with what was measured after it. */
export interface Tried<T> {
  edit: Edit
  value: T
}

/**
 * Carries each edit out on the document that the engine looks at, measures, and puts everything back. So advice never
 * promises what was not seen to happen.
 */
export const tryOut = <T>(engine: Engine, edits: readonly Edit[], measure: (engine: Engine) => T): Tried<T>[] => {
  const before = engine.resolved
  const plants = new Map(before.stems.map((s) => [s.stem.plant, s.plant]))
  const tried = edits.map((edit) => {
    engine.update(resolveArrangement(applyEdit(before.document, edit), (id) => plants.get(id)))
    return { edit, value: measure(engine) }
  })
  engine.update(before)
  return tried
}

/** The one with the highest value, if that is at least `atLeast`. */
export const bestOf = (tried: readonly Tried<number | null>[], atLeast: number): Tried<number> | null => {
  let best: Tried<number> | null = null
  for (const { edit, value } of tried)
    if (value !== null && value >= atLeast && (!best || value > best.value)) best = { edit, value }
  return best
}
