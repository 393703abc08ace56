import { readEvent, type WholeEvent, writeEvent } from '../event/index.ts'
import { newName } from '../storage/index.ts'
import { say } from './actions.ts'
import { changeEvent } from './event-actions.ts'
import { fetchDesigns, keptKeys, settled, wholeEvent } from './event-designs.ts'
import { askForEvent, openEvent, refreshEvents, sentence, showNew } from './event-keeping.ts'
import { keepEvent, texts } from './event-saver.ts'
import { useEvent } from './event-store.ts'
import { readPlan } from './event-text.ts'
import { refreshKept } from './keeping.ts'
import { known } from './kept-store.ts'
import { titleOfCopy } from './title-of-copy.ts'

const { getState: get, setState: set } = useEvent

/** The event with its designs, as the text of a file; those that this browser no longer has are not in it. */
export const textOfEvent = (): string => writeEvent(wholeEvent())

const NOT_KEPT = 'This browser could not keep the designs of the event; nothing was opened.'
const titleOf = (file: WholeEvent): string => file.title || 'the event'

/** Shows a file's event beside the others, under this id, unless another was asked for meanwhile. */
const openBeside = async (file: WholeEvent, id: string, wanted = askForEvent(id)): Promise<void> => {
  set({ opening: null, twin: null })
  const plan = await settled({ ...file, id })
  if (!plan) return say(NOT_KEPT)
  const shown = await showNew(plan, `${titleOf(file)} opened`, wanted)
  if (shown === 'overtaken') say(`${sentence(titleOf(file))} was not opened: another event was asked for.`)
  await refreshKept()
}

/** Does this browser keep the event exactly as the file has it, its designs too? */
const isKeptAsItIs = async (file: WholeEvent): Promise<boolean> => {
  const there = await texts.load(file.id)
  const kept = there.ok ? readPlan(there.document, file.id) : null
  const keys = await keptKeys(file)
  if (!kept || keys.includes('')) return false
  const bare = (parts: WholeEvent['parts']) => parts.map(({ title: _, ...part }) => part)
  const { designs: _, ...plan } = file
  const inFile = { ...plan, parts: bare(plan.parts.map((part, i) => ({ ...part, design: keys[i]! }))), designs: {} }
  return writeEvent(inFile) === writeEvent({ ...kept, parts: bare(kept.parts), designs: {} })
}

/** Opens a whole event from a file: beside the others, or, if it is kept already, as the person says. */
const take = async (name: string, file: WholeEvent): Promise<void> => {
  const wanted = askForEvent(file.id)
  if (file.id === '') return openBeside(file, newName(), wanted)
  // What was changed in it just now counts.
  if (get().event.id === file.id) await keepEvent()
  const kept = (await refreshEvents()).find((e) => e.id === file.id)
  if (!kept) return openBeside(file, file.id, wanted)
  if (!(await isKeptAsItIs(file))) return set({ opening: null, twin: { name, file, kept } })
  set({ opening: null })
  if (get().event.id !== file.id || kept.thrown) await openEvent(file.id)
  say(`${titleOf(file)} is kept in this browser as it is in ${name}.`)
}

/** Opens the text of an event's file; one with something wrong in it waits for the person's word, and nothing changes before. */
export const openEventText = async (name: string, text: string): Promise<void> => {
  const read = readEvent(text, known)
  if (read.kind === 'ok') return take(name, read.event)
  set({ opening: { name, problems: read.problems, good: read.kind === 'partly' ? read.good : null } })
}
export const agreeToOpenEvent = async (): Promise<void> => {
  const { opening } = get()
  set({ opening: null })
  if (opening?.good) await take(opening.name, opening.good)
}
export const dropOpeningEvent = (): void => set({ opening: null, twin: null })

/** Opens the file of an event that is kept already as another one beside it. */
export const openTwinAsCopy = async (): Promise<void> => {
  const file = get().twin?.file
  if (file) await openBeside({ ...file, title: titleOfCopy(file.title, 'The event') }, newName())
}

/** Puts what the file has in the place of the kept event, as one step that can be taken back. */
export const putTwinInPlace = async (): Promise<void> => {
  const file = get().twin?.file
  set({ twin: null })
  if (!file || (get().event.id !== file.id && !(await openEvent(file.id)))) return
  const plan = await settled(file)
  if (!plan) return say(NOT_KEPT)
  // What is open by now is another event, and stays as it is.
  if (get().event.id !== file.id) return say(`${sentence(titleOf(file))} is as it was: another event was opened.`)
  changeEvent(plan, `${titleOf(file)} as in the file`)
  await Promise.all([fetchDesigns(), refreshKept()])
}
