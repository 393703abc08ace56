import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Level } from '../../../src/partner/protocol.ts'
import {
  dragged,
  type Job,
  NEAR,
  type Now,
  nextJob,
  STEP,
  shownFor,
  sideWords,
  snapped,
} from '../../../src/partner/turns.ts'

describe('turning the drawing', () => {
  it('what is near follows the finger: half a turn for a stroke across', () => {
    expect(dragged(0, 390, 390)).toBe(180)
    expect(dragged(0, -195, 390)).toBe(270)
    expect(dragged(345, 50, 400)).toBe(7.5)
    expect(dragged(0, 10, 0)).toBeGreaterThanOrEqual(0)
  })
  it('says where one looks from', () => {
    expect([0, 45, 90, 180, 262.5, 352.5].map(sideWords)).toEqual([
      'from the front',
      'from the front left',
      'from the left',
      'from behind',
      'from the right',
      'from the front',
    ])
  })
  it('stands at one of 48 ways round, whatever it is given', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (degrees) => {
        const at = snapped(degrees)
        expect(at).toBeGreaterThanOrEqual(0)
        expect(at).toBeLessThan(360)
        expect(at % STEP).toBe(0)
        expect(Object.is(at, -0)).toBe(false)
      }),
    )
  })
})

type Painted = [turn: number, level: Level, which?: number][]
const known = (levels: Painted) => {
  const all = new Map(levels.map(([turn, level, which = 0]) => [`${which} ${turn}`, level]))
  return { has: (which: number, turn: number) => all.get(`${which} ${turn}`) ?? null, all }
}
const now = (turn: number, levels: Painted, more: Partial<Now> = {}): Now => ({
  which: 0,
  turn,
  palettes: 1,
  moving: false,
  empty: false,
  ahead: 4,
  built: true,
  has: known(levels).has,
  ...more,
})
/** All that is painted while nothing changes, in order; each as it is said to be done. */
const until = (at: Now, levels: Painted): Job[] => {
  const { has, all } = known(levels)
  const done: Job[] = []
  for (;;) {
    const job = nextJob({ ...at, has })
    if (!job) return done
    done.push(job)
    all.set(`${job.which} ${job.turn}`, job.level)
    expect(done.length).toBeLessThan(200)
  }
}

describe('what is painted next', () => {
  it('at first the masses, then a quick look, then the flowers', () => {
    const fresh = { built: false }
    expect(nextJob(now(0, [], { ...fresh, empty: true }))).toEqual({ which: 0, turn: 0, level: 'sketch' })
    expect(nextJob(now(0, [[0, 'sketch']], fresh))).toEqual({ which: 0, turn: 0, level: 'draft' })
    expect(nextJob(now(0, [[0, 'draft']]))).toEqual({ which: 0, turn: 0, level: 'fine' })
  })
  it('while it turns before any flower was painted, masses; afterwards a glance at the flowers', () => {
    expect(nextJob(now(30, [], { moving: true, built: false }))).toMatchObject({ turn: 30, level: 'sketch' })
    expect(nextJob(now(30, [[0, 'fine']], { moving: true }))).toMatchObject({ turn: 30, level: 'glance' })
  })
  it('a finger that rests on it gets a quick look, and the ways round are glanced at meanwhile, never the flowers in full', () => {
    expect(nextJob(now(30, [[30, 'glance']], { moving: true }))).toMatchObject({ turn: 30, level: 'draft' })
    const levels = until(now(30, [[30, 'draft']], { moving: true }), [[30, 'draft']]).map((j) => j.level)
    expect(new Set(levels)).toEqual(new Set(['glance']))
    expect(levels.length).toBe(47)
  })
  it('another palette shows no masses in between', () => {
    expect(until(now(0, [[0, 'fine']], { which: 1, palettes: 2 }), [[0, 'fine']]).slice(0, 3)).toEqual([
      { which: 1, turn: 0, level: 'glance' },
      { which: 1, turn: 0, level: 'draft' },
      { which: 1, turn: 0, level: 'fine' },
    ])
  })
  it('at rest: the other palettes, all ways round, few and near ones first, then the sides better; and then it is quiet', () => {
    const order = until(now(7.5, [[7.5, 'fine']], { palettes: 3 }), [[7.5, 'fine']])
    expect(order.slice(0, 2)).toEqual([1, 2].map((which) => ({ which, turn: 7.5, level: 'glance' })))
    const glances = order.slice(2).filter((j) => j.level === 'glance')
    expect(glances.slice(0, 14).map((j) => j.turn)).toEqual([
      0, 30, 330, 60, 300, 90, 270, 120, 240, 150, 210, 180, 15, 345,
    ])
    expect(new Set(glances.map((j) => j.turn)).size).toBe(47)
    expect(order.slice(49).map((j) => [j.turn, j.level])).toEqual(
      [15, 0, 22.5, 352.5, 30, 345, 37.5, 337.5].map((turn) => [turn, 'draft']),
    )
  })
  it('whatever was painted before and wherever it stands, the painting comes to an end', () => {
    const levels = fc.array(
      fc.tuple(
        fc.integer({ min: 0, max: 47 }).map((n) => n * STEP),
        fc.constantFrom<Level>('sketch', 'glance', 'draft', 'fine'),
        fc.nat(2),
      ),
      { maxLength: 60 },
    )
    fc.assert(
      fc.property(levels, fc.integer({ min: 0, max: 47 }), fc.boolean(), fc.boolean(), (before, n, moving, built) => {
        const at = now(n * STEP, [], { palettes: 3, which: 1, moving, built })
        for (const job of until(at, before)) expect(job.turn % STEP).toBe(0)
      }),
    )
  })
})

describe('what is shown while it turns', () => {
  const shown = (turn: number, levels: Painted): number | null => shownFor(turn, (t) => known(levels).has(0, t))
  it('the way round itself where flowers are painted there, else the nearest that has some', () => {
    expect(
      shown(30, [
        [30, 'glance'],
        [37.5, 'fine'],
      ]),
    ).toBe(30)
    expect(
      shown(30, [
        [30, 'sketch'],
        [37.5, 'glance'],
        [15, 'fine'],
      ]),
    ).toBe(37.5)
    expect(shown(0, [[345, 'glance']])).toBe(345)
  })
  it('masses only where no flowers are near, and far ones only where there is nothing else', () => {
    expect(
      shown(30, [
        [30, 'sketch'],
        [60, 'fine'],
      ]),
    ).toBe(30)
    expect(shown(30, [[60, 'fine']])).toBe(60)
    expect(shown(30, [[60, 'sketch']])).toBeNull()
  })
  it('when every thirtieth degree was glanced at, flowers are shown everywhere, 15 degrees off at most', () => {
    const every30 = Array.from({ length: 12 }, (_, i): Painted[number] => [i * 30, 'glance'])
    for (let turn = 0; turn < 360; turn += STEP) {
      const at = shown(turn, every30)!
      expect(Math.min(Math.abs(at - turn), 360 - Math.abs(at - turn))).toBeLessThanOrEqual(NEAR)
    }
  })
})
