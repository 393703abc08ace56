import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { keepingOf, PLANTS, plantIds } from '../../../src/catalogue/index.ts'
import { loadOf, pieceTimes, planOf, timingOf } from '../../../src/work-plan/index.ts'
import { promise } from '../../promise.ts'
import { about, event, line, order, plan } from './made.ts'

const task = (made: ReturnType<typeof plan>, key: string) => made.tasks.find((t) => t.key === key)

describe('when a flower comes', () => {
  it('a rose that opens in up to three days comes three days before', () => {
    expect(timingOf('rose', 8)).toMatchObject({
      arrive: 3,
      place: 1,
      opens: 3,
      water_h: [6, 12],
      best: 3,
      lacks: 0,
      sooner: 0,
      later: 0,
      fades: null,
    })
  })
  it('a slow ranunculus and an oriental lily come five days before', () => {
    // Vase life 5 days at the least and 8 hours of event: the ranunculus comes one day later than it may need to open.
    expect(timingOf('lily-oriental', 8).arrive).toBe(5)
    expect(timingOf('ranunculus', 8)).toMatchObject({ arrive: 4, lacks: 1, fades: null })
    expect(timingOf('peony', 0)).toMatchObject({ arrive: 5, lacks: 0 })
  })
  it('sweet peas come late and go in on the day; carnations and greens go in two days before', () => {
    expect(timingOf('sweet-pea', 8)).toMatchObject({ arrive: 2, place: 0 })
    // A dahlia may last two days only: it comes the day before, has its night in water and goes in on the day.
    expect(timingOf('dahlia', 8)).toMatchObject({ arrive: 1, place: 0, fades: null })
    expect(timingOf('carnation', 8).place).toBe(2)
    expect(timingOf('ruscus-italian', 8).place).toBe(2)
  })
  it('a woody branch stands in water for a night, a daffodil for six hours at least', () => {
    expect(timingOf('lilac', 8).water_h).toEqual([8, 12])
    expect(timingOf('euc-silver', 8).water_h[0]).toBe(8)
    expect(timingOf('daffodil', 8).water_h).toEqual([6, 12])
  })
  it('flowers that are to look well for three days are shown where some fade before', () => {
    // A dahlia may come on the day itself: 0 + 3 days against the 2 of some.
    expect(timingOf('dahlia', 72)).toMatchObject({ arrive: 0, place: 0, fades: { days: 3, lasts: { least: 2 } } })
  })
  it('keeps what the catalogue says, for every plant and any length of event', () => {
    for (const { id } of PLANTS)
      for (const hours of [0, 8, 24, 72, 240]) {
        const { arrive, place, fades } = timingOf(id, hours)
        const { vase_d, placed_d, hand_d, opens_d } = keepingOf(id)!
        expect(arrive === 0 || arrive > place).toBe(true)
        expect(place).toBeLessThanOrEqual(placed_d!.most)
        expect(arrive).toBeGreaterThanOrEqual(Math.max(hand_d!.least, opens_d?.least ?? 0))
        expect(arrive).toBeLessThanOrEqual(hand_d!.most)
        expect(fades !== null).toBe(arrive + hours / 24 > vase_d!.least)
      }
  })
})

