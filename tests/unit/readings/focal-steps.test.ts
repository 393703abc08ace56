import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Arrangement, Stem } from '../../../src/arrangement/index.ts'
import { hexOf, labOf } from '../../../src/colour/index.ts'
import { leadWords, measureProminence, readProminence } from '../../../src/readings/focal-prominence.ts'
import { createEngine } from '../../../src/readings/index.ts'
import { sketched } from './generated.ts'
import { ballStandins, resolve, stem } from './made.ts'

const engine = createEngine(ballStandins)
const measured = (d: Arrangement) => {
  engine.update(resolve(d))
  const p = measureProminence(engine)
  return { share: p.focalShare!, visible: p.focalVisible!, score: readProminence(engine).score! }
}
type Run = ReturnType<typeof measured>[]
const STEPS = [0, 1, 2, 3, 4, 5, 6].map((i) => i / 6)
const isFocal = (s: Stem): boolean => s.role === 'focal'
const eachFocal = (d: Arrangement, change: (s: Stem) => Partial<Stem>): Arrangement => ({
  ...d,
  stems: d.stems.map((s) => (isFocal(s) ? { ...s, ...change(s) } : s)),
})
/** Sketches, mostly poor ones, in which a focal bloom is seen. */
const sketches = fc
  .integer({ min: 1, max: 1000 })
  .map((seed) => sketched(seed))
  .filter((d) => d.stems.some(isFocal) && measured(d).share > 0.02)
const SEEDED = { numRuns: 40, seed: 11 }
/** The picture's scale goes in steps, at which a share may shift by this much. */
const NOISE = 0.007

const falls = (run: Run, key: 'share' | 'visible', points: number): void => {
  run.slice(1).forEach((r, i) => {
    expect(r[key]).toBeLessThanOrEqual(run[i]![key] + NOISE)
    expect(r.score).toBeLessThanOrEqual(run[i]!.score + points)
  })
  expect(run.at(-1)![key]).toBeLessThan(run[0]![key])
}
const mixed = (from: string, to: string, t: number): string => {
  const [a, b] = [labOf(from), labOf(to)]
  return hexOf([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])])
}

describe('what leads, step by step', () => {
  it('a focal bloom that shrinks holds less, step by step, and never scores more', () => {
    fc.assert(
      fc.property(sketches, (d) => {
        const run = STEPS.map((t) => measured(eachFocal(d, (s) => ({ head: s.head! * (1 - 0.75 * t) }))))
        falls(run, 'share', 0.5)
      }),
      SEEDED,
    )
  })
  it('a vivid one that is washed out to the cloth does too', () => {
    fc.assert(
      fc.property(sketches, (d) => {
        const run = STEPS.map((t) => measured(eachFocal(d, () => ({ colour: mixed('#b3125c', d.setting.linen, t) }))))
        falls(run, 'share', 0.5)
      }),
      SEEDED,
    )
  })
  it('and one that is washed out to the leaves', () => {
    fc.assert(
      fc.property(sketches, (d) => {
        const run = STEPS.map((t) => measured(eachFocal(d, () => ({ colour: mixed('#b3125c', '#55703f', t) }))))
        falls(run, 'share', 0.5)
      }),
      SEEDED,
    )
  })
  it('buried behind leaves that grow round it, it shows less and holds less', () => {
    fc.assert(
      fc.property(sketches, (d) => {
        const leaves = (t: number): Stem[] =>
          d.stems.filter(isFocal).flatMap((f) =>
            Array.from({ length: 8 }, (_, k): Stem => {
              const [a, far] = [(k * Math.PI) / 4, 0.62 * f.head!]
              const tip: Stem['tip'] = [f.tip[0] + far * Math.cos(a), f.tip[1] + far * Math.sin(a), f.tip[2]]
              const head = Math.max(1, 0.9 * t * f.head!)
              return stem(`${f.id}-${k}`, tip, { plant: 'green', role: 'greens', colour: '#55703f', head })
            }),
          )
        const run = STEPS.map((t) => measured({ ...d, stems: [...d.stems, ...leaves(t)] }))
        falls(run, 'visible', 100)
        expect(run.at(-1)!.share).toBeLessThan(run[0]!.share)
        expect(run.at(-1)!.score).toBeLessThanOrEqual(run[0]!.score + 1e-9)
      }),
      SEEDED,
    )
  })
  it('each rival of its colour and size takes from it', () => {
    fc.assert(
      fc.property(sketches, (d) => {
        const first = d.stems.find(isFocal)!
        // Apart from one another, or they hide each other.
        const far = Math.max(100, Math.hypot(first.tip[0], first.tip[1]))
        const rivals = Array.from({ length: 6 }, (_, i): Stem => {
          const a = Math.atan2(first.tip[1], first.tip[0]) + 1.2 + i * 2.399963
          return { ...first, id: `rival${i}`, role: 'mass', tip: [far * Math.cos(a), far * Math.sin(a), first.tip[2]] }
        })
        const run = [0, 1, 2, 3, 4, 5, 6].map((n) => measured({ ...d, stems: [...d.stems, ...rivals.slice(0, n)] }))
        for (let i = 1; i < run.length; i++) expect(run[i]!.share).toBeLessThanOrEqual(run[i - 1]!.share + NOISE)
        expect(run.at(-1)!.share).toBeLessThan(0.9 * run[0]!.share)
      }),
      SEEDED,
    )
  })
})

describe('what each factor did', () => {
  it('the factors multiply to what each stem draws, and to the lead', () => {
    fc.assert(
      fc.property(sketches, (d) => {
        engine.update(resolve(d))
        const p = measureProminence(engine)
        for (const x of [...p.stems, p.vessel])
          expect(x.size * x.contrast * x.unlike * x.where * x.weight).toBeCloseTo(x.strength, 6)
        const best = p.stems.find((x) => p.focal.includes(x.place))!
        const rival = p.stems.find((x) => !p.focal.includes(x.place))!
        const said = [...leadWords(best, rival).matchAll(/([\d.]+) ×/g)].reduce(
          (product, m) => product * Number(m[1]),
          1,
        )
        // Said with two digits.
        if (p.focalLead! < 9.9 && p.focalLead! > 0.3) expect(said / p.focalLead!).toBeCloseTo(1, 0)
      }),
      SEEDED,
    )
  })
  it('is said beside the lead, of both stems by name', () => {
    engine.update(resolve(sketched(2)))
    const lead = readProminence(engine).because!.others.find((h) => h.key === 'focalLead')!
    expect(lead.rule).toMatch(/\d+, a \w+, against \d+, a \w+: [\d.]+ × by contrast; .*× by visible size/)
  })
})
