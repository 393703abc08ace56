import type { Tissue } from '../../types.ts'
import { addGrid, type Builder, steps } from '../builder.ts'
import { type HeadMaker, num, word } from '../organs.ts'
import { addPetal, addSpots, type Outline, type PetalForm } from '../petal.ts'
import { about, type Frame, lerp, type Random, randomFrom, TAU } from '../vector.ts'
import { iris } from './iris.ts'
import { addStamen, addTurned } from './parts.ts'

/** What a trumpet flower is made of; lengths over D, angles from closed to open. From plates. */
interface Form {
  length: number
  /** Widths of the three outer and the three inner tepals. */
  outer: number
  inner: number
  open: [closed: number, open: number]
  tube: number
  stamens: number
  late: number
  ruffle: number
  outline: readonly [outer: Outline, inner: Outline]
}
const FLOWERS: Record<string, Form> = {
  lily: {
    length: 0.6,
    outer: 0.23,
    inner: 0.29,
    open: [22, 104],
    tube: 0.1,
    stamens: 6,
    late: 1.5,
    ruffle: 0,
    outline: ['egg', 'egg'],
  },
  oriental: {
    length: 0.72,
    outer: 0.27,
    inner: 0.42,
    open: [40, 205],
    tube: 0.1,
    stamens: 6,
    late: 1.7,
    ruffle: 0.045,
    outline: ['egg', 'egg'],
  },
  amaryllis: {
    length: 0.6,
    outer: 0.38,
    inner: 0.32,
    open: [26, 112],
    tube: 0.16,
    stamens: 6,
    late: 1.3,
    ruffle: 0.02,
    outline: ['point', 'point'],
  },
  daffodil: {
    length: 0.46,
    outer: 0.31,
    inner: 0.25,
    open: [78, 96],
    tube: 0.3,
    stamens: 0,
    late: 1,
    ruffle: 0.012,
    outline: ['egg', 'egg'],
  },
  freesia: {
    length: 0.56,
    outer: 0.37,
    inner: 0.32,
    open: [18, 88],
    tube: 0.45,
    stamens: 3,
    late: 1.3,
    ruffle: 0.012,
    outline: ['round', 'round'],
  },
  alstroemeria: {
    length: 0.6,
    outer: 0.36,
    inner: 0.19,
    open: [24, 82],
    tube: 0.06,
    stamens: 6,
    late: 1.1,
    ruffle: 0.012,
    outline: ['round', 'lance'],
  },
}

/** The corona of a daffodil: a frilled cup. */
const corona: HeadMaker = (b, f, D, { open, shape, random }) => {
  const long = D * num(shape, 'corona', 0.34) * lerp(0.5, 1, open)
  const wide = D * num(shape, 'coronaWidth', 0.17) * lerp(0.35, 1, open)
  const phase = random() * 6
  addGrid(
    b,
    steps(b, 8),
    steps(b, 26, 10),
    (u, v, out) => {
      const a = v * TAU
      const frill = u ** 4 * 0.12 * Math.cos(12 * a + phase)
      const r = wide * (0.5 + 0.22 * u + 0.32 * u ** 4) * (1 + frill)
      const [x, y, z] = [r * Math.cos(a), r * Math.sin(a), long * u * (1 + 0.25 * frill)]
      for (let k = 0; k < 3; k++) out[k] = f.o[k]! + f.u[k]! * x + f.v[k]! * y + f.w[k]! * z
    },
    'petal-second',
    { closed: true },
  )
  for (let i = 0; i < 6; i++) {
    const a = (i / 6) * TAU
    const r = D * 0.025
    addStamen(b, f, [0, 0, 0], [r * Math.cos(a), r * Math.sin(a), long * 0.6], D * 0.014, 'petal-second')
  }
}

/** Places of so many spots, thickest near the base: rows of three and two across the lower part of a tepal. */
const freckles = (count: number, reach: number, random: Random): [number, number][] =>
  Array.from({ length: count }, (_, i) => [
    lerp(0.1, reach, (i + random()) / count),
    0.5 + [-0.2, 0.2, 0, -0.1, 0.1][i % 5]! + 0.08 * (random() - 0.5),
  ])

/**
 * What a tepal bears on its inner face: the rib and spots of an oriental lily, the few spots of an asiatic one, the
 * blotch and whiskers of an alstroemeria's inner tepals, the green star of an amaryllis.
 */
