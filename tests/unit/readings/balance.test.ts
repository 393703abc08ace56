import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Arrangement, applyEdit, type Stem } from '../../../src/arrangement/index.ts'
import { labOf } from '../../../src/colour/index.ts'
import { PART_STRIDE, type ResolvedStem } from '../../../src/geometry/index.ts'
import { createEngine, type Engine, type ReadingResult, readAll } from '../../../src/readings/index.ts'
import { sketched } from './generated.ts'
import { ballStandins, design, mound, resolve, stem } from './made.ts'

const engine = createEngine(ballStandins)
const balance = (d: Arrangement, on: Engine = engine): ReadingResult =>
  readAll(resolve(d), { engine: on, advice: false }).find((r) => r.id === 'visual-balance')!
const value = (d: Arrangement, key: string): number => balance(d).values[key] as number

const DARK = '#4a1020'
const PALE = '#f3e3d8'

describe('a person looks whether it is balanced', () => {
  const half = mound(9, (i) => ({ colour: i % 2 ? DARK : PALE }))
  const mirrored = half.map((s) => ({
    ...s,
    id: `${s.id}m`,
    mouth: [-s.mouth[0], s.mouth[1]] as Stem['mouth'],
    tip: [-s.tip[0], s.tip[1], s.tip[2]] as Stem['tip'],
  }))
  it('an arrangement mirrored about its axis is balanced', () => {
    expect(Math.abs(value(design([...half, ...mirrored]), 'offsetFront'))).toBeLessThan(0.01)
  })
  it('all the dahlias at the left pull it left', () => {
    const left = mound(20).map((s) => ({ ...s, colour: s.tip[0] < -20 ? DARK : PALE }))
    expect(value(design(left), 'offsetFront')).toBeLessThan(-0.1)
    expect(value(design(mound(20)), 'offsetFront')).toBeGreaterThan(-0.05)
  })
  it('three pale flowers balance one dark one of their size', () => {
    const one = stem('d', [-100, 0, 80], { colour: '#301018', head: 40 })
    const pale = [0, 1, 2].map((i) => stem(`p${i}`, [100, 0, 60 + 60 * i], { colour: '#f8f0e8', head: 40 }))
    expect(labOf('#301018')[0]).toBeLessThan(25)
    expect(labOf('#f8f0e8')[0]).toBeGreaterThan(85)
    expect(Math.abs(value(design([one, ...pale]), 'offsetFront'))).toBeLessThan(0.02)
    expect(value(design([one, pale[0]!]), 'offsetFront')).toBeLessThan(-0.3)
  })
  it('large dark heads at the top make it top-heavy, at the rim they do not', () => {
    const heavy = (dark: (z: number) => boolean) =>
      mound(24).map((s) => (dark(s.tip[2]) ? { ...s, colour: DARK, head: 75 } : { ...s, colour: PALE, head: 35 }))
    const [top, low] = [heavy((z) => z > 120), heavy((z) => z < 80)].map((s) => balance(design(s)))
    expect(top!.values.topHeaviness as number).toBeGreaterThan((low!.values.topHeaviness as number) + 0.15)
    expect(top!.values.weightAboveHalf as number).toBeGreaterThan((low!.values.weightAboveHalf as number) + 0.3)
    expect(top!.score!).toBeLessThan(low!.score!)
  })
  it('a crescent may lie to one side where a round design may not', () => {
    const stems = mound(16).map((s) => ({ ...s, colour: s.tip[0] > 20 ? DARK : PALE }))
    const [round, crescent] = (['round', 'crescent'] as const).map((form) => balance(design(stems, { form })).score!)
    expect(crescent!).toBeGreaterThan(round! + 5)
  })
})

/** A ball and nothing else, with no stem under it. */
const bare = createEngine((s: ResolvedStem) => ballStandins(s).slice(0, 14))

