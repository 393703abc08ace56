import type { Arrangement } from '../arrangement/index.ts'
import { type EventPart, type EventPlan, newEvent, readEvent, type WholeEvent, writeEvent } from '../event/index.ts'
import { say, saySentence } from './actions.ts'
import { useEvent } from './event-store.ts'
import { keepAside, known, store } from './keeping.ts'
import { useStudio } from './store.ts'

const KEY = 'event'
/** How long a hand rests before a save, ms; as for designs. */
const REST_ms = 400

const { getState: get, setState: set } = useEvent

/** One step: the event after `change`, said as `words`. What changes nothing leaves no trace. */
export const changeEvent = (change: Partial<EventPlan>, words: string): void => {
  const { event } = get()
  const keys = Object.keys(change) as (keyof EventPlan)[]
  if (keys.every((key) => Object.is(event[key], change[key]))) return
  set({ event: { ...event, ...change }, lastDone: words })
  saySentence(words)
}

/** Changes one part of the event. */
export const changePart = (design: string, change: Partial<EventPart>, words: string): void =>
  changeEvent({ parts: get().event.parts.map((p) => (p.design === design ? { ...p, ...change } : p)) }, words)

export const removePart = (design: string, words: string): void =>
  changeEvent({ parts: get().event.parts.filter((p) => p.design !== design) }, words)

/** Ticks a task off, or takes the tick away. */
export const tick = (key: string, done: boolean, title: string): void => {
  const others = get().event.done.filter((k) => k !== key)
  changeEvent({ done: done ? [...others, key] : others }, `${title}: ${done ? 'done' : 'not done'}`)
}

const step = (way: 'undo' | 'redo', said: string): void => {
  const history = useEvent.temporal.getState()
  const words = way === 'undo' ? get().lastDone : (history.futureStates.at(-1)?.lastDone ?? '')
  if ((way === 'undo' ? history.pastStates : history.futureStates).length === 0) return say(`Nothing to ${way}.`)
  history[way]()
  void fetchDesigns()
  say(`${said}: ${words}.`)
}
export const undoEvent = (): void => step('undo', 'Undone')
export const redoEvent = (): void => step('redo', 'Done again')

/** Fetches the designs that the event names, as this browser keeps them now. */
export const fetchDesigns = async (): Promise<void> => {
  const wanted = get().event.parts.map((p) => p.design)
  const found: Record<string, Arrangement> = {}
  const missing: string[] = []
  await Promise.all(
    wanted.map(async (id) => {
      const result = await store.load(id)
      if (result.ok) found[id] = result.document
      else if (id !== useStudio.getState().designId) missing.push(id)
    }),
  )
  set({ designs: found, missing })
}

/** Adds a kept design to the event, as often as it says itself. */
export const addPart = async (design: string): Promise<void> => {
  if (get().event.parts.some((p) => p.design === design)) return
  const result = await store.load(design)
  if (!result.ok) return say(result.message)
  const { title, setting } = result.document
  set({ designs: { ...get().designs, [design]: result.document } })
  const part = { design, copies: setting.copies, place: '' }
  changeEvent({ parts: [...get().event.parts, part] }, `${title} added to the event`)
}

let revision = 0
let timer: ReturnType<typeof setTimeout> | undefined
let writing: Promise<void> = Promise.resolve()

const write = async (): Promise<void> => {
  clearTimeout(timer)
  timer = undefined
  const { event } = get()
  const result = await store.putRevision(KEY, writeEvent({ ...event, designs: {} }), revision)
  if (result.ok) {
    revision = result.revision
    if (get().event === event) set({ save: { state: 'saved', at: Date.now() } })
  } else set({ save: result.why === 'conflict' ? { state: 'elsewhere' } : { state: 'failed', why: result.message } })
}

/** Writes what is not written yet, one write at a time. */
export const keepEvent = (): Promise<void> => {
  writing = writing.then(() => (timer === undefined ? undefined : write()))
  return writing
}

