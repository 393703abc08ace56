import type { Arrangement, Stem, Vessel } from '../../../src/arrangement/index.ts'
import type { Figure, Habit, Plant } from '../../../src/catalogue/index.ts'
import { type Resolved, type ResolvedStem, resolveArrangement, STANDIN_STRIDE } from '../../../src/geometry/index.ts'

const figure = (value: number): Figure => ({ value, range: [value, value], standing: 'ours', source: 'for tests' })

const plant = (
  id: string,
  habit: Habit,
  formClass: Plant['formClass'],
  head: number,
  leafColour = '#5d7a4f',
): Plant => ({
  id,
  name: id,
  botanical: id,
  formClass,
  formClasses: [formClass],
  role: formClass === 'foliage' ? 'greens' : 'mass',
  habit,
  shape: {},
  headClosed_mm: null,
  headOpen_mm: figure(head),
  headLength_mm: null,
  stem_mm: figure(500),
  stemDiameter_mm: figure(5),
  bloomsPerStem: figure(1),
  manyHeaded: false,
  bunch: null,
  stemMass_g: figure(30),
  colours: [{ name: 'pink', hex: '#d98a9a' }],
  leafColour,
  care: [],
})

/** Two plants for tests: a ball of a flower and a ball of a leaf. */
export const BALL = plant('ball', 'globe', 'mass', 60)
export const GREEN = plant('green', 'broad-leaf', 'foliage', 60)
export const findMade = (id: string): Plant | undefined => [BALL, GREEN].find((p) => p.id === id)

export const bowl = (over: Partial<Vessel> = {}): Vessel => ({
  plan: 'round',
  width: 140,
  depth: 140,
  height: 90,
  wall: 4,
  material: 'ceramic',
  colour: '#f1ece2',
  mechanics: 'netting',
  waterFill: 0.8,
  ...over,
})

export const stem = (id: string, tip: Stem['tip'], over: Partial<Stem> = {}): Stem => ({
  id,
  plant: 'ball',
  role: 'mass',
  colour: '#d98a9a',
  openness: 1,
  mouth: [0, 0],
  tip,
  bend: 0,
  head: 60,
  piece: 'whole',
  ...over,
})

export const design = (stems: Stem[], over: Partial<Arrangement> = {}): Arrangement => ({
  format: 'pedicel-arrangement',
  version: 1,
  title: 'for tests',
  form: 'round',
  vessel: bowl(),
  palette: { name: 'none', slots: [] },
  stems,
  setting: { copies: 1, light: 'daylight', linen: '#fbfaf7', table: { shape: 'round', diameter: 1524 } },
  ...over,
})

/** Heads over a dome 140 mm in radius, spread evenly. */
export const mound = (n: number, over: (i: number) => Partial<Stem> = () => ({})): Stem[] =>
  Array.from({ length: n }, (_, i) => {
    const [a, k] = [i * 2.399963, Math.sqrt((i + 0.5) / n)]
    const lean = k * 1.35
    const tip: Stem['tip'] = [
      140 * Math.sin(lean) * Math.cos(a),
      140 * Math.sin(lean) * Math.sin(a),
      20 + 140 * Math.cos(lean),
    ]
    return stem(`m${i}`, tip, { mouth: [40 * k * Math.cos(a), 40 * k * Math.sin(a)], ...over(i) })
  })

export const resolve = (document: Arrangement): Resolved => resolveArrangement(document, findMade)

/** A stand-in as plain as can be: a ball for the head (a bloom, or a leaf for greens) and the stem in eight pieces. */
export const ballStandins = (s: ResolvedStem): Float32Array => {
  const r = s.head_mm / 2
  const { points } = s.curve
  const n = points.length
  const out: number[] = [0, s.plant.formClass === 'foliage' ? 1 : 0, 0, 0, 0, r, 0, 0, 0, r, 0, 0, 0, r]
  const steps = n / 3 - 1
  for (let i = 0; i < 8; i++) {
    const at = (k: number): number[] => [0, 1, 2].map((c) => points[3 * k + c]! - points[n - 3 + c]!)
    const [a, b] = [Math.round((i * steps) / 8), Math.round(((i + 1) * steps) / 8)]
    out.push(1, 2, ...at(a), ...at(b), r / 15, 0, 0, 0, 0, 0)
  }
  if (out.length % STANDIN_STRIDE !== 0) throw new Error('a stand-in is not as long as it should be')
  return Float32Array.from(out)
}
