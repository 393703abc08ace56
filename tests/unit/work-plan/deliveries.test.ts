import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { plantIds } from '../../../src/catalogue/index.ts'
import { bestDays, costWords, possibleDays, settledTiming, timingOf } from '../../../src/work-plan/index.ts'
import { promise } from '../../promise.ts'
import { event, line, plan } from './made.ts'

const JUNE = ['rose', 'peony', 'ranunculus', 'carnation', 'hydrangea', 'dahlia', 'ruscus-italian']
const WEEK = [7, 6, 5, 4, 3, 2, 1, 0]

describe('the days on which a seller comes', () => {
  it('each plant takes the best of them by its own ranges', () => {
    const on = (plant: string, ...days: number[]): number => settledTiming(plant, 8, { days, of: {} }).arrive
    // Roses open in 1 to 3 days and are had 2 to 4 days before: of Thursday and Tuesday before a Saturday, Tuesday leaves them open.
    expect(on('rose', 4, 2)).toBe(2)
    expect(on('rose', 4, 1)).toBe(4)
    // Peonies open in up to 5 days and last 5 at the least.
    expect(on('peony', 4, 2)).toBe(4)
    // Some dahlias last two days: with 8 hours of event the day before is the last that does not fade.
    expect(on('dahlia', 4, 2, 1)).toBe(1)
    expect(on('dahlia', 4, 2)).toBe(2)
    expect(on('rose')).toBe(3)
  })

  it('says what a day costs a plant', () => {
    const words = (plant: string, day?: number): string => costWords(timingOf(plant, 8, day))
    expect(words('rose')).toBe('')
    expect(words('rose', 4)).toBe('comes a day early: buy it tighter, and hold it in the cool once it is open')
    expect(words('rose', 2)).toBe('has 2 of up to 3 days to open: ask for it further on')
    expect(words('peony', 2)).toBe('has 2 of up to 5 days to open: ask for it further on')
    expect(words('lily-oriental', 2)).toBe('has 2 of up to 5 days to open: ask for it as open as it is to be')
    expect(words('dahlia', 2)).toBe('comes a day early: as fresh as can be had, and kept cool')
    expect(words('statice', 6)).toBe('comes 3 days early, which it bears')
    expect(words('ruscus-italian', 2)).toBe('comes a day later than best, which it bears')
    expect(words('gerbera', 0)).toBe('comes on the day itself: 2 h in water before it is placed')
  })

  it('a plant comes on the day that is settled for it, whatever the others do', () => {
    expect(settledTiming('peony', 8, { days: [4, 2], of: { peony: 3 } })).toMatchObject({ arrive: 3, lacks: 2 })
    const { tasks } = plan({ deliveries: { days: [3], of: { peony: 4 } } }, line('rose', 60), line('peony', 20))
    expect(tasks.filter((t) => t.kind === 'arrive').map((t) => [t.key, t.plants])).toEqual([
      ['arrive-4', ['peony']],
      ['arrive-3', ['rose']],
    ])
  })

  it('steps, reasons and clashes follow', () => {
    const lines = JUNE.map((p) => line(p, 24))
    const free = plan({}, ...lines)
    expect(free.clashes.find((c) => c.mend === 'together')!.text).toMatch(
      /^Flowers come on 4 days \(Tuesday, Wednesday/,
    )
    const { tasks, clashes } = plan({ deliveries: { days: [3], of: {} } }, ...lines)
    expect(tasks.filter((t) => t.kind === 'arrive').map((t) => t.key)).toEqual(['arrive-3'])
    expect(clashes.some((c) => c.mend)).toBe(false)
    expect(clashes.find((c) => c.text.startsWith('dahlia may be past its best'))).toBeDefined()
    expect(tasks.find((t) => t.key === 'arrive-3')!.steps).toContain('peony: 24 stems, further on, as asked for')
    expect(tasks.find((t) => t.key === 'book')!.steps).toContain(
      'peony has 3 of up to 5 days to open: ask for it further on.',
    )
    const late = plan({ deliveries: { days: [2], of: {} } }, line('lily-oriental', 12)).clashes
    expect(late.map((c) => c.text)).toContain(
      'lily-oriental would still be closed: it needs at least 3 days to open and has 2. Buy it open, or have it sooner.',
    )
  })
})

/** Days off its ranges, days that the slowest lack, days off its best: worked out anew, by looking at every day. */
const costs = (plant: string, hours: number, days: readonly number[]): number[] =>
  days
    .map((day) => {
      const t = timingOf(plant, hours, day)
      return [t.sooner + t.later, t.lacks, Math.abs(day - t.best)]
    })
    .reduce((a, b) => (lower(b, a) ? b : a))
const lower = (a: readonly number[], b: readonly number[]): boolean => {
  const at = a.findIndex((x, i) => Math.abs(x - b[i]!) > 1e-9)
  return at >= 0 && a[at]! < b[at]!
}

describe('bringing flowers together', () => {
  it('a June wedding on two days: dahlias on Friday, all others on Wednesday, which is inside each one’s own ranges', () => {
    expect(bestDays(JUNE, 8, 2, WEEK)).toEqual([3, 1])
    // An oriental lily is had four days before at the least.
    expect(bestDays([...JUNE, 'lily-oriental'], 8, 2, WEEK)).toEqual([4, 1])
    expect(bestDays(['rose'], 8, 3, WEEK)).toEqual([3])
    expect(bestDays([], 8, 2, WEEK)).toEqual([])
    expect(bestDays(JUNE, 8, 2, [])).toEqual([])
  })

  it('no other choice of days costs less, whatever the plants', () => {
    let runs = 0
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...plantIds), { minLength: 1, maxLength: 8 }),
        fc.uniqueArray(fc.integer({ min: 0, max: 7 }), { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 1, max: 3 }),
        fc.constantFrom(0, 8, 72),
        (plants, among, count, hours) => {
          runs += 1
          const sum = (days: readonly number[]): number[] =>
            plants.map((p) => costs(p, hours, days)).reduce((a, b) => a.map((x, i) => x + b[i]!))
          const best = bestDays(plants, hours, count, among)
          expect(best.length).toBeLessThanOrEqual(count)
          expect(best.every((day) => among.includes(day))).toBe(true)
          // Every set of days, as the bits of a number.
          for (let set = 1; set < 1 << among.length; set++) {
            const days = among.filter((_, i) => set & (1 << i))
            if (days.length <= count) expect(lower(sum(days), sum(best))).toBe(false)
          }
        },
      ),
      { numRuns: 60 },
    )
    promise(`W5 no choice of delivery days costs the plants less: ${runs} events, every choice tried, 0 failures`)
  })

  it('the more days, the less it costs', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.constantFrom(...plantIds), { minLength: 2, maxLength: 9 }), (plants) => {
        const sum = (days: readonly number[]): number[] =>
          plants.map((p) => costs(p, 8, days)).reduce((a, b) => a.map((x, i) => x + b[i]!))
        const [one, two] = [1, 2].map((n) => sum(bestDays(plants, 8, n, WEEK)))
        expect(lower(one!, two!)).toBe(false)
      }),
      { numRuns: 60 },
    )
  })

  it('looks at no Sunday and no day that is past', () => {
    const at = (date: string, now: string): number[] => possibleDays(date, 'Europe/Lisbon', Date.parse(now))
    // A Saturday: the Sunday is 6 days before.
    expect(at('2027-06-12T15:00', '2027-04-01T12:00Z')).toEqual([7, 5, 4, 3, 2, 1, 0])
    expect(at('2027-06-12T15:00', '2027-06-11T08:00Z')).toEqual([1, 0])
    expect(at('2027-06-12T15:00', '2027-06-11T20:00Z')).toEqual([0])
    // A Monday, on the Sunday before it.
    expect(at('2027-06-14T15:00', '2027-06-13T08:00Z')).toEqual([0])
    // A Sunday, on that day.
    expect(at('2027-06-13T15:00', '2027-06-13T08:00Z')).toEqual([0])
    expect(at('2027-06-12T15:00', '2028-01-01T00:00Z')).toEqual([7, 5, 4, 3, 2, 1, 0])
  })

  it('an event tomorrow is planned from today on', () => {
    const days = bestDays(
      JUNE,
      8,
      2,
      possibleDays('2027-06-12T15:00', 'Europe/Lisbon', Date.parse('2027-06-11T08:00Z')),
    )
    expect(days).toEqual([1])
    const { tasks } = plan({ deliveries: { days, of: {} } }, ...JUNE.map((p) => line(p, 24)))
    const work = tasks.filter((t) => t.span_ms)
    expect(work.every((t) => t.start >= '2027-06-11')).toBe(true)
    expect(work.map((t) => t.key)).toEqual(
      expect.arrayContaining(['arrive-1', 'condition-1', 'vessels', 'place-0', 'pack', 'carry', 'set']),
    )
    expect(event().deliveries).toEqual({ days: [], of: {} })
  })
})
