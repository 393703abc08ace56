import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Point3, Stem, Vessel } from '../../../src/arrangement/index.ts'
import { stemCurve } from '../../../src/geometry/stem-curve.ts'
import { heightFraction, outerSection, reachIn } from '../../../src/geometry/vessel.ts'

const bowl: Vessel = {
  plan: 'round',
  width: 140,
  depth: 140,
  height: 90,
  profile: [
    [0, 0.6],
    [0.5, 1.05],
    [1, 1],
  ],
  wall: 4,
  material: 'ceramic',
  colour: '#ffffff',
  mechanics: 'netting',
  waterFill: 0.8,
}
const stem = (mouth: [number, number], tip: Point3, bend = 0): Stem => ({
  id: 's',
  plant: 'x',
  role: 'mass',
  colour: '#ffffff',
  openness: 1,
  mouth,
  tip,
  bend,
  piece: 'whole',
})
const pointsOf = (s: Stem, v = bowl): Point3[] => {
  const { points } = stemCurve(s, v)
  return Array.from({ length: points.length / 3 }, (_, i) => [points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!])
}
const mm = (from: number, to: number) => fc.double({ min: from, max: to, noNaN: true })
const anyStem = fc
  .tuple(mm(0, 55), mm(0, 360), mm(-300, 300), mm(-300, 300), mm(-150, 400), mm(-0.3, 0.3))
  .map(([r, a, x, y, z, bend]) =>
    stem([r * Math.cos((a * Math.PI) / 180), r * Math.sin((a * Math.PI) / 180)], [x, y, z], bend),
  )

describe('the line of a stem', () => {
  it('goes through the mouth point and ends at the tip', () => {
    const s = stem([10, -5], [80, 40, 160], 0.1)
    const c = stemCurve(s, bowl)
    expect([...c.points.slice(3 * c.mouthIndex, 3 * c.mouthIndex + 3)]).toEqual([10, -5, 0])
    expect([...c.points.slice(-3)]).toEqual([80, 40, 160])
    expect(c.cut_mm).toBeCloseTo(c.above_mm + c.below_mm)
  })
  it('an upright stem is as long as it is high, and goes to the floor', () => {
    const c = stemCurve(stem([0, 0], [0, 0, 200]), bowl)
    expect(c.above_mm).toBeCloseTo(200, 3)
    expect(c.below_mm).toBeCloseTo(90 - 4, 3)
  })
  it('leaves the mouth steeper than it arrives', () => {
    const p = pointsOf(stem([0, 0], [120, 0, 150]))
    const slope = (i: number): number => (p[i + 1]![2] - p[i]![2]) / (p[i + 1]![0] - p[i]![0])
    expect(slope(12)).toBeGreaterThan(1.5 * slope(p.length - 2))
  })
  it('a head lower than 40 mm is reached over the rim', () => {
    for (const p of pointsOf(stem([20, 0], [130, 0, 15]))) if (p[0] > 60 && p[0] < 80) expect(p[2]).toBeGreaterThan(3)
  })
  it('a tip under the rim hangs outside, up and over, never through the wall', () => {
    for (const tip of [
      [90, 0, -60],
      [110, 30, -80],
      [200, -40, -30],
      [76, 0, -85],
    ] as Point3[]) {
      const p = pointsOf(stem([20, 5], tip)).slice(12)
      expect(Math.max(...p.map((q) => q[2]))).toBeGreaterThan(8)
      for (const q of p.slice(0, -3))
        if (q[2] < -1) {
          const { a, b } = outerSection(bowl, heightFraction(bowl, q[2]))
          expect(reachIn(bowl, { a, b }, q[0], q[1])).toBeGreaterThan(0.999)
        }
    }
  })
  it('bend bows it sideways at mid length by that part of its length', () => {
    const straight = stemCurve(stem([0, 0], [100, 0, 120]), bowl)
    const bowed = stemCurve(stem([0, 0], [100, 0, 120], 0.2), bowl)
    expect(Math.abs(bowed.middle[1] - straight.middle[1]) / straight.above_mm).toBeCloseTo(0.2, 2)
  })
  it('turning the stem turns its line', () => {
    fc.assert(
      fc.property(anyStem, mm(0, 360), (s, turn) => {
        // One that stands upright on the axis has no side of its own to bow to: along y, however it is turned.
        fc.pre(Math.hypot(...s.mouth) > 1e-6 || Math.hypot(s.tip[0], s.tip[1]) > 1e-6)
        const [c, n] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)]
        const round = ([x, y, z]: Point3): Point3 => [x * c - y * n, x * n + y * c, z]
        const [mx, my] = round([s.mouth[0], s.mouth[1], 0])
        const turned = pointsOf({ ...s, mouth: [mx, my], tip: round(s.tip) })
        pointsOf(s).forEach((p, i) => {
          round(p).forEach((v, k) => {
            expect(Math.abs(v - turned[i]![k]!)).toBeLessThan(0.05)
          })
        })
      }),
      { numRuns: 100 },
    )
  })
  it('mirroring the stem mirrors its line, with the bow the other way', () => {
    fc.assert(
      fc.property(anyStem, (s) => {
        const mirrored = pointsOf({
          ...s,
          mouth: [-s.mouth[0], s.mouth[1]],
          tip: [-s.tip[0], s.tip[1], s.tip[2]],
          bend: -s.bend,
        })
        pointsOf(s).forEach((p, i) => {
          expect(Math.abs(mirrored[i]![0] + p[0])).toBeLessThan(0.05)
          expect(Math.abs(mirrored[i]![2] - p[2])).toBeLessThan(0.05)
        })
      }),
      { numRuns: 100 },
    )
  })
  it('is a number everywhere, and a small move of the tip moves it little', () => {
    fc.assert(
      fc.property(anyStem, mm(-0.5, 0.5), (s, d) => {
        const a = pointsOf(s)
        expect(a.flat().every(Number.isFinite)).toBe(true)
        // Where the rim is passed or not there is a choice to be made, and so a jump; away from it there is none.
        const out = Math.hypot(s.tip[0], s.tip[1])
        if (s.tip[2] < 45 && Math.abs(out - 70) < 12) return
        if (Math.hypot(s.tip[0] - s.mouth[0], s.tip[1] - s.mouth[1]) < 20) return
        const b = pointsOf({ ...s, tip: [s.tip[0], s.tip[1], s.tip[2] + d] })
        a.slice(12).forEach((p, i) => {
          expect(Math.hypot(...p.map((v, k) => v - b[i + 12]![k]!))).toBeLessThan(6)
        })
      }),
      { numRuns: 300 },
    )
  })
  it('a tip on the mouth itself still gives a line', () => {
    const c = stemCurve(stem([0, 0], [0, 0, 0]), bowl)
    expect(c.above_mm).toBeGreaterThan(0)
    expect([...c.points].every(Number.isFinite)).toBe(true)
  })
})