describe('worked out by hand', () => {
  it.each([20, 60, 120])('a ball of radius 30 at %d mm lies x ÷ (x + 30) to the right', (x) => {
    const r = balance(design([stem('a', [x, 0, 100])]), bare)
    expect(Math.abs((r.values.offsetFront as number) - x / (x + 30))).toBeLessThan(0.03)
    expect(Math.abs((r.values.offsetPlan as number) - x / (x + 30))).toBeLessThan(0.03)
    expect(Math.abs((r.values.topHeaviness as number) - 100 / 130)).toBeLessThan(0.02)
  })
  it('two balls weigh by area and darkness, whichever is wider', () => {
    const [a, b] = [
      stem('a', [-100, 0, 100], { head: 80, colour: PALE }),
      stem('b', [60, 0, 90], { colour: '#8a5a60' }),
    ]
    const weight = (hex: string): number => 1 + 2 * Math.min(1, Math.max(0, (85 - labOf(hex)[0]) / 60))
    const [p, q] = [40 ** 2 * weight(PALE), 30 ** 2 * weight('#8a5a60')]
    const r = balance(design([a, b]), bare).values.offsetFront as number
    expect(Math.abs(r - (60 * q - 100 * p) / (p + q) / 140)).toBeLessThan(0.02)
  })
})

/** Every ray through a fine grid asked of every ball and stem of the front view, none of the engine's painting used. */
const slowFront = (d: Arrangement, on: Engine): number => {
  on.update(resolve(d))
  const { stems } = on.resolved
  const step = 3
  const tones = stems.map((x) => 1 + 2 * Math.min(1, Math.max(0, (85 - labOf(x.colour)[0]) / 60)))
  let [weight, across, far] = [0, 0, 0]
  const at = (p: Float64Array, o: number, x: number, z: number): number => {
    if (p[o] === 0) {
      // A ball: its radius from its moments.
      const r2 = p[o + 5]!
      const left = r2 - (x - p[o + 2]!) ** 2 - (z - p[o + 4]!) ** 2
      return left < 0 ? Number.NaN : p[o + 3]! - Math.sqrt(left)
    }
    const [vx, vz] = [p[o + 5]! - p[o + 2]!, p[o + 7]! - p[o + 4]!]
    const long = vx * vx + vz * vz
    const t = long > 0 ? Math.min(1, Math.max(0, ((x - p[o + 2]!) * vx + (z - p[o + 4]!) * vz) / long)) : 0
    const left = p[o + 8]! ** 2 - (x - p[o + 2]! - t * vx) ** 2 - (z - p[o + 4]! - t * vz) ** 2
    return left < 0 ? Number.NaN : p[o + 3]! + t * (p[o + 6]! - p[o + 3]!) - Math.sqrt(left)
  }
  for (let z = step / 2; z < 500; z += step)
    for (let x = -400 + step / 2; x < 400; x += step) {
      let [near, w] = [1e9, 0]
      on.ready.forEach(({ parts }, i) => {
        for (let o = 0; o < parts.length; o += PART_STRIDE) {
          const y = at(parts, o, x, z)
          if (!(y < near)) continue
          near = y
          w = parts[o + 1] === 2 ? 0 : tones[i]!
        }
      })
      if (w === 0) continue
      weight += w
      across += w * x
      far = Math.max(far, Math.abs(x))
    }
  return across / weight / far
}

describe('held against a plain way', () => {
  it('ray by ray on sketches, the front is the same', () => {
    for (let seed = 1; seed <= 5; seed++) {
      const d = { ...sketched(seed), form: 'round' as const }
      const slow = slowFront(d, engine)
      expect(Math.abs(value(d, 'offsetFront') - slow), `sketch ${seed}`).toBeLessThan(0.02)
    }
  })
  it('a way round seen from the front after turning is that way before', () => {
    for (const seed of [3, 7, 12]) {
      const d = sketched(seed)
      const worst = balance(d).values
      const turned = applyEdit(d, { do: 'turn-arrangement', degrees: worst.offsetWorstTurn_deg as number })
      expect(Math.abs(value(turned, 'offsetFront') - (worst.offsetWorst as number))).toBeLessThan(0.03)
    }
  })
})

