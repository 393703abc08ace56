import { addDome, addTube, type Builder } from '../builder.ts'
import { addStamen } from '../heads/parts.ts'
import { frameAt } from '../line.ts'
import { num, type RopeMaker } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { at, type Frame, frameIn, GOLDEN, lerp, smooth, TAU } from '../vector.ts'

const floret = (b: Builder, f: Frame, size: number, petals: number, stamens: boolean): void => {
  for (let q = 0; q < petals; q++) {
    addPetal(
      b,
      f,
      {
        turn: (q * TAU) / petals + 0.3,
        out: size * 0.05,
        length: size * 0.62,
        width: size * 0.56,
        base: 40,
        tip: 88,
        hollow: size * 0.8,
        nu: 3,
        nv: 2,
      },
      'petal',
    )
  }
  if (stamens)
    for (const q of [-0.14, 0.14]) addStamen(b, f, [0, 0, 0], [q * size, 0, size * 0.55], size * 0.05, 'pollen')
}

/** Florets in a spiral: open below, buds above, green at the tip. shape: florets, petals, taper. */
export const spike: RopeMaker = (b, line, from, to, width, { open, shape, random }) => {
  const n = Math.round(num(shape, 'florets', 90))
  const petals = Math.round(num(shape, 'petals', 4))
  const taper = num(shape, 'taper', 0.86)
  const opened = lerp(0.05, 0.85, open)
  for (let i = 0; i < n; i++) {
    const k = i / (n - 1)
    const f = frameAt(line, lerp(from, to, k))
    const turn = i * GOLDEN
    const r = (width / 2) * (1 - k ** 1.7 * taper) * smooth(-0.12, 0.1, k)
    const out: [number, number, number] = [Math.cos(turn), Math.sin(turn), lerp(0.25, 1.5, k)]
    const l = Math.hypot(...out)
    const reach = k < opened ? 0.72 : lerp(0.45, 0.75, open)
    const place: [number, number, number] = [
      (out[0] / l) * r * reach,
      (out[1] / l) * r * reach,
      (out[2] / l) * r * reach,
    ]
    addTube(b, [f.o, at(f, ...place)], width * 0.02, width * 0.02, 'green', 3)
    if (k < opened) floret(b, frameIn(f, place, out, random() * 6), r * 0.95 * (1 - k * 0.45), petals, i % 2 === 0)
    else addDome(b, f, place, out, Math.max(width * 0.03, r * 0.34), k < 0.85 ? 'petal-second' : 'green', 1.3)
  }
}
