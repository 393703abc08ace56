import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Level } from '../../../src/partner/protocol.ts'
import { dragged, nextJob, STEP, sideWords, snapped } from '../../../src/partner/turns.ts'

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

describe('what is painted next', () => {
  const painted = (...levels: [number, Level][]) => {
    const known = new Map(levels)
    return (turn: number): Level | null => known.get(turn) ?? null
  }
  it('at first the masses, then a quick look, then the flowers', () => {
    expect(nextJob(0, false, true, painted())).toEqual({ turn: 0, level: 'sketch' })
    expect(nextJob(0, false, false, painted([0, 'sketch']))).toEqual({ turn: 0, level: 'draft' })
    expect(nextJob(0, false, false, painted([0, 'draft']))).toEqual({ turn: 0, level: 'fine' })
  })
  it('while it turns only masses, and nothing where something better is there', () => {
    expect(nextJob(30, true, false, painted([0, 'fine']))).toEqual({ turn: 30, level: 'sketch' })
    expect(nextJob(30, true, false, painted([30, 'draft']))).toBeNull()
  })
  it('another palette shows no masses in between', () => {
    expect(nextJob(0, false, false, painted())).toEqual({ turn: 0, level: 'draft' })
  })
  it('at rest the sides are painted ahead, the nearest first, and then it is quiet', () => {
    const known = new Map<number, Level>([[0, 'fine']])
    const order: number[] = []
    for (let job = nextJob(0, false, false, (t) => known.get(t) ?? null); job; ) {
      expect(job.level).toBe('draft')
      order.push(job.turn)
      known.set(job.turn, job.level)
      job = nextJob(0, false, false, (t) => known.get(t) ?? null)
    }
    expect(order).toEqual([7.5, 352.5, 15, 345, 22.5, 337.5, 30, 330])
  })
})
