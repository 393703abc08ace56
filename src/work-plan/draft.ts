import { later, localDay, localText, type Moment } from './clock.ts'
import type { Reason, Task, TaskKind } from './types.ts'

/** What is to be done, before it has a day and an hour. */
export interface Draft {
  key: string
  kind: TaskKind
  title: string
  hand_min?: number
  steps: string[]
  reasons: Reason[]
  plants?: string[]
}

/** `1 stem`, `12 stems`. */
export const counted = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`

const filled = (draft: Draft) => ({ hand_min: 0, plants: [], ...draft })

export const timed = (draft: Draft, daysBefore: number, from: Moment, to: Moment, people: number): Task => ({
  ...filled(draft),
  daysBefore,
  start: localText(from),
  end: localText(to),
  span_ms: [from.epochMilliseconds, to.epochMilliseconds],
  people,
})

/** A task without an hour, from one day to another, both included. @param last days before, at most `days` */
export const wholeDays = (event: Moment, days: number, draft: Draft, last = days): Task => ({
  ...filled(draft),
  daysBefore: days,
  start: localDay(event.subtract({ days })),
  end: localDay(event.subtract({ days: last })),
  span_ms: null,
  people: 1,
})

/** Tasks one after another from a moment, each by all hands. */
export const inARow = (from: Moment, day: number, drafts: readonly Draft[], people: number): Task[] => {
  let at = from
  return drafts.map((draft) => {
    const end = later(at, (draft.hand_min ?? 0) / people)
    const task = timed(draft, day, at, end, people)
    at = end
    return task
  })
}
