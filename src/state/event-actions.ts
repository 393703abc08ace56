import { EVENT_LIMITS, type EventPart, type EventPlan, newEvent } from '../event/index.ts'
import { inCurrency, type PriceBook, sameFigure } from '../stem-list/index.ts'
import { change, say, saySentence } from './actions.ts'
import { keepDesign } from './design-saver.ts'
import { fetchDesigns } from './event-designs.ts'
import { type EventState, useEvent } from './event-store.ts'
import { store } from './kept-store.ts'
import { useStudio } from './store.ts'

const { getState: get, setState: set } = useEvent

/** One step: the event after `change`, said as `words`. What changes nothing leaves no trace. */
export const changeEvent = (change: Partial<EventPlan>, words: string): void => {
  const { event } = get()
  const keys = Object.keys(change) as (keyof EventPlan)[]
  if (keys.every((key) => Object.is(event[key], change[key]))) return
  set({ event: { ...event, ...change }, lastDone: words })
  saySentence(words)
}

const piecesOf = (parts: readonly EventPart[]): number => parts.reduce((sum, p) => sum + p.copies, 0)

/** New parts; the tables that the cost is divided by are as many as the pieces until the person says another number. */
const changeParts = (parts: EventPart[], words: string): void => {
  const { event } = get()
  const tables = event.tables === piecesOf(event.parts) ? Math.min(piecesOf(parts), EVENT_LIMITS.tables) : event.tables
  changeEvent({ parts, tables }, words)
}

/** Changes one part of the event. */
export const changePart = (design: string, change: Partial<EventPart>, words: string): void =>
  changeParts(
    get().event.parts.map((p) => (p.design === design ? { ...p, ...change } : p)),
    words,
  )

export const removePart = (design: string, words: string): void =>
  changeParts(
    get().event.parts.filter((p) => p.design !== design),
    words,
  )

/** Ticks a task off, or takes the tick away. */
export const tick = (key: string, done: boolean, title: string): void => {
  const others = get().event.done.filter((k) => k !== key)
  changeEvent({ done: done ? [...others, key] : others }, `${title}: ${done ? 'done' : 'not done'}`)
}

/** Adds a kept design to the event that is open, as often as it says itself. */
export const addPart = async (design: string): Promise<void> => {
  const { id } = get().event
  // What was changed in it just now counts.
  if (useStudio.getState().designId === design) await keepDesign()
  const result = await store.load(design)
  if (!result.ok) return say(result.message)
  if (get().event.id !== id) return say(`${result.document.title} was not put in: another event was opened.`)
  if (get().event.parts.some((p) => p.design === design)) return
  const { title, setting } = result.document
  set({ designs: { ...get().designs, [design]: result.document } })
  const part = { design, copies: setting.copies, place: '' }
  changeParts([...get().event.parts, part], `${title} added to the event`)
}

/**
 * One step of the event that is of the price book: the prices of all designs, which undo on the event's sheet takes back.
 */
export const changePrices = (prices: PriceBook, words: string, and: Partial<EventPlan> = {}): void => {
  const before = useStudio.getState().prices
  if (prices === before) return
  const { temporal } = useEvent
  if (get().prices !== before) {
    temporal.getState().pause()
    set({ prices: before })
    temporal.getState().resume()
  }
  const { event } = get()
  const next = Object.keys(and).length > 0 ? { ...event, ...and } : event
  set({ prices, event: next, lastDone: words })
  change({ prices })
  saySentence(words)
}

/**
 * The same figures in another currency, those of a budget in the old one as well: 1,500.00 EUR are 1,500 JPY, not 150,000.
 * Nothing is converted, for there is no rate.
 */
export const changeCurrency = (currency: string): void => {
  const { prices } = useStudio.getState()
  const { event } = get()
  const was = event.currency || prices.currency
  const along = event.budget !== null && was === prices.currency
  const and = along ? { budget: sameFigure(event.budget ?? 0, was, currency), currency } : {}
  const words = `prices${along ? ' and the budget' : ''} in ${currency}: the same figures, nothing is converted`
  changePrices(inCurrency(prices, currency), words, and)
}

const step = (way: 'undo' | 'redo', said: string): void => {
  const history = useEvent.temporal.getState()
  const words = way === 'undo' ? get().lastDone : (history.futureStates.at(-1)?.lastDone ?? '')
  if ((way === 'undo' ? history.pastStates : history.futureStates).length === 0) return say(`Nothing to ${way}.`)
  history[way]()
  const { prices } = get()
  if (prices) change({ prices })
  void fetchDesigns()
  say(`${said}: ${words}.`)
}
export const undoEvent = (): void => step('undo', 'Undone')
export const redoEvent = (): void => step('redo', 'Done again')

/** Forgets all steps and shows this event as it came, with what its designs are found to be. */
export const showEvent = (event: EventPlan, found: Pick<EventState, 'designs' | 'missing'>): void => {
  const { currency } = useStudio.getState().prices
  const stamped = event.budget !== null && event.currency === '' ? { ...event, currency } : event
  set({ ...found, event: stamped, prices: null, lastDone: '', opening: null, twin: null })
  useEvent.temporal.getState().clear()
}

/** What an event with nothing in it begins with: the design that is open. */
export const begun = (id: string): EventPlan => {
  const { designId, document } = useStudio.getState()
  const date = document.setting.date ?? ''
  return {
    ...newEvent(get().event.zone),
    id,
    date: date && date.length <= 10 ? `${date}T15:00` : date.slice(0, 16),
    tables: designId ? document.setting.copies : 0,
    parts: designId ? [{ design: designId, copies: document.setting.copies, place: '' }] : [],
  }
}