/** Forgets all steps and shows this event as it came. */
const show = (event: EventPlan, designs: Record<string, Arrangement>): void => {
  set({ event, designs, missing: [], lastDone: '', opening: null })
  useEvent.temporal.getState().clear()
}

/** What an event with nothing in it begins with: the design that is open. */
const begun = (): EventPlan => {
  const { designId, document } = useStudio.getState()
  const start = newEvent(get().event.zone)
  const date = document.setting.date ?? ''
  return {
    ...start,
    date: date && date.length <= 10 ? `${date}T15:00` : date.slice(0, 16),
    tables: document.setting.copies,
    parts: designId ? [{ design: designId, copies: document.setting.copies, place: '' }] : [],
  }
}

let started: Promise<void> | null = null

const start = async (): Promise<void> => {
  const kept = await store.revision(KEY)
  if (kept.ok) revision = kept.revision
  const read = kept.ok && typeof kept.value === 'string' ? readPlan(kept.value) : null
  show(read ?? begun(), {})
  set({ ready: true, save: { state: 'saved', at: 0 } })
  useEvent.subscribe((now, before) => {
    if (now.event === before.event || now.save.state === 'elsewhere') return
    set({ save: { state: 'saving' } })
    clearTimeout(timer)
    timer = setTimeout(() => void keepEvent(), REST_ms)
  })
  addEventListener('pagehide', () => void keepEvent())
}

/** A design that stands for one that lies by itself: the kept text holds none, and its parts name keys that have to exist. */
const STAND_IN = { format: 'pedicel-arrangement', version: 1, vessel: { width: 100, height: 100 } }

/** The plan as it was kept; null for what can't be read. */
const readPlan = (text: string): EventPlan | null => {
  try {
    const raw = JSON.parse(text) as EventPlan
    const designs = Object.fromEntries(raw.parts.map((p) => [p.design, STAND_IN]))
    const read = readEvent(JSON.stringify({ ...raw, designs }), known)
    if (read.kind === 'refused') return null
    const { designs: _, ...plan } = read.kind === 'ok' ? read.event : read.good
    return plan
  } catch {
    return null
  }
}

/** Fetches the event that this browser keeps, or begins one with the open design; from then on it is kept. Its designs: fetchDesigns. */
export const startEvent = (): Promise<void> => {
  started = started ?? start()
  return started
}

/** A new event with the open design in it, in place of the one there was; that is one step, which can be taken back. */
export const beginEvent = (): void => {
  const { designId, document } = useStudio.getState()
  if (designId) set({ designs: { ...get().designs, [designId]: document } })
  changeEvent(begun(), 'a new event')
}

/** The event as it stands, with its designs: those of the tool first. */
const wholeEvent = (): WholeEvent => {
  const { event, designs } = get()
  const { designId, document } = useStudio.getState()
  return { ...event, designs: designId ? { ...designs, [designId]: document } : designs }
}

export const textOfEvent = (): string => writeEvent(wholeEvent())

/** Keeps each design of an event from a file in this browser and shows the event, as one step. */
const take = async ({ designs, ...plan }: WholeEvent): Promise<void> => {
  const keys = new Map<string, string>()
  for (const { design } of plan.parts) {
    const id = await keepAside(designs[design]!)
    if (id === null) return say('This browser could not keep the designs of the event; nothing was opened.')
    keys.set(design, id)
  }
  set({ opening: null })
  changeEvent(
    { ...plan, parts: plan.parts.map((p) => ({ ...p, design: keys.get(p.design)! })) },
    `${plan.title || 'the event'} opened`,
  )
  await fetchDesigns()
}

/** Opens the text of an event's file; one with something wrong in it waits for the person's word, and nothing changes before. */
export const openEventText = async (name: string, text: string): Promise<void> => {
  const read = readEvent(text, known)
  if (read.kind === 'ok') return take(read.event)
  set({ opening: { name, problems: read.problems, good: read.kind === 'partly' ? read.good : null } })
}
export const agreeToOpenEvent = async (): Promise<void> => {
  const good = get().opening?.good
  if (good) await take(good)
}
export const dropOpeningEvent = (): void => set({ opening: null })
