import { type HeadMaker, num, word } from '../organs.ts'
import { addPetal, addSpots, type Outline, type PetalForm } from '../petal.ts'
import { about, DEG, lerp, smooth } from '../vector.ts'
import { addBallAt } from './parts.ts'

/** One kind of face; widths and lengths over the head's size, degrees. From plates. */
interface Form {
  sepal: number
  petal: number
  outline: readonly [sepal: Outline, petal: Outline]
  /** Where the midline ends when open: over 90 the tips roll back. */
  tip: number
  lip: number
  /** Width of the lip and of its side lobes. */
  lobe: number
  spots: number
}
const FORMS: Record<string, Form> = {
  moth: { sepal: 0.27, petal: 0.66, outline: ['egg', 'disc'], tip: 90, lip: 0.24, lobe: 0.18, spots: 0 },
  cymbidium: { sepal: 0.25, petal: 0.23, outline: ['egg', 'egg'], tip: 62, lip: 0.42, lobe: 0.34, spots: 9 },
  dendrobium: { sepal: 0.16, petal: 0.29, outline: ['lance', 'egg'], tip: 116, lip: 0.26, lobe: 0.14, spots: 0 },
}

/**
 * One face of an orchid: three sepals, two petals, a lip and the column; u is up in its frame.
 * shape: kind ('moth' broad round petals; 'cymbidium' five fleshy ones alike and a great spotted lip; 'dendrobium' slim
 * and pointed).
 */
export const orchid: HeadMaker = (b, f, D, { open, shape, random }) => {
  const kind = word(shape, 'kind', 'moth')
  const form = FORMS[kind] ?? FORMS.moth!
  // In bud the sepals close to an egg round all the rest.
  const shown = smooth(0, 0.45, open)
  const lay = (turn: number, length: number, width: number, up: number, outline: Outline, fine: boolean): void =>
    addPetal(
      b,
      f,
      {
        turn: turn * DEG + (random() - 0.5) * 0.08,
        out: D * 0.02,
        up,
        length: D * length * about(random, 0.04),
        width: D * lerp(0.36, width, shown),
        base: lerp(46, 78, open),
        tip: lerp(-62, form.tip, open) + (random() - 0.5) * 8,
        hollow: D * lerp(0.2, kind === 'cymbidium' ? 0.3 : 0.7, shown),
        ruffle: D * 0.01,
        phase: random() * 6,
        outline: shown < 0.3 ? 'egg' : outline,
        nu: fine ? 14 : 8,
        nv: fine ? 9 : 5,
      },
      'petal',
    )
  const wide = kind === 'moth'
  for (const turn of [0, 128, -128]) lay(turn, 0.47, form.sepal, -D * 0.02, form.outline[0], false)
  for (const turn of [76, -76]) lay(turn, wide ? 0.52 : 0.47, form.petal, 0.012 * D, form.outline[1], wide)
  // The lip hangs forward, opposite the upper sepal, between two raised lobes.
  const lip = num(shape, 'lip', form.lip) * lerp(0.2, 1, shown)
  for (const [turn, share] of [
    [180, 1],
    [135, 0.62],
    [225, 0.62],
  ] as const) {
    const middle = turn === 180
    const petal: PetalForm = {
      turn: turn * DEG,
      out: D * 0.02,
      up: D * 0.02,
      length: D * lip * (middle ? 1 : 0.62),
      width: D * form.lobe * share * lerp(0.3, 1, shown),
      base: middle ? 35 : 8,
      tip: middle ? 128 : 26,
      hollow: D * (middle ? 0.22 : 0.1),
      ruffle: middle ? D * 0.02 : 0,
      waves: 7,
      outline: middle ? 'round' : 'egg',
      nu: 6,
      nv: 4,
    }
    addPetal(b, f, petal, 'petal-second')
    if (middle && form.spots > 0) {
      const places = Array.from({ length: form.spots }, (_, i): [number, number] => [
        0.34 + 0.5 * ((i + 0.5) / form.spots),
        0.5 + [-0.26, 0.1, 0.28, -0.1][i % 4]!,
      ])
      addSpots(b, f, petal, places, D * 0.035, D * 0.03, 'disc')
    }
  }
  addBallAt(b, f, [D * 0.01, 0, D * 0.06], D * 0.035, D * 0.05, 'pollen')
}
