import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Arrangement, FORMS, type Stem } from '../../../src/arrangement/index.ts'
import { createEngine, type ReadingResult, readAll } from '../../../src/readings/index.ts'
import { sketched } from './generated.ts'
import { ballStandins, bowl, design, mound, resolve, stem } from './made.ts'

const engine = createEngine(ballStandins)
const GREENS: Partial<Stem> = { plant: 'green', role: 'greens', colour: '#55703f' }
const focal = (over: Partial<Stem> = {}): Stem =>
  stem('f', [0, -60, 110], { role: 'focal', colour: '#7b1734', head: 80, ...over })

/** Nothing in what a reading says is a number that is none; a score, or a reason why there is none. */
const sound = (r: ReadingResult): void => {
  const text = JSON.stringify(r, (_, v) => {
    if (typeof v === 'number') expect(Number.isFinite(v), r.id).toBe(true)
    return v
  })
  expect(text).not.toMatch(/NaN|Infinity|undefined/)
  expect(r.score === null).toBe(r.notApplicable !== '')
  expect(r.score === null || (r.score >= 0 && r.score <= 100)).toBe(true)
  expect(r.marks.length).toBeLessThanOrEqual(3)
  expect(r.advice.length).toBeLessThanOrEqual(3)
}
const read = (d: Arrangement, advice = true): Record<string, ReadingResult> => {
  const all = readAll(resolve(d), { engine, advice })
  all.forEach(sound)
  return Object.fromEntries(all.map((r) => [r.id, r]))
}
const scores = (d: Arrangement): (number | null)[] => Object.values(read(d)).map((r) => r.score)

