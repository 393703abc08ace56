import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type Arrangement, applyEdit, type Stem, type Vessel } from '../../../src/arrangement/index.ts'
import { resolveArrangement } from '../../../src/geometry/index.ts'
import { createEngine, type ReadingResult, readAll } from '../../../src/readings/index.ts'

const engine = createEngine()
const read = (d: Arrangement): ReadingResult[] => readAll(resolveArrangement(d), { engine })
const sample = (name: string): Arrangement =>
  JSON.parse(readFileSync(`${import.meta.dirname}/../../../public/samples/${name}.json`, 'utf8'))

type Heads = Pick<Stem, 'plant' | 'role' | 'colour' | 'mouth' | 'tip'>
const heads = (name: string, list: Heads[]): Stem[] =>
  list.map((s, i) => ({ ...s, id: `${name}${i}`, openness: 0.8, bend: 0, piece: 'whole' as const }))
/** n heads of one kind by the golden angle: `at` gives crossing and tip from the angle and the share of the way out. */
const spun = (
  name: string,
  plant: string,
  role: Stem['role'],
  colour: string,
  n: number,
  at: (c: number, s: number, k: number) => Pick<Stem, 'mouth' | 'tip'>,
) =>
  heads(
    name,
    Array.from({ length: n }, (_, i) => {
      const a = i * 2.399963
      return { plant, role, colour, ...at(Math.cos(a), Math.sin(a), Math.sqrt((i + 0.5) / n)) }
    }),
  )
const bowl = (over: Partial<Vessel> = {}): Vessel => ({
  ...sample('window-sill-bowl').vessel,
  width: 140,
  depth: 140,
  height: 84,
  colour: '#f1ece2',
  ...over,
})
const made = (form: Arrangement['form'], vessel: Vessel, stems: Stem[]): Arrangement => ({
  ...sample('window-sill-bowl'),
  title: form,
  form,
  vessel,
  palette: { name: '', slots: [] },
  stems,
})
const tips = (d: Arrangement, to: (tip: Stem['tip']) => Stem['tip']): Arrangement => ({
  ...d,
  stems: d.stems.map((s) => ({ ...s, tip: to(s.tip) })),
})

