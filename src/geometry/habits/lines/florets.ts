import { addTube, type Builder } from '../builder.ts'
import { addFloret } from '../heads/floret.ts'
import { addBallAt, addStamen } from '../heads/parts.ts'
import { addPetal, type PetalForm } from '../petal.ts'
import { at, type Frame, frameIn, lerp, type Random, TAU } from '../vector.ts'

/** `fresh`: 1 has just opened, 0 has long been open. */
type Floret = (b: Builder, f: Frame, size: number, petals: number, random: Random, i: number, fresh: number) => void

const whorl = (b: Builder, f: Frame, n: number, form: Omit<PetalForm, 'turn'>, phase: number): void => {
  for (let q = 0; q < n; q++) addPetal(b, f, { ...form, turn: (q * TAU) / n + phase }, 'petal')
}

/** The florets of spikes, each facing f.w with f.v about upward; size is their width. */
export const FLORETS: Record<string, Floret> = {
  open: (b, f, s, petals, _, i) => {
    whorl(
      b,
      f,
      petals,
      { out: s * 0.05, length: s * 0.56, width: s * 0.52, base: 40, tip: 88, hollow: s * 0.8, nu: 3, nv: 2 },
      0.3,
    )
    if (i % (s < 12 ? 5 : 2) === 0) {
      for (const q of [-0.14, 0.14]) addStamen(b, f, [0, 0, 0], [q * s, 0, s * 0.5], s * 0.05, 'pollen')
    }
  },
  // Delphinium: five broad sepals and a small pale or dark bee in the middle.
  bee: (b, f, s, petals, random) => {
    whorl(
      b,
      f,
      petals,
      { out: s * 0.04, length: s * 0.5, width: s * 0.5, base: 55, tip: 92, hollow: s * 0.7, nu: 5, nv: 4 },
      random(),
    )
    for (let q = 0; q < 3; q++) {
      addPetal(
        b,
        f,
        { turn: q * 2.1, length: s * 0.25, width: s * 0.2, base: 5, tip: 60, up: s * 0.05, nu: 3, nv: 2 },
        'petal-second',
      )
    }
  },
  // Stock: a small loose rose of wavy petals.
  double: (b, f, s, petals, random) => {
    const wave = { ruffle: s * 0.05, waves: 5, phase: random() * 6 }
    whorl(
      b,
      f,
      petals,
      { out: s * 0.04, length: s * 0.54, width: s * 0.5, base: 50, tip: 104, hollow: s * 0.6, nu: 4, nv: 3, ...wave },
      random() * 6,
    )
    whorl(
      b,
      f,
      4,
      { up: s * 0.05, length: s * 0.36, width: s * 0.36, base: 15, tip: 66, hollow: s * 0.3, nu: 3, nv: 2, ...wave },
      random() * 6,
    )
  },
  // Larkspur: five narrow sepals on a long spur.
  spur: (b, f, s, petals, random) => {
    whorl(
      b,
      f,
      petals,
      {
        out: s * 0.06,
        length: s * 0.5,
        width: s * 0.36,
        base: 40,
        tip: 80,
        hollow: s * 0.5,
        outline: 'egg',
        nu: 4,
        nv: 3,
      },
      random(),
    )
    addTube(
      b,
      [at(f, 0, 0, s * 0.06), at(f, 0, s * 0.2, -s * 0.34), at(f, 0, s * 0.5, -s * 0.5)],
      s * 0.09,
      s * 0.03,
      'petal',
      4,
    )
  },
  // Tuberose: a long bowed waxy tube with six pointed lobes.
  wax: (b, f, s, _, random) => {
    addTube(
      b,
      [at(f, 0, -s * 0.3, -s * 0.72), at(f, 0, -s * 0.06, -s * 0.36), at(f, 0, 0, 0)],
      s * 0.07,
      s * 0.13,
      'petal-second',
      5,
    )
    whorl(
      b,
      f,
      6,
      {
        out: s * 0.1,
        length: s * 0.48,
        width: s * 0.27,
        base: 50,
        tip: 100,
        hollow: s * 0.5,
        outline: 'egg',
        nu: 4,
        nv: 3,
      },
      random(),
    )
  },
  // Gladiolus and its like: six broad ruffled tepals in a wide funnel.
  trumpet: (b, f, s, _, random, __, fresh) => {
    for (let row = 1; row >= 0; row--) {
      for (let q = 0; q < 3; q++) {
        addPetal(
          b,
          f,
          {
            turn: ((2 * q + row) / 6) * TAU,
            out: s * 0.04,
            up: -s * 0.3,
            length: s * 0.82,
            width: s * (row ? 0.56 : 0.66),
            base: 12,
            tip: lerp(108, 10, fresh),
            late: 1.2,
            hollow: s * 0.5,
            ruffle: s * 0.05,
            waves: 7,
            phase: random() * 6,
            nu: 6,
            nv: 5,
          },
          'petal',
        )
      }
    }
    for (const q of [-0.08, 0, 0.08]) addStamen(b, f, [0, 0, -s * 0.2], [q * s, s * 0.1, s * 0.25], s * 0.04, 'pollen')
  },
  // Snapdragon: a tube with two lips, two lobes up, three down, the mouth closed by a swollen palate.
  snap: (b, f, s) => {
    addTube(b, [at(f, 0, 0, -s * 0.5), at(f, 0, 0, s * 0.05)], s * 0.12, s * 0.2, 'petal', 5)
    const lobe = { out: s * 0.12, hollow: s * 0.45, nu: 4, nv: 3 }
    for (const q of [0.42, -0.42])
      addPetal(b, f, { ...lobe, turn: Math.PI / 2 + q, length: s * 0.6, width: s * 0.54, base: 4, tip: 92 }, 'petal')
    for (const q of [-0.82, 0, 0.82])
      addPetal(
        b,
        f,
        { ...lobe, turn: -Math.PI / 2 + q, length: s * 0.56, width: s * 0.46, base: 36, tip: 165 },
        'petal',
      )
    addBallAt(b, f, [0, -s * 0.1, s * 0.16], s * 0.19, s * 0.13, 'pollen')
  },
  // Liatris: a tuft of threads.
  thread: (b, f, s, _, random) => {
    for (let q = 0; q < 9; q++) {
      const a = (q / 9) * TAU + random()
      const k = 0.2 + 0.5 * random()
      const end = at(f, s * k * Math.cos(a), s * k * Math.sin(a), s * (0.5 + 0.35 * random()))
      addTube(b, [at(f, 0, 0, 0), end], s * 0.06, s * 0.035, q % 3 ? 'petal' : 'petal-second', 3)
    }
  },
  // Bells of Ireland: a wide green shell, a little white flower deep in it.
  bell: (b, f, s, _, random) => {
    whorl(
      b,
      f,
      5,
      {
        out: s * 0.06,
        up: -s * 0.2,
        length: s * 0.7,
        width: s * 0.44,
        base: 30,
        tip: 40,
        hollow: s * 0.32,
        nu: 5,
        nv: 3,
      },
      random(),
    )
    addFloret(b, frameIn(f, [0, 0, -s * 0.02], [0, 0, 1]), s * 0.15, 4, 0.4, 0.8, 'petal-second')
  },
  // Hyacinth: a waxy tube whose six lobes roll back.
  rolled: (b, f, s, _, random) => {
    addTube(b, [at(f, 0, 0, -s * 0.45), at(f, 0, 0, -s * 0.05)], s * 0.1, s * 0.17, 'petal', 4)
    whorl(
      b,
      f,
      6,
      {
        out: s * 0.13,
        up: -s * 0.1,
        length: s * 0.62,
        width: s * 0.24,
        base: 25,
        tip: 190,
        hollow: -s * 0.3,
        outline: 'ray',
        nu: 4,
        nv: 2,
      },
      random(),
    )
  },
  star: (b, f, s, petals) => addFloret(b, f, s * 0.56, petals, 0.2, 0.74, 'petal', 'petal-second'),
}
