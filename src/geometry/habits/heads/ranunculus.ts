import { addDome } from '../builder.ts'
import { type HeadMaker, num } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { about, GOLDEN, lerp, TAU } from '../vector.ts'
import { addCap } from './parts.ts'

/** Petals in a ring of a ranunculus. */
const RING = 5

/**
 * Ranunculus: ring within ring of thin petals cupped close about a dark green button.
 * shape: rings.
 */
export const ranunculus: HeadMaker = (b, f, D, { open, shape, random }) => {
  const rings = Math.round(num(shape, 'rings', 10))
  const low = -D * 0.04
  for (let row = rings - 1; row >= 0; row--) {
    const k = row / (rings - 1)
    // The outer rings open first, the heart stays closed over its button.
    const own = Math.max(0, Math.min(1, open * 1.4 - 0.5 * (1 - k)))
    const r = lerp(0.14, 0.4, k ** 0.9)
    for (let i = 0; i < RING; i++) {
      addPetal(
        b,
        f,
        {
          turn: ((i + row * 0.38 + (random() - 0.5) * 0.16) / RING) * TAU,
          out: D * r * 0.16,
          up: low + D * lerp(0.16, 0, k),
          length: D * r * lerp(1.5, 1.36, k) * about(random, 0.025),
          width: D * r * 1.62,
          base: lerp(lerp(52, 84, k), lerp(54, 86, k), own),
          tip: lerp(lerp(-58, -70, k), lerp(-50, 12, k ** 1.5), own) + (random() - 0.5) * 5,
          late: 0.85,
          hollow: D * r * lerp(0.78, 1.1, own * k),
          opening: lerp(0.9, 1.1, own),
          ruffle: D * 0.004,
          phase: random() * TAU,
          outline: 'strap',
          nu: 6,
          nv: 5,
        },
        'petal',
      )
    }
  }
  addCap(b, f, D * 0.15, D * 0.2, low, 'petal-second', 9)
  const button = D * 0.085
  const top = low + D * 0.26
  addCap(b, f, button, D * 0.07, top, 'disc', 9)
  for (let i = 0; i < 24; i++) {
    const a = Math.sqrt((i + 0.5) / 24) * 1.5
    const q = button * Math.sin(a)
    const turn = i * GOLDEN
    const place: [number, number, number] = [q * Math.cos(turn), q * Math.sin(turn), top + D * 0.07 * Math.cos(a)]
    addDome(b, f, place, [place[0], place[1], D * 0.1], D * 0.019, 'disc')
  }
  addCap(b, f, D * 0.1, -D * 0.05, low + D * 0.02, 'green')
  for (let i = 0; i < 5; i++) {
    addPetal(
      b,
      f,
      {
        turn: (i * TAU) / 5,
        out: D * 0.05,
        up: low,
        length: D * 0.24,
        width: D * 0.1,
        base: lerp(70, 95, open),
        tip: lerp(10, 130, open),
        outline: 'leaf',
        nu: 5,
        nv: 2,
      },
      'green',
    )
  }
}
