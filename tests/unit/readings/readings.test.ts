import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Arrangement, applyEdit, FORMS, type Stem } from '../../../src/arrangement/index.ts'
import { createEngine, type ReadingResult, readAll } from '../../../src/readings/index.ts'
import { ballStandins, bowl, design, mound, resolve, stem } from './made.ts'

const engine = createEngine(ballStandins)
const read = (d: Arrangement, advice = false): Record<string, ReadingResult> =>
  Object.fromEntries(readAll(resolve(d), { engine, advice }).map((r) => [r.id, r]))
const value = (d: Arrangement, id: string, key: string): number => read(d)[id]!.values[key] as number
const prominence = (d: Arrangement, key: string): number => value(d, 'focal-prominence', key)

const ring = (n: number, radius: number, head: number): Stem[] =>
  Array.from({ length: n }, (_, i) => {
    const a = (i * 2 * Math.PI) / n
    return stem(`r${i}`, [radius * Math.cos(a), 0, 200 + radius * Math.sin(a)], { head })
  })
const GREENS: Partial<Stem> = { plant: 'green', role: 'greens', colour: '#55703f' }
const burgundy = (over: Partial<Stem> = {}): Stem =>
  stem('f', [0, -60, 120], { role: 'focal', colour: '#7b1734', head: 80, ...over })
const blush = mound(16, (i) => ({ colour: '#f0d3cf', head: 44, ...(i % 3 === 1 ? GREENS : {}) }))

describe('what leads the eye', () => {
  it('a burgundy rose among blush leads', () => {
    const d = design([burgundy(), ...blush])
    expect(prominence(d, 'focalRank')).toBe(1)
  })
  it('a rose buried behind greens loses its lead', () => {
    const before = design([burgundy(), ...blush])
    const wall = Array.from({ length: 14 }, (_, i) => {
      const a = (i * 2 * Math.PI) / 14
      return stem(`g${i}`, [62 * Math.cos(a), -60 + 62 * Math.sin(a), 120], { ...GREENS, head: 90 })
    })
    const after = design([burgundy(), ...blush, ...wall])
    expect(prominence(after, 'focalVisible')).toBeLessThan(prominence(before, 'focalVisible') - 0.3)
    expect(prominence(after, 'focalShare')).toBeLessThan(prominence(before, 'focalShare'))
    expect(prominence(after, 'focalRank')).toBeGreaterThan(1)
  })
  it('a smaller or a paler focal bloom holds less of the eye', () => {
    const share = (over: Partial<Stem>): number => prominence(design([burgundy(over), ...blush]), 'focalShare')
    const sizes = [80, 65, 50, 35].map((head) => share({ head }))
    const colours = ['#7b1734', '#a55a68', '#d0a09f', '#f0d3cf'].map((colour) => share({ colour }))
    for (const run of [sizes, colours]) for (let i = 1; i < run.length; i++) expect(run[i]!).toBeLessThan(run[i - 1]!)
  })
  it('a scarlet vessel draws more than a cream one', () => {
    const withColour = (colour: string): number =>
      prominence(design([burgundy(), ...blush], { vessel: bowl({ colour }) }), 'vesselPull')
    expect(withColour('#d01818')).toBeGreaterThan(2 * withColour('#f5f1e8'))
  })
  it('without a focal stem there is no score, and the reason is given', () => {
    const r = read(design(blush))['focal-prominence']!
    expect([r.score, r.values.focalShare]).toEqual([null, null])
    expect(r.notApplicable).toContain('focal')
  })
})

