import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { keepingOf, PLANTS, plantIds } from '../../../src/catalogue/index.ts'
import { timingOf } from '../../../src/work-plan/index.ts'
import { promise } from '../../promise.ts'
import { event, line, plan } from './made.ts'

const task = (made: ReturnType<typeof plan>, key: string) => made.tasks.find((t) => t.key === key)

describe('when a flower comes', () => {
  it('a rose that opens in up to three days comes three days before', () => {
    expect(timingOf('rose', 8)).toMatchObject({ arrive: 3, place: 1, opens: 3, water_h: [6, 12], doubts: [] })
  })
  it('a slow ranunculus and an oriental lily come five days before', () => {
    // Vase life 5 days at the least and 8 hours of event: the ranunculus comes one day later than it may need to open.
    expect(timingOf('lily-oriental', 8).arrive).toBe(5)
    expect(timingOf('ranunculus', 8)).toMatchObject({
      arrive: 4,
      doubts: ['some need 5 days to open: buy them as open as you want them'],
    })
    expect(timingOf('peony', 0)).toMatchObject({ arrive: 5, doubts: [] })
  })
  it('sweet peas come late and go in on the day; carnations and greens go in two days before', () => {
    expect(timingOf('sweet-pea', 8)).toMatchObject({ arrive: 2, place: 0 })
    // A dahlia may last two days only: it comes the day before, has its night in water and goes in on the day.
    expect(timingOf('dahlia', 8)).toMatchObject({ arrive: 1, place: 0, doubts: [] })
    expect(timingOf('carnation', 8).place).toBe(2)
    expect(timingOf('ruscus-italian', 8).place).toBe(2)
  })
  it('keeps what the catalogue says, for every plant', () => {
    for (const { id } of PLANTS) {
      const { arrive, place, doubts } = timingOf(id, 8)
      const { vase_d, placed_d } = keepingOf(id)!
      expect(arrive).toBeGreaterThanOrEqual(place)
      expect(place).toBeLessThanOrEqual(placed_d!.most)
      if (doubts.length === 0) expect(arrive + 8 / 24).toBeLessThanOrEqual(vase_d!.least)
    }
  })
})

