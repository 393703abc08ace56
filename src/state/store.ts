import { temporal } from 'zundo'
import { create, useStore } from 'zustand'
import { type Arrangement, newArrangement } from '../arrangement/index.ts'
import { EXAMPLE_PRICES } from '../catalogue/index.ts'
import type { StudioState } from './types.ts'

/** Steps that can be taken back. Documents share what did not change, so a step costs about one stem. */
export const UNDO_LIMIT = 2000

const initial = (): StudioState => ({
  document: newArrangement(),
  lastDone: '',
  draft: null,
  selection: [],
  focused: '',
  lit: [],
  openReading: null,
  markedReading: null,
  phantom: null,
  turn: 0,
  sheet: 'start',
  placing: null,
  units: 'cm',
  // A country that writes 1,5 has spreadsheets that take a comma for it.
  csv: (1.5).toLocaleString().includes(',') ? 'semicolon' : 'comma',
  prices: { currency: EXAMPLE_PRICES.currency, perBunch: {} },
  readings: [],
  save: { state: 'loading' },
  drawn: '',
  designId: '',
  opening: null,
  message: '',
})

/**
 * The one store. Only `document` and `lastDone` are covered by undo; a gesture lives in `draft` and becomes one step when
 * it settles (zundo records every set of a changed document, so nothing else may write `document`: see actions.ts).
 */
export const useStudio = create<StudioState>()(
  temporal(() => initial(), {
    limit: UNDO_LIMIT,
    partialize: ({ document, lastDone }) => ({ document, lastDone }),
    equality: (a, b) => a.document === b.document,
  }),
)

/** The document as it looks now, gesture included. */
export const shownOf = (state: StudioState): Arrangement => state.draft ?? state.document
export const useShown = (): Arrangement => useStudio(shownOf)

/** What can be taken back and done again. */
export const useHistory = (): { undo: string; redo: string; steps: number } => {
  const lastDone = useStudio((s) => s.lastDone)
  const steps = useStore(useStudio.temporal, (s) => s.pastStates.length)
  const next = useStore(useStudio.temporal, (s) => s.futureStates.at(-1)?.lastDone ?? '')
  return { undo: steps > 0 ? lastDone : '', redo: next, steps }
}

/** Back to the first state, for tests. */
export const resetStudio = (): void => {
  useStudio.setState(initial(), true)
  useStudio.temporal.getState().clear()
}
