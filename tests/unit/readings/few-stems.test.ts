import { describe, expect, it } from 'vitest'
import type { Arrangement, Stem, Vessel } from '../../../src/arrangement/index.ts'
import { BANDS } from '../../../src/readings/bands.ts'
import { rowForStems } from '../../../src/readings/few-stems.ts'
import { createEngine, type ReadingResult, readAll } from '../../../src/readings/index.ts'
import { ballStandins, bowl, design, resolve, stem } from './made.ts'

const engine = createEngine(ballStandins)
const read = (d: Arrangement, advice = false): Record<string, ReadingResult> =>
  Object.fromEntries(readAll(resolve(d), { engine, advice }).map((r) => [r.id, r]))

/** A bud vase: a mouth of 25 mm over a belly two and a half times as wide. */
const BUD: Partial<Vessel> = {
  width: 25,
  depth: 25,
  height: 150,
  wall: 3,
  mechanics: 'none',
  profile: [
    [0, 1.9],
    [0.25, 2.5],
    [0.58, 1.2],
    [1, 1],
  ],
}
const inBud = (stems: Stem[], over: Partial<Arrangement> = {}): Arrangement =>
  design(stems, { form: 'vertical', vessel: bowl(BUD), ...over })
const tulip = (z: number, head = 60): Stem => stem('tulip', [20, -10, z], { role: 'focal', head })

describe('one or two stems', () => {
  it('one tulip in a bud vase is a classic: no reading finds fault with it', () => {
    const all = read(inBud([tulip(135)]), true)
    for (const r of Object.values(all)) expect(r.score ?? 100, r.id).toBeGreaterThan(90)
    expect(all.proportion!.score).toBe(100)
  })
  it('says what cannot be said of a single stem, and still gives what is measured', () => {
    const all = read(inBud([tulip(135)]), true)
    expect(all['visual-balance']!.notApplicable).toMatch(/nothing to balance it with/)
    expect(all['negative-space']!.notApplicable).toMatch(/from three stems on/)
    for (const [id, key] of [
      ['visual-balance', 'offsetWorst'],
      ['visual-balance', 'topHeaviness'],
      ['negative-space', 'airFraction'],
      ['negative-space', 'mouthShowing'],
    ] as const)
      expect(all[id]!.values[key], key).toEqual(expect.any(Number))
  })
  it('two stems are still few, three are a design', () => {
    const stems = [tulip(160), stem('b', [-15, 5, 190]), stem('c', [5, 15, 120])]
    const scores = (n: number) =>
      ['visual-balance', 'negative-space'].map((id) => read(inBud(stems.slice(0, n)))[id]!.score)
    expect(scores(2)).toEqual([null, null])
    expect(scores(3)).toEqual([expect.any(Number), expect.any(Number)])
  })
  it('a bare mouth full of netting round one stem is still seen', () => {
    const space = read(design([stem('a', [0, 0, 260], { head: 40 })]))['negative-space']!
    expect(space.because!.main.key).toBe('mouthShowing')
    expect(space.score).toBeLessThan(50)
    expect(space.because!.others.find((h) => h.key === 'airFraction')!.band).toBeNull()
  })
  it('what a person wants of balance or air holds for one stem too', () => {
    const own = { bands: { 'visual-balance.topHeaviness': [0, 0.5], 'negative-space.voidFraction': [0, 0.1] } } as const
    const all = read(inBud([tulip(135)], own as unknown as Partial<Arrangement>))
    expect(all['visual-balance']!.score).toBeLessThan(100)
    expect(all['negative-space']!.score).not.toBeNull()
  })
  it('a bloom far too big for its vase, and a stem too short, still cost points', () => {
    expect(read(inBud([tulip(200, 300)])).proportion!.score).toBeLessThan(30)
    expect(read(inBud([tulip(60)])).proportion!.score).toBeLessThan(90)
  })
  it('their bands are the form’s, never narrower, each with a source', () => {
    for (const row of BANDS) {
      const few = rowForStems(row, [1])
      expect(few.band[0]).toBeLessThanOrEqual(row.band[0])
      expect(few.band[1]).toBeGreaterThanOrEqual(row.band[1])
      expect(few.source.length).toBeGreaterThan(3)
      expect(rowForStems(row, [1, 2, 3])).toBe(row)
      expect(rowForStems(row, [])).toBe(row)
    }
  })
  it('the vessel is as wide as its belly; a cylinder and a bowl are as wide as their mouth', () => {
    const stems = [0, 1, 2].map((i) => stem(`s${i}`, [30 * i - 30, 0, 120], { head: 40 }))
    const ratio = (over: Partial<Vessel>) => read(design(stems, { vessel: bowl(over) })).proportion!.values
    // Heads from −50 to 50 mm: 100 mm across, 140 high.
    expect(ratio({ width: 50, depth: 50, height: 150 }).spreadRatio).toBeCloseTo(2, 3)
    const belly: Partial<Vessel> = {
      width: 50,
      depth: 50,
      height: 80,
      profile: [
        [0, 0.8],
        [0.5, 2],
        [1, 1],
      ],
    }
    expect(ratio(belly).spreadRatio).toBeCloseTo(1, 3)
    expect(ratio(belly).heightRatio).toBeCloseTo(1.4, 3)
    const open: Partial<Vessel> = {
      width: 100,
      depth: 80,
      height: 60,
      plan: 'oval',
      profile: [
        [0, 0.5],
        [1, 1],
      ],
    }
    expect(ratio(open).spreadRatio).toBeCloseTo(1, 3)
  })
})
