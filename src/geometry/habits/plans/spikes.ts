import type { Plan } from './index.ts'
import { flowerLeaves } from './single.ts'

/** A flowering length that ends at the tip and follows the stem. */
export const spikes: Plan = (c) => {
  const { input, shape, line, head, above, long, layout } = c
  layout.ropes.push({
    kind: input.plant.habit,
    from: line.total - Math.min(long, above * 0.96),
    to: line.total,
    width: head,
    open: input.openness,
    seed: input.seed,
    shape,
  })
  flowerLeaves(c)
  layout.stem.r1 = Math.min(layout.stem.r1 * 0.5, head * 0.06)
}
