import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Arrangement, Stem, Vessel } from '../../../src/arrangement/index.ts'
import type { Plant } from '../../../src/catalogue/index.ts'
import { openingFor, openingOf, sharing, thicknessOf } from '../../../src/readings/crowding.ts'
import { propped } from '../../../src/readings/held-stems.ts'
import { createEngine, readAll } from '../../../src/readings/index.ts'
import { densityOf, PACKED } from '../../../src/readings/packed.ts'
import { BALL, ballStandins, bowl, design, mound, resolve, stem } from './made.ts'
import packings from './packings.json'

const engine = createEngine(ballStandins)
const number = (d: Arrangement, key: string): number =>
  readAll(resolve(d), { engine, advice: false }).find((r) => r.id === 'mechanics')!.values[key] as number
const inVessel = (stems: Stem[], over: Partial<Vessel>): Arrangement => design(stems, { vessel: bowl(over) })

describe('circles in a circle', () => {
  // Densities as Wikipedia prints them, Circle packing in a circle; three decimals, some cut off rather than rounded.
  const DENSITY: [n: number, density: number][] = [
    [1, 1],
    [2, 0.5],
    [4, 0.6864],
    [5, 0.6852],
    [7, 0.7777],
    [8, 0.7328],
    [9, 0.6895],
    [10, 0.6878],
    [11, 0.7148],
    [13, 0.7245],
    [19, 0.8032],
    [20, 0.7623],
  ]
  it.each(DENSITY)('%i fill %f of it', (n, density) => {
    expect(n / PACKED[n - 1]! ** 2).toBeCloseTo(density, 3)
  })
  it('twelve of 6 mm need 24.2 mm, nineteen of 8 mm 38.9 mm', () => {
    expect(openingFor(Array.from({ length: 12 }, () => 6))).toBeCloseTo(24.18, 2)
    expect(openingFor(Array.from({ length: 19 }, () => 8))).toBeCloseTo(38.91, 2)
  })
  it('closed forms', () => {
    const FORMS: [n: number, radius: number][] = [
      [3, 1 + 2 / Math.sqrt(3)],
      [4, 1 + Math.SQRT2],
      [5, 1 + Math.sqrt(2 * (1 + 1 / Math.sqrt(5)))],
      [8, 1 + 1 / Math.sin(Math.PI / 7)],
      [9, 1 + Math.sqrt(2 * (2 + Math.SQRT2))],
      [11, 1 + 1 / Math.sin(Math.PI / 9)],
      [13, 2 + Math.sqrt(5)],
      [18, 1 + Math.SQRT2 + Math.sqrt(6)],
      [19, 1 + Math.SQRT2 + Math.sqrt(6)],
    ]
    for (const [n, radius] of FORMS) expect(PACKED[n - 1]).toBeCloseTo(radius, 6)
  })
  it('agrees with radii found by others, for 1 to 50', () => {
    packings.radii.forEach((radius, i) => {
      expect(PACKED[i]! - radius).toBeLessThan(1e-6)
      expect(radius - PACKED[i]!).toBeLessThan(2e-4)
    })
  })
  it('no entry is smaller than can be (Oler 1961), nor larger than circles laid out like a honeycomb', () => {
    // Points 1 apart in a disc of radius q: at most 2/√3 · area + half of the outline + 1.
    const most = (q: number) => (2 / Math.sqrt(3)) * Math.PI * q * q + Math.PI * q + 1
    const honeycomb = (n: number): number => {
      let best = Number.POSITIVE_INFINITY
      for (let a = 0; a <= 10; a++)
        for (let b = 0; b <= 10; b++) {
          const far: number[] = []
          for (let i = -9; i <= 9; i++)
            for (let j = -9; j <= 9; j++)
              far.push(Math.hypot(2 * i + j - (a / 5 + b / 10), Math.sqrt(3) * (j - b / 10)))
          best = Math.min(best, far.sort((x, y) => x - y)[n - 1]! + 1)
        }
      return best
    }
    PACKED.forEach((radius, i) => {
      expect(i + 1).toBeLessThanOrEqual(most((radius - 1) / 2) + 1e-6)
      if (i % 6 === 0) expect(radius).toBeLessThanOrEqual(honeycomb(i + 1) + 1e-6)
    })
  })
  it('of more than the table has, within 3 % of the area that the best known take', () => {
    // Specht, as for the table.
    for (const [n, radius] of [
      [100, 11.08215],
      [150, 13.460806],
      [200, 15.463275],
      [245, 17.074689],
    ] as const)
      expect(Math.abs(n / densityOf(n) / radius ** 2 - 1)).toBeLessThan(0.035)
  })
  it('two stems need their two thicknesses, whatever these are', () => {
    expect(openingFor([8, 8])).toBeCloseTo(16, 12)
    expect(openingFor([3, 12])).toBeCloseTo(15, 12)
  })
  it('side stems together are as thick as the stem that bore them', () => {
    const spray = { ...BALL, manyHeaded: true, bloomsPerStem: { ...BALL.bloomsPerStem, value: 4 } }
    const of = (piece: Stem['piece'], plant: Plant) =>
      thicknessOf({ ...resolve(design([stem('a', [0, 0, 100], { piece })])).stems[0]!, plant })
    expect(of('whole', spray)).toBe(5)
    expect(of('lateral', spray)).toBe(2.5)
    expect(4 * of('lateral', spray) ** 2).toBeCloseTo(25, 12)
    expect(of('lateral', BALL)).toBe(5)
  })
  it('stems that cross in one place are named, those side by side are not', () => {
    const shares = (...mouths: Stem['mouth'][]) =>
      sharing(resolve(design(mouths.map((mouth, i) => stem(`s${i}`, [0, 0, 100], { mouth })))).stems)
    expect(shares([0, 0], [0, 0], [30, 0])).toEqual([true, true, false])
    expect(shares([0, 0], [5.01, 0], [-3, 4.01])).toEqual([false, false, false])
    expect(shares([0, 0], [4.9, 0], [9.8, 0], [0, 40])).toEqual([true, true, true, false])
    expect(shares()).toEqual([])
  })
  it('finds them as comparing all pairs does', () => {
    const place = fc.tuple(fc.integer({ min: -20, max: 20 }), fc.integer({ min: -20, max: 20 }))
    fc.assert(
      fc.property(fc.array(place, { maxLength: 40 }), (places) => {
        const { stems } = resolve(design(places.map((mouth, i) => stem(`s${i}`, [0, 0, 100], { mouth }))))
        const plain = places.map(([x, y], i) => places.some(([u, v], j) => i !== j && Math.hypot(u - x, v - y) < 5))
        expect(sharing(stems)).toEqual(plain)
      }),
    )
  })
  it('one more stem, or a thicker one, never needs less', () => {
    const some = fc.array(fc.double({ min: 1, max: 20, noNaN: true }), { maxLength: 40 })
    fc.assert(
      fc.property(some, fc.double({ min: 0.1, max: 20, noNaN: true }), (list, more) => {
        const need = openingFor(list)
        expect(openingFor([...list, more])).toBeGreaterThanOrEqual(need - 1e-9)
        expect(openingFor(list.map((d, i) => (i === 0 ? d + more : d)))).toBeGreaterThanOrEqual(need - 1e-9)
        expect(openingFor([...list].reverse())).toBeCloseTo(need, 9)
      }),
      { numRuns: 300 },
    )
  })
  it('never asks for less than the stems’ own area', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 1, max: 20, noNaN: true }), { minLength: 1, maxLength: 60 }), (list) => {
        const own = list.reduce((sum, d) => sum + d * d, 0)
        expect(openingFor(list) ** 2).toBeGreaterThanOrEqual(own - 1e-9)
      }),
    )
  })
  it('a wider neck is less full; a neck under the rim counts', () => {
    expect(openingOf(bowl())).toBeCloseTo(132, 9)
    const necked = bowl({
      profile: [
        [0, 1],
        [0.8, 0.5],
        [1, 1],
      ],
    })
    expect(openingOf(necked)).toBeLessThan(70)
    const crowding = (width: number) => number(inVessel(mound(9), { width, depth: width }), 'crowding')
    expect([120, 140, 200].map(crowding)).toEqual([120, 140, 200].map(crowding).sort((a, b) => b - a))
  })
})

