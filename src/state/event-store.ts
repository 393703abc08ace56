import { temporal } from 'zundo'
import { create, useStore } from 'zustand'
import type { Arrangement, Problem } from '../arrangement/index.ts'
import { type EventPlan, newEvent, type WholeEvent } from '../event/index.ts'
import type { PriceBook } from '../stem-list/index.ts'
import type { SaveState } from '../storage/index.ts'

/** Where the clock of this machine stands. */
const homeZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC'

export interface EventState {
  /** The part that undo covers. */
  event: EventPlan
  lastDone: string
  /** Designs of the event by their key in this browser; one that is open in the tool is taken from there instead. */
  designs: Record<string, Arrangement>
  /** Keys of designs that this browser no longer has, or can't read. */
  missing: string[]
  /** The price book that the step came to; null before the first that has to do with prices. Undo covers it. */
  prices: PriceBook | null
  save: SaveState
  /** Events that this browser keeps, newest first, those that were thrown away among them. */
  kept: KeptEvent[]
  /** What this browser keeps has been looked at. */
  ready: boolean
  /** A file with something wrong in it, waiting for the person's word. */
  opening: { name: string; problems: Problem[]; good: WholeEvent | null } | null
  /** A file of an event that is kept already, and not as it is in the file: waits for the person's word. */
  twin: { name: string; file: WholeEvent; kept: KeptEvent } | null
}

/** An event in the list of those that this browser keeps. */
export interface KeptEvent {
  id: string
  title: string
  /** As in the event; '' where it has none. */
  date: string
  /** Milliseconds since 1970. */
  savedAt: number
  readable: boolean
  thrown: boolean
}

const initial = (): EventState => ({
  event: newEvent(homeZone()),
  lastDone: '',
  designs: {},
  missing: [],
  prices: null,
  save: { state: 'loading' },
  ready: false,
  opening: null,
  twin: null,
  kept: [],
})

/** Steps that can be taken back. */
const UNDO_LIMIT = 1000

/** The event, beside the design. `event`, `lastDone` and `prices` are written only by event-actions.ts. */
export const useEvent = create<EventState>()(
  temporal(() => initial(), {
    limit: UNDO_LIMIT,
    partialize: ({ event, lastDone, prices }) => ({ event, lastDone, prices }),
    equality: (a, b) => a.event === b.event && a.prices === b.prices,
  }),
)

/** What can be taken back and done again in the event. */
export const useEventHistory = (): { undo: string; redo: string } => {
  const lastDone = useEvent((s) => s.lastDone)
  const steps = useStore(useEvent.temporal, (s) => s.pastStates.length)
  const next = useStore(useEvent.temporal, (s) => s.futureStates.at(-1)?.lastDone ?? '')
  return { undo: steps > 0 ? lastDone : '', redo: next }
}
