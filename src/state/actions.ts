import { type Arrangement, applyEdit, describeEdit, type Edit } from '../arrangement/index.ts'
import { findPlant } from '../catalogue/index.ts'
import { shownOf, useStudio } from './store.ts'
import type { Sheet, StudioState } from './types.ts'

const plantName = (id: string): string => findPlant(id)?.name.toLowerCase() ?? id

const { getState: get, setState: set } = useStudio

/** Ids that are still in the document, in order. */
const stillThere = (document: Arrangement, ids: string[]): string[] => {
  const there = new Set(document.stems.map((s) => s.id))
  return ids.every((id) => there.has(id)) ? ids : ids.filter((id) => there.has(id))
}

const put = (document: Arrangement, lastDone: string): void =>
  set((s) => ({ document, lastDone, draft: null, phantom: null, selection: stillThere(document, s.selection) }))

/** Carries an edit out as one step. An edit that changes nothing leaves no trace. Ends any gesture without it. */
export const perform = (edit: Edit): void => {
  const { document } = get()
  const next = applyEdit(document, edit)
  if (next === document) return abandon()
  const words = describeEdit(document, edit, plantName)
  put(next, words)
  saySentence(words)
}

/** Shows what the edit would do to the document as it was before the gesture (a drag: each move replaces the last). */
export const preview = (edit: Edit): void => set({ draft: applyEdit(get().document, edit) })

/** Adds an edit to the gesture (a held key: each repeat goes further). */
export const previewMore = (edit: Edit): void => set({ draft: applyEdit(shownOf(get()), edit) })

/** Ends the gesture: what is shown becomes one step, said as `words`. */
export const settle = (words: string): void => {
  const { draft, document } = get()
  if (!draft || draft === document) return abandon()
  put(draft, words)
  saySentence(words)
}

/** Ends the gesture and leaves the document as it was before it. */
export const abandon = (): void => {
  if (get().draft) set({ draft: null })
}

const step = (way: 'undo' | 'redo', said: string): void => {
  abandon()
  const history = useStudio.temporal.getState()
  const before = get()
  const words = way === 'undo' ? before.lastDone : (history.futureStates.at(-1)?.lastDone ?? '')
  if ((way === 'undo' ? history.pastStates : history.futureStates).length === 0) return say(`Nothing to ${way}.`)
  history[way]()
  set((s) => ({ phantom: null, selection: stillThere(s.document, s.selection) }))
  say(`${said}: ${words}.`)
}
export const undo = (): void => step('undo', 'Undone')
export const redo = (): void => step('redo', 'Done again')

/** Selects stems; `toggle` adds those that are not selected and drops those that are. Leaves no trace in the history. */
export const select = (ids: string[], how: 'only' | 'toggle' | 'add' = 'only'): void =>
  set((s) => {
    if (how === 'only') return { selection: ids }
    const now = new Set(s.selection)
    for (const id of ids) {
      if (how === 'toggle' && now.has(id)) now.delete(id)
      else now.add(id)
    }
    return { selection: [...now] }
  })

/** Turns both views to this many degrees. */
export const turnTo = (degrees: number): void => set({ turn: (((Math.round(degrees * 10) / 10) % 360) + 360) % 360 })

export const openSheet = (sheet: Sheet): void => {
  abandon()
  set({ sheet, placing: null })
}

export const say = (message: string): void => set({ message })
/** Says the words of a step as a sentence. */
export const saySentence = (words: string): void => say(`${words[0]?.toUpperCase() ?? ''}${words.slice(1)}.`)

/** Any part of the state that needs no rule of its own. Never `document`, `lastDone` or `draft`. */
export const change = (part: Partial<Omit<StudioState, 'document' | 'lastDone' | 'draft'>>): void => set(part)

/** Replaces the document by another design: the history begins anew. */
export const showDesign = (designId: string, document: Arrangement, sheet: Sheet = 'drawing'): void => {
  set({
    document,
    lastDone: '',
    draft: null,
    selection: [],
    focused: '',
    lit: [],
    phantom: null,
    placing: null,
    turn: 0,
    readings: [],
    designId,
    sheet,
    opening: null,
  })
  useStudio.temporal.getState().clear()
}