/** Ten designs, each bad in its own way. */
const BAD: [what: string, make: () => Arrangement][] = [
  ['all leans to one side', () => tips(sample('orchard-supper'), ([x, y, z]) => [x + 90, y, z])],
  ['more than twice too tall', () => tips(sample('window-sill-bowl'), ([x, y, z]) => [x, y, 2.4 * z + 60])],
  ['flat and stubby', () => tips(sample('twenty-four-cups'), ([x, y, z]) => [x, y, 12 + 0.3 * z])],
  [
    'a bud vase over-filled',
    () =>
      made(
        'vertical',
        bowl({ width: 70, depth: 70, height: 200, mechanics: 'none', waterFill: 0.3 }),
        spun('r', 'rose', 'mass', '#d9a0a0', 14, (c, s, k) => ({
          mouth: [18 * k * c, 18 * k * s],
          tip: [110 * k * c, 110 * k * s, 130],
        })),
      ),
  ],
  [
    'a ring with a hole in it',
    () =>
      made('round', bowl(), [
        ...heads('f', [{ plant: 'dahlia', role: 'focal', colour: '#7b1734', mouth: [0, -20], tip: [0, -90, 60] }]),
        ...spun('m', 'rose-spray', 'mass', '#f0d3cf', 12, (c, s) => ({
          mouth: [40 * c, 40 * s],
          tip: [130 * c, 130 * s, 90],
        })),
      ]),
  ],
  [
    'the focal flower buried',
    () =>
      made('round', bowl(), [
        ...heads('f', [{ plant: 'peony', role: 'focal', colour: '#c9717b', mouth: [0, 0], tip: [0, 0, 40] }]),
        ...spun('m', 'hydrangea', 'mass', '#e3b9a4', 16, (c, s, k) => ({
          mouth: [45 * k * c, 45 * k * s],
          tip: [110 * k * c, 110 * k * s, 150 - 70 * k * k],
        })),
      ]),
  ],
  [
    'hides the guests',
    () =>
      made('low', bowl({ height: 150 }), [
        ...heads('f', [{ plant: 'sunflower', role: 'focal', colour: '#e8b020', mouth: [0, -10], tip: [0, -60, 260] }]),
        ...spun('m', 'chrys-disbud', 'mass', '#f2eadb', 14, (c, s, k) => ({
          mouth: [40 * k * c, 40 * k * s],
          tip: [150 * k * c, 150 * k * s, 230 - 60 * k],
        })),
      ]),
  ],
  [
    'one-sided and nearly dry',
    () =>
      made(
        'triangle',
        bowl({
          width: 90,
          depth: 90,
          height: 160,
          waterFill: 0.2,
          profile: [
            [0, 1],
            [1, 1],
          ],
        }),
        [
          ...heads('f', [
            { plant: 'lily-oriental', role: 'focal', colour: '#f2b8c6', mouth: [10, 0], tip: [120, -20, 330] },
          ]),
          ...spun('m', 'snapdragon', 'line', '#a03060', 9, (c, s, k) => ({
            mouth: [20 * k * c, 20 * k * s],
            tip: [120 + 80 * k * c, 80 * k * s, 300],
          })),
        ],
      ),
  ],
  [
    'nothing holds the stems',
    () => ({ ...sample('orchard-supper'), vessel: { ...sample('orchard-supper').vessel, mechanics: 'none' } }),
  ],
  [
    'three stray blooms in greens',
    () =>
      made('cascade', bowl({ width: 120, depth: 120, height: 180, mechanics: 'foam' }), [
        ...heads('b', [
          { plant: 'rose-garden', role: 'focal', colour: '#e8c0a4', mouth: [0, 0], tip: [0, 30, 60] },
          { plant: 'rose-garden', role: 'mass', colour: '#e8c0a4', mouth: [10, 0], tip: [200, 0, 20] },
          { plant: 'rose-garden', role: 'mass', colour: '#e8c0a4', mouth: [-10, 0], tip: [-40, 100, 160] },
        ]),
        ...spun('g', 'salal', 'greens', '#5b7a45', 12, (c, s, k) => ({
          mouth: [40 * k * c, 40 * k * s],
          tip: [140 * c, 140 * s, 30 - 60 * k],
        })),
      ]),
  ],
]
const MOST_STEPS = 10
/** Harmony has no good end, so nobody follows it to be better. */
const judged = (r: ReadingResult): boolean => r.score !== null && r.id !== 'palette-harmony'
const worst = (readings: ReadingResult[]): number => Math.min(...readings.filter(judged).map((r) => r.score!))

describe('a learner who does what the advice says, and nothing else', () => {
  it.each(BAD)('%s: each step is worth what was foretold, and the worst reading ends higher', (_what, make) => {
    let design = make()
    let readings = read(design)
    const before = worst(readings)
    let steps = 0
    for (; steps < MOST_STEPS; steps++) {
      const next = readings
        .filter((r) => judged(r) && r.score! < 95 && r.advice.some((a) => a.edit))
        .sort((a, b) => a.score! - b.score!)[0]
      if (!next) break
      const advice = next.advice.find((a) => a.edit)!
      design = applyEdit(design, advice.edit!)
      const after = read(design)
      for (const { id, score } of after)
        if (score !== null && advice.after!.scores[id] !== undefined)
          expect(score, `${id} after: ${advice.text}`).toBeCloseTo(advice.after!.scores[id]!, 6)
      expect(after.find((r) => r.id === next.id)!.score!).toBeGreaterThan(next.score!)
      for (const { id, score } of readings.filter(judged))
        expect(after.find((r) => r.id === id)!.score!, id).toBeGreaterThanOrEqual(score! - 2)
      readings = after
    }
    expect(steps).toBeGreaterThan(0)
    expect(worst(readings)).toBeGreaterThan(before)
  })
})