const mark = (b: Builder, f: Frame, form: PetalForm, flower: string, isInner: boolean, random: Random): void => {
  const { length, width } = form
  const over = (share: number, long: number, tissue: Tissue): void => {
    const lifted = { length: length * long, over: length * 0.012, outline: 'lance' as const, ruffle: 0 }
    const tip = form.base + (form.tip - form.base) * long ** (form.late ?? 1)
    addPetal(b, f, { ...form, ...lifted, tip, width: width * share, nu: 6, nv: 2 }, tissue)
  }
  if (flower === 'oriental') {
    over(0.26, 0.86, 'petal-second')
    addSpots(b, f, form, freckles(13, 0.6, random), length * 0.035, length * 0.026, 'disc')
  }
  if (flower === 'lily' && isInner)
    addSpots(b, f, form, freckles(5, 0.34, random), length * 0.026, length * 0.018, 'disc')
  if (flower === 'amaryllis') over(0.3, 0.5, 'green')
  if (flower === 'alstroemeria' && isInner) {
    over(0.9, 0.72, 'petal-second')
    const whiskers = freckles(7, 0.8, random).map(([u, v]): [number, number] => [u, 0.5 + (v - 0.5) * 1.4])
    addSpots(b, f, { ...form, over: length * 0.012 }, whiskers, length * 0.12, length * 0.025, 'disc')
  }
}

/**
 * Six tepals in two whorls on a tube, with stamens; a narrow bud before it opens, reflexed after. It stands on the end
 * of its stem.
 * shape: flower ('lily', 'oriental', 'amaryllis', 'daffodil', 'freesia', 'alstroemeria', 'iris'), corona and coronaWidth (over D).
 */
export const trumpet: HeadMaker = (b, f, D, head) => {
  const { open, shape, random, small } = head
  const flower = word(shape, 'flower', 'lily')
  if (flower === 'iris') return iris(b, f, D, head)
  const form = FLOWERS[flower] ?? FLOWERS.lily!
  const late = lerp(0.6, form.late, open)
  const tube = D * form.tube
  for (let row = 1; row >= 0; row--) {
    for (let i = 0; i < 6; i += 2) {
      const petal: PetalForm = {
        turn: ((i + row) / 6) * TAU + (random() - 0.5) * 0.06,
        out: D * 0.03,
        up: tube,
        length: D * form.length * about(random, 0.03) * lerp(1.25, 1, open),
        width: D * (row ? form.outer : form.inner) * lerp(row ? 1 : 0.8, 1, open),
        base: lerp(flower === 'daffodil' ? 20 : 14, form.open[0], open) + row * 3,
        tip: lerp(-16, form.open[1], open) + row * 5 + (random() - 0.5) * 8,
        late,
        hollow: D * lerp(0.13, 0.4, open),
        ruffle: D * form.ruffle * lerp(0.2, 1, open),
        waves: flower === 'oriental' ? 9 : 5,
        phase: random() * 6,
        fold: -0.08,
        curl: D * 0.02 * open,
        outline: form.outline[row ? 0 : 1],
        nu: small ? 7 : 12,
        nv: small ? 4 : 6,
      }
      addPetal(b, f, petal, 'petal')
      mark(b, f, petal, flower, row === 0, randomFrom(i + row + 1))
    }
  }
  addTurned(
    b,
    f,
    (u) => D * 0.028 + D * 0.03 * u,
    (u) => tube * u + D * 0.02,
    flower === 'freesia' || flower === 'daffodil' ? 'petal' : 'green',
    4,
    7,
  )
  if (flower === 'daffodil')
    corona(b, { ...f, o: [f.o[0] + f.w[0] * tube, f.o[1] + f.w[1] * tube, f.o[2] + f.w[2] * tube] }, D, head)
  const reach = D * (flower === 'amaryllis' ? 0.54 : 0.42)
  for (let i = 0; i < form.stamens; i++) {
    const a = ((i + 0.5) / form.stamens) * TAU
    const r = D * 0.15 * open
    addStamen(b, f, [0, 0, tube], [r * Math.cos(a), r * Math.sin(a), tube + reach], D * 0.022, 'green')
  }
  if (form.stamens > 0) addStamen(b, f, [0, 0, tube], [D * 0.03, 0, tube + reach * 1.15], D * 0.018, 'green')
}
