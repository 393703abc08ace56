import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Arrangement, applyEdit, type Stem, type Vessel } from '../../../src/arrangement/index.ts'
import { openingFor, openingOf, PACKED } from '../../../src/readings/crowding.ts'
import { propped } from '../../../src/readings/held-stems.ts'
import { createEngine, type ReadingResult, readAll } from '../../../src/readings/index.ts'
import { sketched } from './generated.ts'
import { ballStandins, bowl, design, mound, resolve, stem } from './made.ts'

const engine = createEngine(ballStandins)
const mechanics = (d: Arrangement, advice = false): ReadingResult =>
  readAll(resolve(d), { engine, advice }).find((r) => r.id === 'mechanics')!
const loose = (d: Arrangement): readonly string[] => mechanics(d).values.unsupported as string[]
const number = (d: Arrangement, key: string): number => mechanics(d).values[key] as number
const inVessel = (stems: Stem[], over: Partial<Vessel>): Arrangement => design(stems, { vessel: bowl(over) })

const BUD: Partial<Vessel> = { width: 40, depth: 40, height: 160, wall: 3, mechanics: 'none' }

describe('a person asks whether the stems stay where they are drawn', () => {
  it('a rose upright in a bud vase stays, one in the middle of an open bowl falls to the rim', () => {
    const rose = [stem('rose', [0, 0, 160])]
    expect(loose(inVessel(rose, BUD))).toEqual([])
    expect(loose(inVessel(rose, { mechanics: 'none' }))).toEqual(['rose'])
    expect(loose(inVessel(rose, { mechanics: 'tape-grid' }))).toEqual([])
    expect(loose(inVessel(rose, { mechanics: 'netting' }))).toEqual([])
  })
  it('netting holds what a grid of tape lets slip', () => {
    const leaning = [stem('a', [60, 0, 120])]
    expect(loose(inVessel(leaning, { mechanics: 'tape-grid' }))).toEqual(['a'])
    expect(loose(inVessel(leaning, { mechanics: 'netting' }))).toEqual([])
  })
  it('the farther over the rim, the sooner even netting lets go', () => {
    const out = (x: number) => loose(inVessel([stem('a', [x, 0, 60], { mouth: [30, 0] })], { mechanics: 'netting' }))
    const gone = [40, 120, 300, 700].map((x) => out(x).length)
    expect(gone).toEqual([...gone].sort())
    expect([gone[0], gone.at(-1)]).toEqual([0, 1])
  })
  it('a pin-holder holds only what ends on its pins', () => {
    const at = (x: number) => loose(inVessel([stem('a', [x, 0, 150], { mouth: [x, 0] })], { mechanics: 'pin-holder' }))
    expect(at(0)).toEqual([])
    expect(at(58)).toEqual(['a'])
  })
  it('a stem that crosses outside the mouth is held by nothing', () => {
    expect(loose(inVessel([stem('a', [90, 0, 120], { mouth: [80, 0] })], { mechanics: 'foam' }))).toEqual(['a'])
  })
  it('in a shallow film of water ends stand dry, and more water reaches them', () => {
    const dry = (waterFill: number) =>
      (
        mechanics(
          inVessel(
            mound(10, () => ({ mouth: [0, 0] })),
            { ...BUD, waterFill },
          ),
        ).values.dryEnds as string[]
      ).length
    const counts = [0.05, 0.3, 0.6, 0.95].map(dry)
    expect(counts).toEqual([...counts].sort((a, b) => b - a))
    expect(counts[0]).toBeGreaterThan(counts.at(-1)!)
    expect(mechanics(inVessel(mound(10), { mechanics: 'foam', waterFill: 0 })).values.dryEnds).toEqual([])
  })
  it('a head that hangs into the water is named', () => {
    const sunk = design([stem('deep', [0, 0, -50], { head: 30 }), stem('fine', [0, 0, 100])])
    expect(mechanics(sunk).values.underWater).toEqual(['deep'])
  })
  it('thirty stems crammed into a bud vase crowd its neck, and it says which to leave out', () => {
    const many = Array.from({ length: 30 }, (_, i) =>
      stem(`s${i}`, [3 * (i % 6) - 8, 3 * Math.floor(i / 6) - 6, 150 + i], { mouth: [2 * (i % 6) - 5, 0] }),
    )
    const reading = mechanics(inVessel(many, BUD), true)
    expect(reading.values.crowding).toBeGreaterThan(0.7)
    const gone = reading.advice.find((a) => a.edit?.do === 'remove-stems')!
    const after = mechanics(applyEdit(inVessel(many, BUD), gone.edit!))
    expect(after.values.crowding).toBeLessThanOrEqual(0.7)
    expect(after.score!).toBeGreaterThan(reading.score!)
  })
  it('stems loose in an open bowl are told to take netting, and then they stay', () => {
    const open = inVessel(mound(12), { mechanics: 'none' })
    const reading = mechanics(open, true)
    expect(reading.advice[0]!.text).toMatch(/netting \(gloves/)
    const netted = applyEdit(open, { do: 'set-vessel', set: { mechanics: 'netting' } })
    expect(loose(open).length).toBe(12)
    expect(loose(netted).length).toBeLessThan(3)
  })
  it('names the sharp wire, the dust and the pins where they are used, and defers to the venue', () => {
    const trust = (mechanics_: Vessel['mechanics']) =>
      mechanics(inVessel(mound(3), { mechanics: mechanics_ })).because!.trust
    expect(trust('netting')).toMatch(/gloves/)
    expect(trust('foam')).toMatch(/dust/)
    expect(trust('pin-holder')).toMatch(/sharp/)
    for (const m of ['netting', 'foam', 'pin-holder', 'tape-grid', 'none'] as const) expect(trust(m)).toMatch(/venue/)
  })
  it('an empty vessel has nothing to hold', () => {
    expect(mechanics(design([])).score).toBeNull()
    expect(mechanics(design([])).values.crowding).toBe(0)
  })
})

describe('a band, just inside and just outside', () => {
  const score = (d: Arrangement): number => mechanics(d).score!
  it('crowding: seven tenths is full marks, more is not', () => {
    // Seven stems of 5 mm need 15 mm; the neck is 15 / √share across.
    const seven = Array.from({ length: 7 }, (_, i) => stem(`s${i}`, [0, 0, 150], { mouth: [0, 0] }))
    const neck = (share: number) => {
      const width = 15 / Math.sqrt(share) + 6
      return inVessel(seven, { ...BUD, width, depth: width, height: 160, mechanics: 'foam' })
    }
    expect(number(neck(0.69), 'crowding')).toBeCloseTo(0.69, 6)
    expect(score(neck(0.69))).toBeCloseTo(100, 6)
    expect(score(neck(0.72))).toBeLessThan(100)
    expect(score(neck(0.72))).toBeGreaterThan(95)
  })
  it('support: one of twenty may be braced, one of ten not', () => {
    const some = (good: number) =>
      inVessel([stem('bad', [0, 0, 150], { mouth: [58, 0] }), ...mound(good, () => ({ mouth: [0, 0] }))], {
        mechanics: 'pin-holder',
      })
    const upright = (good: number) => ({
      ...some(good),
      stems: some(good).stems.map((s, i) => (i > 0 ? { ...s, tip: [0, 0, 100 + i] as Stem['tip'] } : s)),
    })
    expect(loose(upright(19))).toEqual(['bad'])
    expect(score(upright(19))).toBeCloseTo(100, 6)
    expect(score(upright(9))).toBeLessThan(100)
  })
  it('water: every end in it is full marks, an end that is dry is not', () => {
    const dish = (waterFill: number) => inVessel([stem('a', [0, 0, 150])], { mechanics: 'netting', waterFill })
    expect(score(dish(0.3))).toBeCloseTo(100, 6)
    expect(score(dish(0))).toBeLessThan(100)
  })
  it('leaves: none under water is full marks, one head under it is not', () => {
    const hung = (z: number) => inVessel([stem('a', [0, 0, z], { head: 30 }), stem('b', [0, 0, 120])], {})
    expect(score(hung(20))).toBeCloseTo(100, 6)
    expect(score(hung(-50))).toBeLessThan(100)
  })
})

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
  it('as many as fit by the table do fit when they are laid out: rings of seven and of nineteen', () => {
    // Independent of the table: hexagonal rings of unit circles reach 3 and 1 + √2 + √6 is less than the next ring's 5.
    const ring = (k: number): number => 1 + 2 * k
    expect(PACKED[6]).toBeCloseTo(ring(1), 12)
    expect(PACKED[18]!).toBeLessThan(ring(2))
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

describe('a rod on an edge, worked out by hand', () => {
  it('against the far wall: its end lifts at overhang = depth / tan(lean)', () => {
    // Lean 45°, depth 100: the limit is an overhang of 100.
    expect(propped(45, 100, 99.9, true)).toBeNull()
    expect(propped(45, 100, 100.1, true)).toBe('lifts')
    // A straight rod: overhang = L sin θ, depth = b cos θ, so that tan² θ = b / L is the limit.
    const at = (degrees: number, b: number, l: number) => {
      const a = (degrees * Math.PI) / 180
      return propped(degrees, b * Math.cos(a), l * Math.sin(a), true)
    }
    const limit = (Math.atan(Math.sqrt(84 / 100)) * 180) / Math.PI
    expect(at(limit - 0.1, 84, 100)).toBeNull()
    expect(at(limit + 0.1, 84, 100)).toBe('lifts')
  })
  it('on the floor alone it is friction: forces and moments add up to nothing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 60, noNaN: true }),
        fc.double({ min: 20, max: 300, noNaN: true }),
        fc.double({ min: 0, max: 200, noNaN: true }),
        (lean, depth, over) => {
          // Solved apart, by elimination: edge force F square to the rod, floor force R, friction f; weight 1.
          const a = (lean * Math.PI) / 180
          const [s, c, t] = [Math.sin(a), Math.cos(a), Math.tan(a)]
          // F c = f;  F s + R = 1;  f depth = over + R depth t
          const F = (over + depth * t) / (c * depth + s * depth * t)
          const [f, R] = [F * c, 1 - F * s]
          expect(f * depth).toBeCloseTo(over + R * depth * t, 6)
          const found = propped(lean, depth, over, false)
          if (Math.abs(Math.abs(f) - 0.3 * R) < 1e-6) return
          expect(found === null).toBe(R > 0 && Math.abs(f) <= 0.3 * R)
        },
      ),
      { numRuns: 500 },
    )
  })
})

