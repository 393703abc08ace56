import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Mark } from '../../../src/readings/index.ts'
import { scaleStep } from '../../../src/ui/views/furniture.ts'
import { type Box, crosses, leaderOf, overlap, placeLabel } from '../../../src/ui/views/labels.ts'
import { newestOnly } from '../../../src/ui/views/newest.ts'
import { holdsAt, otherTurn, placeWishes, type Wish } from '../../../src/ui/views/reading-marks.ts'
import { placedWords, summaryOf } from '../../../src/ui/views/words.ts'
import { bowl, stem } from './fixture.ts'

const hole = (turn: number): Mark => ({
  kind: 'circle',
  view: 'elevation',
  turn,
  centre: [0, 80],
  radius: 20,
  label: '⌀',
})

describe('marks of a reading', () => {
  it('a hole seen from one side is shown from that side only', () => {
    expect(holdsAt(hole(90), 90)).toBe(true)
    expect(holdsAt(hole(90), 0)).toBe(false)
    expect(holdsAt(hole(0), 359.8)).toBe(true)
    expect(holdsAt({ kind: 'level', z: 100, label: '' }, 33)).toBe(true)
  })
  it('where none is seen from here, the nearest side that shows one is offered', () => {
    expect(otherTurn([hole(90), hole(315)], 0)).toBe(315)
    expect(otherTurn([hole(90), hole(0)], 0)).toBeNull()
    expect(otherTurn([{ kind: 'level', z: 0, label: '' }], 0)).toBeNull()
  })
})

describe('words beside what they name', () => {
  const sheet = { x: 0, y: 0, width: 400, height: 300 }
  const asked = { anchor: [200, 150] as [number, number], clear: 10, width: 40, height: 16 }
  it('stand in free paper', () => {
    const flowers = { x: 120, y: 90, width: 160, height: 120 }
    const box = placeLabel(asked, sheet, (b) => !overlap(b, flowers))
    expect(box).not.toBeNull()
    if (box) expect(overlap(box, flowers)).toBe(false)
  })
  it('are left out where there is none', () => {
    expect(placeLabel(asked, sheet, () => false)).toBeNull()
  })
  it('are joined to it by a leader that begins at its edge', () => {
    const box = placeLabel(asked, sheet, () => true)
    expect(box).not.toBeNull()
    if (!box) return
    const [from] = leaderOf(asked, box)
    expect(Math.hypot((from?.[0] ?? 0) - 200, (from?.[1] ?? 0) - 150)).toBeCloseTo(10)
  })
})

