import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Arrangement, applyEdit, type Stem } from '../../../src/arrangement/index.ts'
import { projectPoint } from '../../../src/geometry/index.ts'
import { createEngine, type ReadingResult, readAll } from '../../../src/readings/index.ts'
import { readSpace } from '../../../src/readings/negative-space.ts'
import { numbersFrom, sketched } from './generated.ts'
import { ballStandins, bowl, design, resolve, stem } from './made.ts'

const engine = createEngine(ballStandins)
const reading = (d: Arrangement): ReadingResult => {
  engine.update(resolve(d))
  return readSpace(engine)
}
const advised = (d: Arrangement): ReadingResult =>
  readAll(resolve(d), { engine }).find((r) => r.id === 'negative-space')!
const values = (d: Arrangement) => {
  const { values, score } = reading(d)
  const [air, open, hole, mouth] = ['voidFraction', 'airFraction', 'largestHole_mm', 'mouthShowing'].map(
    (k) => values[k] as number,
  )
  return { air: air!, open: open!, hole: hole!, mouth: mouth!, score: score! }
}

/** A closed wreath of heads, filled with smaller ones that stand out of it on no side; its middle and radius. */
const closed = (seed: number, form: Arrangement['form'] = 'airy') => {
  const next = numbersFrom(seed)
  const radius = 90 + 60 * next()
  const middle = radius + 40
  const wreath = Array.from({ length: 28 }, (_, i) => {
    const a = (i * Math.PI) / 14
    const tip: Stem['tip'] = [radius * Math.cos(a), 0, middle + radius * Math.sin(a)]
    return stem(`w${i}`, tip, { head: 0.5 * radius })
  })
  const within = Array.from({ length: 70 }, (_, i) => {
    const [a, far] = [2 * Math.PI * next(), radius * Math.sqrt(next())]
    const tip: Stem['tip'] = [far * Math.cos(a), 8 * next() - 4, middle + far * Math.sin(a)]
    return stem(`i${i}`, tip, { head: 20 + 16 * next() })
  })
  const vessel = bowl({ mechanics: 'none' })
  return { d: design([...wreath, ...within], { form, vessel }), radius, middle }
}
type Closed = ReturnType<typeof closed>
/** All heads within so much of the wreath's radius are taken out. */
const punched = ({ d, radius, middle }: Closed, share: number): Arrangement => ({
  ...d,
  stems: d.stems.filter((s) => s.id[0] === 'w' || Math.hypot(s.tip[0], s.tip[2] - middle) > share * radius),
})
const STEPS = [0, 1, 2, 3, 4, 5, 6].map((i) => i / 6)
const SEEDED = { numRuns: 40, seed: 7 }
const seeds = fc.integer({ min: 1, max: 1000 })
/** Sketches that stand over the rim. */
const sketches = seeds.map((seed) => sketched(seed)).filter((d) => values(d).air !== null)
const highest = (d: Arrangement): Stem => d.stems.reduce((a, b) => (a.tip[2] > b.tip[2] ? a : b))

describe('air and holes, step by step', () => {
  it('a hole punched wider is never read as smaller, never scores more, and is no air', () => {
    fc.assert(
      fc.property(seeds, fc.constantFrom('round', 'airy', 'triangle') as fc.Arbitrary<'round'>, (seed, form) => {
        const wreath = closed(seed, form)
        const runs = STEPS.map((share) => values(punched(wreath, 0.7 * share)))
        runs.slice(1).forEach((r, i) => {
          expect(r.hole).toBeGreaterThanOrEqual(runs[i]!.hole)
          expect(r.air).toBeGreaterThanOrEqual(runs[i]!.air)
          expect(r.open).toBeLessThanOrEqual(runs[i]!.open + 1e-9)
          expect(r.score).toBeLessThanOrEqual(runs[i]!.score + 1e-9)
        })
        expect(runs.at(-1)!.hole).toBeGreaterThan(runs[0]!.hole + 40)
        if (form === 'round') expect(runs.at(-1)!.score).toBeLessThan(runs[0]!.score - 50)
      }),
      SEEDED,
    )
  })
  it('filled again head by head, the hole and the void only shrink', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const wreath = closed(seed)
        const empty = punched(wreath, 0.7)
        const fill = STEPS.map((_, i): Stem => {
          const [a, far] = [i * 2.4, 0.4 * wreath.radius * Math.sqrt(i / 6)]
          return stem(`f${i}`, [far * Math.cos(a), 0, wreath.middle + far * Math.sin(a)], { head: 30 })
        })
        const runs = [0, 1, 2, 3, 4, 5, 6, 7].map((n) =>
          values({ ...empty, stems: [...empty.stems, ...fill.slice(0, n)] }),
        )
        runs.slice(1).forEach((r, i) => {
          expect(r.hole).toBeLessThanOrEqual(runs[i]!.hole)
          expect(r.air).toBeLessThanOrEqual(runs[i]!.air)
        })
        expect(runs.at(-1)!.hole).toBeLessThan(runs[0]!.hole)
      }),
      SEEDED,
    )
  })
  it('a line raised out of the rest brings air in', () => {
    fc.assert(
      fc.property(sketches, (d) => {
        const top = highest(d).id
        const runs = STEPS.map((t) => values(applyEdit(d, { do: 'shift-stems', ids: [top], by: [0, 0, 240 * t] })))
        // The picture's scale goes in steps: at such a step an edge may shift by half a pixel.
        for (let i = 1; i < runs.length; i++) expect(runs[i]!.air).toBeGreaterThanOrEqual(runs[i - 1]!.air - 0.01)
        expect(runs.at(-1)!.air).toBeGreaterThan(runs[0]!.air)
      }),
      SEEDED,
    )
  })
  it('each green that is taken off the netting bares it, never covers it', () => {
    fc.assert(
      fc.property(sketches, (d) => {
        const greens = d.stems.filter((s) => s.role === 'greens').map((s) => s.id)
        const runs = greens.map((_, n) => values(applyEdit(d, { do: 'remove-stems', ids: greens.slice(0, n) })).mouth)
        runs.slice(1).forEach((mouth, i) => {
          expect(mouth).toBeGreaterThanOrEqual(runs[i]!)
        })
      }),
      SEEDED,
    )
  })
})

