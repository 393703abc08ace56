import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Arrangement, applyEdit, type Vessel } from '../../../src/arrangement/index.ts'
import { createEngine, type ReadingResult, readAll } from '../../../src/readings/index.ts'
import { numbersFrom, sketched } from './generated.ts'
import { ballStandins, bowl, design, mound, resolve, stem } from './made.ts'

const engine = createEngine(ballStandins)
const stability = (d: Arrangement): ReadingResult =>
  readAll(resolve(d), { engine, advice: false }).find((r) => r.id === 'stability')!
const value = (d: Arrangement, key: string): number => stability(d).values[key] as number
const tipping = (d: Arrangement): number => value(d, 'tippingAngle_deg')
const inVessel = (stems: Arrangement['stems'], over: Partial<Vessel>): Arrangement =>
  design(stems, { vessel: bowl(over) })

const bud: Partial<Vessel> = { width: 50, depth: 50, height: 160, wall: 3, mechanics: 'none' }

describe('a person asks whether it will stand', () => {
  it('a head leant far out of a bud vase tips it sooner than one upright', () => {
    const upright = inVessel([stem('a', [0, 0, 200])], bud)
    const leant = inVessel([stem('a', [150, 0, 130])], bud)
    expect(tipping(leant)).toBeLessThan(tipping(upright) - 3)
    expect(value(leant, 'tippingToward_deg')).toBeCloseTo(0, 0)
  })
  it('water low down steadies it', () => {
    const tall = (waterFill: number) => inVessel(mound(8), { ...bud, height: 220, waterFill })
    expect(tipping(tall(0.5))).toBeGreaterThan(tipping(tall(0)))
  })
  it('a wider foot steadies it', () => {
    const on = (foot: number) =>
      inVessel(mound(8), {
        profile: [
          [0, foot],
          [1, 1],
        ],
      })
    expect([0.4, 0.7, 1, 1.3].map((f) => tipping(on(f)))).toEqual(
      [0.4, 0.7, 1, 1.3].map((f) => tipping(on(f))).sort((a, b) => a - b),
    )
    expect(tipping(on(1))).toBeGreaterThan(tipping(on(0.5)) + 5)
  })
  it('soaked foam steadies it more than water that runs', () => {
    const held = (mechanics: Vessel['mechanics']) =>
      inVessel(mound(6), { width: 240, depth: 240, height: 60, mechanics, wall: 3 })
    expect(tipping(held('foam'))).toBeGreaterThan(tipping(held('none')))
  })
  it('water bound in foam does not spill: it is told from a bowl of water just as full, and in words', () => {
    const full = (mechanics: Vessel['mechanics']) => stability(inVessel(mound(6), { mechanics, waterFill: 0.95 }))
    const [foam, open] = [full('foam'), full('netting')]
    expect(open.values.spillAngle_deg as number).toBeLessThan(8)
    expect([foam.values.spillAngle_deg, foam.values.spillToward_deg]).toEqual([null, null])
    expect(foam.score).toBeGreaterThan(open.score! + 5)
    const told = JSON.stringify(foam.because)
    expect(told).toMatch(/foam holds its water, so none is reckoned to run/)
    expect(told).toMatch(/it does not spill\. What stands round or over a smaller block would/)
    expect(told).not.toMatch(/before water spills/)
    expect(JSON.stringify(open.because)).not.toMatch(/foam/)
    expect(full('none').values.spillAngle_deg).toBe(open.values.spillAngle_deg)
  })
  it('one that leans its weight over the edge does not stand at all', () => {
    const heavy = Array.from({ length: 30 }, (_, i) => stem(`s${i}`, [400, i - 15, 100]))
    const d = inVessel(heavy, { ...bud, material: 'resin', waterFill: 0 })
    expect(tipping(d)).toBe(0)
    const told = readAll(resolve(d), { engine }).find((r) => r.id === 'stability')!
    expect(told.marks[0]!.label).toBe('does not stand')
    expect(told.advice[0]!.text).toMatch(/^It does not stand: /)
  })
  it('a vessel without stems still says how it stands; a dry one does not say when it spills', () => {
    expect(stability(design([])).score).not.toBeNull()
    const dry = stability(inVessel([], { waterFill: 0 }))
    expect(dry.values.spillAngle_deg).toBeNull()
    expect(dry.score).not.toBeNull()
  })
})

