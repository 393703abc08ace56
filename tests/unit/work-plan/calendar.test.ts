import fc from 'fast-check'
import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import { calendarName, calendarOf, foldLine, type Task } from '../../../src/work-plan/index.ts'
import { promise } from '../../promise.ts'
import { event, line, plan } from './made.ts'

const NOW = Date.UTC(2027, 3, 1, 12)

/** Read by ical.js, which knows nothing of us. */
const readBack = (text: string) =>
  new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((c) => new ICAL.Event(c))

describe('the calendar file', () => {
  const { tasks } = plan({}, line('rose', 60), line('sweet-pea', 30))
  const text = calendarOf(tasks, 'Forty tables; two, by hand', 'ab12', NOW)

  it('is read by an independent parser: each task at its moment', () => {
    const events = readBack(text)
    expect(events.map((e) => e.summary)).toEqual(tasks.map((t) => `${t.title} (Forty tables; two, by hand)`))
    events.forEach((e, i) => {
      const t = tasks[i]!
      if (t.span_ms) {
        expect(e.startDate.toJSDate().getTime()).toBe(t.span_ms[0] - (t.span_ms[0] % 1000))
        expect(e.startDate.isDate).toBe(false)
      } else {
        expect(e.startDate.isDate).toBe(true)
        expect(e.startDate.toString()).toBe(t.start)
        // The end of a whole day is the day after it (RFC 5545, 3.6.1).
        const last = Date.parse(`${t.end}T00:00Z`) + 86_400_000
        expect(e.endDate.toString()).toBe(new Date(last).toISOString().slice(0, 10))
      }
      expect(e.description).toContain(t.steps[0])
    })
    expect(new Set(events.map((e) => e.uid)).size).toBe(events.length)
  })

  it('a June afternoon in Lisbon is an hour earlier in UTC', () => {
    const set = readBack(text).find((e) => e.uid.startsWith('set.'))!
    expect(set.endDate.toString()).toBe('2027-06-12T13:00:00Z')
  })

  it('every line ends in CRLF and has at most 75 octets', () => {
    const lines = text.split('\r\n')
    expect(lines.at(-1)).toBe('')
    for (const row of lines) {
      expect(new TextEncoder().encode(row).length).toBeLessThanOrEqual(75)
      expect(row).not.toMatch(/[\r\n]/)
    }
  })

  it('whatever is written in a title or a step comes back as it was', () => {
    let runs = 0
    const [first] = tasks as [Task]
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 200 }), (words) => {
        runs += 1
        // biome-ignore lint/suspicious/noControlCharactersInRegex: what no calendar can hold
        const plain = words.replace(/[\u0000-\u001f\u007f]/g, '')
        const [event] = readBack(calendarOf([{ ...first, title: plain, steps: [plain] }], '', 'x', NOW))
        expect(event!.summary).toBe(plain)
        expect(event!.description.startsWith(plain)).toBe(true)
      }),
      { numRuns: 300 },
    )
    promise(`W2 a calendar read back by an independent parser: ${runs} texts, 0 failures`)
  })

  it('a plan of another date or title replaces the one before, another event stands beside it', () => {
    const uids = (date: string, title: string, id = 'b7'): string[] => {
      const made = { ...event({ date }), title, id }
      return readBack(calendarOf(plan(made, line('rose', 60)).tasks, title, calendarName(made), NOW)).map((e) => e.uid)
    }
    expect(uids('2027-07-03T16:00', 'Inês')).toEqual(uids('2027-06-12T15:00', 'Ana & Rui'))
    expect(uids('2027-06-12T15:00', 'Ana & Rui', 'c8')).not.toEqual(uids('2027-06-12T15:00', 'Ana & Rui'))
    expect(calendarName({ id: '', parts: [] })).toBe('event')
  })

  it('who is at a task stands in it; a day makes nobody busy; a newer file counts as newer', () => {
    const made = plan({ work: { ...event().work, names: ['Inês', 'Rui'] } }, line('rose', 60)).tasks
    const events = readBack(calendarOf(made, 'Forty', 'b7', NOW))
    const by = (key: string) => events.find((e) => e.uid.startsWith(`${key}.`))!
    expect(by('place-1').description.split('\n')[0]).toBe('Who: Inês and Rui')
    expect(by('settle').description).not.toContain('Who:')
    const of = (key: string, name: string) => by(key).component.getFirstPropertyValue(name)
    expect([of('settle', 'transp'), of('set', 'transp')]).toEqual(['TRANSPARENT', null])
    const later = readBack(calendarOf(made, 'Forty', 'b7', NOW + 3_600_000))
    expect(later[0]!.sequence).toBe(events[0]!.sequence + 60)
    expect(String(later[0]!.component.getFirstPropertyValue('last-modified'))).toBe('2027-04-01T13:00:00Z')
    expect(later.map((e) => e.uid)).toEqual(events.map((e) => e.uid))
  })

  it('is folded at 75 octets also where letters take four, and commas, semicolons and new lines come back', () => {
    const [first] = tasks as [Task]
    const words = 'Grün, früh; \u{1f33f}\u{1f33f} and a back\\slash, '.repeat(12).trim()
    const folded = calendarOf([{ ...first, title: words, steps: [`${words}\nthen more`] }], 'A; b, c', 'x', NOW)
    for (const row of folded.split('\r\n')) {
      expect(new TextEncoder().encode(row).length).toBeLessThanOrEqual(75)
      // A character cut in two would be read as U+FFFD.
      expect(row).toBe(new TextDecoder().decode(new TextEncoder().encode(row)))
    }
    expect(readBack(folded)[0]!.summary).toBe(`${words} (A; b, c)`)
    expect(readBack(folded)[0]!.description.startsWith(`${words}\nthen more`)).toBe(true)
  })

  it('folds no character in two', () => {
    const row = 'é'.repeat(100)
    expect(foldLine(row).split('\r\n ').join('')).toBe(row)
  })
})