describe('a hole that is found', () => {
  const named = (r: ReadingResult, words: string) => r.marks.find((m) => 'label' in m && m.label.startsWith(words))!
  it('is filled by the advised stem, set where the hole is seen, and the hole shrinks', () => {
    let [filled, added] = [0, 0]
    for (let seed = 1; seed <= 12; seed++) {
      const d = punched(closed(seed), 0.6)
      const r = advised(d)
      const hole = r.values.largestHole_mm as number
      for (const { edit, text } of r.advice) {
        if (!edit || !text.includes('into the hole')) continue
        filled += 1
        if (edit.do === 'add-stems') {
          added += 1
          const turn = r.values.holeTurn_deg as number
          const [x, z] = projectPoint(edit.stems[0]!.tip, { turn, pitch: 0 })
          const mark = named(r, 'hole ⌀')
          if (mark.kind !== 'circle') throw new Error('a hole is a circle')
          expect(Math.hypot(x - mark.centre[0], z - mark.centre[1])).toBeLessThan(5)
          expect(text).toMatch(
            /^Set one more like \d+, a \w+, into the hole seen from (the front|the left|the back|the right|\d+° round), \d+ mm over/,
          )
        }
        const after = reading(applyEdit(d, edit))
        expect(after.values.largestHole_mm as number, text).toBeLessThan(0.9 * hole)
        expect(after.score!).toBeGreaterThan(r.score!)
      }
    }
    expect([filled, added >= 6]).toEqual([12, true])
  })
  it('is marked and said as a hole, with its place; air is said as air', () => {
    const d = punched(closed(3, 'round'), 0.6)
    const r = reading(d)
    const mark = named(r, 'hole ⌀')
    if (mark.kind !== 'circle' || mark.view !== 'elevation') throw new Error('a hole is a circle in the elevation')
    expect(mark.turn).toBe(r.values.holeTurn_deg)
    expect(2 * mark.radius).toBeCloseTo(r.values.largestHole_mm as number, 9)
    const rule = r.because!.others.find((h) => h.key === 'largestHole_mm')!.rule
    expect(rule).toContain(`${mark.centre[1].toFixed(0)} mm over the rim`)
    expect(r.because!.main.name).toContain('Air')
    expect(r.because!.main.value).toBeCloseTo(r.values.airFraction as number, 12)
  })
  it('a bare mouth is a hole that shows the mechanics: its widest circle is marked in the plan and covered by the advice', () => {
    // Half of the mouth is under a leaf, the half at the right is bare.
    const half = [-55, -25, 5, 35].map((y, i) =>
      stem(`g${i}`, [-45, y, 25], { plant: 'green', role: 'greens', head: 60 }),
    )
    const d = design([...half, stem('a', [-30, 0, 150], { head: 90 })], { vessel: bowl({ width: 160, depth: 160 }) })
    const r = advised(d)
    const mark = named(r, 'mechanics ⌀')
    if (mark.kind !== 'circle' || mark.view !== 'plan') throw new Error('what is bare is a circle in the plan')
    expect(mark.centre[0]).toBeGreaterThan(10)
    expect(Math.hypot(...mark.centre) + mark.radius).toBeLessThan(76 + 3)
    const advice = r.advice.find((a) => a.text.includes('of the mouth then shows'))!
    expect(reading(applyEdit(d, advice.edit!)).values.mouthShowing as number).toBeLessThan(
      (r.values.mouthShowing as number) - 0.05,
    )
  })
  it('the widest bare circle of an empty mouth is the mouth', () => {
    const r = reading(design([stem('a', [0, 0, 600], { head: 20 })], { vessel: bowl({ width: 160, depth: 160 }) }))
    expect(r.values.mouthGap_mm as number).toBeGreaterThan(152 - 6)
    expect(r.values.mouthGap_mm as number).toBeLessThan(152 + 6)
  })
  it('where nothing has to be hidden a bare mouth is not marked', () => {
    const r = reading(design([stem('a', [0, 0, 300])], { vessel: bowl({ mechanics: 'none' }) }))
    expect(r.marks.some((m) => 'label' in m && m.label.startsWith('mechanics'))).toBe(false)
  })
})
