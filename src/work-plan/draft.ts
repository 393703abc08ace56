import { later, localDay, localText, type Moment } from './clock.ts'
import type { Slot } from './crew.ts'
import type { Reason, Task, TaskKind } from './types.ts'

/** What is to be done, before it has a day and an hour. */
export interface Draft {
  key: string
  kind: TaskKind
  title: string
  hand_min?: number
  /** Takes so long by the clock, whatever the hands. */
  clock_min?: number
  /** So many pairs of hands do; missing: all are at it. */
  few?: number
  /** Keys of tasks of the same day that come first. */
  after?: string[]
  /** So long after another of the same day. */
  rests?: { key: string; min: number }
  /** Not before so many minutes of the day's work. */
  from_min?: number
  steps: string[]
  reasons: Reason[]
  plants?: string[]
}

/** `1 stem`, `12 stems`. */
export const counted = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`

const filled = ({ key, kind, title, hand_min = 0, steps, reasons, plants = [] }: Draft) => ({
  key,
  kind,
  title,
  hand_min,
  steps,
  reasons,
  plants,
})

/** The hands at a task, and who they are in words. */
export interface There {
  hands: number[]
  who: string
}

/** For what only waits. */
export const NOBODY: There = { hands: [], who: '' }

export const timed = (draft: Draft, daysBefore: number, from: Moment, to: Moment, there: There): Task => ({
  ...filled(draft),
  daysBefore,
  start: localText(from),
  end: localText(to),
  span_ms: [from.epochMilliseconds, to.epochMilliseconds],
  people: there.hands.length,
  ...there,
})

/** A task without an hour, from one day to another, both included. @param last days before, at most `days` */
export const wholeDays = (event: Moment, days: number, draft: Draft, there: There, last = days): Task => ({
  ...filled(draft),
  daysBefore: days,
  start: localDay(event.subtract({ days })),
  end: localDay(event.subtract({ days: last })),
  span_ms: null,
  people: Math.max(1, there.hands.length),
  ...there,
})

/** The tasks of a day from the moment at which it begins. */
export const placedInDay = (
  from: Moment,
  day: number,
  slots: readonly Slot[],
  whoOf: (hands: number[]) => string,
): Task[] =>
  slots.map(({ draft, hands, from: start, to }) =>
    timed(draft, day, later(from, start), later(from, to), { hands, who: whoOf(hands) }),
  )
