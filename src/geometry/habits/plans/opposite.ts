import { num, word } from '../organs.ts'
import { isOutline } from '../petal.ts'
import { about, lerp } from '../vector.ts'
import type { Plan } from './index.ts'
import { leafOn } from './leaves.ts'

/** Pairs of leaves, each turned a quarter from the last, smaller toward the tip. shape: pairs, ratio, outline, spread. */
export const oppositeLeaves: Plan = ({ line, shape, random, head, above, long, layout }) => {
  const leafy = Math.min(long, above * 0.95)
  const pairs = Math.max(3, Math.round(num(shape, 'pairs', Math.min(10, Math.max(5, leafy / 24)))))
  const length = head * 0.52
  const ratio = num(shape, 'ratio', 0.8)
  const outline = word(shape, 'outline', 'disc')
  for (let i = 0; i < pairs; i++) {
    const k = i / (pairs - 1)
    const s = line.total - leafy * (1 - 0.985 * k ** 0.92)
    const size = lerp(1, 0.42, k ** 1.3)
    for (let side = 0; side < 2; side++) {
      const turn = (i % 2) * (Math.PI / 2) + side * Math.PI + (random() - 0.5) * 0.5 + 0.5
      const l = length * size * about(random, 0.08)
      layout.leaves.push(
        leafOn(line, s, turn, l, l * ratio, {
          outline: isOutline(outline) ? outline : 'disc',
          fold: 0.14,
          droop: 0.15 * random(),
          stalk: 0.14,
          spread: lerp(num(shape, 'spread', 1), 0.5, k),
        }),
      )
    }
  }
  layout.stem.r1 *= 0.4
}
