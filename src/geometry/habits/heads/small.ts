import { addDome } from '../builder.ts'
import { type HeadMaker, num } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { lerp, TAU } from '../vector.ts'
import { addFloret } from './floret.ts'
import { addTurned } from './parts.ts'

/** A tiny double flower: a white tuft on a ring of kite petals, seen from any side; gypsophila, misty limonium. */
export const speck: HeadMaker = (b, f, D, { open, random, small }) => {
  if (open < 0.3) {
    addDome(b, f, [0, 0, -D * 0.2], [0, 0, 1], D * 0.4, 'petal', 1.4)
    return
  }
  if (small) {
    // Among hundreds a double one is a white ball.
    addDome(b, f, [0, 0, -D * 0.22], [random() - 0.5, random() - 0.5, 2], D * 0.47, 'petal', 0.95)
    return
  }
  addFloret(b, f, D * 0.5, 5, lerp(0.7, 0.1, open), 1, 'petal')
  addDome(b, f, [0, 0, -D * 0.04], [random() - 0.5, random() - 0.5, 3], D * 0.33, 'petal', lerp(1.2, 0.95, open))
}

/** A berry in its sepals: hypericum; with kind of the plant others. shape: long (height over width). */
export const berry: HeadMaker = (b, f, D, { open, shape }) => {
  const h = (D / 2) * num(shape, 'berryLong', 1.25)
  // Green and small while young, coloured when ripe.
  const ripe = open > 0.15
  addTurned(
    b,
    f,
    (u) => (D / 2) * Math.sin(u * Math.PI) ** 0.8 * (1 - 0.22 * u),
    (u) => -h * Math.cos(u * Math.PI) + h * 0.6,
    ripe ? 'petal' : 'green',
    7,
    9,
  )
  if (num(shape, 'sepals', 5) < 1) return
  for (let i = 0; i < 5; i++) {
    addPetal(
      b,
      f,
      {
        turn: (i * TAU) / 5,
        out: D * 0.12,
        up: -h * 0.42,
        length: D * 0.5,
        width: D * 0.3,
        base: 75,
        tip: lerp(20, 95, open),
        outline: 'egg',
        nu: 4,
        nv: 2,
      },
      'green',
    )
  }
}

/** A sweet pea: a broad notched standard thrown back, two wings spread before it, a keel between them. */
export const pea: HeadMaker = (b, f, D, { open, random }) => {
  const wave = { ruffle: D * 0.03, waves: 6, phase: random() * 6 }
  addPetal(
    b,
    f,
    {
      turn: 0,
      length: D * 0.66,
      width: D * 1.02,
      base: lerp(6, 34, open),
      tip: lerp(10, 128, open),
      late: 0.8,
      hollow: D * lerp(0.22, 1.4, open),
      notch: 0.06,
      ...wave,
      nu: 8,
      nv: 10,
    },
    'petal',
  )
  for (const side of [-1, 1]) {
    addPetal(
      b,
      f,
      {
        turn: side * lerp(2.7, 2.05, open),
        out: D * 0.02,
        length: D * 0.52,
        width: D * 0.42,
        base: lerp(2, 20, open),
        tip: lerp(0, 62, open),
        hollow: D * lerp(0.2, 0.4, open),
        sweep: -side * D * 0.1,
        ...wave,
        nu: 6,
        nv: 5,
      },
      'petal-second',
    )
  }
  addPetal(
    b,
    f,
    {
      turn: Math.PI,
      length: D * 0.34,
      width: D * 0.22,
      base: lerp(2, 24, open),
      tip: -10,
      hollow: D * 0.08,
      outline: 'egg',
      nu: 4,
      nv: 4,
    },
    'petal-second',
  )
  addTurned(
    b,
    f,
    (u) => D * lerp(0.02, 0.07, u),
    (u) => -D * 0.12 * (1 - u) + D * 0.02,
    'green',
    3,
    6,
  )
}