/** Centre of mass and tilt of a glass cylinder with water and nothing in it, from the formulas of solids. */
describe('worked out by hand', () => {
  it('a glass cylinder of 120 × 200 mm, wall 4, with water to 70 % of its hollow', () => {
    const [R, h, t, fill] = [60, 200, 4, 0.7]
    const [ri, hi] = [R - t, h - t]
    const depth = fill * hi
    const glass = (Math.PI * (R * R * h - ri * ri * hi) * 2500) / 1e6
    const glassZ = ((R * R * h * h) / 2 - ri * ri * hi * (t + hi / 2)) / (R * R * h - ri * ri * hi)
    const water = (Math.PI * ri * ri * depth * 998.2) / 1e6
    const z = (glass * glassZ + water * (t + depth / 2)) / (glass + water)
    const run = (((998.2 * Math.PI * ri ** 4) / 4) * 1e-6) / (glass + water)
    const d = inVessel([], {
      width: 120,
      depth: 120,
      height: h,
      wall: t,
      material: 'glass',
      mechanics: 'none',
      waterFill: fill,
    })
    expect(value(d, 'mass_g')).toBeCloseTo(glass + water, 3)
    expect((stability(d).values.centreOfMass_mm as number[])[2]).toBeCloseTo(z - h, 4)
    expect(tipping(d)).toBeCloseTo((Math.atan(R / (z + run)) * 180) / Math.PI, 4)
  })
  it('a box with water goes over where its moments say, the water’s wedge followed exactly, to a twentieth', () => {
    const [w, deep, h, t, fill] = [90, 300, 160, 4, 0.6]
    const d = inVessel([], {
      plan: 'rectangular',
      width: w,
      depth: deep,
      height: h,
      wall: t,
      mechanics: 'none',
      waterFill: fill,
    })
    const [wi, depth] = [w - 2 * t, fill * (h - t)]
    const values = stability(d).values
    const [mv, mw] = [values.vessel_g as number, values.water_g as number]
    const zAll = (values.centreOfMass_mm as number[])[2]! + h
    const zVessel = (zAll * (mv + mw) - mw * (t + depth / 2)) / mv
    // Moments about the edge, the water's middle shifted by w² tan θ / 12 d and raised by w² tan² θ / 24 d.
    const turns = (tan: number): number => {
      const x = (mw * wi * wi * tan) / (12 * depth) / (mv + mw)
      const z = (mv * zVessel + mw * (t + depth / 2 + (wi * wi * tan * tan) / (24 * depth))) / (mv + mw)
      return (w / 2 - x) / z - tan
    }
    let [low, high] = [0, 5]
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2
      if (turns(middle) > 0) low = middle
      else high = middle
    }
    expect(tipping(d) / ((Math.atan(low) * 180) / Math.PI)).toBeGreaterThan(0.95)
    expect(tipping(d) / ((Math.atan(low) * 180) / Math.PI)).toBeLessThan(1.05)
    expect(value(d, 'tippingToward_deg') % 180).toBeCloseTo(0, 3)
  })
})

describe('what must make no difference', () => {
  const near = (a: number, b: number, by = 0.05) => expect(Math.abs(a - b)).toBeLessThan(by)
  it('turning a round vessel with all that is in it turns the way it goes over, and nothing else', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 0, max: 359 }), (seed, degrees) => {
        const d = { ...sketched(seed), vessel: bowl({ width: 110, depth: 110 }) }
        const turned = applyEdit(d, { do: 'turn-arrangement', degrees })
        near(tipping(turned), tipping(d))
        near(value(turned, 'mass_g'), value(d, 'mass_g'), 1e-3)
      }),
      { numRuns: 20 },
    )
  })
  it('neither does the order of stems, and nothing is ever not a number', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), (seed) => {
        const d = sketched(seed)
        const next = numbersFrom(seed)
        const other = {
          ...d,
          stems: d.stems
            .map((s) => ({ s, k: next() }))
            .sort((a, b) => a.k - b.k)
            .map(({ s }) => s),
        }
        near(tipping(other), tipping(d), 1e-6)
        for (const v of Object.values(stability(d).values).flat()) if (v !== null) expect(Number.isFinite(v)).toBe(true)
      }),
      { numRuns: 20 },
    )
  })
})
