import type { EventPlan } from '../event/index.ts'
import {
  type Autosaver,
  autosaver,
  browserTexts,
  carryWords,
  claimDesign,
  leaveWords,
  newName,
  type SaveState,
  smallStore,
  type Unwritten,
} from '../storage/index.ts'
import { useEvent } from './event-store.ts'
import { readPlan, textBeside, textOfPlan } from './event-text.ts'

/** The events that this browser keeps. */
export const texts = browserTexts('event:')
const small = smallStore()
const WORDS = 'pedicel-event-unwritten-'
/** This page, unlike any other: its last words are carried over once it is gone. */
const page = newName()
/** A key is the page, a number and the event: one event may be left, opened and left again. */
let left = 0
const pageOf = (key: string): string => key.split(' ', 1)[0] ?? ''
const eventOf = (key: string): string => key.split(' ').slice(2).join(' ')
const claimPage = (name: string): Promise<(() => void) | null> => claimDesign(`page-${name}`)

const { getState: get, setState: set } = useEvent

let saver: Autosaver<string> | null = null
/** The event as it was when nothing of it was unwritten. */
let written: EventPlan | null = null
/** Words were left, and hold as long as nothing newer is written. */
let spoken = ''

const heardSaved: (() => void)[] = []
/** Calls `then` after each save of this page. */
export const onSaved = (then: () => void): void => void heardSaved.push(then)

const forgetWords = (): void => {
  if (spoken) small?.removeItem(spoken)
  spoken = ''
}

/** What is written of the event by now, and how far the store is, is known from its text. */
const hear =
  (mine: () => boolean) =>
  (save: SaveState): void => {
    if (!mine()) return
    set({ save })
    if (save.state !== 'saved') return
    written = get().event
    forgetWords()
    for (const then of heardSaved) then()
  }

/** Another page has written a newer state: this one writes no more, so as not to lose either. */
export const elsewhere = (): boolean => get().save.state === 'elsewhere'
/** Looks whether another page has gone on with this event, and says so if nothing of this page's is on its way: that would meet it. */
export const lookElsewhere = async (): Promise<void> => {
  const mine = saver
  const there = await texts.load(get().event.id)
  const newer = there.ok && mine && there.revision > mine.revision()
  if (newer && mine === saver && !ownUnwritten()) set({ save: { state: 'elsewhere' } })
}
/** Something of this page's event is written nowhere. */
export const ownUnwritten = (): boolean => get().event !== written && (elsewhere() || saver?.unwritten() != null)

/** The event has changed: it is written after a rest. */
export const eventChanged = (): void => {
  if (!elsewhere()) saver?.changed(textOfPlan(get().event))
}

/** Writes what waits. True when nothing is left unwritten. */
export const keepEvent = (): Promise<boolean> => saver?.flush() ?? Promise.resolve(true)

/** Looks up an event to go on with; nothing is shown or written before `goOn`. */
export const reach = async (id: string) => {
  const next: Autosaver<string> = autosaver(texts, id, { onState: hear(() => saver === next) })
  const result = await next.loaded
  return {
    result,
    /** From now on this event, as it is shown, is the one that is kept. */
    goOn: (): void => {
      void saver?.stop()
      saver = next
      written = get().event
      spoken = ''
      set({ save: next.state().state === 'loading' ? { state: 'saved', at: 0 } : next.state() })
    },
  }
}

/** This page's own state, where another page has written a newer one: kept as an event beside it. Null if it could not be. */
export const keepOwnBeside = async (): Promise<string | null> => {
  const id = newName()
  const { event } = get()
  const saved = await texts.save(id, textBeside(textOfPlan(event), id), 0)
  if (!saved.ok) return null
  written = event
  forgetWords()
  return id
}

/** Puts down at once what is not written. @returns false where that was not possible */
export const leaveLastWordsOfEvent = (): boolean => {
  const { event } = get()
  const own: Unwritten<string> | null = elsewhere()
    ? { document: textOfPlan(event), revision: 0, underWay: null }
    : (saver?.unwritten() ?? null)
  if (!own || !ownUnwritten()) return true
  left += spoken ? 0 : 1
  spoken = `${WORDS}${page} ${left} ${event.id}`
  return leaveWords(small, spoken, own)
}

/** Nothing of the event that is shown would be lost by leaving it: written, put down, or kept beside the newer one. */
export const letGo = async (): Promise<boolean> => {
  for (;;) {
    const { event } = get()
    const flushed = await keepEvent()
    if (elsewhere() && ownUnwritten()) {
      if ((await keepOwnBeside()) === null && !leaveLastWordsOfEvent()) return false
    } else if (!flushed && !leaveLastWordsOfEvent()) return false
    // What was changed meanwhile is looked at once more.
    if (get().event === event) return true
  }
}

/** Carries over what pages that are gone had not written. */
export const carryWordsOfEvents = async (): Promise<void> => {
  await claimPage(page)
  const read = (text: string): string | null => (readPlan(text, '') ? text : null)
  // A page is claimed once for all its words: a claim that is given back is not free again at once.
  const claims = new Map<string, Promise<(() => void) | null>>()
  const claim = async (key: string): Promise<(() => void) | null> => {
    const name = pageOf(key)
    const claimed = claims.get(name) ?? claimPage(name)
    claims.set(name, claimed)
    return (await claimed) && (() => {})
  }
  await carryWords(small, { prefix: WORDS, idOf: eventOf, store: texts, read, beside: textBeside }, claim)
  for (const claimed of claims.values()) (await claimed)?.()
}
