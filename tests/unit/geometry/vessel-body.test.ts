import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { ProfilePoint, Vessel, VesselPlan } from '../../../src/arrangement/index.ts'
import { heldWhenTilted, spillOf } from '../../../src/geometry/spill.ts'
import { innerSection, outerSection, reachIn, waterlineZ } from '../../../src/geometry/vessel.ts'
import { shellOf, surfaceMoment_mm4, waterOf } from '../../../src/geometry/vessel-body.ts'

const THIN = 1e-6
const vessel = (over: Partial<Vessel> = {}): Vessel => ({
  plan: 'round',
  width: 120,
  depth: 120,
  height: 200,
  wall: THIN,
  material: 'glass',
  colour: '#ffffff',
  mechanics: 'none',
  waterFill: 1,
  ...over,
})
const DEGREE = Math.PI / 180
const tan = (degrees: number): number => Math.tan(degrees * DEGREE)

describe('where the middle of a body lies', () => {
  it('of a full cylinder or box, half way up', () => {
    expect(waterOf(vessel()).centre_mm).toBeCloseTo(100, 4)
    expect(waterOf(vessel({ plan: 'rectangular', depth: 60 })).centre_mm).toBeCloseTo(100, 4)
  })
  it('of a frustum, h/4 · (R² + 2Rr + 3r²) / (R² + Rr + r²) over its end R (any table of solids)', () => {
    const [R, r, h] = [40, 60, 200]
    const glass = vessel({
      profile: [
        [0, R / r],
        [1, 1],
      ],
    })
    const centre = ((h / 4) * (R * R + 2 * R * r + 3 * r * r)) / (R * R + R * r + r * r)
    expect(waterOf(glass).centre_mm).toBeCloseTo(centre, 3)
  })
  it('of half a ball of water, 5/8 of the radius over its lowest point', () => {
    const profile: ProfilePoint[] = Array.from({ length: 41 }, (_, i) => {
      const h = (i / 40) ** 2
      return [h, Math.sqrt(1 - (1 - h) ** 2)]
    })
    expect(waterOf(vessel({ height: 60, profile })).centre_mm / 60).toBeCloseTo(5 / 8, 3)
  })
  it('of a cylinder’s wall and floor, by taking one cylinder from another', () => {
    const [R, h, t] = [60, 200, 4]
    const [outer, inner] = [Math.PI * R * R * h, Math.PI * (R - t) ** 2 * (h - t)]
    const shell = shellOf(vessel({ wall: t }))
    expect(shell.volume_mm3 / (outer - inner)).toBeCloseTo(1, 9)
    expect(shell.centre_mm).toBeCloseTo(((outer * h) / 2 - inner * (t + (h - t) / 2)) / (outer - inner), 6)
  })
})

describe('when water spills', () => {
  it('a cylinder spills where the tangent of its tilt is free height over radius, while its floor is wet', () => {
    const spill = spillOf(vessel({ waterFill: 0.8 }))!
    expect(tan(spill.angle_deg)).toBeCloseTo(40 / 60, 2)
  })
  it('a cylinder that holds 2/3 r² h spills where the surface halves its floor (Archimedes’ hoof)', () => {
    const [r, h] = [60, 200]
    const fill = ((2 / 3) * r * r * h) / (Math.PI * r * r * h)
    expect(tan(spillOf(vessel({ waterFill: fill }))!.angle_deg)).toBeCloseTo(h / r, 1)
  })
  it('a box spills first over a corner, and there at free height over half the diagonal', () => {
    const box = vessel({ plan: 'rectangular', width: 200, depth: 120, height: 100, waterFill: 0.8 })
    const spill = spillOf(box)!
    expect(tan(spill.angle_deg)).toBeCloseTo(20 / Math.hypot(100, 60), 2)
    expect(spill.toward_deg).toBeCloseTo(Math.atan2(60, 100) / DEGREE, 3)
  })
  it('a box tilted over its long side holds the wedge: ½ · h · h / tan θ · depth once its floor is half dry', () => {
    const box = vessel({ plan: 'rectangular', width: 200, depth: 120, height: 100 })
    const held = heldWhenTilted(box, 45, 1, 0)
    expect(held / ((100 * 100 * 120) / 2)).toBeCloseTo(1, 3)
  })
  it('an oval spills first over its ends, and there as a cylinder of that radius', () => {
    const spill = spillOf(vessel({ plan: 'oval', width: 200, depth: 100, height: 100, waterFill: 0.8 }))!
    expect(spill.toward_deg).toBe(0)
    expect(tan(spill.angle_deg)).toBeCloseTo(20 / 100, 2)
  })
  it('full to the brim it spills at once, dry it never does', () => {
    expect(spillOf(vessel({ waterFill: 1 }))!.angle_deg).toBeLessThan(0.01)
    expect(spillOf(vessel({ waterFill: 0 }))).toBeNull()
  })
  it('less water, more tilt', () => {
    const at = [0.9, 0.7, 0.5, 0.3].map((waterFill) => spillOf(vessel({ waterFill, wall: 3 }))!.angle_deg)
    expect(at).toEqual(at.toSorted((a, b) => a - b))
  })
})

