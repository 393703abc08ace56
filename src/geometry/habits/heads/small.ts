import { addBall } from '../builder.ts'
import { type HeadMaker, num } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { frameIn, lerp, TAU } from '../vector.ts'
import { addFloret } from './floret.ts'
import { addTurned } from './parts.ts'

/** A tiny double flower of kite petals in three tiers, small ones in one: gypsophila. */
export const speck: HeadMaker = (b, f, D, { open, random, small }) => {
  if (open < 0.3) {
    if (small) addFloret(b, f, D * 0.5, 5, 1.5, 1, 'petal')
    else addBall(b, f, D * 0.42, D * 0.5, 0, 'petal', 3, 5)
    return
  }
  addFloret(b, f, D * 0.5, 5, lerp(0.7, 0.1, open), 0.95, 'petal')
  if (small) return
  for (const [up, size, lift] of [
    [0.06, 0.4, 0.55],
    [0.12, 0.26, 1],
  ] as const) {
    const g = frameIn(f, [0, 0, D * up], [random() - 0.5, random() - 0.5, 3], random() * 6)
    addFloret(b, g, D * size, 5, lift, 0.85, 'petal')
  }
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

/** A sweet pea: a broad standard behind, two wings, a keel. */
export const pea: HeadMaker = (b, f, D, { open, random }) => {
  const back = lerp(8, 70, open)
  addPetal(
    b,
    f,
    {
      turn: 0,
      length: D * 0.62,
      width: D * 0.86,
      base: back * 0.5,
      tip: back + 18,
      hollow: D * lerp(0.25, 0.9, open),
      notch: 0.07,
      ruffle: D * 0.012,
      waves: 5,
      phase: random() * 6,
      nu: 7,
      nv: 8,
    },
    'petal',
  )
  for (const turn of [2.5, -2.5]) {
    addPetal(
      b,
      f,
      {
        turn,
        out: D * 0.02,
        length: D * 0.44,
        width: D * 0.34,
        base: 2,
        tip: lerp(0, 40, open),
        hollow: D * 0.25,
        nu: 5,
        nv: 4,
      },
      'petal-second',
    )
  }
  addPetal(
    b,
    f,
    { turn: Math.PI, length: D * 0.3, width: D * 0.2, base: 0, tip: 5, hollow: D * 0.08, nu: 4, nv: 3 },
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