describe('the plan of work', () => {
  it('is empty before there is a date or anything to place', () => {
    expect(plan({ date: '' }, line('rose', 12))).toEqual({ tasks: [], clashes: [] })
    expect(plan({})).toEqual({ tasks: [], clashes: [] })
  })

  it('before lilies are ordered the host is asked for cats; for roses nobody is', () => {
    const asked = (...lines: Parameters<typeof order>) => task(plan({}, ...lines), 'book')!.steps.join(' ')
    expect(asked(line('lily-oriental', 12), line('rose', 12))).toMatch(/cat lives or visits.*if so, no lily-oriental\./)
    expect(asked(line('rose', 12))).not.toMatch(/cat/)
  })

  it('goes backwards from the event, worked by hand', () => {
    // Twelve bowls: 60 roses and 36 ruscus. Minutes: stem 1, piece 10, conditioning 0.33, vessel 3, packing 4, setting 3.
    const made = plan({}, line('rose', 60), line('ruscus-italian', 36))
    expect(made.tasks.map((t) => [t.key, t.start, t.end])).toEqual([
      ['book', '2027-05-13', '2027-05-13'],
      ['trial', '2027-05-13', '2027-05-13'],
      ['settle', '2027-05-29', '2027-05-29'],
      // Wednesday: one takes them in, 10 min; 96 stems × 0.33 / 2 hands = 15.84 min, on five 20; the roses may open until Thursday.
      ['arrive-3', '2027-06-09T09:00', '2027-06-09T09:10'],
      ['condition-3', '2027-06-09T09:10', '2027-06-09T09:30'],
      ['open-3', '2027-06-09', '2027-06-10'],
      // Thursday: 12 × 3 / 2 = 18, on five 20; ruscus 36 and half of the 120 for the pieces, / 2 = 48, on five 50.
      ['vessels', '2027-06-10T09:00', '2027-06-10T09:20'],
      ['place-2', '2027-06-10T09:20', '2027-06-10T10:10'],
      // Friday: (60 + the other 60) / 2 = 60.
      ['place-1', '2027-06-11T09:00', '2027-06-11T10:00'],
      // Saturday, back from 14:00: setting 12 × 3 / 2 = 18, on five 20, drive 30, packing 24, on five 25.
      ['pack', '2027-06-12T12:45', '2027-06-12T13:10'],
      ['carry', '2027-06-12T13:10', '2027-06-12T13:40'],
      ['set', '2027-06-12T13:40', '2027-06-12T14:00'],
      // Over at 23:00; taking down as long as setting.
      ['clear', '2027-06-12T23:00', '2027-06-12T23:20'],
    ])
    expect(task(made, 'place-2')!.hand_min).toBe(96)
    // One bowl: a vessel 3, eight stems 8, the piece 10.
    expect(task(made, 'trial')!.hand_min).toBe(21)
    expect(made.clashes).toEqual([])
  })

  it('an event that ends after midnight is taken down on the day after', () => {
    const clear = task(plan({ date: '2027-06-12T19:00' }, line('rose', 12)), 'clear')!
    expect(clear).toMatchObject({ start: '2027-06-13T03:00', daysBefore: -1 })
  })

  it('what goes in is named in the order in which it goes in: greens, lines, what leads, filler', () => {
    const made = plan({}, line('gypsophila', 12), line('rose', 12), line('snapdragon', 12), line('dusty-miller', 12))
    expect(task(made, 'place-1')!.steps[0]).toBe(
      '48 stems in 12 pieces, in this order: dusty-miller, snapdragon, rose, gypsophila.',
    )
  })

  it('each design has its own line, with its place where it has one', () => {
    const made = planOf(event(), order(line('rose', 60)), { ...about, titleOf: () => 'June bowl' })
    expect(task(made, 'place-1')!.steps).toContain('12 × June bowl: 5 stems each')
    expect(task(made, 'set')!.steps[0]).toBe('12 × June bowl: guest tables')
  })

  it('without a cooler, tropical flowers are kept from a cold room and what has to open is named', () => {
    const { steps } = task(plan({}, line('rose', 12), line('anthurium', 12)), 'condition-3')!
    expect(steps).toContain('Keep out of the cold: anthurium (12–17 °C).')
    expect(steps).toContain(
      'Then into the coolest dark room there is, out of the draught, until they are placed; not yet, but once they are open: rose.',
    )
  })

  it('a plant in two colours comes and is conditioned as one', () => {
    const made = plan({}, line('rose', 30), { ...line('rose', 20), colour: '#ff0000' })
    expect(task(made, 'arrive-3')!.steps[0]).toBe('rose: 50 stems')
  })

  it('what nothing holds is bound once its last stems are in, what has netting is not', () => {
    const bound = planOf(event(), order(line('ruscus-italian', 24), line('rose', 24)), {
      ...about,
      mechanicsOf: () => 'none',
    })
    const keys = bound.tasks.map((t) => t.key)
    expect(keys.indexOf('bind-1')).toBe(keys.indexOf('place-1') + 1)
    expect(plan({}, line('rose', 24)).tasks.some((t) => t.kind === 'bind')).toBe(false)
  })
  it('a hand-tied is made in one go, with the flower that goes in last, while bowls are greened out days before', () => {
    const parts = [
      { design: 'bowl', copies: 12, place: '' },
      { design: 'tied', copies: 1, place: '' },
    ]
    const lines = [
      line('ruscus-italian', 48),
      line('dahlia', 12),
      line('ruscus-italian', 5, 'tied'),
      line('dahlia', 3, 'tied'),
    ]
    const mechanicsOf = (design: string) => (design === 'tied' ? ('none' as const) : ('netting' as const))
    const { tasks } = planOf(event({ parts }), order(...lines), { ...about, mechanicsOf })
    const placed = tasks.filter((t) => t.kind === 'place')
    expect(placed.map((t) => t.steps.filter((s) => s.startsWith('1 × tied')))).toEqual([[], ['1 × tied: 8 stems']])
    expect(placed.at(-1)!.plants).toEqual(['ruscus-italian', 'dahlia'])
    expect(placed.map((t) => Number(/^\d+/.exec(t.steps[0]!)?.[0])).reduce((a, b) => a + b, 0)).toBe(68)
  })
  it('a tied piece has had its water: nothing is said to be placed before it, and it opens until the day it goes in', () => {
    const { tasks, clashes } = planOf(event(), order(line('carnation', 12), line('rose', 12), line('dahlia', 12)), {
      ...about,
      mechanicsOf: () => 'none',
    })
    expect(clashes.filter((c) => /in water/.test(c.text))).toEqual([])
    expect(tasks.filter((t) => t.kind === 'place').map((t) => t.plants.length)).toEqual([3])
    const keys = new Set(tasks.map((t) => t.key))
    for (const clash of clashes) for (const key of clash.tasks) expect(keys).toContain(key)
  })
  it('nothing is topped up just before it is taken down', () => {
    const { tasks } = plan({ date: '2027-06-12T09:30', hours: 72 }, line('carnation', 12))
    const after = tasks.filter((t) => t.daysBefore < 0)
    expect(after.map((t) => [t.kind, t.daysBefore])).toEqual([
      ['water', -1],
      ['water', -2],
      ['clear', -3],
    ])
  })
  it('what no stem is long enough for will not go as it stands', () => {
    const { clashes } = plan({}, { ...line('sweet-pea', 24), tooLong: 24 })
    expect(clashes[0]!.text).toMatch(/^sweet-pea: 24 stems would have to be longer than they come/)
  })

  it('says what a flower wants of its own on arrival, with where that is from', () => {
    const { steps, reasons } = task(plan({}, line('daffodil', 24), line('carnation', 12)), 'condition-2')!
    expect(steps.some((s) => /^Alone in their water for 6 to 12 h.*: daffodil\.$/.test(s))).toBe(true)
    expect(steps).toContain('Away from fruit, fumes and fading flowers: daffodil.')
    expect(reasons.find((r) => /: daffodil\.$/.test(r.text))!.source).toContain('California Cut Flower Commission')
  })

  it('the hours of the tasks are those of the pieces and the stems, whatever goes in on which day', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...plantIds), { minLength: 1, maxLength: 6 }),
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 1, max: 30 }),
        (plants, each, copies) => {
          const parts = [
            { design: 'bowl', copies, place: '' },
            { design: 'cup', copies: 2 * copies, place: '' },
          ]
          const lines = plants.map((p, i) => line(p, i % 2 ? each * copies : each * 2 * copies, i % 2 ? 'bowl' : 'cup'))
          const { minutes } = event().work
          const { tasks } = plan({ parts }, ...lines)
          const load = loadOf(order(...lines), event({ parts }), about)
          const conditioning = lines.reduce((n, l) => n + l.bought, 0) * minutes.conditioning
          const pieces = pieceTimes(load.works, minutes).reduce((n, t) => n + t.all_min, 0)
          const deliveries = new Set(load.arriving.map((a) => a.arrive)).size
          // What is placed two days before, and not the day before, is topped up then.
          const stand = load.works.filter((w) => w.stems.has(2) && !w.stems.has(1)).reduce((n, w) => n + w.copies, 0)
          const more = deliveries * minutes.receiving + stand * minutes.watering
          const all = tasks.reduce((n, t) => n + (t.kind === 'trial' ? 0 : t.hand_min), 0)
          expect(all).toBeCloseTo(conditioning + pieces + more, 6)
        },
      ),
      { numRuns: 100 },
    )
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
    // Back from 05:00: setting 36, on five 40, drive 30, packing 48, on five 50: 03:00; 60 + 120 minutes earlier: 23:06 by the old clock.
    expect([placed.start, placed.end]).toEqual(['2027-03-27T23:00', '2027-03-28T03:00'])
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
