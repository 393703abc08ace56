import { addTube } from '../builder.ts'
import { type HeadMaker, num } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { at, bow, frameIn, GOLDEN, lerp, TAU } from '../vector.ts'
import { addFloret } from './floret.ts'

/**
 * Rays from one node, each ending in a small umbel of five-petalled florets: wild carrot, dill, ammi.
 * shape: rays, florets (on a ray), height (over the diameter), bracts, close
 * (width of the small umbels over what covers the whole: less leaves lace, more a cushion), fall (how far the
 * rim lies below the middle when open, over the height).
 */
export const umbel: HeadMaker = (b, f, D, { open, shape, random, small }) => {
  const n = Math.round(num(shape, 'rays', small ? 12 : 23))
  const k = Math.round(num(shape, 'florets', small ? 9 : 13))
  const tall = D * num(shape, 'height', 0.3) * lerp(2.1, 1, open)
  const node: [number, number, number] = [0, 0, -tall * 0.5]
  for (let i = 0; i < n; i++) {
    const q = Math.sqrt((i + 0.5) / n)
    const turn = i * GOLDEN
    const r = (q * D * 0.88) / 2
    // Young umbels close like a nest: the rim stands as high as the middle.
    const z = node[2] + tall * (1 - q * q * lerp(0.1, num(shape, 'fall', 0.62), open))
    const [c, s] = [Math.cos(turn), Math.sin(turn)]
    const end: [number, number, number] = [r * c, r * s, z]
    const middle = at(f, r * 0.45 * c, r * 0.45 * s, node[2] + (z - node[2]) * 0.7)
    addTube(b, bow(at(f, ...node), middle, at(f, ...end), small ? 2 : 5), D * 0.0085, D * 0.006, 'stem', small ? 3 : 4)
    const g = frameIn(f, end, [c * q * 0.5, s * q * 0.5, 1], random() * 6)
    const u = D * 0.125 * (1.1 - q * 0.2) * Math.sqrt(23 / n) * num(shape, 'close', 1)
    for (let j = 0; j < k; j++) {
      const w = Math.sqrt((j + 0.5) / k)
      const a = j * GOLDEN
      const place: [number, number, number] = [
        w * u * 0.92 * Math.cos(a),
        w * u * 0.92 * Math.sin(a),
        u * 0.55 * (1 - w * w * 0.45),
      ]
      if (j % 3 === 0 && !small) addTube(b, [g.o, at(g, ...place)], D * 0.004, D * 0.004, 'green', 3)
      const size = u * 0.33 * (1 + 0.25 * w) * lerp(0.6, 1, open) * Math.sqrt(13 / k)
      addFloret(
        b,
        frameIn(g, place, [Math.cos(a) * w * 0.6, Math.sin(a) * w * 0.6, 1], random() * 6),
        size,
        5,
        0.15,
        0.86,
        'petal',
        small ? undefined : 'pollen',
      )
    }
  }
  const bracts = Math.round(num(shape, 'bracts', 7))
  for (let i = 0; i < bracts; i++) {
    addPetal(
      b,
      f,
      {
        turn: (i * TAU) / bracts,
        out: D * 0.01,
        up: node[2],
        length: D * 0.14,
        width: D * 0.02,
        base: 80,
        tip: 125,
        outline: 'lance',
        nu: 4,
        nv: 2,
      },
      'green',
    )
  }
}
