import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { plantIds } from '../../../src/catalogue/index.ts'
import type { EventPlan } from '../../../src/event/index.ts'
import type { OrderLine } from '../../../src/stem-list/index.ts'
import { lateOf } from '../../../src/work-plan/index.ts'
import { promise } from '../../promise.ts'
import { event, line, plan } from './made.ts'

const said = (over: Partial<EventPlan>, ...lines: OrderLine[]): string[] =>
  plan(over, ...lines).clashes.map((c) => c.text)
const people = (n: number): Partial<EventPlan> => ({ work: { ...event().work, people: n } })

describe('what lacks hands', () => {
  it('a day that is too full says so and how many would do, and with those it says nothing', () => {
    // The day before: 1200 stems and 12 × 10 minutes are 22 h; 9 h a day want three. Conditioning 1200 × 0.33 = 6.6 h.
    const lots = line('rose', 1200)
    expect(said(people(1), lots)).toContain(
      'Friday 11 June: 22 h of work do not fit into 9 h with one pair of hands. It wants 3 pairs of hands.',
    )
    expect(said(people(2), lots)).toContain(
      'Friday 11 June: 11 h of work do not fit into 9 h with 2 pairs of hands. It wants 3 pairs of hands.',
    )
    expect(said(people(3), lots)).toEqual([])
  })

  it('the day itself that would begin before work does', () => {
    // 400 sweet peas in 12 bowls by one: 520 min to place, 48 to pack, 30 on the road, 36 to set, each on five: from 14:00 back
    // to 03:20. From 9 to 14 are 300: by three they take 175, 20, 30 and 15; by two 260 + 25 + 30 + 20 is too much.
    const made = plan(people(1), line('sweet-pea', 400))
    expect(made.tasks.find((t) => t.key === 'place-0')!.start).toBe('2027-06-12T03:20')
    expect(made.clashes[0]!.text).toBe(
      'On the day itself work would have to begin at 03:20, 5 h 40 min before 09:00. It wants 3 pairs of hands.',
    )
    expect(said(people(3), line('sweet-pea', 400))).toEqual([])
  })

  it('an event at nine in the morning can not be set up after nine, whatever the hands', () => {
    expect(said({ date: '2027-06-12T09:00' }, line('rose', 12))).toContain(
      'On the day itself work would have to begin at 06:45, 2 h 15 min before 09:00. No number of hands helps: begin earlier, or do more the day before.',
    )
  })

  it('dahlias for a morning may go in the evening before; sweet peas may not', () => {
    const morning = { date: '2027-06-12T10:00' }
    expect(said(morning, line('dahlia', 24))[0]).toMatch(
      / dahlia may go in on the evening before, after 4 h in water\.$/,
    )
    expect(said(morning, line('sweet-pea', 24))[0]).not.toContain('evening before')
  })

  it('two tasks at one time: work of the last day that reaches back into the evening before', () => {
    // Friday: 480 roses and the half of 120 minutes by one are 540: 09:00 to 18:00. Saturday's 900 sweet peas: from 14:00 back
    // 40 + 30 + 50, then 960: 20:00 on Friday. No overlap; with 1100 they would begin at 16:40.
    const rose = line('rose', 480)
    expect(said(people(1), rose, line('sweet-pea', 900)).some((t) => t.startsWith('“'))).toBe(false)
    const text = said(people(1), rose, line('sweet-pea', 1100)).find((t) => t.startsWith('“'))
    expect(text).toBe(
      '“Place what goes in last” begins at 16:40 on Friday 11 June, while “Place the flowers” still takes the one pair of hands until 18:00.',
    )
  })

  it('more hands never bring a clash of hands that fewer did not have', () => {
    let runs = 0
    const ofHands = (n: number, lines: OrderLine[]): number =>
      plan(people(n), ...lines).clashes.filter((c) => c.known.startsWith('ours: reckoned')).length
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...plantIds), { minLength: 1, maxLength: 5 }),
        fc.integer({ min: 1, max: 900 }),
        fc.integer({ min: 1, max: 6 }),
        (plants, count, n) => {
          runs += 1
          const lines = plants.map((p) => line(p, count))
          expect(ofHands(2 * n, lines)).toBeLessThanOrEqual(ofHands(n, lines))
        },
      ),
      { numRuns: 100 },
    )
    promise(`W3 twice the hands bring no clash of hands: ${runs} plans, 0 failures`)
  })
})

/** Minutes since midnight. */
const minute = (clock: string): number => Number(clock.slice(-5, -3)) * 60 + Number(clock.slice(-2))

