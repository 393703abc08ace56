import { addDome } from '../builder.ts'
import { type HeadMaker, num, word } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { about, GOLDEN, lerp, TAU } from '../vector.ts'
import { addCalyx, addCap, addStamen } from './parts.ts'

/** Eryngium and its like: a cone of florets on a ruff of stiff narrow bracts. */
export const thistle: HeadMaker = (b, f, D, { open, shape, random, small }) => {
  const bracts = Math.round(num(shape, 'bracts', small ? 9 : 12))
  for (let row = 0; row < 2; row++) {
    for (let i = 0; i < bracts; i++) {
      addPetal(
        b,
        f,
        {
          turn: ((i + row / 2) / bracts) * TAU + (random() - 0.5) * 0.15,
          out: D * 0.06,
          up: -D * 0.03,
          length: D * (row ? 0.32 : 0.46) * about(random, 0.08),
          width: D * 0.1,
          base: lerp(15, 66, open),
          tip: lerp(5, 78, open) + row * 8,
          fold: 0.5,
          outline: 'sword',
          nu: 5,
          nv: 2,
        },
        'petal',
      )
    }
  }
  const n = small ? 50 : 90
  const [r, h] = [D * 0.14, D * num(shape, 'cone', 0.34)]
  addCap(b, f, r * 0.95, h * 0.97, 0, 'petal-second', 9)
  for (let i = 0; i < n; i++) {
    const a = Math.sqrt((i + 0.5) / n) * 1.55
    const turn = i * GOLDEN
    const q = r * Math.sin(a)
    const place: [number, number, number] = [q * Math.cos(turn), q * Math.sin(turn), h * Math.cos(a)]
    addDome(b, f, place, [place[0], place[1], place[2] * 0.4], r * (1.6 / Math.sqrt(n)), 'petal-second', 1.6)
  }
}

/**
 * Open outer florets round a domed centre: scabious.
 * shape: kind ('thistle' has stiff bracts), florets (outer, a row), centre (its diameter over the head's),
 * pointed (1: lobes like a cornflower's).
 */
export const pincushion: HeadMaker = (b, f, D, head) => {
  if (word(head.shape, 'kind', '') === 'thistle') return thistle(b, f, D, head)
  const { open, shape, random, small } = head
  const outer = Math.round(num(shape, 'outer', 11))
  const pointed = num(shape, 'pointed', 0) > 0
  for (let row = 1; row >= 0; row--) {
    for (let i = 0; i < outer; i++) {
      const turn = ((i + row * 0.5 + (random() - 0.5) * 0.3) / outer) * TAU
      for (let lobe = -1; lobe < 2; lobe++) {
        addPetal(
          b,
          f,
          {
            turn: turn + lobe * (pointed ? 0.19 : 0.16),
            out: D * 0.15,
            up: D * (0.01 - row * 0.03),
            length: D * (0.335 - 0.05 * Math.abs(lobe) - (row ? 0 : 0.05)) * about(random, 0.07),
            width: D * (pointed ? 0.11 : 0.15),
            base: lerp(0, 45, open) + row * 14,
            tip: lerp(-30, 88, open) + row * 20 + (random() - 0.5) * 14,
            hollow: -D * 0.25,
            ruffle: D * 0.018,
            waves: 6,
            phase: random() * 6,
            outline: pointed ? 'point' : 'round',
            nu: 5,
            nv: 4,
          },
          'petal',
        )
      }
    }
  }
  const r = (D * num(shape, 'centre', 0.42)) / 2
  const h = r * 0.6
  addCap(b, f, r, h, 0, 'disc', 14)
  const n = small ? 45 : 100
  for (let i = 0; i < n; i++) {
    const a = Math.sqrt((i + 0.5) / n) * (Math.PI / 2)
    const turn = i * GOLDEN
    const q = r * Math.sin(a)
    const place: [number, number, number] = [q * Math.cos(turn), q * Math.sin(turn), h * Math.cos(a)]
    addDome(b, f, place, [place[0], place[1], D * 0.1], D * 0.022, 'disc')
    if (i % 3 === 0 && open > 0.3) {
      const k = 1 + (D * 0.07) / Math.max(1e-6, Math.hypot(q, D * 0.12))
      addStamen(b, f, place, [place[0] * k, place[1] * k, place[2] + D * 0.06], D * 0.011, 'pollen')
    }
  }
  addCalyx(b, f, D * 0.06, D * 0.02, 8, lerp(40, 110, open), D * 0.2)
}
