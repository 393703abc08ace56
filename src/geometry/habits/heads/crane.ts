import { addGrid, addTube, steps } from '../builder.ts'
import type { HeadMaker } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { at, frameIn, lerp } from '../vector.ts'
import { addStamen } from './parts.ts'

/** Strelitzia: a level beak of a sheath, orange sepals standing out of it like a crest, a blue arrow among them. */
export const crane: HeadMaker = (b, f, D, { open, random }) => {
  const beak = frameIn(f, [-D * 0.28, 0, -D * 0.12], [1, 0, 0.28])
  addGrid(
    b,
    steps(b, 9),
    steps(b, 10, 6),
    (u, v, out) => {
      const a = (v - 0.5) * 5.6
      const r = D * 0.075 * Math.sin(Math.PI * (0.12 + 0.88 * u)) ** 0.7 * (1 - 0.4 * u)
      const [x, y, z] = [r * Math.sin(a), -r * Math.cos(a) * 1.2, D * 0.9 * u]
      for (let k = 0; k < 3; k++) out[k] = beak.o[k]! + beak.u[k]! * x + beak.v[k]! * y + beak.w[k]! * z
    },
    'green',
  )
  const flames = 5
  for (let i = 0; i < flames; i++) {
    const g = frameIn(
      f,
      [-D * (0.12 - 0.03 * i), (i % 2 ? 1 : -1) * D * 0.03, 0],
      [lerp(-0.2, 0.9, i / (flames - 1)) * (0.4 + open), (i % 2 ? 0.5 : -0.5) * open, 1],
    )
    const long = D * 0.6 * lerp(0.25, 1, Math.min(1, open * 1.6 - i * 0.1 + 0.1))
    addPetal(
      b,
      g,
      {
        turn: random() * 0.4,
        length: Math.max(D * 0.1, long),
        width: D * 0.13,
        base: 4,
        tip: 12,
        hollow: D * 0.1,
        outline: 'lance',
        nu: 7,
        nv: 3,
      },
      'petal',
    )
  }
  if (open > 0.4) {
    for (const k of [0.25, 0.6]) {
      const g = frameIn(f, [D * 0.02, 0, 0], [k + 0.3, 0.15, 1])
      addPetal(
        b,
        g,
        { turn: 0, length: D * 0.42, width: D * 0.07, base: 0, tip: 4, fold: 0.5, outline: 'sword', nu: 5, nv: 2 },
        'petal-second',
      )
      addStamen(b, g, [0, 0, D * 0.3], [0, 0, D * 0.46], D * 0.01, 'petal-second')
    }
  }
  addTube(b, [at(f, 0, 0, -D * 0.3), at(f, -D * 0.24, 0, -D * 0.1)], D * 0.03, D * 0.06, 'green', 7)
}