describe('words of several marks', () => {
  const widthOf = (words: string): number => 6 * words.length
  const level = (y: number, words: string): Wish => ({
    words,
    anchor: [300, y],
    clear: 0,
    view: 'elevation',
    beside: true,
    line: [
      [60, y],
      [300, y],
    ],
  })
  const bounds = { elevation: { x: 6, y: 6, width: 320, height: 300 }, plan: { x: 6, y: 320, width: 380, height: 300 } }
  const nowhere = (): boolean => false
  const shut = (b: Box): Box => ({ x: b.x + 0.01, y: b.y + 0.01, width: b.width - 0.02, height: b.height - 0.02 })

  it('the eyes of short and of tall guests are each named beside their own line, though flowers fill the sheet', () => {
    const wishes = [level(120, 'short guests’ eyes, 38.6 cm'), level(80, 'tall guests’ eyes, 54.8 cm')]
    const placed = placeWishes(wishes, widthOf, bounds, nowhere, [])
    expect(placed.map((p) => p.words)).toEqual(wishes.map((w) => w.words))
    for (const [i, { box }] of placed.entries()) {
      const gap = Math.max(box.y - wishes[i]!.anchor[1], wishes[i]!.anchor[1] - (box.y + box.height))
      expect(gap).toBeGreaterThanOrEqual(0)
      expect(gap).toBeLessThan(6)
    }
  })
  it('two level lines close together keep their words apart, and each its own', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60, max: 250, noNaN: true }),
        fc.double({ min: 4, max: 60, noNaN: true }),
        (y, d) => {
          const placed = placeWishes([level(y, 'short'), level(y - d, 'tall')], widthOf, bounds, nowhere, [])
          expect(placed).toHaveLength(2)
          const [short, tall] = [placed[0]!.box, placed[1]!.box]
          expect(overlap(short, tall)).toBe(false)
          expect(short.y + short.height / 2).toBeGreaterThan(tall.y + tall.height / 2)
        },
      ),
    )
  })
  it('none stands on a figure of the dial, on other words or across another line; a leader strikes no words through', () => {
    const dial: Box[] = [{ x: 200, y: 380, width: 30, height: 14 }]
    const point = (words: string, x: number, y: number): Wish => ({
      words,
      anchor: [x, y],
      clear: 6,
      view: 'plan',
      line: [
        [x - 60, y - 20],
        [x + 60, y - 20],
      ],
      must: true,
    })
    fc.assert(
      fc.property(fc.integer({ min: 80, max: 300 }), fc.integer({ min: 360, max: 560 }), (x, y) => {
        const wishes = [point('centre of mass', 190, 400), point('foot', x, y)]
        const placed = placeWishes(wishes, widthOf, bounds, () => true, dial)
        for (const [i, { box, leader }] of placed.entries()) {
          for (const t of dial) expect(overlap(box, t)).toBe(false)
          for (const w of wishes) expect(crosses(w.line, shut(box))).toBe(false)
          for (const other of placed.slice(i + 1)) {
            expect(overlap(box, other.box)).toBe(false)
            expect(crosses(leader, shut(other.box)) || crosses(other.leader, shut(box))).toBe(false)
          }
        }
      }),
    )
  })
  it('a line goes through a rectangle, past it, or ends before it', () => {
    const box = { x: 10, y: 10, width: 20, height: 10 }
    const line = (...p: [number, number][]): boolean => crosses(p, box)
    expect(line([0, 0], [40, 30])).toBe(true)
    expect(line([0, 15], [40, 15])).toBe(true)
    expect(line([0, 15], [5, 15])).toBe(false)
    expect(line([0, 30], [40, 25])).toBe(false)
    expect(line([12, 12], [14, 14])).toBe(true)
  })
})

describe('the scale bar', () => {
  it('of a small drawing has longer steps, so that its figures stand apart', () => {
    const wide = (_: number, last: boolean): number => (last ? 34 : 12)
    expect(scaleStep(1.4, 'cm', wide)).toBe(25)
    expect(scaleStep(0.4, 'cm', wide)).toBe(50)
    expect(scaleStep(0.15, 'cm', wide)).toBe(250)
    expect(scaleStep(1.4, 'in', wide)).toBeCloseTo(25.4)
  })
  it('leaves room between figures at any scale', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 4, noNaN: true }), (scale) => {
        const step = scaleStep(scale, 'mm', (mm, last) => 7 * String(mm).length + (last ? 24 : 0))
        const [two, last] = [2 * step * scale, 7 * String(4 * step).length + 24]
        expect(two + 8 - last - (7 * String(2 * step).length) / 2).toBeGreaterThanOrEqual(7.9)
      }),
    )
  })
})

describe('wishes that come faster than answers', () => {
  it('the first and the newest are answered, those between are not', async () => {
    const answered: number[] = []
    const lane = newestOnly<number>(async (n) => {
      await Promise.resolve()
      answered.push(n)
    })
    for (const n of [1, 2, 3, 4]) lane.push(n)
    await new Promise((done) => setTimeout(done, 5))
    expect(answered).toEqual([1, 4])
  })
})

describe('what is said of the views', () => {
  it('an empty vessel is said to be empty, with its size in the person’s unit', () => {
    expect(summaryOf(bowl(), 0, 'cm')).toBe('An empty vessel, 14.0 cm wide and 8.4 cm high.')
  })
  it('counts the plants, most first', () => {
    const text = summaryOf(bowl(stem('a'), stem('b', { tip: [0, 0, 127] })), 45, 'in')
    expect(text).toContain('2 stems')
    expect(text).toContain('2 garden rose')
    expect(text).toContain('5 in above the rim')
    expect(text).toContain('Turned 45°')
  })
  it('says where a stem was placed', () => {
    expect(placedWords(stem('a', { tip: [-35, 0, 120] }), 'mm')).toContain(
      'placed: 120 mm above the rim, 35 mm left of the middle.',
    )
  })
})
