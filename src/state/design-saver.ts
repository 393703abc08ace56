import type { Arrangement } from '../arrangement/index.ts'
import {
  type Autosaver,
  autosaver,
  forgetLastWords,
  leaveLastWords,
  newName,
  type SaveState,
} from '../storage/index.ts'
import { change, showDesign } from './actions.ts'
import { lastWords, store } from './kept-store.ts'
import { claimForPage } from './own-claims.ts'
import { useStudio } from './store.ts'
import { titleOfCopy } from './title-of-copy.ts'
import type { Sheet } from './types.ts'

type Looked = Awaited<ReturnType<typeof store.load>>

/** A design that this page has reached for: who writes it, and the end of the claim on it. */
export interface Reached {
  id: string
  saver: Autosaver<Arrangement, Looked>
  /** Writes what waits and gives the claim back. */
  end(): Promise<void>
}

/** The design that is open; null before the first. */
let open: Reached | null = null
/** The open design as it was when it was shown. */
let shown: Arrangement | null = null
/** What the person has saved as a file last. */
let filed: Arrangement | null = null
/** The key of the design whose last words were left, and are not written yet. */
let spoken = ''

const forgetWords = (id: string): void => {
  if (spoken !== id) return
  forgetLastWords(lastWords, id)
  spoken = ''
}

/**
 * Claims a design and begins to look it up; without the claim it can be looked at, but another tab writes it. What is
 * open stays so, and goes on being kept, until `putOn`.
 */
export const reach = async (id: string): Promise<Reached> => {
  const release = await claimForPage(id)
  const onState = (save: SaveState): void => {
    if (save.state === 'saved') forgetWords(id)
    if (open === reached) change({ save })
  }
  const saver = autosaver(store, id, { onState, readOnly: release === null })
  const reached: Reached = {
    id,
    saver,
    end: async () => {
      await saver.stop()
      release?.()
    },
  }
  return reached
}

/** Shows a design that was reached in place of the open one, in one go: no change can fall between the two. */
export const putOn = (next: Reached, document: Arrangement, sheet?: Sheet): void => {
  const before = open
  open = next
  shown = document
  showDesign(next.id, document, sheet)
  change({ save: next.saver.state() })
  void before?.end()
}

/** Ends the work on the open design, everything written. */
export const leave = async (): Promise<void> => {
  const before = open
  open = null
  await before?.end()
}

/** The open design has changed: it is written after a rest. */
export const designChanged = (document: Arrangement): void => open?.saver.changed(document)

/** Writes what waits of the open design. False where that was not possible. */
export const keepDesign = (): Promise<boolean> => open?.saver.flush() ?? Promise.resolve(true)

/** The person has this as a file: nothing of it is lost any more. */
export const isFiled = (document: Arrangement): void => {
  filed = document
}

/** A file or the store holds all of it: it is as it was opened. */
const untouched = (document: Arrangement): boolean =>
  document === filed || (document === shown && (open?.saver.revision() ?? 1) > 0)

const copyOf = async (document: Arrangement): Promise<string | null> => {
  const copy = { ...document, title: titleOfCopy(document.title) }
  const saved = await store.save(newName(), copy, 0)
  const put = saved.ok || leaveLastWords(lastWords, newName(), { document: copy, revision: 0, underWay: null })
  return put ? copy.title : null
}

/** What was kept as a copy last, and the title of that. */
let beside: { document: Arrangement; copy: Promise<string | null> } | null = null

/** A copy beside what is kept, one for each state, written or at least put down. Null where neither was possible. */
const keepBeside = async (document: Arrangement): Promise<string | null> => {
  if (beside?.document !== document) beside = { document, copy: copyOf(document) }
  const copy = await beside.copy
  if (copy === null) beside = null
  return copy
}

/**
 * Sees to it that nothing of the open design is lost by leaving it: it is written, or kept as a copy where it can't be.
 * @param goesOn a document that is shown next; where the open one is the same there is nothing to lose
 * @returns the title of a copy, '' where none was needed; null where the design would be lost
 */
export const letGo = async (goesOn: Arrangement | null): Promise<string | null> => {
  let copy: string | null = ''
  let safe: Arrangement | null = goesOn
  // What was changed meanwhile is looked at once more.
  while (useStudio.getState().document !== safe) {
    const { document } = useStudio.getState()
    if (!(await keepDesign()) && !untouched(document)) copy = await keepBeside(document)
    if (copy === null) return null
    safe = document
  }
  return copy
}

/** The page is hidden or goes, and may never run again: what is not written yet is put down at once. */
export const partWith = (): void => {
  const unwritten = open?.saver.unwritten()
  if (open && unwritten && leaveLastWords(lastWords, open.id, unwritten)) spoken = open.id
  void open?.saver.flush()
}
