import type { Point3 } from '../../../src/arrangement/index.ts'
import { type Figure, HABITS, type Habit, type Plant } from '../../../src/catalogue/types.ts'
import type { SolidInput } from '../../../src/geometry/habits/index.ts'
import type { StemCurve } from '../../../src/geometry/types.ts'

const figure = (value: number): Figure => ({ value, range: [value, value], standing: 'ours', source: 'a test' })

/** Habits that end in leaves and do not open. */
export const LEAFY: readonly Habit[] = ['opposite-leaves', 'alternate-leaves', 'broad-leaf', 'fern', 'blade']
/** Habits with one head at the tip. */
export const SINGLE: readonly Habit[] = [
  'rosette',
  'quilled',
  'ray',
  'pincushion',
  'globe',
  'umbel',
  'cup',
  'spathe',
  'dome',
]
export const FLOWERING = HABITS.filter((habit) => !LEAFY.includes(habit))

const LONG: Partial<Record<Habit, number>> = {
  spike: 160,
  plume: 150,
  trailing: 200,
  fern: 260,
  'opposite-leaves': 200,
  'alternate-leaves': 220,
  'broad-leaf': 220,
  blade: 300,
}
const WIDE: Partial<Record<Habit, number>> = { spike: 40, trailing: 32, cloud: 8, 'berry-branch': 14, spray: 35 }

export const plantOf = (habit: Habit, shape: Plant['shape'] = {}): Plant => ({
  id: `a-${habit}`,
  name: habit,
  botanical: '',
  formClass: LEAFY.includes(habit) ? 'foliage' : 'mass',
  formClasses: ['mass'],
  role: 'mass',
  habit,
  shape,
  headClosed_mm: figure((WIDE[habit] ?? 70) / 2),
  headOpen_mm: figure(WIDE[habit] ?? 70),
  headLength_mm: LONG[habit] ? figure(LONG[habit]) : null,
  stem_mm: figure(500),
  stemDiameter_mm: figure(4),
  bloomsPerStem: figure(5),
  manyHeaded: false,
  bunch: null,
  stemMass_g: figure(20),
  colours: [{ name: 'pink', hex: '#d98aa0' }],
  leafColour: '#5d7a4a',
  care: [],
})

/** A stem that ends at the origin: from `below` under the mouth, bending by `lean` (mm, x and y) on its way. */
export const curveOf = (above: number, lean: [number, number] = [0, 0], below = 80): StemCurve => {
  const points: number[] = []
  const put = (s: number): void => {
    const t = s / above
    points.push(-lean[0] * t * t, -lean[1] * t * t, -s)
  }
  for (let i = 0; i < 12; i++) put(above + below * (1 - i / 12))
  for (let i = 0; i <= 24; i++) put(above * (1 - i / 24))
  return {
    points: Float32Array.from(points),
    mouthIndex: 12,
    above_mm: above,
    below_mm: below,
    cut_mm: above + below,
    middle: [0, 0, -above / 2],
  }
}

export const headOf = (plant: Plant, openness: number): number => {
  const open = plant.headOpen_mm.value
  const shut = plant.headClosed_mm?.value ?? open
  return shut + (open - shut) * openness
}

export const inputOf = (plant: Plant, openness = 1, over: Partial<SolidInput> = {}): SolidInput => ({
  plant,
  openness,
  head_mm: headOf(plant, openness),
  seed: 7,
  axis: [0, 0, 1],
  curve: curveOf(Math.max(160, (plant.headLength_mm?.value ?? 0) * 1.15)),
  piece: 'whole',
  ...over,
})

/** A vector turned about z by degrees. */
export const turnZ = (p: Point3, degrees: number): Point3 => {
  const a = (degrees * Math.PI) / 180
  const [c, s] = [Math.cos(a), Math.sin(a)]
  return [p[0] * c - p[1] * s, p[0] * s + p[1] * c, p[2]]
}