describe('a plan without a clash of hands', () => {
  it('has each task inside the hours that the hands are there, and no two at one time', () => {
    let runs = 0
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...plantIds), { minLength: 1, maxLength: 6 }),
        fc.integer({ min: 1, max: 700 }),
        fc.integer({ min: 1, max: 6 }),
        fc.constantFrom('2027-06-12T15:00', '2027-03-28T11:00', '2027-10-31T20:30'),
        (plants, count, n, date) => {
          const over = { ...people(n), date }
          const made = plan(over, ...plants.map((p) => line(p, count)))
          if (made.clashes.some((c) => c.known.startsWith('ours: reckoned'))) return
          runs += 1
          const busy = made.tasks.filter((t) => t.span_ms && t.kind !== 'clear')
          for (const t of busy) {
            expect(t.start.slice(0, 10)).toBe(t.end.slice(0, 10))
            expect(minute(t.start)).toBeGreaterThanOrEqual(9 * 60)
            if (t.daysBefore > 0) expect(minute(t.end)).toBeLessThanOrEqual(18 * 60)
          }
          for (const [i, t] of busy.entries())
            if (i > 0) expect(t.span_ms![0]).toBeGreaterThanOrEqual(busy[i - 1]!.span_ms![1] - 1000)
        },
      ),
      { numRuns: 150 },
    )
    expect(runs).toBeGreaterThan(20)
    promise(`W4 a plan that says nothing of hands fits into their hours, one task at a time: ${runs} plans, 0 failures`)
  })
})

describe('what harms flowers', () => {
  it('a usual cooler at 3 °C does for roses and hydrangeas, and not for anthuriums or zinnias', () => {
    const cooler = { celsius: 3, stems: 900 }
    expect(said({ cooler }, line('rose', 60), line('hydrangea', 60))).toEqual([])
    const text = said({ cooler }, line('anthurium', 20), line('rose', 60), line('zinnia', 20))
    expect(text).toEqual([
      'A cooler at 3 °C is too cold for anthurium (12–17 °C), zinnia (4–10 °C); no one temperature suits all that wait. Keep them out of it, in a cool room.',
    ])
    // Alone they have one.
    expect(said({ cooler }, line('anthurium', 20))[0]).not.toContain('no one temperature')
  })

  it('a cooler at 8 °C is warm for roses, one at −2 °C too cold for all', () => {
    expect(said({ cooler: { celsius: 8, stems: 900 } }, line('rose', 60))).toEqual([
      'A cooler at 8 °C is warm for rose (0–2 °C): they go on opening in it, and fade sooner.',
    ])
    expect(said({ cooler: { celsius: -2, stems: 900 } }, line('rose', 60))[0]).toContain('too cold for rose')
  })

  it('a cooler that is full, on its fullest evening; what it is too cold for is not in it', () => {
    const cooler = { celsius: 3, stems: 50 }
    // Three days before: 60 roses; two days before come 30 tulips more.
    const full = said({ cooler }, line('rose', 60), line('tulip', 30), line('anthurium', 40))
    expect(full.some((t) => t.startsWith('Thursday 10 June: 90 stems wait and the cooler holds 50.'))).toBe(true)
    expect(said({ cooler: { celsius: 3, stems: 90 } }, line('rose', 60), line('tulip', 30))).toEqual([])
  })

  it('a flower that would be past its best, by the source that gives it the least', () => {
    expect(said({ hours: 72 }, line('dahlia', 24)).some((t) => /^dahlia may be past its best: 3\.0 days/.test(t))).toBe(
      true,
    )
  })

  it('dahlias that come on the day stand in water before they are placed, and work begins so much earlier', () => {
    const { tasks, clashes } = plan({ hours: 72 }, line('dahlia', 24))
    const at = (key: string) => tasks.find((t) => t.key === key)!.span_ms!
    expect((at('place-0')[0] - at('condition-0')[1]) / 3_600_000).toBe(4)
    expect(clashes.some((c) => c.text.startsWith('On the day itself'))).toBe(true)
  })

  it('flowers that come on a Sunday', () => {
    // A Wednesday: three days before is a Sunday.
    expect(said({ date: '2027-06-16T15:00' }, line('rose', 12))).toEqual([
      'Flowers would come on Sunday 13 June: many sellers deliver nothing on a Sunday. Ask, or have them the day before.',
    ])
  })
})

describe('what is late', () => {
  const { tasks } = plan({}, line('rose', 60))
  const at = (date: string, done: string[] = []): string[] => lateOf(tasks, Date.parse(date), done).map((c) => c.text)

  it('nothing, weeks before', () => expect(at('2027-05-01T12:00Z')).toEqual([]))

  it('an order after its day, and less than two weeks before', () => {
    expect(at('2027-05-20T12:00Z', ['trial'])).toEqual(['It was to be ordered by Thursday 13 May: order today.'])
    expect(at('2027-06-05T12:00Z', ['trial', 'settle'])[0]).toMatch(/^The event is less than two weeks away/)
    expect(at('2027-06-10T12:00Z', [])[0]).toMatch(/^The first flowers were to come on Wednesday 9 June/)
  })

  it('what was ticked off is not late', () => {
    expect(at('2027-05-20T12:00Z', ['book', 'trial'])).toEqual([])
    expect(at('2027-06-10T12:00Z', ['book', 'trial', 'settle', 'arrive-3'])).toEqual([
      'Past, and not ticked off: condition 60 stems (Wednesday 9 June), prepare 12 vessels (Thursday 10 June).',
    ])
  })

  it('an event that is over says only that', () => {
    expect(at('2027-07-01T12:00Z')).toEqual(['This event is over: its date is past.'])
  })
})