describe('the plan of work', () => {
  it('is empty before there is a date or anything to place', () => {
    expect(plan({ date: '' }, line('rose', 12))).toEqual({ tasks: [], clashes: [] })
    expect(plan({})).toEqual({ tasks: [], clashes: [] })
  })

  it('goes backwards from the event, worked by hand', () => {
    // Twelve bowls: 60 roses and 36 ruscus. Minutes: stem 1, piece 10, conditioning 0.33, vessel 3, packing 4, setting 3.
    const made = plan({}, line('rose', 60), line('ruscus-italian', 36))
    expect(made.tasks.map((t) => [t.key, t.start, t.end])).toEqual([
      ['book', '2027-05-13', '2027-05-13'],
      ['trial', '2027-05-13', '2027-05-13'],
      ['settle', '2027-05-29', '2027-05-29'],
      // Wednesday: 96 stems × 0.33 / 2 hands = 15.84 min; the roses may open until Friday.
      ['arrive-3', '2027-06-09T09:00', '2027-06-09T09:00'],
      ['condition-3', '2027-06-09T09:00', '2027-06-09T09:15'],
      ['open-3', '2027-06-09T09:15', '2027-06-09T09:15'],
      // Thursday: 12 × 3 / 2 = 18; ruscus (36 + 12 × 10) / 2 = 78.
      ['vessels', '2027-06-10T09:00', '2027-06-10T09:18'],
      ['place-2', '2027-06-10T09:18', '2027-06-10T10:36'],
      // Friday: (60 + 120) / 2 = 90.
      ['place-1', '2027-06-11T09:00', '2027-06-11T10:30'],
      // Saturday, back from 14:00: setting 12 × 3 / 2 = 18, drive 30, packing 24.
      ['pack', '2027-06-12T12:48', '2027-06-12T13:12'],
      ['carry', '2027-06-12T13:12', '2027-06-12T13:42'],
      ['set', '2027-06-12T13:42', '2027-06-12T14:00'],
      ['clear', '2027-06-12T23:00', '2027-06-12T23:00'],
    ])
    expect(task(made, 'place-2')!.hand_min).toBe(156)
    expect(made.clashes).toEqual([])
  })

  it('says when a day is too full, and more hands help', () => {
    const lots = line('rose', 1200)
    const text = (people: number): string[] =>
      plan({ work: { ...event().work, people } }, lots).clashes.map((c) => c.text)
    // The day before: 1200 + 120 minutes for one pair of hands are 22 h.
    expect(text(1)).toContain('1 day before, 22.0 h of work do not fit into 9.0 h, with one pair of hands.')
    expect(text(3)).toEqual([])
  })

  it('says when the day itself would begin before work does', () => {
    // 400 sweet peas in 12 bowls by one: 520 min to place, 48 to pack, 30 on the road, 36 to set: from 14:00 back to 03:26.
    const one = { ...event().work, people: 1 }
    const made = plan({ work: one }, line('sweet-pea', 400))
    expect(task(made, 'place-0')!.start).toBe('2027-06-12T03:26')
    expect(made.clashes[0]!.text).toMatch(/^On the day itself work would have to begin at 03:26, 5\.6 h before 09:00/)
  })

  it('knows what a cooler is too cold for, and when it is full', () => {
    const cooler = { celsius: 3, stems: 50 }
    const text = plan({ cooler }, line('anthurium', 20), line('rose', 60)).clashes.map((c) => c.text)
    expect(text.some((t) => /^anthurium keeps at 12–17 °C .* too cold for it/.test(t))).toBe(true)
    expect(text).toContain('3 days before, 80 stems wait and the cooler holds 50.')
  })

  it('keeps its keys when numbers change, so that what is ticked stays ticked', () => {
    const keys = (n: number): string[] => plan({}, line('rose', n), line('sweet-pea', n)).tasks.map((t) => t.key)
    expect(keys(10)).toEqual(keys(900))
    expect(new Set(keys(10)).size).toBe(keys(10).length)
  })

  it('across a change of the clocks the hours by the clock stay, and the work takes as long as it takes', () => {
    // In Lisbon clocks go forward on 2027-03-28 at 01:00 and back on 2027-10-31 at 02:00.
    for (const date of ['2027-03-28T15:00', '2027-10-31T15:00']) {
      const made = plan({ date }, line('rose', 60))
      const placed = task(made, 'place-1')!
      expect(placed.start.slice(11)).toBe('09:00')
      expect((placed.span_ms![1] - placed.span_ms![0]) / 60_000).toBe(90)
    }
    // A night's work back across the missing hour: 01:00 to 02:00 is not there.
    const early = plan({ date: '2027-03-28T06:00', work: { ...event().work, people: 1 } }, line('sweet-pea', 60))
    const placed = task(early, 'place-0')!
    // Back from 05:00: setting 36, drive 30, packing 48: 03:06; 60 + 120 minutes earlier: 23:06 by the old clock.
    expect([placed.start, placed.end]).toEqual(['2027-03-27T23:06', '2027-03-28T03:06'])
    expect(placed.span_ms![1] - placed.span_ms![0]).toBe(180 * 60_000)
  })

  it('is whole and in order for any order: every bought plant arrives, is conditioned and placed, in that order', () => {
    let runs = 0
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...plantIds), { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 1, max: 400 }),
        fc.constantFrom('2027-03-28T10:00', '2027-10-31T18:30', '2028-02-29T09:00', '2027-12-31T23:00'),
        fc.constantFrom('Europe/Lisbon', 'America/New_York', 'Australia/Lord_Howe', 'Asia/Kolkata', 'UTC'),
        (plants, count, date, zone) => {
          runs += 1
          const { tasks } = plan({ date, zone }, ...plants.map((p) => line(p, count)))
          const when = (t: (typeof tasks)[number]): number => t.span_ms?.[0] ?? Date.parse(`${t.start}T00:00Z`)
          for (const id of plants) {
            const of = (kind: string) => tasks.find((t) => t.kind === kind && t.plants.includes(id))!
            expect(when(of('arrive'))).toBeLessThanOrEqual(when(of('condition')))
            expect(when(of('condition'))).toBeLessThanOrEqual(when(of('place')))
          }
          for (const t of tasks) {
            expect(t.reasons.length).toBeGreaterThan(0)
            expect(Number.isFinite(t.hand_min)).toBe(true)
            if (t.span_ms) expect(t.span_ms[1]).toBeGreaterThanOrEqual(t.span_ms[0])
          }
        },
      ),
      { numRuns: 150 },
    )
    promise(
      `W1 every flower arrives, is conditioned and is placed, in that order, in any zone: ${runs} plans, 0 failures`,
    )
  })
})