/** Lean in degrees, depth and overhang in mm. */
const LEANT = [
  fc.double({ min: 0.5, max: 60, noNaN: true }),
  fc.double({ min: 20, max: 300, noNaN: true }),
  fc.double({ min: 0, max: 200, noNaN: true }),
] as const
const sinCosTan = (degrees: number): [s: number, c: number, t: number] => {
  const a = (degrees * Math.PI) / 180
  return [Math.sin(a), Math.cos(a), Math.tan(a)]
}

describe('a rod on an edge, worked out by hand', () => {
  const CORNER = { floor: true, wall: true }
  it('against the far wall: its end lifts at overhang = depth / tan(lean)', () => {
    // Lean 45°, depth 100: the limit is an overhang of 100.
    expect(propped(45, 100, 99.9, CORNER)).toBeNull()
    expect(propped(45, 100, 100.1, CORNER)).toBe('lifts')
    // A straight rod: overhang = L sin θ, depth = b cos θ, so that tan² θ = b / L is the limit.
    const at = (degrees: number, b: number, l: number) => {
      const a = (degrees * Math.PI) / 180
      return propped(degrees, b * Math.cos(a), l * Math.sin(a), CORNER)
    }
    const limit = (Math.atan(Math.sqrt(84 / 100)) * 180) / Math.PI
    expect(at(limit - 0.1, 84, 100)).toBeNull()
    expect(at(limit + 0.1, 84, 100)).toBe('lifts')
  })
  it('on the floor alone it is friction: forces and moments add up to nothing', () => {
    fc.assert(
      fc.property(...LEANT, (lean, depth, over) => {
        // Solved apart, by elimination: edge force F square to the rod, floor force R, friction f; weight 1.
        const [s, c, t] = sinCosTan(lean)
        // F c = f;  F s + R = 1;  f depth = over + R depth t
        const F = (over + depth * t) / (c * depth + s * depth * t)
        const [f, R] = [F * c, 1 - F * s]
        expect(f * depth).toBeCloseTo(over + R * depth * t, 6)
        const found = propped(lean, depth, over, { floor: true, wall: false })
        if (Math.abs(Math.abs(f) - 0.3 * R) < 1e-6) return
        expect(found === null).toBe(R > 0 && Math.abs(f) <= 0.3 * R)
      }),
      { numRuns: 500 },
    )
  })
  it('against the far wall above the floor it is friction that holds it up', () => {
    fc.assert(
      fc.property(...LEANT, (lean, depth, over) => {
        // Moments about the end: edge force F at (depth tan, depth), weight 1 at (over + depth tan).
        const [s, c, t] = sinCosTan(lean)
        const F = ((over + depth * t) * c) / depth
        const [N, up] = [F * c, 1 - F * s]
        if (Math.abs(up - 0.3 * N) < 1e-6 || Math.abs(up) < 1e-6) return
        const why = up < 0 ? 'lifts' : up > 0.3 * N ? 'slides' : null
        expect(propped(lean, depth, over, { floor: false, wall: true })).toBe(why)
      }),
      { numRuns: 500 },
    )
  })
  it('one that leans little and hangs over little slides down, one that hangs out far does not', () => {
    const at = (over: number) => propped(30, 90, over, { floor: false, wall: true })
    expect([at(20), at(140), at(160)]).toEqual(['slides', null, 'lifts'])
  })
})
