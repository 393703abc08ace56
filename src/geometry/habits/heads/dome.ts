import { addDome, addTube } from '../builder.ts'
import { type HeadMaker, num } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { about, at, frameIn, GOLDEN, lerp, TAU } from '../vector.ts'
import { addCap } from './parts.ts'

/** Four-petalled florets over a dome: hydrangea. shape: florets, petals (of a floret), height (over half the width). */
export const dome: HeadMaker = (b, f, D, { open, shape, random, small }) => {
  const n = Math.round(num(shape, 'florets', small ? 36 : 72))
  const petals = Math.round(num(shape, 'petals', 4))
  const r = D * 0.42
  const h = r * num(shape, 'height', 0.9)
  const size = D * (1.02 / Math.sqrt(n)) * lerp(0.95, 1, open)
  addCap(b, f, r * 0.84, h * 0.76, -h * 0.35, 'petal-second')
  addCap(b, f, r * 0.8, -h * 0.42, -h * 0.35, 'petal-second')
  addCap(b, f, r * 0.26, -h * 0.16, -h * 0.72, 'green')
  for (let i = 0; i < n; i++) {
    const z = 1 - 1.62 * ((i + 0.5) / n)
    const q = Math.sqrt(1 - z * z)
    const turn = i * GOLDEN
    const k = about(random, 0.06)
    const place: [number, number, number] = [
      q * Math.cos(turn) * r * k,
      q * Math.sin(turn) * r * k,
      z * h * k - h * 0.3,
    ]
    const out: [number, number, number] = [
      place[0] + (random() - 0.5) * r * 0.35,
      place[1] + (random() - 0.5) * r * 0.35,
      z * r,
    ]
    const g = frameIn(f, place, out, random() * 6)
    if (i % 4 === 0) addTube(b, [at(f, 0, 0, -h * 0.4), g.o], D * 0.006, D * 0.005, 'green', 3)
    const s = size * about(random, 0.12)
    for (let p = 0; p < petals; p++) {
      addPetal(
        b,
        g,
        {
          turn: (p * TAU) / petals,
          out: s * 0.04,
          length: s * 0.8,
          width: s * 1.05,
          base: lerp(48, 74, Math.sqrt(open)),
          tip: lerp(34, 92, Math.sqrt(open)),
          hollow: s * 1.6,
          nu: 3,
          nv: 2,
        },
        'petal',
      )
    }
    addDome(b, g, [0, 0, s * 0.1], [0, 0, 1], s * 0.12, 'petal-second')
  }
}