/** Vessels as someone might draw them. */
const vessels = fc
  .record({
    plan: fc.constantFrom<VesselPlan>('round', 'oval', 'rectangular'),
    width: fc.integer({ min: 60, max: 300 }),
    depth: fc.integer({ min: 60, max: 300 }),
    height: fc.integer({ min: 50, max: 300 }),
    foot: fc.double({ min: 0.4, max: 1.3, noNaN: true }),
    belly: fc.double({ min: 0.6, max: 1.5, noNaN: true }),
    wall: fc.integer({ min: 2, max: 6 }),
    waterFill: fc.double({ min: 0.2, max: 0.95, noNaN: true }),
  })
  .map(({ foot, belly, ...rest }) =>
    vessel({
      ...rest,
      depth: rest.plan === 'round' ? rest.width : rest.depth,
      profile: [
        [0, foot],
        [0.45, belly],
        [1, 1],
      ],
    }),
  )

/** Counts cells of a fine lattice: the slow way, with nothing in common but the sections. */
const counted = (v: Vessel, inside: (x: number, y: number, z: number) => boolean, top = v.height) => {
  // So fine that across the narrowest foot a cell more or less is under two in a hundred.
  const [n, layers] = [120, 40]
  // Bellies reach half as far again as the mouth.
  const [halfX, halfY] = [0.76 * v.width, 0.76 * v.depth]
  const [cellX, cellY] = [(2 * halfX) / n, (2 * halfY) / n]
  const tall = top / layers
  let [cells, moment] = [0, 0]
  for (let k = 0; k < layers; k++)
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) {
        const [x, y, z] = [(i + 0.5) * cellX - halfX, (j + 0.5) * cellY - halfY, (k + 0.5) * tall]
        if (!inside(x, y, z)) continue
        cells += 1
        moment += z
      }
  return { volume: cells * cellX * cellY * tall, centre: moment / cells }
}

describe('against counting cells', () => {
  it('the wall and the water of any vessel', () => {
    fc.assert(
      fc.property(vessels, (v) => {
        const within = (x: number, y: number, f: number) => reachIn(v, innerSection(v, f), x, y) <= 1
        const level = waterlineZ(v) + v.height
        const water = counted(v, (x, y, z) => within(x, y, z / v.height), level)
        const all = counted(v, (x, y, z) => reachIn(v, outerSection(v, z / v.height), x, y) <= 1)
        const hollow = counted(v, (x, y, z) => within(x, y, z / v.height))
        expect(Math.abs(waterOf(v).volume_mm3 / water.volume - 1)).toBeLessThan(0.05)
        expect(Math.abs(waterOf(v).centre_mm - water.centre)).toBeLessThan(0.02 * v.height)
        const slack = 0.03 * all.volume
        expect(Math.abs(shellOf(v).volume_mm3 - (all.volume - hollow.volume))).toBeLessThan(slack)
      }),
      { numRuns: 15 },
    )
  })
  it('what any vessel holds when it leans', () => {
    const way = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true })
    fc.assert(
      fc.property(vessels, way, fc.double({ min: 5, max: 70, noNaN: true }), (v, toward, angle) => {
        const [c, s] = [Math.cos(toward), Math.sin(toward)]
        const mouth = innerSection(v, 1)
        const rim =
          v.plan === 'rectangular'
            ? mouth.a * Math.abs(c) + mouth.b * Math.abs(s)
            : Math.hypot(mouth.a * c, mouth.b * s)
        const slow = counted(v, (x, y, z) => {
          if (reachIn(v, innerSection(v, z / v.height), x, y) > 1) return false
          return z - v.height <= tan(angle) * (x * c + y * s - rim)
        })
        const whole = counted(v, (x, y, z) => reachIn(v, innerSection(v, z / v.height), x, y) <= 1).volume
        expect(Math.abs(heldWhenTilted(v, angle, c, s) - slow.volume)).toBeLessThan(0.03 * whole)
      }),
      { numRuns: 20 },
    )
  })
  it('the surface’s second moment is that of the textbook', () => {
    expect(surfaceMoment_mm4(vessel({ waterFill: 0.5 }), 1, 0) / ((Math.PI * 60 ** 4) / 4)).toBeCloseTo(1, 6)
    const box = vessel({ plan: 'rectangular', width: 200, depth: 120, waterFill: 0.5 })
    expect(surfaceMoment_mm4(box, 1, 0) / ((120 * 200 ** 3) / 12)).toBeCloseTo(1, 6)
    expect(surfaceMoment_mm4(box, 0, 1) / ((200 * 120 ** 3) / 12)).toBeCloseTo(1, 6)
  })
})
