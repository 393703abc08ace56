import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { newEvent, type Work } from '../../../src/event/index.ts'
import { byHands, fewestHands, handsAt, inTurn, whoWords } from '../../../src/work-plan/crew.ts'
import type { Draft } from '../../../src/work-plan/draft.ts'
import { event, line, plan } from './made.ts'

const work = (over: Partial<Work> = {}): Work => ({ ...newEvent('UTC').work, ...over })
const draft = (key: string, hand_min: number, over: Partial<Draft> = {}): Draft => ({
  key,
  kind: 'vessels',
  title: key,
  hand_min,
  steps: [],
  reasons: [],
  ...over,
})
const NAMES = { people: 3, names: ['Ana', 'Rui'] }

describe('who is at a task', () => {
  it('all, the first where one does, or those that are named', () => {
    expect(handsAt(draft('place-1', 60), work(NAMES))).toEqual([0, 1, 2])
    expect(handsAt(draft('carry', 0, { few: 1 }), work(NAMES))).toEqual([0])
    expect(handsAt(draft('carry', 0, { few: 1 }), work({ ...NAMES, who: { carry: [3, 2] } }))).toEqual([1, 2])
    // The fourth is no longer there.
    expect(handsAt(draft('carry', 0, { few: 1 }), work({ ...NAMES, who: { carry: [4] } }))).toEqual([0])
  })
  it('in words, by name where there is one', () => {
    expect(whoWords([0, 1, 2], { names: ['Ana', 'Rui', 'Zé'] })).toBe('Ana, Rui and Zé')
    expect(whoWords([0, 2], NAMES)).toBe('Ana and 1 more')
    expect([whoWords([2], NAMES), whoWords([0, 1], { names: [] })]).toEqual(['1 person', '2 people'])
  })
  it('the one who takes flowers in, the driver and all the others stand in the plan by name', () => {
    const { tasks } = plan({ work: work({ people: 2, names: ['Ana', 'Rui'] }) }, line('rose', 60))
    const who = (key: string): string => tasks.find((t) => t.key === key)!.who
    expect(['arrive-3', 'trial', 'carry', 'place-1', 'clear'].map(who)).toEqual([
      'Ana',
      'Ana',
      'Ana',
      'Ana and Rui',
      'Ana and Rui',
    ])
    expect(tasks.filter((t) => t.who === '').map((t) => t.kind)).toEqual(['book', 'settle', 'open'])
  })
})

describe('a day by its hands', () => {
  it('all at every task: one after another', () => {
    const slots = inTurn([draft('a', 60), draft('b', 31)], work({ people: 2 }))
    expect(slots.map((s) => [s.from, s.to])).toEqual([
      [0, 30],
      [30, 50],
    ])
  })
  it('one conditions while the other prepares vessels; placing waits for both', () => {
    const who = { condition: [1], vessels: [2] }
    const drafts = [draft('condition', 60), draft('vessels', 40), draft('place', 60, { after: ['vessels'] })]
    expect(inTurn(drafts, work({ people: 2, who })).map((s) => [s.from, s.to])).toEqual([
      [0, 60],
      [0, 40],
      [60, 90],
    ])
  })
  it('what waits for a task begins after it, also by other hands', () => {
    const drafts = [draft('arrive', 10), draft('condition', 20, { after: ['arrive'] })]
    const slots = inTurn(drafts, work({ people: 2, who: { arrive: [1], condition: [2] } }))
    expect(slots[1]).toMatchObject({ from: 10, to: 30 })
  })
  it('in the plan: side by side where the person says so, and no clash of hands for it', () => {
    // Roses three days before, greens too; vessels and greens two days before. Rui prepares, Ana tops nothing up.
    const who = { vessels: [2], 'condition-2': [1] }
    const { tasks, clashes } = plan({ work: work({ people: 2, who }) }, line('tulip', 60), line('ruscus-italian', 24))
    const at = (key: string) => tasks.find((t) => t.key === key)!
    expect(at('condition-2')).toMatchObject({ start: '2027-06-10T09:10', end: '2027-06-10T09:30', people: 1 })
    expect(at('vessels')).toMatchObject({ start: '2027-06-10T09:00', end: '2027-06-10T09:40', people: 1 })
    expect(at('place-2').start).toBe('2027-06-10T09:40')
    expect(clashes).toEqual([])
  })
  it('no hand is in two tasks at once, and nobody waits for nothing', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({ min: fc.integer({ min: 1, max: 300 }), who: fc.uniqueArray(fc.integer({ min: 1, max: 4 })) }),
          { minLength: 1, maxLength: 7 },
        ),
        (rows) => {
          const drafts = rows.map(({ min }, i) => draft(`t${i}`, min))
          const who = Object.fromEntries(rows.flatMap((r, i) => (r.who.length > 0 ? [[`t${i}`, r.who]] : [])))
          const slots = inTurn(drafts, work({ people: 4, who }))
          for (const [i, a] of slots.entries()) {
            const before = slots.slice(0, i).filter((b) => b.hands.some((h) => a.hands.includes(h)))
            expect(a.from).toBe(Math.max(0, ...before.map((b) => b.to)))
            expect((a.to - a.from) * a.hands.length).toBeGreaterThanOrEqual(rows[i]!.min)
          }
        },
      ),
      { numRuns: 200 },
    )
  })
  it('a crowd is reckoned as a few that are as strong', () => {
    const drafts = [draft('a', 600, { few: 1 }), draft('b', 900), draft('c', 100)]
    const end = (n: number): number => Math.max(...inTurn(drafts, work({ people: n })).map((s) => s.to))
    for (const n of [1, 2, 3, 7, 40]) {
      const crew = byHands(drafts, work(), n)
      expect(Math.max(...inTurn(crew.drafts, crew.work).map((s) => s.to))).toBe(end(n))
    }
  })
  it('the fewest that do, or none', () => {
    expect(fewestHands((n) => n >= 37)).toBe(37)
    expect(fewestHands(() => true)).toBe(1)
    expect(fewestHands(() => false)).toBeNull()
  })
})

describe('minutes of one design', () => {
  it('what its trial piece took is used for it, and shared by the days by its stems', () => {
    const parts = [{ design: 'bowl', copies: 12, place: '', placing_min: 30 }]
    const { tasks } = plan({ parts }, line('rose', 60), line('ruscus-italian', 30))
    const min = (key: string): number => tasks.find((t) => t.key === key)!.hand_min
    // Twelve of 30 minutes are 360: a third of the stems are greens.
    expect([min('place-2'), min('place-1')]).toEqual([120, 240])
    // One vessel 3 and 30.
    expect(min('trial')).toBe(33)
    expect(event().parts[0]).not.toHaveProperty('placing_min')
  })
})