describe('air and holes', () => {
  it('a single ball has no air in its outline', () => {
    expect(value(design([stem('a', [0, 0, 120])]), 'negative-space', 'voidFraction')).toBeLessThan(0.01)
  })
  it('a ring of flowers has the hole that is left in its middle', () => {
    const d = value(design(ring(24, 100, 50)), 'negative-space', 'largestHole_mm')
    expect(Math.abs(d - 150)).toBeLessThan(6)
  })
  it('a ring with one flower out is open to the outside, and bare stems do not close it', () => {
    const open = ring(24, 100, 20).filter((_, i) => i !== 6 && i !== 7 && i !== 5)
    expect(value(design(open), 'negative-space', 'largestHole_mm')).toBeLessThan(8)
  })
  it('two balls apart: the outline is two circles, the hull a stadium', () => {
    const d = design([stem('a', [-80, 0, 120]), stem('b', [80, 0, 120])])
    const air = (() => {
      engine.update(resolve(d))
      return engine.air()[0]!
    })()
    const circles = 2 * Math.PI * 30 * 30
    expect(1 - air.massPixels / air.hullPixels).toBeCloseTo(1 - circles / (Math.PI * 900 + 160 * 60), 2)
  })
  it('a mouth with nothing over it shows whole, a large head covers it', () => {
    expect(value(design([]), 'negative-space', 'mouthShowing')).toBe(1)
    expect(value(design([stem('a', [0, 0, 60], { head: 260 })]), 'negative-space', 'mouthShowing')).toBe(0)
  })
  it('an advised move really makes the hole smaller', () => {
    const d = design(ring(20, 110, 55))
    const before = value(d, 'negative-space', 'largestHole_mm')
    const advice = read(d, true)['negative-space']!.advice.find((a) => a.edit && a.text.includes('hole'))!
    expect(advice.stems.length).toBe(1)
    expect(value(applyEdit(d, advice.edit!), 'negative-space', 'largestHole_mm')).toBeLessThan(0.91 * before)
    // And the words say what is measured.
    expect(advice.text).toContain(`instead of ${before.toFixed(0)}`)
  })
})

describe('proportion', () => {
  it('a head whose top is 210 mm over the rim of a bowl 140 wide and 90 high stands at 1.5 times', () => {
    const d = design([stem('a', [0, 0, 180], { head: 60 })])
    expect(value(d, 'proportion', 'heightRatio')).toBeCloseTo(1.5, 3)
    expect(value(d, 'proportion', 'spreadRatio')).toBeCloseTo(60 / 140, 3)
    expect(value(d, 'proportion', 'vesselShare')).toBeCloseTo(90 / 300, 3)
  })
  it('a low design is exempt from the height rule', () => {
    const r = read(design(mound(12), { form: 'low' })).proportion!
    expect(r.because!.main.band).toBeNull()
    expect(r.score).not.toBeNull()
  })
  it('a low design is exempt from the height rule, but not from its ceiling: a wall of flowers is no low piece', () => {
    const trough = { plan: 'rectangular', width: 400, depth: 90, height: 95 } as const
    const wall = (z: number) =>
      read(
        design(
          Array.from({ length: 9 }, (_, i) => stem(`w${i}`, [75 * i - 300, 0, z], { mouth: [35 * i - 140, 0] })),
          { form: 'low', vessel: bowl(trough) },
        ),
        true,
      ).proportion!
    // Heads of 60 mm in a vessel 95 high: the top lies 125 over the tip.
    const low = wall(150)
    expect(low.values.topOverTable_mm).toBeCloseTo(275, 3)
    expect(low.score).toBe(100)
    const high = wall(500)
    expect(high.score).toBeLessThan(10)
    expect(high.because!.others[0]).toMatchObject({ key: 'topOverTable_mm', band: [0, 356] })
    expect(high.marks.at(-1)).toMatchObject({ kind: 'level', z: 356 - 95 })
    expect(high.advice[0]!.text).toMatch(
      /^High for a low piece: it ends 625 mm over the table, wanted at most 356 mm\./,
    )
    // Smooth, and never better for being higher.
    const scores = [220, 231, 240, 260, 280, 300, 330, 370, 400].map((z) => wall(z).score!)
    expect(scores.slice(0, 2)).toEqual([100, 100])
    expect(scores).toEqual(scores.toSorted((a, b) => b - a))
    // Other forms have no such ceiling.
    expect(read(design(mound(9), { form: 'vertical' })).proportion!.because!.others.map((h) => h.key)).not.toContain(
      'topOverTable_mm',
    )
  })
  it('advice on height brings it nearer the band', () => {
    const flat = mound(16, () => ({ head: 60 })).map((s) => ({
      ...s,
      tip: [s.tip[0], s.tip[1], s.tip[2] * 0.5] as Stem['tip'],
    }))
    const d = design([...flat, stem('g', [0, 0, 20], { ...GREENS, head: 160 })])
    const r = read(d, true).proportion!
    const edit = r.advice.find((a) => a.edit)!.edit!
    expect(read(applyEdit(d, edit)).proportion!.score!).toBeGreaterThan(r.score!)
  })
})

