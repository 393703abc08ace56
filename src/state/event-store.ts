import { temporal } from 'zundo'
import { create, useStore } from 'zustand'
import type { Arrangement, Problem } from '../arrangement/index.ts'
import { type EventPlan, newEvent, type WholeEvent } from '../event/index.ts'
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
  save: SaveState
  /** What this browser keeps has been looked at. */
  ready: boolean
  /** A file with something wrong in it, waiting for the person's word. */
  opening: { name: string; problems: Problem[]; good: WholeEvent | null } | null
}

const initial = (): EventState => ({
  event: newEvent(homeZone()),
  lastDone: '',
  designs: {},
  missing: [],
  save: { state: 'loading' },
  ready: false,
  opening: null,
})

/** Steps that can be taken back. */
const UNDO_LIMIT = 1000

/** The event, beside the design. `event` and `lastDone` are written only by event-actions.ts. */
export const useEvent = create<EventState>()(
  temporal(() => initial(), {
    limit: UNDO_LIMIT,
    partialize: ({ event, lastDone }) => ({ event, lastDone }),
    equality: (a, b) => a.event === b.event,
  }),
)

/** What can be taken back and done again in the event. */
export const useEventHistory = (): { undo: string; redo: string } => {
  const lastDone = useEvent((s) => s.lastDone)
  const steps = useStore(useEvent.temporal, (s) => s.pastStates.length)
  const next = useStore(useEvent.temporal, (s) => s.futureStates.at(-1)?.lastDone ?? '')
  return { undo: steps > 0 ? lastDone : '', redo: next }
}
