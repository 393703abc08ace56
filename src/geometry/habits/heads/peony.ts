import { type HeadMaker, num } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { about, GOLDEN, lerp, TAU } from '../vector.ts'
import { addCap } from './parts.ts'

/**
 * Peony: a bowl of large guard petals round a dense ruffled bomb; a round ball in bud, in round sepals.
 * shape: guards, petals (of the bomb).
 */
export const peony: HeadMaker = (b, f, D, { open, shape, random }) => {
  const guards = Math.round(num(shape, 'guards', 11))
  const n = Math.round(num(shape, 'petals', 54))
  const low = -D * 0.1
  for (let i = guards - 1; i >= 0; i--) {
    const outer = i >= guards / 2
    addPetal(
      b,
      f,
      {
        turn: (i * TAU * 2) / guards + (random() - 0.5) * 0.25 + (outer ? 0.3 : 0),
        out: D * 0.04,
        up: low - (outer ? D * 0.02 : 0),
        length: D * (outer ? 0.6 : 0.55) * about(random, 0.05),
        width: D * 0.5 * about(random, 0.06),
        base: lerp(78, outer ? 84 : 74, open),
        tip: lerp(-62, outer ? 52 : 24, open) + (random() - 0.5) * 12,
        late: lerp(0.9, 0.8, open),
        hollow: D * lerp(0.28, 0.5, open),
        opening: lerp(0.8, 1.3, open),
        ruffle: D * 0.022 * open,
        waves: 5,
        phase: random() * TAU,
        notch: 0.1 * random(),
        nu: 9,
        nv: 8,
      },
      'petal',
    )
  }
  // The bomb: crumpled petals on a dome, the lower ones looking outward.
  const reach = lerp(0.7, 1, open)
  for (let i = n - 1; i >= 0; i--) {
    const k = i / (n - 1)
    const a = lerp(0, lerp(50, 76, open), Math.sqrt(k))
    addPetal(
      b,
      f,
      {
        turn: i * GOLDEN + (random() - 0.5) * 0.5,
        out: D * 0.05 * Math.sqrt(k),
        up: low + D * lerp(0.14, 0.05, k),
        length: D * lerp(0.3, 0.36, k) * reach * about(random, 0.14),
        width: D * lerp(0.17, 0.24, k) * about(random, 0.2),
        base: a,
        tip: a - lerp(44, 22, open) + (random() - 0.5) * 36,
        hollow: D * 0.12,
        opening: 2,
        ruffle: D * 0.04 * (0.5 + random()),
        waves: 5 + 3 * random(),
        phase: random() * TAU,
        notch: 0.16 * random(),
        sweep: (random() - 0.5) * D * 0.06,
        outline: 'fan',
        nu: 5,
        nv: 5,
      },
      'petal',
    )
  }
  addCap(b, f, D * 0.2 * reach, D * 0.26 * reach, low, 'petal')
  addCap(b, f, D * 0.1, -D * 0.07, low + D * 0.02, 'green')
  for (let i = 0; i < 5; i++) {
    const leafy = i > 2
    addPetal(
      b,
      f,
      {
        turn: i * GOLDEN,
        out: D * 0.05,
        up: low - D * 0.02,
        length: D * (leafy ? 0.34 : 0.2),
        width: D * (leafy ? 0.06 : 0.18),
        base: lerp(74, 86, open),
        tip: lerp(leafy ? 40 : -6, leafy ? 120 : 70, open),
        hollow: D * 0.3,
        outline: leafy ? 'lance' : 'round',
        nu: 5,
        nv: 3,
      },
      'green',
    )
  }
}
