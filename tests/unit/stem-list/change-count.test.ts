import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Stem, Vessel } from '../../../src/arrangement/index.ts'
import { innerSection, reachIn } from '../../../src/geometry/index.ts'
import { changeCount, stemList } from '../../../src/stem-list/index.ts'
import { documentOf, resolvedOf, stem } from './fixture.ts'

const change = (stems: Stem[], row: number, count: number, vessel: Partial<Vessel> = {}) => {
  const document = documentOf(stems, vessel)
  const resolved = resolvedOf(document)
  return changeCount(
    document,
    resolved,
    stemList(resolved)[row]!,
    count,
    (grown) => `new${grown.stems.length - stems.length + 1}`,
  )
}
const added = (...args: Parameters<typeof change>): Stem[] => {
  const edit = change(...args)
  if (edit.do !== 'add-stems') throw new Error(edit.do)
  return edit.stems
}

describe('another number in the list', () => {
  it('takes out the last added', () => {
    const stems = [stem('a', 'rose'), stem('b', 'spray'), stem('c', 'rose'), stem('d', 'rose')]
    expect(change(stems, 0, 1)).toEqual({ do: 'remove-stems', ids: ['c', 'd'] })
    expect(change(stems, 0, 0)).toEqual({ do: 'remove-stems', ids: ['a', 'c', 'd'] })
    expect(change(stems, 0, 3)).toEqual({ do: 'add-stems', stems: [] })
  })

  it('adds copies of the last one, with fresh ids, a golden angle round and at the same height', () => {
    const last = stem('b', 'rose', { bend: 0.1, head: 50, role: 'focal' })
    const [one, two] = added([stem('a', 'spray', { tip: [0, 0, 300], mouth: [0, 0] }), last], 1, 3) as [Stem, Stem]
    expect([one.id, two.id]).toEqual(['new1', 'new2'])
    expect({ ...one, id: 'b', tip: last.tip, mouth: last.mouth }).toEqual(last)
    expect(one.tip[2]).toBe(120)
    const angle = ([x, y]: readonly number[]): number => (Math.atan2(y as number, x as number) * 180) / Math.PI
    expect(angle(one.tip)).toBeCloseTo(137.5, 0)
    expect(angle(two.tip)).toBeCloseTo(-85, 0)
    expect(Math.hypot(one.tip[0], one.tip[1])).toBeCloseTo(80, 0)
  })

  it('finds room beside a stem that stands on the axis', () => {
    const [one] = added([stem('a', 'rose', { tip: [0, 0, 150], mouth: [0, 0] })], 0, 2) as [Stem]
    expect(Math.hypot(one.tip[0], one.tip[1])).toBeGreaterThanOrEqual(54)
    expect(Math.hypot(...one.mouth)).toBeGreaterThanOrEqual(5)
  })

  it('keeps heads clear of each other while there is room', () => {
    const stems = [stem('a', 'rose', { tip: [90, 0, 120], mouth: [25, 0] })]
    const all = [...stems, ...added(stems, 0, 6)]
    for (const p of all)
      for (const q of all)
        if (p !== q) expect(Math.hypot(...p.tip.map((v, i) => v - (q.tip[i] as number)))).toBeGreaterThanOrEqual(54)
  })

  it('keeps every crossing inside the mouth and every number finite, in any vessel and however full', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('round', 'oval', 'rectangular' as const),
        fc.integer({ min: 20, max: 400 }),
        fc.integer({ min: 20, max: 400 }),
        fc.tuple(fc.integer({ min: -200, max: 200 }), fc.integer({ min: -200, max: 200 })),
        fc.integer({ min: 1, max: 40 }),
        (plan, width, depth, mouth, count) => {
          const vessel = { plan, width, depth: plan === 'round' ? width : depth }
          const stems = [stem('a', 'rose', { mouth, tip: [mouth[0], mouth[1], 50] })]
          const got = added(stems, 0, count, vessel)
          expect(got).toHaveLength(count - 1)
          expect(new Set(got.map((s) => s.id)).size).toBe(count - 1)
          const whole = documentOf(stems, vessel).vessel
          for (const s of got) {
            expect([...s.mouth, ...s.tip].every(Number.isFinite)).toBe(true)
            expect(reachIn(whole, innerSection(whole, 1), ...s.mouth)).toBeLessThanOrEqual(1)
          }
        },
      ),
    )
  })

  it.each([-1, 2.5, Number.NaN])('refuses %s', (count) => {
    expect(() => change([stem('a', 'rose')], 0, count)).toThrow('count: expected a whole number from 0 up')
  })
})
