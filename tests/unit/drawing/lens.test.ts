import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Vessel } from '../../../src/arrangement/index.ts'
import { createCache, type Frame, type PaintOptions, type Picture, paintPicture } from '../../../src/drawing/index.ts'
import { nothingSeen, seenInWater, seenOnRound, waterLens } from '../../../src/drawing/lens.ts'
import { paneShare, WATER_INDEX } from '../../../src/drawing/optics.ts'
import { BOWL, resolvedOf } from './fixture.ts'

const TUBE: Vessel = { ...BOWL, width: 120, depth: 120, height: 200, material: 'glass', waterFill: 0.5 }
const FRAME: Frame = { left: -120, right: 120, bottom: -210, top: 150, scale: 1 }
const PLAIN: PaintOptions = { quality: 'draft', section: false, vessel: 'grey' }
const FRONT = { turn: 0, pitch: 0 }

/** Middle of all that belongs to the first stem in a row, mm right of the axis. */
const middleAt = (p: Picture, z: number): number => {
  const row = Math.round((FRAME.top - z) * FRAME.scale)
  let [sum, count] = [0, 0]
  for (let x = 0; x < p.width; x++) {
    if (p.owner[row * p.width + x] !== 1) continue
    sum += FRAME.left + (x + 0.5) / FRAME.scale
    count += 1
  }
  return sum / count
}

const stemAt = (x: number, y: number, vessel: Vessel, angle = FRONT, options = PLAIN): Picture =>
  paintPicture(resolvedOf([{ id: 'a', mouth: [x, y], tip: [x, y, 120] }], vessel), angle, FRAME, options, createCache())

describe('water in glass', () => {
  it('breaks a stem at the waterline, outward in a round glass, and more the farther behind the axis it stands', () => {
    const off = (x: number, y: number): number => {
      const p = stemAt(x, y, TUBE)
      return middleAt(p, -115) / middleAt(p, -80)
    }
    expect(off(15, 0)).toBeGreaterThan(1.25)
    expect(off(15, 0)).toBeLessThan(1.45)
    expect(off(15, 30)).toBeGreaterThan(off(15, 0) + 0.15)
    expect(off(15, -40)).toBeLessThan(off(15, 0) - 0.1)
    expect(off(-15, 0)).toBeCloseTo(off(15, 0), 1)
  })

  it('breaks nothing where a flat side faces the eye, where there is no glass, no water, or a cut to measure in', () => {
    const straight = (vessel: Vessel, options = PLAIN): void => {
      const p = stemAt(20, 20, vessel, FRONT, options)
      expect(Math.abs(middleAt(p, -115) - middleAt(p, -80))).toBeLessThan(2)
    }
    straight({ ...TUBE, plan: 'rectangular' })
    straight({ ...TUBE, waterFill: 0 })
    straight({ ...TUBE, material: 'ceramic' }, { ...PLAIN, section: true })
    straight(TUBE, { ...PLAIN, section: true })
  })

  it('moves a stem in a square vase sideways once a side is turned, and by as much as Snell’s law says', () => {
    const lens = waterLens({ ...TUBE, plan: 'rectangular' }, { turn: 30, pitch: 0 })!
    const seen = nothingSeen()
    seenInWater(lens, 0, 0, -150, seen)
    // From 30° outside to 22.03° in water, 60 mm behind the side.
    const slip = 60 * (Math.tan(Math.PI / 6) - Math.tan(Math.asin(0.5 / 1.333))) * Math.cos(Math.PI / 6)
    const shown = [0, 2, 4, 6].map((k) => seen[k]!).filter((x) => !Number.isNaN(x))
    expect(shown.some((x) => Math.abs(Math.abs(x) - slip) < 0.01)).toBe(true)
  })

  it('looks shallower from above: three quarters as deep from straight over it, and nothing is shifted in the plan', () => {
    const lens = waterLens(TUBE, { turn: 0, pitch: 84 })!
    const seen = nothingSeen()
    const [z, deep] = [lens.surface - 80, 80]
    seenInWater(lens, 0, 0, z, seen)
    const sin = Math.sin((84 * Math.PI) / 180)
    const lifted = seen[9]! - z * Math.cos((84 * Math.PI) / 180)
    const whole = deep * Math.cos((84 * Math.PI) / 180)
    expect(lifted / whole).toBeCloseTo(1 - sin / WATER_INDEX, 1)
    expect(waterLens(TUBE, { turn: 0, pitch: 90 })).toBeNull()
  })

  it('sends every ray by Snell’s law: traced back by vectors, it meets what it shows', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.95, noNaN: true }),
        fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
        (r, a) => {
          const [x, y] = [Math.abs(r * Math.cos(a)), r * Math.sin(a)]
          const u = seenOnRound(x, y, WATER_INDEX)
          if (Number.isNaN(u)) return
          // Vector form of Snell's law at the wall, the eye's ray going away along +y.
          const [nx, ny] = [u, -Math.sqrt(1 - u * u)]
          const cosIn = -ny
          const k = 1 / WATER_INDEX
          const cosOut = Math.sqrt(1 - k * k * (1 - cosIn * cosIn))
          const [dx, dy] = [(k * cosIn - cosOut) * nx, k + (k * cosIn - cosOut) * ny]
          const meets = nx + (dx / dy) * (y - ny)
          expect(Math.abs(meets - x)).toBeLessThan(0.003)
        },
      ),
    )
  })

  it('magnifies what is near the axis as a single round surface does (Hecht, on spherical surfaces)', () => {
    // By n on the axis, by n / (2 − n) at the far wall.
    expect(0.05 / seenOnRound(0.05, 0, 1.333)).toBeCloseTo(1 / 1.333, 2)
    expect(0.05 / seenOnRound(0.05, 1, 1.333)).toBeCloseTo((2 - 1.333) / 1.333, 2)
  })
})

describe('glass', () => {
  it('throws back about 8 % of the light that meets a pane straight on (Hecht), all of it at a glance', () => {
    expect(paneShare(1)).toBeCloseTo(0.077, 3)
    expect(paneShare(0)).toBeCloseTo(1, 6)
  })
})
