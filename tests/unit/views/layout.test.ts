import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { frameOf, layOut, sizesOf, splitOf, toSheet, toView, VIEWS, viewAt } from '../../../src/ui/views/layout.ts'
import { bowl, stem } from './fixture.ts'

const sizes = { top_mm: 200, reach_mm: 220 }

describe('the place of both views on the sheet', () => {
  it('an arrangement of usual size is drawn at about true size in the column of a laptop', () => {
    const l = layOut(578, 866, 1, sizes, { height: 92 })
    expect(l.scale).toBeGreaterThan(1)
    expect(l.scale).toBeLessThan(1.3)
    expect(l.axisX).toBe(289)
  })

  it('both views fit, elevation above plan, from a small phone to a large screen', () => {
    const between = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true })
    fc.assert(
      fc.property(
        fc.integer({ min: 320, max: 900 }),
        fc.integer({ min: 400, max: 1000 }),
        fc.constantFrom(1, 1.25, 1.5, 2),
        between(80, 1500),
        between(60, 1500),
        between(30, 600),
        (width, height, ratio, top_mm, reach_mm, vessel) => {
          const l = layOut(width, height, ratio, { top_mm, reach_mm }, { height: vessel })
          const ring = l.ring_mm * l.scale
          expect(l.scale).toBeGreaterThan(0)
          expect(l.rimY - top_mm * l.scale).toBeGreaterThanOrEqual(0)
          expect(l.planY - ring).toBeGreaterThan(l.tableY)
          expect(l.planY + ring).toBeLessThanOrEqual(height)
          expect(l.axisX - reach_mm * l.scale).toBeGreaterThanOrEqual(0)
          for (const y of [l.rimY, l.planY, l.axisX]) expect(y * ratio).toBeCloseTo(Math.round(y * ratio), 6)
        },
      ),
    )
  })

  it('a place on the sheet and the place in the view are the same place', () => {
    const l = layOut(578, 866, 2, sizes, { height: 92 })
    for (const view of VIEWS) {
      const [x, y] = toSheet(l, view, -31.5, 42)
      const [right, up] = toView(l, view, x, y)
      expect(right).toBeCloseTo(-31.5)
      expect(up).toBeCloseTo(42)
      expect(viewAt(l, y)).toBe(view)
    }
    expect(viewAt(l, splitOf(l) + 1)).toBe('plan')
  })

  it('the painted rectangle has the axis and the rim on whole pixels', () => {
    for (const ratio of [1, 1.5, 2])
      for (const view of VIEWS) {
        const frame = frameOf(layOut(577, 811, ratio, sizes, { height: 92 }), view)
        for (const mm of [frame.left, frame.top]) expect(mm * frame.scale).toBeCloseTo(Math.round(mm * frame.scale), 6)
        expect(frame.right).toBeGreaterThan(frame.left)
        expect(frame.top).toBeGreaterThan(frame.bottom)
      }
  })

  it('a head that moves a little leaves the scale alone, one that moves far does not', () => {
    const at = (z: number) => bowl(stem('a', { tip: [0, 0, z] }))
    const before = sizesOf(at(300))
    expect(sizesOf(at(285), before)).toEqual(before)
    expect(sizesOf(at(600), before).top_mm).toBeGreaterThanOrEqual(600)
    expect(sizesOf(at(100), before).top_mm).toBeLessThan(before.top_mm)
  })

  it('an empty vessel leaves room for a first sketch', () => {
    const { top_mm, reach_mm } = sizesOf(bowl())
    expect(top_mm).toBeGreaterThan(140)
    expect(reach_mm).toBeGreaterThan(70)
  })
})