describe('whatever is sketched', () => {
  const VESSELS = ['netting', 'foam', 'pin-holder', 'tape-grid', 'none'] as const
  it('nothing is NaN, and the order of stems, a quarter turn and a mirror change nothing', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.constantFrom(...VESSELS), (seed, held) => {
        const base = sketched(seed)
        const d = {
          ...base,
          vessel: { ...base.vessel, plan: 'round' as const, depth: base.vessel.width, mechanics: held },
        }
        const read = mechanics(d)
        for (const v of Object.values(read.values)) if (typeof v === 'number') expect(Number.isFinite(v)).toBe(true)
        const others = [
          { ...d, stems: [...d.stems].reverse() },
          applyEdit(d, { do: 'turn-arrangement', degrees: 90 }),
          applyEdit(d, { do: 'mirror-stems', ids: d.stems.map((s) => s.id), turn: 0 }),
        ]
        for (const other of others) {
          const after = mechanics(other)
          expect([...(after.values.unsupported as string[])].sort()).toEqual(
            [...(read.values.unsupported as string[])].sort(),
          )
          expect(after.values.crowding).toBeCloseTo(read.values.crowding as number, 9)
          expect(after.score ?? -1).toBeCloseTo(read.score ?? -1, 6)
        }
      }),
      { numRuns: 40 },
    )
  })
})
