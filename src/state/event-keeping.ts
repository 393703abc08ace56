import type { EventPlan } from '../event/index.ts'
import { newName } from '../storage/index.ts'
import { say } from './actions.ts'
import { asking } from './asking.ts'
import { begun, showEvent } from './event-actions.ts'
import { lookUp } from './event-designs.ts'
import {
  carryWordsOfEvents,
  elsewhere,
  eventChanged,
  keepEvent,
  keepOwnBeside,
  leaveLastWordsOfEvent,
  letGo,
  lookElsewhere,
  onSaved,
  ownUnwritten,
  reach,
  texts,
} from './event-saver.ts'
import { type KeptEvent, useEvent } from './event-store.ts'
import { keptEvent, readKept } from './event-text.ts'
import { store } from './kept-store.ts'
import { useStudio } from './store.ts'

/** Where versions that knew one event alone kept it. */
const OLD_KEY = 'event'
/** The setting that says which event was open last. */
const OPEN = 'event-open'

const { getState: get, setState: set } = useEvent

/** Pages tell one another that they wrote. */
let channel: BroadcastChannel | null = null
/** An event comes as it is kept: that is no change. */
let showing = false
/** How much of the event that was shown last was wrong. */
let setBack = 0

/** Looks again which events this browser keeps. */
export const refreshEvents = async (): Promise<KeptEvent[]> => {
  const list = await texts.list()
  if (!list.ok) return get().kept
  const kept = list.texts.map(keptEvent)
  set({ kept })
  return kept
}

export const named = (title: string): string => title || 'the event without a title'
export const sentence = (words: string): string => `${words[0]?.toUpperCase() ?? ''}${words.slice(1)}`
const setBackWords = (): string =>
  setBack === 0
    ? ''
    : ` ${setBack} ${setBack === 1 ? 'thing in it was' : 'things in it were'} wrong and ${setBack === 1 ? 'has its' : 'have their'} usual value; as it was it lies among those thrown away.`
const told = (): void => {
  channel?.postMessage('written')
  void refreshEvents()
}

/**
 * An event of which something is wrong is opened as far as it is good, and the next change would write that over it: as it was it
 * is put among those that were thrown away, once for each state. @returns whether it is there
 */
const putAsideAsItWas = async (id: string, text: string, revision: number): Promise<boolean> => {
  const aside = `${id} at ${revision}`
  const saved = await texts.save(aside, text, 0)
  if (saved.ok) await texts.mark(aside, true)
  return saved.ok || saved.why === 'conflict'
}

/** Asks for an event to be shown: what was asked for before is not shown any more. */
export const { askFor: askForEvent, asked: askedEvent, drop: dropAsked } = asking()

/** What came of showing an event; `overtaken`: another was asked for meanwhile, and nothing is said. */
type Shown = 'shown' | 'overtaken' | 'failed'

/** Shows an event and goes on keeping it. What was shown before is let go of first; where it can't be, nothing happens. */
export const show = async (id: string, plan: EventPlan | null, wanted = askForEvent(id)): Promise<Shown> => {
  const next = await reach(id)
  if (!wanted()) return 'overtaken'
  const { result } = next
  const read = result.ok ? readKept(result.document, id) : null
  const there = read?.plan ?? null
  if (result.ok && !there && !plan) {
    say('The kept event can’t be read; it was left as it is.')
    return 'failed'
  }
  if (!result.ok && !plan) {
    say(result.message)
    return 'failed'
  }
  const shown = plan ?? there!
  if (result.ok && read && read.wrong > 0 && !plan && !(await putAsideAsItWas(id, result.document, result.revision))) {
    say('Something in this event is wrong, and it can’t be put aside as it is: nothing was opened.')
    return 'failed'
  }
  const found = await lookUp(shown.parts)
  const free = !get().ready || (await letGo())
  if (!wanted()) return 'overtaken'
  if (!free) {
    say('The event that is open can’t be kept now: save it as a file first. Nothing was opened.')
    return 'failed'
  }
  setBack = plan ? 0 : (read?.wrong ?? 0)
  showing = true
  showEvent(shown, found)
  showing = false
  next.goOn()
  void store.putSetting(OPEN, id)
  return 'shown'
}

