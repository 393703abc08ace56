import { addTube } from '../builder.ts'
import { type HeadMaker, num } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { about, at, GOLDEN, lerp, TAU } from '../vector.ts'
import { addBallAt, addCalyx, addStamen } from './parts.ts'

/**
 * Lisianthus: thin broad petals in a deep flared cup, a two-lobed stigma in its throat; the bud is wound to a point.
 * shape: petals.
 */
export const lisianthus: HeadMaker = (b, f, D, { open, shape, random }) => {
  const n = Math.round(num(shape, 'petals', 9))
  const low = -D * 0.06
  const flare = Math.sqrt(open)
  for (let i = n - 1; i >= 0; i--) {
    const k = i / (n - 1)
    addPetal(
      b,
      f,
      {
        turn: i * GOLDEN + (random() - 0.5) * 0.15,
        out: D * 0.03,
        up: low + D * 0.02 * (1 - k),
        length: D * lerp(0.82, lerp(0.6, 0.7, k), flare) * about(random, 0.04),
        width: D * lerp(0.36, 0.66, flare) * about(random, 0.05),
        base: lerp(10, lerp(24, 44, k), open),
        tip: lerp(-16, lerp(20, 84, k), open) + (random() - 0.5) * 10,
        late: 1.15,
        hollow: D * lerp(0.1, 0.36, flare),
        opening: lerp(0.7, 1.6, open),
        ruffle: D * 0.025 * open,
        waves: 4.5,
        phase: random() * TAU,
        // All petals lean the same way: so the bud is wound.
        sweep: D * lerp(0.3, 0.06, flare),
        outline: 'round',
        nu: 9,
        nv: 6,
      },
      'petal',
    )
  }
  addTube(b, [at(f, 0, 0, low), at(f, 0, 0, low + D * 0.36)], D * 0.06, D * 0.03, 'green', 5)
  for (const side of [-1, 1]) addBallAt(b, f, [side * D * 0.035, 0, low + D * 0.38], D * 0.045, D * 0.035, 'pollen')
  for (let i = 0; i < 5; i++) {
    const a = (i / 5) * TAU
    const r = D * 0.12 * open
    addStamen(b, f, [0, 0, low + D * 0.1], [r * Math.cos(a), r * Math.sin(a), low + D * 0.3], D * 0.022, 'pollen')
  }
  addCalyx(b, f, D * 0.07, low + D * 0.06, 5, lerp(8, 34, open), D * 0.34)
}