describe('colours together', () => {
  it('one flower colour has no score, but its values', () => {
    const r = read(design(mound(5)))['palette-harmony']!
    expect(r.score).toBeNull()
    expect(r.notApplicable).toContain('Single colour')
    expect(r.values.chromaMean).toBeGreaterThan(10)
  })
  it('greens alone are said to be greens alone', () => {
    const r = read(design(mound(5, () => GREENS)))['palette-harmony']!
    expect(r.notApplicable).toContain('Greens alone')
  })
  it('the light of the room changes the flowers, daylight stays beside it', () => {
    const d = design(mound(8, (i) => ({ colour: i % 2 ? '#7b1734' : '#8fa3c9' })))
    const lamp = { ...d, setting: { ...d.setting, light: 'candle' as const } }
    const [day, night] = [read(d)['palette-harmony']!.values, read(lamp)['palette-harmony']!.values]
    expect(night.harmonyDaylight).toBeCloseTo(day.harmonyFlowers as number, 6)
    expect(night.harmonyFlowers).not.toBeCloseTo(day.harmonyFlowers as number, 3)
  })
  it('the linen is told apart: another cloth changes the harmony with it, and no other', () => {
    const d = design([
      ...mound(6, () => ({ colour: '#c9717b', role: 'focal' as const })),
      ...mound(6, () => ({ colour: '#f0e8d6' })).map((s) => ({ ...s, id: `${s.id}b` })),
    ])
    const on = (linen: string) => read(applyEdit(d, { do: 'set-setting', set: { linen } }))['palette-harmony']!.values
    const [pale, dark] = [on('#fbfaf7'), on('#1d2a44')]
    expect(pale.harmonyWithLinen).not.toBeCloseTo(dark.harmonyWithLinen as number, 2)
    for (const key of ['harmony', 'harmonyFlowers', 'harmonyPlants'])
      expect(pale[key]).toBeCloseTo(dark[key] as number, 9)
  })
})

describe('what must make no difference', () => {
  const d = design([burgundy({ tip: [30, -70, 100] }), ...blush, stem('x', [-120, 60, 210], { head: 30 })])
  const numbers = (doc: Arrangement, skip: string[] = []): Record<string, number> =>
    Object.fromEntries(
      Object.values(read(doc)).flatMap((r) =>
        Object.entries({ ...r.values, score: r.score })
          .filter(([k, v]) => typeof v === 'number' && !k.endsWith('_deg') && !skip.includes(k) && !skip.includes(r.id))
          .map(([k, v]) => [`${r.id} ${k}`, v as number]),
      ),
    )
  const near = (a: Record<string, number>, b: Record<string, number>, tolerance: number): void => {
    for (const [k, v] of Object.entries(a))
      expect(Math.abs(v - b[k]!), k).toBeLessThan(tolerance * Math.max(1, Math.abs(v)))
  }
  it('a quarter turn', () => {
    const turned = d.stems.map(
      (s): Stem => ({ ...s, mouth: [-s.mouth[1], s.mouth[0]], tip: [-s.tip[1], s.tip[0], s.tip[2]] }),
    )
    // What is seen from the front is another side then.
    near(numbers(d, ['offsetFront']), numbers({ ...d, stems: turned }), 0.002)
  })
  it('left for right', () => {
    const mirrored = d.stems.map(
      (s): Stem => ({ ...s, mouth: [-s.mouth[0], s.mouth[1]], tip: [-s.tip[0], s.tip[1], s.tip[2]] }),
    )
    const signed = ['offsetFront', 'offsetWorst']
    near(numbers(d, signed), numbers({ ...d, stems: mirrored }), 0.002)
  })
  it('the order of the stems', () => {
    near(numbers(d), numbers({ ...d, stems: d.stems.toReversed() }), 1e-9)
  })
  it('twice the size of everything', () => {
    const big = d.stems.map(
      (s): Stem => ({
        ...s,
        mouth: [2 * s.mouth[0], 2 * s.mouth[1]],
        tip: [2 * s.tip[0], 2 * s.tip[1], 2 * s.tip[2]],
        head: 2 * s.head!,
      }),
    )
    const v = d.vessel
    const vessel = { ...v, width: 2 * v.width, depth: 2 * v.depth, height: 2 * v.height, wall: 2 * v.wall }
    const mm = [
      'topOverTable_mm',
      'largestHole_mm',
      'mouthGap_mm',
      'height_mm',
      'spread_mm',
      'tableShare',
      'sight-line',
      'stability',
      'mechanics',
    ]
    // The way over the rim is given in mm and does not grow with the rest, nor do guests, table and how stout stems are.
    near(numbers(d, mm), numbers({ ...d, vessel, stems: big }, mm), 0.03)
  })
  it('what was read before: a drag gives the same as a fresh look', () => {
    const dragged = createEngine(ballStandins)
    let doc = d
    for (let i = 0; i < 12; i++) {
      const j = i % 5 === 4 ? 3 : 2
      doc = {
        ...doc,
        stems: doc.stems.map((s, k) => (k === j ? { ...s, tip: [s.tip[0] + 7, s.tip[1] - 3, s.tip[2] + 4] } : s)),
      }
      const quick = readAll(resolve(doc), { engine: dragged, advice: false })
      expect(quick).toEqual(readAll(resolve(doc), { engine: createEngine(ballStandins), advice: false }))
    }
  })
  it('looking for advice leaves the engine as it was', () => {
    const before = readAll(resolve(d), { engine, advice: false })
    readAll(resolve(d), { engine, advice: true })
    expect(readAll(resolve({ ...d }), { engine, advice: false })).toEqual(before)
  })
})

