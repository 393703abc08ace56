import { type HeadMaker, num, word } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { about, GOLDEN, lerp, TAU } from '../vector.ts'
import { lisianthus } from './lisianthus.ts'
import { addCalyx, addCap, addStamen } from './parts.ts'
import { peony } from './peony.ts'
import { ranunculus } from './ranunculus.ts'
import { gardenRose, teaRose } from './rose.ts'

/** Flowers of this habit that are built in another way, by the `kind` in their shape. */
const KINDS: Record<string, HeadMaker> = { tea: teaRose, garden: gardenRose, peony, ranunculus, lisianthus }

/**
 * A spiral of cupped petals: the heart upright and incurved, the rim opened and at last reflexed.
 * shape: kind (above), petals, tightness (0 loose … 1 tight), fringe, ruffle, cupping (0 flat … 1 a deep cup), dome (1: the heart
 * stands high), stamens.
 */
export const rosette: HeadMaker = (b, f, D, head) => {
  const kind = KINDS[word(head.shape, 'kind', '')]
  if (kind) return kind(b, f, D, head)
  const { open, shape, random, small } = head
  const full = num(shape, 'petals', 36)
  const n = Math.max(5, Math.round(small ? Math.min(full, 18) : Math.min(full, 64)))
  const tight = num(shape, 'tightness', 0)
  // 1 cuts a third of the petal into teeth.
  const fringe = 0.32 * num(shape, 'fringe', 0)
  const ruffle = num(shape, 'ruffle', 1)
  const cup = num(shape, 'cupping', 0)
  const dome = num(shape, 'dome', 0) * open
  const reach = lerp(0.5, 1, open)
  for (let i = n - 1; i >= 0; i--) {
    const k = n > 1 ? i / (n - 1) : 1
    const away = k ** lerp(1.35, 0.9, tight)
    const tip = lerp(-34, lerp(8, 108 - 60 * cup, open), k ** lerp(1.15, 0.85, tight))
    addPetal(
      b,
      f,
      {
        turn: i * GOLDEN + (random() - 0.5) * 0.5,
        out: D * (0.018 + 0.075 * k ** 0.85),
        up: D * ((0.11 + 0.1 * dome) * (1 - k ** 0.85) - 0.02),
        length: D * lerp(0.22 + 0.12 * dome, 0.445, k ** 0.8) * about(random, 0.06),
        width: D * lerp(0.17, 0.52, k ** 0.75) * (n < 20 ? 1.12 : 1),
        base: lerp(4, 47 * reach * (1 - 0.25 * cup), away) + (random() - 0.5) * 7,
        tip: tip + (random() - 0.5) * 10,
        late: lerp(0.9, 1.35, k),
        hollow: D * lerp(0.095, 0.3, k),
        opening: lerp(0.85, 1 + 0.7 * open, k),
        ruffle: D * 0.011 * ruffle * (0.6 + random()),
        waves: 3 + random() * 3,
        phase: random() * TAU,
        curl: D * 0.022 * k * open,
        fringe,
        nu: small ? 6 : n > 44 ? 7 : 9,
        nv: fringe > 0 ? 10 : small ? 4 : n > 44 ? 5 : 7,
      },
      'petal',
    )
  }
  addCap(b, f, D * 0.1, D * 0.1, 0, 'petal')
  if (num(shape, 'stamens', 0) > 0 && open > 0.4) {
    for (let i = 0; i < 16; i++) {
      const q = Math.sqrt((i + 0.5) / 16) * 0.09 * D
      const a = i * GOLDEN
      addStamen(b, f, [q * 0.4, 0, D * 0.05], [q * Math.cos(a), q * Math.sin(a), D * 0.2], D * 0.012, 'pollen')
    }
  }
  addCalyx(b, f, D * lerp(0.1, 0.075, open), D * 0.02, 5, lerp(25, 125, open), D * 0.24)
}
