import { type HeadMaker, num, word } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { about, DEG, lerp } from '../vector.ts'
import { addBallAt } from './parts.ts'

/**
 * One face of an orchid: three sepals, two petals, a lip and the column; u is up in its frame.
 * shape: kind ('moth' broad petals; 'cymbidium' five alike; 'dendrobium').
 */
/** Widths of sepals and of the two petals over the head's, size of the lip; how far the tips roll back, degrees. */
const FORMS: Record<string, readonly [sepal: number, petal: number, lip: number, tip: number]> = {
  moth: [0.26, 0.54, 0.24, 92],
  cymbidium: [0.28, 0.28, 0.34, 78],
  dendrobium: [0.18, 0.32, 0.3, 112],
}

export const orchid: HeadMaker = (b, f, D, { open, shape, random }) => {
  const kind = word(shape, 'kind', 'moth')
  const moth = kind === 'moth'
  const [sepal, petal, lipSize, reflexed] = FORMS[kind] ?? FORMS.moth!
  const base = lerp(25, 78, open)
  const tip = lerp(-45, reflexed, open)
  const lay = (turn: number, length: number, width: number, up: number, wide: boolean): void =>
    addPetal(
      b,
      f,
      {
        turn: turn * DEG + (random() - 0.5) * 0.08,
        out: D * 0.02,
        up,
        length: D * length * about(random, 0.04),
        width: D * width,
        base,
        tip: tip + (random() - 0.5) * 8,
        hollow: D * 0.6,
        ruffle: D * 0.01,
        phase: random() * 6,
        outline: wide ? 'round' : 'egg',
        nu: 7,
        nv: 5,
      },
      'petal',
    )
  for (const turn of [0, 128, -128]) lay(turn, 0.46, sepal, -D * 0.015, false)
  for (const turn of [72, -72]) lay(turn, 0.48, petal, 0.01 * D, moth)
  // The lip hangs forward, opposite the upper sepal, with two raised lobes.
  const lip = num(shape, 'lip', lipSize) * lerp(0.6, 1, open)
  for (const [turn, wide] of [
    [180, kind === 'cymbidium' ? 0.3 : 0.2],
    [145, 0.12],
    [215, 0.12],
  ] as const) {
    addPetal(
      b,
      f,
      {
        turn: turn * DEG,
        out: D * 0.02,
        up: D * 0.02,
        length: D * lip * (turn === 180 ? 1 : 0.7),
        width: D * wide,
        base: turn === 180 ? 35 : 10,
        tip: turn === 180 ? 110 : 20,
        hollow: D * 0.1,
        outline: 'egg',
        nu: 5,
        nv: 4,
      },
      'petal-second',
    )
  }
  addBallAt(b, f, [D * 0.01, 0, D * 0.06], D * 0.035, D * 0.05, 'pollen')
}
