import type { EventPlan } from '../event/index.ts'
import { onFive, shortDay, weekdayWords } from './clock.ts'
import type { Clash, Task } from './types.ts'

const clock = (text: string): string => text.slice(11)

/** `09:00–10:30`, the day in front of the end where it is another one; for a task without an hour `any hour`, or its last day. */
export const timeWords = ({ span_ms, start, end }: Task): string => {
  if (!span_ms) return start === end ? 'any hour' : `to ${shortDay(end)}`
  if (start === end) return clock(start)
  return `${clock(start)}–${start.slice(0, 10) === end.slice(0, 10) ? '' : `${weekdayWords(end)} `}${clock(end)}`
}

/** `1 h 20 min`, to the nearest minute. */
export const minuteWords = (minutes: number): string => {
  const all = Math.round(minutes)
  const [h, min] = [Math.floor(all / 60), all % 60]
  return h === 0 ? `${min} min` : min === 0 ? `${h} h` : `${h} h ${min} min`
}

/** The same, to the next five minutes: hands are not reckoned more finely. */
export const fiveWords = (minutes: number): string => minuteWords(onFive(minutes))

/** How many days before, in words. */
export const beforeWords = (days: number): string => {
  if (days === 0) return 'the day itself'
  const n = Math.abs(days)
  if (days < 0) return n === 1 ? 'the day after' : `${n} days after`
  return n === 1 ? 'the day before' : `${n} days before`
}

/** Tasks by the day on which they begin, in order. @param date of the event, its day in front */
export const byDay = (tasks: readonly Task[], date: string): { day: string; daysBefore: number; tasks: Task[] }[] => {
  const event = Date.parse(date.slice(0, 10))
  const days = new Map<string, Task[]>()
  for (const t of tasks) {
    const day = t.start.slice(0, 10)
    days.set(day, [...(days.get(day) ?? []), t])
  }
  return [...days].map(([day, all]) => ({ day, daysBefore: (event - Date.parse(day)) / 86_400_000, tasks: all }))
}

/** The plan as plain text: what will not go, then a list by days that can be ticked off. */
export const planText = (
  { title, date, done }: Pick<EventPlan, 'title' | 'date' | 'done'>,
  tasks: readonly Task[],
  clashes: readonly Clash[],
): string => {
  const lines = [title ? `${title}: plan of work` : 'Plan of work']
  if (clashes.length > 0) lines.push('', 'What will not go as it stands:', ...clashes.map((c) => `! ${c.text}`))
  for (const { day, daysBefore, tasks: mine } of byDay(tasks, date)) {
    lines.push('', `${weekdayWords(day)} ${day.slice(0, 4)}, ${beforeWords(daysBefore)}`)
    for (const t of mine) {
      const there = [t.who, t.hand_min > 0 ? `${fiveWords(t.hand_min)} of hands` : ''].filter(Boolean).join(', ')
      const what = t.span_ms || t.start !== t.end ? `${timeWords(t)} ${t.title}` : t.title
      lines.push(`[${done.includes(t.key) ? 'x' : ' '}] ${what}${there && ` (${there})`}`)
      lines.push(...t.steps.map((step) => `    ${step}`))
    }
  }
  return `${lines.join('\n')}\n`
}