/** Opens an event that this browser keeps; one that was thrown away is taken back by it. */
export const openEvent = async (id: string): Promise<boolean> => {
  const wanted = askForEvent(id)
  const kept = get().kept.find((e) => e.id === id)
  if (kept?.thrown) await texts.mark(id, false)
  const opened = (await show(id, null, wanted)) === 'shown'
  if (opened) say(`${sentence(named(get().event.title))} opened.${setBackWords()}`)
  await refreshEvents()
  return opened
}

/** Shows a plan as an event of its own, kept at once beside the others. */
export const showNew = async (plan: EventPlan, words: string, wanted = askForEvent(plan.id)): Promise<Shown> => {
  const shown = await show(plan.id, plan, wanted)
  if (shown !== 'shown') return shown
  eventChanged()
  await keepEvent()
  say(`${sentence(words)}.`)
  await refreshEvents()
  return shown
}

/** A new event in place of none; it is kept from its first change on. */
export const startAnew = (): Promise<Shown> => {
  const plan = begun(newName())
  return show(plan.id, plan)
}

/** A new event with the open design in it, beside the one there was. */
export const beginEvent = async (): Promise<void> => {
  const { id, title } = get().event
  const beside = get().kept.some((e) => e.id === id) ? `; ${named(title)} is kept beside it` : ''
  await showNew(begun(newName()), `a new event${beside}`)
}

/** Shows the state that another page has written; what was changed here is kept as a copy beside it. */
export const showNewer = async (): Promise<void> => {
  const own = ownUnwritten()
  if ((await show(get().event.id, null)) !== 'shown') return
  say(own ? 'The newer one; yours is kept beside it as a copy.' : 'The newer one.')
  await refreshEvents()
}

/** Goes on with what is here as a copy beside the newer one. */
export const goOnWithCopy = async (): Promise<void> => {
  const id = await keepOwnBeside()
  if (id === null) return say('A copy can’t be kept now: save it as a file.')
  if ((await show(id, null)) !== 'shown') return
  say('Yours goes on as a copy.')
  await refreshEvents()
}

let started: Promise<void> | null = null

const start = async (): Promise<void> => {
  await carryWordsOfEvents()
  await texts.adopt(OLD_KEY, newName())
  const kept = (await refreshEvents()).filter((e) => e.readable && !e.thrown)
  const last = await store.setting(OPEN)
  const open = kept.find((e) => last.ok && e.id === last.value) ?? kept[0]
  if (!open || (await show(open.id, null)) !== 'shown') await startAnew()
  if (setBack > 0) {
    say(setBackWords().trim())
    await refreshEvents()
  }
  set({ ready: true })
  useEvent.subscribe((now, before) => {
    if (now.event !== before.event && !showing) eventChanged()
  })
  // What was changed in a design that is left is seen at once, and not only when it is looked up again.
  useStudio.subscribe((now, before) => {
    if (now.designId === before.designId || before.designId === '') return
    set({ designs: { ...get().designs, [before.designId]: before.document } })
  })
  onSaved(told)
  channel = globalThis.BroadcastChannel ? new BroadcastChannel('pedicel-events') : null
  channel?.addEventListener('message', () => {
    void refreshEvents()
    void lookElsewhere()
  })
  addEventListener('pagehide', partWith)
  addEventListener('visibilitychange', () => document.visibilityState === 'hidden' && partWith())
}

const partWith = (): void => {
  leaveLastWordsOfEvent()
  if (!elsewhere()) void keepEvent()
}

/** Fetches the event that was open last, or begins one with the open design; from then on it is kept. */
export const startEvent = (): Promise<void> => {
  started = started ?? start()
  return started
}