describe('any document', () => {
  const mm = (from: number, to: number) => fc.double({ min: from, max: to, noNaN: true })
  const anyStem = fc.record({
    tip: fc.tuple(mm(-400, 400), mm(-400, 400), mm(-300, 600)),
    mouth: fc.tuple(mm(-90, 90), mm(-90, 90)),
    bend: mm(-1, 1),
    head: mm(0.1, 300),
    colour: fc.constantFrom('#000000', '#ffffff', '#7b1734', '#f0d3cf', '#f2c14e'),
    role: fc.constantFrom('focal', 'mass', 'greens', 'line') as fc.Arbitrary<Stem['role']>,
    plant: fc.constantFrom('ball', 'green'),
  })
  it('never gives a NaN, a score beyond 0–100, or a reading without its keys or its reason', () => {
    fc.assert(
      fc.property(
        fc.array(anyStem, { maxLength: 8 }),
        fc.constantFrom(...FORMS),
        fc.constantFrom('round', 'oval', 'rectangular') as fc.Arbitrary<'round'>,
        mm(20, 400),
        (stems, form, plan, height) => {
          const d = design(
            stems.map((s, i) => stem(`s${i}`, s.tip as Stem['tip'], s as Partial<Stem>)),
            { form, vessel: bowl({ plan, height, depth: 100 }) },
          )
          for (const r of readAll(resolve(d), { engine, advice: false })) {
            for (const v of Object.values(r.values)) if (typeof v === 'number') expect(Number.isFinite(v)).toBe(true)
            expect(r.score === null || (r.score >= 0 && r.score <= 100)).toBe(true)
            expect(r.score === null).toBe(r.notApplicable !== '')
            for (const held of r.because ? [r.because.main, ...r.because.others] : [])
              expect(Number.isFinite(held.value) && held.source !== '').toBe(true)
          }
        },
      ),
      { numRuns: 40 },
    )
  })
  it('the readings carry the keys they are known by', () => {
    const keys = {
      'focal-prominence': ['focalShare', 'focalVisible', 'focalRank', 'vesselRank'],
      'negative-space': ['voidFraction', 'largestHole_mm', 'mouthShowing'],
      'palette-harmony': ['harmony', 'harmonyFlowers', 'lightnessRange', 'chromaMean'],
      proportion: ['heightRatio', 'spreadRatio', 'vesselShare'],
      'visual-balance': ['offsetWorst', 'offsetFront'],
      'sight-line': ['blockedFraction'],
    }
    for (const d of [design([]), design([stem('a', [0, 0, 100])]), design([burgundy(), ...blush])])
      for (const [id, wanted] of Object.entries(keys))
        for (const k of wanted) expect(read(d)[id]!.values).toHaveProperty(k)
  })
})
