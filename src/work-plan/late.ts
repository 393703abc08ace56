import { weekdayWords } from './clock.ts'
import type { Clash, Task } from './types.ts'

const KNOWN = 'by this machine’s clock'
const DAY_ms = 86_400_000

/** Until when a day without an hour counts as not past, milliseconds since 1970: its end, anywhere on earth. */
const endOf = (task: Task): number => task.span_ms?.[1] ?? Date.parse(`${task.end}T00:00Z`) + 1.5 * DAY_ms

/**
 * What is past and not ticked off: an event that is over, an order that is late, work that was to be done by now.
 * @param now_ms milliseconds since 1970
 * @param done keys of tasks that are ticked off
 */
export const lateOf = (tasks: readonly Task[], now_ms: number, done: readonly string[]): Clash[] => {
  const open = tasks.filter((t) => !done.includes(t.key) && endOf(t) < now_ms)
  const clear = tasks.find((t) => t.kind === 'clear')
  if (clear && clear.span_ms![0] < now_ms)
    return [{ tasks: ['clear'], text: 'This event is over: its date is past.', known: KNOWN }]
  const late: Clash[] = []
  const booking = open.find((t) => t.kind === 'book')
  const settle = tasks.find((t) => t.kind === 'settle')
  const firstIn = tasks.find((t) => t.kind === 'arrive')
  if (booking) {
    const short = settle !== undefined && endOf(settle) < now_ms
    const none = firstIn !== undefined && endOf(firstIn) < now_ms
    late.push({
      tasks: [booking.key],
      text: none
        ? `The first flowers were to come on ${weekdayWords(firstIn.start)}, and nothing is ordered: buy what a market or a florist has today, and choose plants by that.`
        : short
          ? 'The event is less than two weeks away: ask what can still be had before you rely on any of it.'
          : `It was to be ordered by ${weekdayWords(booking.end)}: order today.`,
      known: `${KNOWN}; the days: common practice`,
      ...(none ? { mend: 'together' as const } : {}),
    })
  }
  const rest = open.filter((t) => t.kind !== 'book')
  if (rest.length > 0)
    late.push({
      tasks: rest.map((t) => t.key),
      text: `Past, and not ticked off: ${rest.map((t) => `${t.title.toLowerCase()} (${weekdayWords(t.start)})`).join(', ')}.`,
      known: KNOWN,
    })
  return late
}
