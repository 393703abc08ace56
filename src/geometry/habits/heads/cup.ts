import { type HeadMaker, num } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { about, lerp, TAU } from '../vector.ts'
import { addCap, addStamen, addTurned } from './parts.ts'

/**
 * Overlapping petals in whorls, from a closed egg to an open bowl: tulip; poppy and protea by their numbers.
 * shape: petals, whorls, tall (height of the egg over its width), pointed, fringe, ruffle, stamens.
 */
export const cup: HeadMaker = (b, f, D, { open, shape, random, small }) => {
  const whorls = Math.max(1, Math.round(num(shape, 'whorls', 2)))
  const each = Math.max(3, Math.round(num(shape, 'petals', 6) / whorls))
  const tall = num(shape, 'tall', 1.25)
  const pointed = num(shape, 'pointed', 0.3)
  const low = -D * 0.5 * tall
  for (let row = 0; row < whorls; row++) {
    for (let i = 0; i < each; i++) {
      const outer = row / Math.max(1, whorls - 1)
      addPetal(
        b,
        f,
        {
          turn: ((i + row / 2) / each) * TAU + (random() - 0.5) * 0.12,
          out: D * 0.02,
          up: low + D * 0.02 * (1 - outer),
          length: D * (0.36 + 0.72 * tall) * about(random, 0.03) * (whorls > 3 ? lerp(1.05, 0.6, outer) : 1),
          width:
            ((D * 3.1) / Math.max(3.6, each)) *
            lerp(0.95, 1.08, random()) *
            lerp(1.22, 1, Math.min(1, 2 * open)) *
            (small ? 0.95 : 1),
          base: lerp(74, 66, open),
          tip: lerp(-40, 34, open) + outer * lerp(3, 10, open) + (random() - 0.5) * 6,
          late: lerp(0.42, 0.62, open),
          hollow: D * lerp(0.46, 0.62, open),
          opening: lerp(0.75, 1.4, open),
          ruffle: D * 0.015 * num(shape, 'ruffle', 0.6),
          phase: random() * 6,
          curl: D * 0.03 * open,
          fringe: 0.32 * num(shape, 'fringe', 0),
          outline: pointed > 0.6 ? 'point' : pointed > 0.15 ? 'egg' : 'round',
          nu: 10,
          nv: whorls > 3 ? 4 : 8,
        },
        'petal',
      )
    }
  }
  const n = Math.round(num(shape, 'stamens', 6))
  addTurned(
    b,
    f,
    (u) => D * 0.055 * (u < 0.85 ? 0.8 : 1.5 * (1 - u) + 0.9),
    (u) => low + D * (0.04 + 0.4 * u),
    'green',
    4,
    6,
  )
  for (let i = 0; i < n; i++) {
    const a = (i / n) * TAU
    const r = D * (0.1 + 0.06 * open) * (n > 12 ? 0.7 + 0.6 * random() : 1)
    const from: [number, number, number] = [D * 0.04 * Math.cos(a), D * 0.04 * Math.sin(a), low + D * 0.06]
    addStamen(b, f, from, [r * Math.cos(a), r * Math.sin(a), low + D * 0.4], D * 0.022, 'pollen')
  }
  addCap(b, f, D * 0.1, -D * 0.05, low + D * 0.03, 'green', 8)
}
