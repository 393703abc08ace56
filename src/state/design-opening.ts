import { type Arrangement, newArrangement, readArrangement, writeArrangement } from '../arrangement/index.ts'
import { askToKeep, newName } from '../storage/index.ts'
import { change, openSheet, say, showDesign } from './actions.ts'
import { asking } from './asking.ts'
import { isFiled, keepDesign, leave, letGo, putOn, reach } from './design-saver.ts'
import { refreshKept } from './keeping.ts'
import { known, store } from './kept-store.ts'
import { useStudio } from './store.ts'
import type { Sheet } from './types.ts'

const designs = asking()
/** Asks for a design to be shown: what was asked for before is not shown any more. */
export const { askFor } = designs

const letGoOf = async (goesOn: Arrangement | null): Promise<string | null> => {
  const copy = await letGo(goesOn)
  if (copy === null) say('The open design can’t be kept now: save it as a file first. Nothing was opened.')
  return copy && ` What was changed before and could not be kept in its place is kept as “${copy}”.`
}

/** Begins a new design with this document. It is saved at once, under a key of its own. */
export const beginDesign = async (document: Arrangement): Promise<void> => {
  const wanted = askFor()
  const goesOn = document === useStudio.getState().document
  const next = await reach(newName())
  // The open one goes on as it is by now.
  const begun = goesOn ? useStudio.getState().document : document
  const copied = await letGoOf(begun)
  if (copied === null || !wanted()) return next.end()
  putOn(next, begun)
  next.saver.changed(begun)
  void askToKeep()
  say(`${begun.title}: a new design.${copied}`)
}

/** Keeps a document under a key of its own without opening it. */
export const keepAside = async (document: Arrangement): Promise<string | null> => {
  const id = newName()
  const result = await store.save(id, document, 0)
  return result.ok ? id : null
}

/**
 * Opens a design that this browser keeps; until it is there the open one stays, and is kept. One that can't be read is
 * offered as far as it is good.
 */
export const openKept = async (id: string, sheet: Sheet = 'drawing'): Promise<void> => {
  const wanted = askFor(id)
  const { designId, document, save } = useStudio.getState()
  if (designId === id && save.state !== 'elsewhere') {
    void keepDesign()
    openSheet(sheet)
    return say(`${document.title} opened.`)
  }
  const next = await reach(id)
  const result = await next.saver.loaded
  if (!wanted()) return next.end()
  if (!result.ok) {
    const whole = result.why === 'unreadable' && 'problems' in result
    const problems = whole ? result.problems : [{ path: '', message: result.message }]
    change({ opening: { name: 'The kept design', problems, good: whole ? result.good : null } })
    return next.end()
  }
  const copied = await letGoOf(null)
  if (copied === null || !wanted()) return next.end()
  putOn(next, result.document, sheet)
  say(`${result.document.title} opened.${copied}`)
}

/** Removes a design for good. The open one is left first; one that is on its way is not shown any more. */
export const removeKept = async (id: string): Promise<void> => {
  designs.drop(id)
  if (useStudio.getState().designId === id) {
    showDesign('', newArrangement(), 'start')
    await leave()
  }
  const result = await store.remove(id)
  say(result.ok ? 'Removed.' : result.message)
  await refreshKept()
}

/** Shows the open design's drawing; one that is on its way is not shown any more. */
export const backToDrawing = (): void => {
  askFor()
  openSheet('drawing')
}

/** Back to the start page, with everything written and the list fresh. */
export const goToStart = async (): Promise<void> => {
  askFor()
  change({ sheet: 'start', placing: null })
  await keepDesign()
  await refreshKept()
}

/**
 * Opens the text of a file. What is right opens as a new design; what is not is shown with every place named, and
 * nothing changes before the person agrees. `refusal` is said where there is no text.
 */
export const openText = (name: string, text: string | null, refusal = ''): void => {
  if (text === null) return change({ opening: { name, problems: [{ path: '', message: refusal }], good: null } })
  const read = readArrangement(text, known)
  if (read.kind === 'ok') void beginDesign(read.document)
  else change({ opening: { name, problems: read.problems, good: read.kind === 'partly' ? read.good : null } })
}

/** Opens what is good of the file that waits, as a new design. */
export const agreeToOpen = (): void => {
  const good = useStudio.getState().opening?.good
  if (good) void beginDesign(good)
}

/** The open design as the text of a file. */
export const textOfDesign = (): { text: string; title: string } => {
  const { document } = useStudio.getState()
  isFiled(document)
  return { text: writeArrangement(document), title: document.title }
}

/** The sample arrangements, as files of the site. */
export const SAMPLES = ['orchard-supper', 'window-sill-bowl', 'twenty-four-cups'] as const

const fetchSample = async (name: string): Promise<Arrangement | null> => {
  const response = await fetch(`${import.meta.env.BASE_URL}samples/${name}.json`)
  const read = readArrangement(await response.text(), known)
  return read.kind === 'ok' ? read.document : null
}

const samples = new Map<string, Promise<Arrangement | null>>()

/** A sample by its name; fetched once, unless that fails. */
export const readSample = (name: string): Promise<Arrangement | null> => {
  const asked = samples.get(name)
  if (asked) return asked
  const now = fetchSample(name)
  samples.set(name, now)
  now.catch(() => samples.delete(name))
  return now
}

/** Opens a copy of a sample as the person's own. */
export const openSample = async (name: string): Promise<void> => {
  const document = await readSample(name)
  if (document) await beginDesign(document)
}
