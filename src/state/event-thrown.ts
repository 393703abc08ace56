import { say } from './actions.ts'
import { askedEvent, dropAsked, named, refreshEvents, sentence, show, startAnew } from './event-keeping.ts'
import { letGo, texts } from './event-saver.ts'
import { useEvent } from './event-store.ts'

const { getState: get } = useEvent

/** Throws an event away, so that it can be put back. From the one that is open, on to the next or a new one. */
export const throwEventAway = async (id: string): Promise<void> => {
  dropAsked(id)
  const open = get().event.id === id
  const title = named(open ? get().event.title : (get().kept.find((e) => e.id === id)?.title ?? ''))
  if (open) {
    if (!(await letGo())) return say('The event can’t be kept now; nothing was thrown away.')
    const others = get().kept.filter((e) => e.id !== id && e.readable && !e.thrown)
    const other = others.find((e) => e.id === askedEvent()) ?? others[0]
    if ((await (other ? show(other.id, null) : startAnew())) === 'failed') return
  }
  const done = await texts.mark(id, true)
  say(done.ok || done.why === 'missing' ? `${sentence(title)} thrown away; it can be put back.` : done.message)
  await refreshEvents()
}

export const putEventBack = async (id: string): Promise<void> => {
  const done = await texts.mark(id, false)
  say(done.ok ? 'Put back.' : done.message)
  await refreshEvents()
}

/** Takes an event that was thrown away out of this browser, for good. */
export const removeEvent = async (id: string): Promise<void> => {
  const done = await texts.remove(id)
  say(done.ok ? 'Removed.' : done.message)
  await refreshEvents()
}

/** The record of an event as it lies there: the way out for one that can't be read. */
export const rawEvent = async (id: string): Promise<string | null> => {
  const raw = await texts.raw(id)
  return raw.ok ? raw.text : null
}
