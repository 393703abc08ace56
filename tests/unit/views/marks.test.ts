import { describe, expect, it } from 'vitest'
import type { Mark } from '../../../src/readings/index.ts'
import { leaderOf, overlap, placeLabel } from '../../../src/ui/views/labels.ts'
import { newestOnly } from '../../../src/ui/views/newest.ts'
import { holdsAt, otherTurn } from '../../../src/ui/views/reading-marks.ts'
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
