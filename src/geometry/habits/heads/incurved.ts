import { addBall } from '../builder.ts'
import { type HeadMaker, num } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { about, DEG, GOLDEN, lerp, TAU } from '../vector.ts'

/**
 * Disbud chrysanthemum: spooned florets from all over a ball, each curved up and over the heart.
 * shape: petals.
 */
export const incurved: HeadMaker = (b, f, D, { open, shape, random }) => {
  const n = Math.round(num(shape, 'petals', 104))
  const core = D * lerp(0.13, 0.2, open)
  const lift = D * 0.2
  for (let i = n - 1; i >= 0; i--) {
    const k = i / (n - 1)
    const a = lerp(3, lerp(84, 152, open), k ** 0.62)
    addPetal(
      b,
      f,
      {
        turn: i * GOLDEN + (random() - 0.5) * 0.1,
        out: core * Math.sin(a * DEG),
        up: lift + core * Math.cos(a * DEG),
        length: D * lerp(0.24, 0.37, k) * lerp(0.82, 1, open) * about(random, 0.05),
        width: D * lerp(0.09, 0.125, k),
        base: a,
        tip: a - lerp(lerp(30, 105, k), lerp(40, 118, k), open) + (random() - 0.5) * 8,
        late: 0.9,
        hollow: D * 0.06,
        opening: 1.1,
        sweep: (random() - 0.5) * D * 0.03,
        outline: 'strap',
        nu: 5,
        nv: 3,
      },
      'petal',
    )
  }
  addBall(b, f, core, core, lift, 'petal', 5, 8)
  for (let i = 0; i < 9; i++) {
    addPetal(
      b,
      f,
      {
        turn: (i * TAU) / 9,
        out: D * 0.05,
        up: -D * 0.03,
        length: D * 0.17,
        width: D * 0.09,
        base: lerp(60, 100, open),
        tip: lerp(10, 60, open),
        outline: 'egg',
        nu: 4,
        nv: 2,
      },
      'green',
    )
  }
}
