import { describe, expect, it } from 'vitest'
import { beforeWords, byDay, minuteWords, planText, timeWords, weekdayWords } from '../../../src/work-plan/index.ts'
import { event, line, plan } from './made.ts'

const DAY = { people: 2, from: '09:00', to: '18:00' }

describe('the plan in words', () => {
  it('a message that can be ticked off, by days', () => {
    const given = { ...event({ work: { ...event().work, ...DAY } }), done: ['book'] }
    const { tasks, clashes } = plan(given, line('rose', 60))
    const text = planText(given, tasks, clashes)
    expect(text.split('\n').slice(0, 4)).toEqual([
      'June: plan of work',
      '',
      'Thursday 13 May 2027, 30 days before',
      '[x] Order the flowers',
    ])
    expect(text).toContain(
      '\nFriday 11 June 2027, the day before\n[ ] 09:00–10:30 Place the flowers (2 people, 3 h of hands)\n',
    )
    expect(text).not.toContain('!')
  })

  it('what will not go stands first', () => {
    const given = event({ date: '2027-06-16T15:00' })
    const { tasks, clashes } = plan(given, line('rose', 60))
    expect(planText(given, tasks, clashes).split('\n').slice(2, 4)).toEqual([
      'What will not go as it stands:',
      `! ${clashes[0]!.text}`,
    ])
  })

  it('work that runs past midnight names the day of its end', () => {
    const [task] = plan({}, line('rose', 60)).tasks.filter((t) => t.key === 'place-1')
    expect(timeWords({ ...task!, end: '2027-06-12T01:15' })).toBe('09:00–Saturday 12 June 01:15')
    expect(timeWords({ ...task!, end: task!.start })).toBe('09:00')
  })

  it('days are those of the clock, across a change of it', () => {
    const days = byDay(plan({ date: '2027-03-28T15:00' }, line('rose', 60)).tasks, '2027-03-28T15:00')
    expect(days.map((d) => d.daysBefore)).toEqual([30, 14, 3, 2, 1, 0])
  })

  it('minutes, days and weekdays as people say them', () => {
    expect([0, 0.4, 59.6, 80, 120].map(minuteWords)).toEqual(['0 min', '0 min', '1 h', '1 h 20 min', '2 h'])
    expect([2, 1, 0, -1, -3].map(beforeWords)).toEqual([
      '2 days before',
      'the day before',
      'the day itself',
      'the day after',
      '3 days after',
    ])
    expect(weekdayWords('2028-02-29T10:00')).toBe('Tuesday 29 February')
  })
})
