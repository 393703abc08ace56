import type { EventPlan } from '../event/index.ts'
import type { Task } from './types.ts'

/**
 * A calendar file (iCalendar, RFC 5545) of the plan's tasks. Times are moments in UTC, so that no zone has to be described and
 * no clock can be misread; a task without an hour is a whole day.
 */

/** The special characters of a text value, RFC 5545 3.3.11; control characters have no place in one. */
const escaped = (text: string): string =>
  text
    .replace(/\r\n?/g, '\n')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is taken out
    .replace(/[\u0000-\u0009\u000b-\u001f\u007f]/g, ' ')
    .replace(/[\\;,]/g, (c) => `\\${c}`)
    .replace(/\n/g, '\\n')

const bytes = new TextEncoder()

/** A line of at most 75 octets goes on in the next after a space (3.1); no character is cut in two. */
export const foldLine = (line: string): string => {
  const rows: string[] = []
  let row = ''
  let used = 0
  for (const character of line) {
    const size = bytes.encode(character).length
    if (used + size > (rows.length === 0 ? 75 : 74)) {
      rows.push(row)
      row = ''
      used = 0
    }
    row += character
    used += size
  }
  return [...rows, row].join('\r\n ')
}

/** `20270612T140000Z` */
const stamp = (ms: number): string => new Date(ms).toISOString().replace(/[-:]|\.\d+/g, '')

const dayAfter = (day: string): string => new Date(Date.parse(`${day}T00:00Z`) + 86_400_000).toISOString().slice(0, 10)
const plainDay = (day: string): string => day.replaceAll('-', '')

/** A day does not make anyone busy (3.8.2.7). */
const FREE = 'TRANSP:TRANSPARENT'

/** Grows with each file, so that a newer one replaces an older one's tasks (3.8.7.4): minutes since 1970. */
const sequence = (now_ms: number): number => Math.max(0, Math.floor(now_ms / 60_000))

const eventLines = (task: Task, title: string, uid: string, now_ms: number): string[] => [
  'BEGIN:VEVENT',
  `UID:${escaped(uid)}`,
  `DTSTAMP:${stamp(now_ms)}`,
  `LAST-MODIFIED:${stamp(now_ms)}`,
  `SEQUENCE:${sequence(now_ms)}`,
  ...(task.span_ms
    ? [`DTSTART:${stamp(task.span_ms[0])}`, `DTEND:${stamp(Math.max(task.span_ms[1], task.span_ms[0] + 60_000))}`]
    : [`DTSTART;VALUE=DATE:${plainDay(task.start)}`, `DTEND;VALUE=DATE:${plainDay(dayAfter(task.end))}`, FREE]),
  `SUMMARY:${escaped(title ? `${task.title} (${title})` : task.title)}`,
  `DESCRIPTION:${escaped([...(task.who ? [`Who: ${task.who}`] : []), ...task.steps, ...task.reasons.map((r) => `${r.text} [${r.source}]`)].join('\n'))}`,
  'END:VEVENT',
]

/**
 * What tells an event from others in a calendar: its id, whatever its title, date and designs, so that a newer file replaces the
 * older one's tasks; for an event without one, its first design.
 */
export const calendarName = ({ id, parts }: Pick<EventPlan, 'id' | 'parts'>): string =>
  id || (parts[0]?.design ?? 'event')

/**
 * @param tasks of one plan
 * @param title of the event; put behind each task
 * @param name tells this event from others, so that a newer file replaces the older one's tasks
 * @param now_ms when the file is made, milliseconds since 1970
 */
export const calendarOf = (tasks: readonly Task[], title: string, name: string, now_ms: number): string =>
  [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Pedicel//Plan of work//EN',
    'CALSCALE:GREGORIAN',
    ...tasks.flatMap((task) => eventLines(task, title, `${task.key}.${name}@pedicel`, now_ms)),
    'END:VCALENDAR',
  ]
    .map((line) => `${foldLine(line)}\r\n`)
    .join('')
