import { addGrid, addTube, steps } from '../builder.ts'
import type { HeadMaker } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { at, frameIn, lerp } from '../vector.ts'

/** Pairs of sepals: where along the beak they rise (over D), how far forward they lean, their length over D. */
const CREST: readonly (readonly [at: number, lean: number, long: number])[] = [
  [-0.1, -0.42, 0.6],
  [-0.03, 0.12, 0.66],
  [0.05, 0.68, 0.58],
]

/** Strelitzia: a level beak of a sheath, a crest of sepals standing out of it, a blue tongue pointing forward. */
export const crane: HeadMaker = (b, f, D, { open, random }) => {
  const beak = frameIn(f, [-D * 0.24, 0, -D * 0.06], [1, 0, 0.12])
  addGrid(
    b,
    steps(b, 10),
    steps(b, 12, 6),
    (u, v, out) => {
      // A boat, open along its ridge, drawn out to a point.
      const a = (v - 0.5) * 5.7
      const r = D * 0.1 * Math.sin(Math.PI * (0.02 + 0.98 * u ** 0.55)) ** 0.75
      const [x, y, z] = [r * 0.72 * Math.sin(a), -r * Math.cos(a) * 1.05, D * 0.96 * u]
      for (let k = 0; k < 3; k++) out[k] = beak.o[k]! - beak.u[k]! * y + beak.v[k]! * x + beak.w[k]! * z
    },
    'green',
  )
  CREST.forEach(([place, lean, long], row) => {
    // One flower after the other comes out of the sheath.
    const out = Math.max(0, Math.min(1, open * 1.9 - 0.4 * row + 0.12))
    for (const side of [-1, 1]) {
      const g = frameIn(
        f,
        [D * place, side * D * 0.02, -D * lerp(0.09, 0.02, out)],
        [lean * (0.4 + 0.6 * open), side * 0.3 * open, 1],
        0,
      )
      addPetal(
        b,
        g,
        {
          turn: side * 1.57 + (random() - 0.5) * 0.3,
          length: D * long * lerp(0.12, 1, out) * (side > 0 ? 1 : 0.88),
          width: D * 0.15,
          base: -3,
          tip: 14,
          hollow: D * 0.1,
          fold: 0.25,
          outline: 'lance',
          nu: 8,
          nv: 4,
        },
        'petal',
      )
    }
  })
  // The tongue: two petals joined to an arrow, with a barb at its middle.
  const tongue = Math.max(0, Math.min(1, open * 2.2 - 0.5))
  for (const [lean, long] of [
    [0.75, 0.5],
    [1.7, 0.44],
  ] as const) {
    const g = frameIn(f, [D * 0.02, 0, -D * 0.02], [lean, 0, 1])
    for (const side of [-1, 1]) {
      addPetal(
        b,
        g,
        {
          turn: side * 1.57,
          length: D * Math.max(0.08, long * tongue),
          width: D * 0.075,
          base: 0,
          tip: 4,
          fold: 0.7,
          outline: 'sword',
          nu: 5,
          nv: 2,
        },
        'petal-second',
      )
      addPetal(
        b,
        g,
        {
          turn: side * 1.57,
          up: D * Math.max(0.02, long * 0.42 * tongue),
          length: D * 0.18 * Math.max(0.2, tongue),
          width: D * 0.08,
          base: 40,
          tip: 14,
          outline: 'sword',
          nu: 3,
          nv: 2,
        },
        'petal-second',
      )
    }
  }
  addTube(
    b,
    [at(f, 0, 0, -D * 0.34), at(f, -D * 0.08, 0, -D * 0.16), at(f, -D * 0.2, 0, -D * 0.06)],
    D * 0.035,
    D * 0.07,
    'green',
    8,
  )
}
