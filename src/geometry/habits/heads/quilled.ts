import { type HeadMaker, num, word } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { about, GOLDEN, lerp, TAU } from '../vector.ts'
import { incurved } from './incurved.ts'
import { addCap } from './parts.ts'
import { protea } from './protea.ts'

/**
 * Many rows of narrow petals on a dome: dahlia.
 * shape: kind ('incurved', 'protea': built otherwise), petals, incurve (0 petals lie back … 1 they curl over the heart), narrow (1 as a dahlia, less is narrower),
 * dome (height of the heart over the head's width).
 */
export const quilled: HeadMaker = (b, f, D, head) => {
  if (word(head.shape, 'kind', '') === 'protea') return protea(b, f, D, head)
  if (word(head.shape, 'kind', '') === 'incurved') return incurved(b, f, D, head)
  const { open, shape, random, small } = head
  const n = Math.round(small ? Math.min(46, num(shape, 'petals', 46)) : Math.min(130, num(shape, 'petals', 92)))
  const incurve = num(shape, 'incurve', 0)
  const narrow = num(shape, 'narrow', 1)
  const dome = lerp(0.2, num(shape, 'dome', 0.2), open)
  for (let i = n - 1; i >= 0; i--) {
    const k = i / (n - 1)
    addPetal(
      b,
      f,
      {
        turn: i * GOLDEN + (random() - 0.5) * 0.08,
        out: D * lerp(0.05, 0.105, open) * k ** 0.6,
        up: D * lerp(dome, -0.01, k ** 1.1),
        length: D * lerp(0.085, lerp(0.26, 0.415, open), k ** 0.72) * about(random, 0.035),
        width: D * lerp(0.075, 0.17, k ** 0.6) * narrow,
        base: lerp(2, lerp(30, 80, open), k ** 0.66),
        tip: lerp(-22, lerp(-15, 118, open) - 95 * incurve, k ** 0.85),
        late: 1.15,
        hollow: D * lerp(0.035, 0.095, k) * narrow,
        opening: 1.5,
        outline: narrow < 0.7 ? 'strap' : 'point',
        sweep: (random() - 0.5) * D * 0.02,
        nu: n > 100 ? 5 : 6,
        nv: n > 70 ? 3 : 4,
      },
      'petal',
    )
  }
  addCap(b, f, D * lerp(0.07, 0.17, open * (1 - incurve)), D * 0.85 * dome, -D * 0.02, 'petal')
  addCap(b, f, D * lerp(0.07, 0.12, open), -D * 0.06, -D * 0.02, 'green')
  for (let i = 0; i < 8; i++) {
    addPetal(
      b,
      f,
      {
        turn: (i * TAU) / 8,
        out: D * 0.06,
        up: -D * 0.05,
        length: D * 0.16,
        width: D * 0.07,
        base: lerp(40, 80, open),
        tip: lerp(10, 120, open),
        outline: 'lance',
        nu: 4,
        nv: 2,
      },
      'green',
    )
  }
}