describe('what is seldom drawn', () => {
  it('no stems: nothing applies but how the vessel stands, and each reading says so', () => {
    for (const r of Object.values(read(design([]))))
      if (r.id === 'stability') expect(r.score).not.toBeNull()
      else expect(r.notApplicable).toContain('no stems')
  })
  it('one focal stem leads by itself and has a height', () => {
    const r = read(design([focal()]))
    expect(r['focal-prominence']!.values.focalRank).toBe(1)
    expect(r.proportion!.score).not.toBeNull()
    expect(r['palette-harmony']!.notApplicable).toContain('Single colour')
  })
  it('greens alone have no focal flower and no flower colours, but air and height', () => {
    const r = read(design(mound(8, () => GREENS)))
    expect([r['focal-prominence']!.score, r['palette-harmony']!.score]).toEqual([null, null])
    expect(r['negative-space']!.score).not.toBeNull()
    expect(r.proportion!.score).not.toBeNull()
  })
  it('focal flowers alone lead, whatever their number', () => {
    const r = read(design(mound(9, () => ({ role: 'focal' }))))['focal-prominence']!
    expect([r.values.focalRank, r.values.focalLead]).toEqual([1, 10])
  })
  it('all stems in one point are read as one', () => {
    const heap = Array.from({ length: 12 }, (_, i) => stem(`h${i}`, [0, 0, 100], { role: i === 0 ? 'focal' : 'mass' }))
    const r = read(design(heap))
    expect(r['negative-space']!.values.voidFraction).toBeLessThan(0.02)
    expect(r['negative-space']!.values.largestHole_mm).toBe(0)
  })
  it('a stem at the very crossing of axis and mouth', () => {
    read(design([stem('a', [0, 0, 0]), focal({ tip: [0, 0, 0.001] })]))
  })
  it('stems far outside the vessel, below the rim and beneath the table', () => {
    const far = [
      stem('a', [900, 0, 40]),
      stem('b', [-900, 500, 80]),
      stem('c', [300, 0, -300]),
      focal({ tip: [0, -800, -60] }),
    ]
    expect(read(design(far)).proportion!.values.spreadRatio).toBeGreaterThan(3)
    const below = read(design([stem('a', [200, 0, -150]), stem('b', [-200, 0, -150])]))
    expect(below.proportion!.notApplicable).toContain('over the rim')
    expect(below['negative-space']!.notApplicable).toContain('over the rim')
  })
  it('a vessel wider than the table: what it takes of the table is said as it is', () => {
    const setting = { ...design([]).setting, table: { shape: 'round' as const, diameter: 300 } }
    const wide = mound(10, (i) => ({ tip: [i % 2 ? 400 : -400, 0, 150] }))
    const r = read(design(wide, { vessel: bowl({ width: 600, depth: 600 }), setting }))
    expect(r.proportion!.values.tableShare).toBeGreaterThan(1)
  })
  it('of a vessel wider than its table it says so, and nothing else: not that it stands, nor that it is narrow', () => {
    const on = (table: Arrangement['setting']['table'], over: Partial<Arrangement['vessel']> = {}) =>
      read(
        design(mound(8), {
          form: 'low',
          vessel: bowl({ plan: 'oval', width: 1000, depth: 450, height: 120, ...over }),
          setting: { ...design([]).setting, table },
        }),
      )
    const small = on({ shape: 'rectangular', length: 900, width: 500 })
    for (const id of ['stability', 'proportion', 'sight-line']) {
      expect(small[id]!.notApplicable, id).toBe('The vessel is wider than the table: choose another vessel or table.')
      expect([small[id]!.score, small[id]!.advice], id).toEqual([null, []])
    }
    expect(small.stability!.values.mass_g).toBeGreaterThan(1000)
    expect(small.proportion!.values.spreadRatio).toBeGreaterThan(0)
    const stands = (...of: Parameters<typeof on>) => on(...of).stability!.score !== null
    // Long side along the long side; of a rectangle on a round table the corners count: 600 × 450 is 750 across them.
    expect(stands({ shape: 'rectangular', length: 500, width: 1000 })).toBe(true)
    const box = { plan: 'rectangular', width: 600 } as const
    expect(stands({ shape: 'round', diameter: 745 }, box)).toBe(false)
    expect(stands({ shape: 'round', diameter: 755 }, box)).toBe(true)
    // A jar is as wide as its belly.
    const jar = {
      plan: 'round',
      width: 200,
      depth: 200,
      profile: [
        [0, 1],
        [0.5, 2],
        [1, 1],
      ],
    } as Partial<Arrangement['vessel']>
    expect(stands({ shape: 'round', diameter: 390 }, jar)).toBe(false)
    expect(stands({ shape: 'round', diameter: 410 }, jar)).toBe(true)
  })
  it('a head larger than everything else, and one too small to see', () => {
    read(design([focal({ head: 900 }), ...mound(5)]))
    const speck = read(design([focal({ head: 0.05 }), ...mound(5)]))['focal-prominence']!
    expect(speck.score!).toBeLessThan(20)
  })
  it('five hundred stems', () => {
    const many = mound(500, (i) => ({
      head: 20 + (i % 4) * 5,
      ...(i % 3 === 1 ? GREENS : {}),
      ...(i < 3 ? { role: 'focal' } : {}),
    }))
    expect(scores(design(many)).filter((s) => s !== null).length).toBeGreaterThanOrEqual(3)
  })
  it('any sketch, with advice and marks', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 100000 }),
        fc.constantFrom(...FORMS),
        fc.constantFrom('round', 'oval', 'rectangular'),
        fc.double({ min: 0.01, max: 30, noNaN: true }),
        (seed, form, plan, k) => {
          const d = sketched(seed)
          const stems = d.stems.map((s): Stem => ({ ...s, tip: [s.tip[0] * k, s.tip[1] * k, s.tip[2] * (1 - k / 8)] }))
          read({ ...d, form, stems, vessel: { ...d.vessel, plan: plan as 'oval', depth: 110 } })
        },
      ),
      { numRuns: 12 },
    )
  })
})

describe('what is said of colours', () => {
  it('runs from vivid, low, to quiet, high, and is called advice', () => {
    const d = (a: string, b: string) => read(design(mound(8, (i) => ({ colour: i % 2 ? a : b }))))['palette-harmony']!
    const [quiet, vivid] = [d('#f3e3d8', '#f0d3cf'), d('#d01818', '#2030c0')]
    expect(quiet.score!).toBeGreaterThan(vivid.score!)
    for (const { because } of [quiet, vivid]) {
      expect(because!.main.scale[0]).toBeLessThan(because!.main.scale[1])
      expect(because!.main.band).toBeNull()
      expect(because!.trust).toMatch(/advice, never a verdict/i)
    }
    expect(quiet.because!.main.value).toBeGreaterThan(vivid.because!.main.value)
  })
})
