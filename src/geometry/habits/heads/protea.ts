import type { HeadMaker } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { about, GOLDEN, lerp } from '../vector.ts'
import { addCap } from './parts.ts'

/** Protea: stiff pointed bracts in a spiral about a woolly dome. */
export const protea: HeadMaker = (b, f, D, { open, random, small }) => {
  const n = small ? 24 : 44
  const low = -D * 0.42
  for (let i = 0; i < n; i++) {
    const k = i / (n - 1)
    addPetal(
      b,
      f,
      {
        turn: i * GOLDEN + (random() - 0.5) * 0.1,
        out: D * lerp(0.16, 0.1, k),
        up: low + D * 0.22 * k,
        length: D * lerp(0.2, 0.78, k ** 0.7) * about(random, 0.04),
        width: D * lerp(0.16, 0.2, k),
        base: lerp(lerp(30, 60, open), lerp(10, 46, open), k),
        tip: lerp(-6, 26, open) + 10 * (1 - k),
        hollow: D * 0.16,
        outline: 'point',
        nu: 6,
        nv: 3,
      },
      k < 0.3 ? 'green' : 'petal',
    )
  }
  addCap(b, f, D * 0.22, D * lerp(0.36, 0.42, open), low + D * 0.22, 'petal-second')
  addCap(b, f, D * 0.22, -D * 0.18, low + D * 0.22, 'green')
  // Wool: fine hairs that rise to a soft point in the middle.
  const hairs = small ? 50 : 110
  for (let i = 0; i < hairs; i++) {
    const q = Math.sqrt((i + 0.5) / hairs)
    const a = q * 1.5
    addPetal(
      b,
      f,
      {
        turn: i * GOLDEN + random() * 0.3,
        out: D * 0.215 * Math.sin(a),
        up: low + D * (0.2 + lerp(0.36, 0.42, open) * Math.cos(a)),
        length: D * lerp(0.16, 0.11, q) * about(random, 0.2),
        width: D * 0.022,
        base: 60 * q,
        tip: lerp(-30, 6, q),
        outline: 'sword',
        nu: 3,
        nv: 1,
      },
      i % 7 === 0 ? 'petal' : 'petal-second',
    )
  }
}
