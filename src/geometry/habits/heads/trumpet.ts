import { addGrid, steps } from '../builder.ts'
import { type HeadMaker, num, word } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { about, lerp, TAU } from '../vector.ts'
import { addStamen, addTurned } from './parts.ts'

/** Numbers of a flower: tepal length and width over D, angles closed and open, tube length, stamens. From plates. */
const FLOWERS: Record<
  string,
  { length: number; width: number; open: [number, number]; tube: number; stamens: number; late: number }
> = {
  lily: { length: 0.62, width: 0.25, open: [22, 128], tube: 0.1, stamens: 6, late: 1.25 },
  oriental: { length: 0.64, width: 0.33, open: [26, 158], tube: 0.1, stamens: 6, late: 1.1 },
  amaryllis: { length: 0.6, width: 0.34, open: [32, 92], tube: 0.16, stamens: 6, late: 0.9 },
  daffodil: { length: 0.46, width: 0.28, open: [78, 96], tube: 0.3, stamens: 0, late: 1 },
  freesia: { length: 0.56, width: 0.34, open: [18, 88], tube: 0.45, stamens: 3, late: 1.3 },
  alstroemeria: { length: 0.62, width: 0.27, open: [24, 76], tube: 0.06, stamens: 6, late: 1 },
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

/** Iris: three falls that arch out and down, three upright standards, three style arms over the falls. */
const iris: HeadMaker = (b, f, D, { open, random }) => {
  for (let i = 0; i < 3; i++) {
    const turn = (i / 3) * TAU
    const wave = { ruffle: D * 0.02, waves: 6, phase: random() * 6 }
    addPetal(
      b,
      f,
      {
        turn,
        up: -D * 0.3,
        length: D * lerp(0.5, 0.72, open),
        width: D * 0.3,
        base: lerp(2, 18, open),
        tip: lerp(-10, 165, open),
        late: 1.3,
        hollow: D * 0.3,
        outline: 'fan',
        nu: 10,
        nv: 5,
        ...wave,
      },
      'petal',
    )
    addPetal(
      b,
      f,
      {
        turn: turn + TAU / 6,
        up: -D * 0.3,
        length: D * 0.66,
        width: D * 0.24,
        base: lerp(6, 26, open),
        tip: lerp(-6, -14, open),
        hollow: D * 0.2,
        outline: 'egg',
        nu: 8,
        nv: 5,
        ...wave,
      },
      'petal',
    )
    addPetal(
      b,
      f,
      {
        turn,
        up: -D * 0.26,
        length: D * 0.42,
        width: D * 0.12,
        base: lerp(2, 22, open),
        tip: lerp(0, 95, open),
        hollow: -D * 0.08,
        outline: 'strap',
        nu: 6,
        nv: 3,
      },
      'petal-second',
    )
    if (open > 0.3)
      addPetal(
        b,
        f,
        {
          turn,
          out: D * 0.02,
          up: -D * 0.29,
          length: D * 0.42,
          width: D * 0.06,
          base: 16,
          tip: 84,
          late: 1.3,
          outline: 'lance',
          nu: 6,
          nv: 2,
        },
        'pollen',
      )
  }
  addTurned(
    b,
    f,
    (u) => D * (0.03 + 0.03 * u),
    (u) => -D * (0.55 - 0.27 * u),
    'green',
    4,
    7,
  )
}

/**
 * Six tepals in two whorls on a tube, with stamens; a narrow bud before it opens, reflexed after.
 * shape: flower ('lily', 'oriental', 'amaryllis', 'daffodil', 'freesia', 'alstroemeria', 'iris'), corona and coronaWidth (over D).
 */
export const trumpet: HeadMaker = (b, f, D, head) => {
  const { open, shape, random, small } = head
  const flower = word(shape, 'flower', 'lily')
  if (flower === 'iris') return iris(b, f, D, head)
  const form = FLOWERS[flower] ?? FLOWERS.lily!
  const late = lerp(0.6, form.late, open)
  const low = -D * lerp(0.55, 0.12, open)
  for (let row = 1; row >= 0; row--) {
    for (let i = 0; i < 6; i += 2) {
      addPetal(
        b,
        f,
        {
          turn: ((i + row) / 6) * TAU + (random() - 0.5) * 0.06,
          out: D * 0.03,
          up: low,
          length: D * form.length * about(random, 0.03) * lerp(1.25, 1, open),
          width: D * form.width * (row ? 0.8 : 1.1),
          base: lerp(flower === 'daffodil' ? 20 : 14, form.open[0], open) + row * 3,
          tip: lerp(-16, form.open[1], open) + row * 5 + (random() - 0.5) * 8,
          late,
          hollow: D * lerp(0.13, 0.4, open),
          ruffle: D * (flower === 'oriental' ? 0.03 : 0.012),
          waves: 5,
          phase: random() * 6,
          fold: -0.08,
          curl: D * 0.02 * open,
          outline: flower === 'freesia' ? 'round' : 'egg',
          nu: small ? 7 : 12,
          nv: small ? 4 : 6,
        },
        'petal',
      )
    }
  }
  const tube = D * form.tube
  addTurned(
    b,
    f,
    (u) => D * 0.02 + D * 0.035 * u,
    (u) => low - tube * (1 - u) + D * 0.02,
    flower === 'freesia' || flower === 'daffodil' ? 'petal' : 'green',
    4,
    7,
  )
  if (flower === 'daffodil')
    corona(b, { ...f, o: [f.o[0] + f.w[0] * low, f.o[1] + f.w[1] * low, f.o[2] + f.w[2] * low] }, D, head)
  if (open < 0.25) return
  const reach = D * 0.42
  for (let i = 0; i < form.stamens; i++) {
    const a = ((i + 0.5) / form.stamens) * TAU
    const r = D * 0.15 * open
    addStamen(b, f, [0, 0, low], [r * Math.cos(a), r * Math.sin(a), low + reach], D * 0.022, 'green')
  }
  if (form.stamens > 0) addStamen(b, f, [0, 0, low], [D * 0.03, 0, low + reach * 1.15], D * 0.018, 'green')
}
