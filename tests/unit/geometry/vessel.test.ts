import { describe, expect, it } from 'vitest'
import type { ProfilePoint, Vessel } from '../../../src/arrangement/index.ts'
import { innerVolume_mm3, vesselHalfWidth, waterlineZ, waterVolume_mm3 } from '../../../src/geometry/vessel.ts'

const THIN = 1e-6
const vessel = (over: Partial<Vessel>): Vessel => ({
  plan: 'round',
  width: 100,
  depth: 100,
  height: 100,
  wall: THIN,
  material: 'glass',
  colour: '#ffffff',
  mechanics: 'none',
  waterFill: 1,
  ...over,
})
/** Twenty-one points of a profile, y of height. */
const drawn = (y: (h: number) => number): ProfilePoint[] =>
  Array.from({ length: 41 }, (_, i): [number, number] => [(i / 40) ** 2, y((i / 40) ** 2)])

describe('what a vessel holds', () => {
  it('a cylinder of radius 3 and height 5 cm holds 45π cm³ (OpenStax, Prealgebra 2e)', () => {
    expect(innerVolume_mm3(vessel({ width: 60, depth: 60, height: 50 })) / 1000).toBeCloseTo(45 * Math.PI, 3)
  })
  // NCERT, Mathematics class X, exercise 13.4, volumes with π = 22/7.
  it.each([
    [140, 40, 20, 308 / 3],
    [210, 60, 40, 418],
    [140, 160, 120, 6512 / 3],
  ])('a glass %d mm high, %d wide above and %d below, holds what the textbook says', (height, top, foot, cm3) => {
    const glass = vessel({
      height,
      width: top,
      depth: top,
      profile: [
        [0, foot / top],
        [1, 1],
      ],
    })
    expect(((innerVolume_mm3(glass) / 1000) * (22 / 7)) / Math.PI).toBeCloseTo(cm3, 3)
  })
  it('a box holds length × width × height', () => {
    expect(innerVolume_mm3(vessel({ plan: 'rectangular', width: 200, depth: 80, height: 60 }))).toBeCloseTo(960000, 0)
  })
  it('a half ball of 10.5 cm holds 2/3 π R³', () => {
    const bowl = vessel({ width: 105, depth: 105, height: 52.5, profile: drawn((h) => Math.sqrt(1 - (1 - h) ** 2)) })
    expect(innerVolume_mm3(bowl) / ((2 / 3) * Math.PI * 52.5 ** 3)).toBeCloseTo(1, 3)
  })
  it('half an ellipsoid holds 2/3 π a b c, and its water is the cap', () => {
    const bowl = vessel({
      plan: 'oval',
      width: 160,
      depth: 100,
      height: 60,
      waterFill: 0.5,
      profile: drawn((h) => Math.sqrt(1 - (1 - h) ** 2)),
    })
    expect(innerVolume_mm3(bowl) / ((2 / 3) * Math.PI * 80 * 50 * 60)).toBeCloseTo(1, 3)
    const cap = (Math.PI * 80 * 50 * 30 ** 2 * (3 * 60 - 30)) / (3 * 60 ** 2)
    expect(waterVolume_mm3(bowl) / cap).toBeCloseTo(1, 2)
  })
  it('wall and floor take their share', () => {
    const pot = vessel({ width: 60, depth: 60, height: 55, wall: 5 })
    expect(innerVolume_mm3(pot)).toBeCloseTo(Math.PI * 25 ** 2 * 50, 3)
    expect(waterlineZ(vessel({ height: 55, wall: 5, waterFill: 0.8 }))).toBeCloseTo(-10)
    expect(waterVolume_mm3({ ...pot, waterFill: 0.5 })).toBeCloseTo(Math.PI * 25 ** 2 * 25, 3)
  })
  it('the profile runs smoothly through its points and never overshoots them', () => {
    const v = vessel({
      profile: [
        [0, 0.55],
        [0.5, 0.9],
        [1, 1],
      ],
    })
    for (const [f, w] of [
      [0, 27.5],
      [0.5, 45],
      [1, 50],
    ] as const)
      expect(vesselHalfWidth(v, f)).toBeCloseTo(w, 9)
    let before = 0
    for (let f = 0; f <= 1; f += 0.01) {
      const w = vesselHalfWidth(v, f)
      expect(w).toBeGreaterThanOrEqual(before)
      before = w
    }
    expect(before).toBeLessThanOrEqual(50)
  })
})