describe('what must not change it, and what must', () => {
  const seeds = fc.integer({ min: 1, max: 50_000 })
  it('a quarter turn leaves the worst way, a mirror turns its sign', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const d = sketched(seed)
        const before = balance(d).values
        const turned = balance(applyEdit(d, { do: 'turn-arrangement', degrees: 90 })).values
        for (const key of ['offsetWorst', 'topHeaviness', 'weightAboveHalf', 'offsetPlan'])
          expect(
            Math.abs(Math.abs(turned[key] as number) - Math.abs(before[key] as number)),
            `${key} of ${seed}`,
          ).toBeLessThan(0.03)
        const mirrored = balance(applyEdit(d, { do: 'mirror-stems', ids: d.stems.map((s) => s.id), turn: 0 })).values
        expect(Math.abs((mirrored.offsetFront as number) + (before.offsetFront as number))).toBeLessThan(0.02)
      }),
      { numRuns: 20 },
    )
  })
  it('neither does the order of the stems, nor the scale', () => {
    fc.assert(
      fc.property(seeds, fc.double({ min: 0.6, max: 1.8, noNaN: true }), (seed, k) => {
        const d = sketched(seed)
        const before = balance(d)
        const back = balance({ ...d, stems: d.stems.toReversed() })
        expect(back.values.offsetFront as number).toBeCloseTo(before.values.offsetFront as number, 9)
        const times = (s: Stem): Stem => ({
          ...s,
          head: s.head! * k,
          tip: s.tip.map((v) => v * k) as Stem['tip'],
          mouth: s.mouth.map((v) => v * k) as Stem['mouth'],
        })
        const v = d.vessel
        const vessel = { ...v, width: v.width * k, depth: v.depth * k, height: v.height * k, wall: v.wall * k }
        const scaled = balance({ ...d, vessel, stems: d.stems.map(times) }).values
        for (const key of ['offsetWorst', 'offsetFront', 'topHeaviness'])
          expect(
            Math.abs(Math.abs(scaled[key] as number) - Math.abs(before.values[key] as number)),
            `${key} of ${seed}`,
          ).toBeLessThan(0.04)
      }),
      { numRuns: 15 },
    )
  })
  it('a stem that goes outward takes the centre with it; raised, it takes it up', () => {
    const d = (x: number, z: number) => design([...mound(12), stem('out', [x, -20, z], { colour: DARK, head: 90 })])
    // Against one reach, which the branch at the left gives.
    const fixed = (x: number) => ({
      ...d(x, 120),
      stems: [...d(x, 120).stems, stem('far', [-320, 0, 60], { head: 20 })],
    })
    const across = [0, 60, 120, 180, 240].map((x) => value(fixed(x), 'offsetFront'))
    expect(across).toEqual(across.toSorted((a, b) => a - b))
    const up = [40, 90, 140].map((z) =>
      value(design([...d(0, z).stems, stem('t', [0, 0, 260], { head: 20 })]), 'topHeaviness'),
    )
    expect(up).toEqual(up.toSorted((a, b) => a - b))
  })
})

describe('advice about the weight', () => {
  it('keeps its promise, and finds one for most lopsided sketches', () => {
    let [lopsided, helped] = [0, 0]
    for (let seed = 1; seed <= 10; seed++) {
      const sketch = sketched(seed)
      const stems = sketch.stems.map((x) => ({ ...x, colour: x.tip[0] > 0 ? DARK : PALE }))
      const d = { ...sketch, form: 'round' as const, stems }
      const r = readAll(resolve(d), { engine }).find((x) => x.id === 'visual-balance')!
      if (r.score === null || r.score > 90) continue
      lopsided += 1
      if (r.advice.some((a) => a.edit)) helped += 1
      for (const { text, edit } of r.advice) {
        const said = /then lies (\d+) %( of the reach to the (left|right))?/.exec(text)
        if (!edit || !said) continue
        const after = value(applyEdit(d, edit), 'offsetWorst')
        expect(Math.abs(100 * after).toFixed(0), text).toBe(said[1])
        if (said[3]) expect(Math.sign(after), text).toBe(said[3] === 'right' ? 1 : -1)
      }
    }
    expect(lopsided).toBeGreaterThan(5)
    expect(helped).toBeGreaterThan(lopsided / 2)
  })
  it('says nothing of sides where the weight is even', () => {
    const r = readAll(resolve(design(mound(60, () => ({ head: 45 })))), { engine }).find(
      (x) => x.id === 'visual-balance',
    )!
    expect(r.advice.filter((a) => a.text.includes('lies 0 %'))).toEqual([])
  })
})

describe('at the edges', () => {
  it('nothing, greens alone, one stem, five hundred', () => {
    expect(balance(design([])).notApplicable).toContain('no stems')
    expect(balance(design([stem('a', [200, 0, -150])])).notApplicable).toContain('over the rim')
    const greens = balance(design(mound(8, () => ({ plant: 'green', role: 'greens', colour: '#55703f' }))))
    expect(greens.score).not.toBeNull()
    expect(balance(design([stem('a', [0, 0, 100])])).values.offsetWorst as number).toBeCloseTo(0, 2)
    expect(Math.abs(value(design(mound(500, () => ({ head: 20 }))), 'offsetWorst'))).toBeLessThan(0.1)
  })
})
