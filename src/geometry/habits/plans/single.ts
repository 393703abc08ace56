import { frameAt } from '../line.ts'
import { num, word } from '../organs.ts'
import { isOutline } from '../petal.ts'
import { at, bow, GOLDEN, lerp } from '../vector.ts'
import type { Plan, PlanCase } from './index.ts'
import { leafOn } from './leaves.ts'

/** Habits whose flowers have leaves up the stem where the plant says nothing: how many, length over head, width over length. */
const LEAVES: Record<string, [number, number, number]> = {
  rosette: [3, 0.75, 0.5],
  ray: [2, 0.6, 0.42],
  quilled: [2, 0.6, 0.5],
  cup: [2, 1.9, 0.24],
  dome: [3, 0.8, 0.62],
  spike: [4, 1.6, 0.22],
  plume: [3, 0.7, 0.4],
  trumpet: [4, 0.7, 0.2],
  pincushion: [1, 0.6, 0.25],
}

/** The leaves that a flower keeps on its stem above the mouth. shape: leaves, leafLength (mm), leafRatio, leafOutline. */
export const flowerLeaves: Plan = ({ input, shape, line, random, head, above, long, layout }) => {
  const [count, over, ratio] = LEAVES[input.plant.habit] ?? [0, 0.6, 0.35]
  const n = Math.round(num(shape, 'leaves', count))
  const length = num(shape, 'leafLength', Math.min(80, Math.max(24, head * over)))
  const outline = word(shape, 'leafOutline', 'leaf')
  // Under a long inflorescence the leaves crowd into what stem is left.
  const bare = input.plant.headLength_mm ? Math.min(above * 0.93, long) : Math.min(above * 0.5, head * 0.45)
  for (let i = 0; i < n; i++) {
    const s =
      line.total - bare - (above - bare) * lerp(input.plant.headLength_mm ? 0.3 : 0.12, 0.7, n > 1 ? i / (n - 1) : 0.3)
    const l = length * lerp(0.8, 1.08, random())
    layout.leaves.push(
      leafOn(line, s, i * GOLDEN + random(), l, l * num(shape, 'leafRatio', ratio), {
        outline: isOutline(outline) ? outline : 'leaf',
        droop: 0.5,
        clear: layout.stem.r1 * 0.8,
      }),
    )
  }
}

/** How far the foot of a deep head lies below its middle, over its width. */
const deepOf = ({ input, shape }: PlanCase): number => {
  const kind = word(shape, 'kind', 'calla')
  if (input.plant.habit === 'cup') return lerp(0.5, 0.3, input.openness) * num(shape, 'tall', 1.25)
  if (kind === 'protea') return 0.42
  if (input.plant.habit !== 'spathe' || kind !== 'calla') return 0
  // A cup that hardly flares is grown until it is as wide as asked, and so is its depth; see heads/place.ts.
  const grown = lerp(1.18, lerp(1.3, 1, num(shape, 'flare', 1)), input.openness)
  return 0.62 * num(shape, 'tall', 1.5) * lerp(2.2, 1, input.openness) * grown
}

/** The stem ends at the foot of a deep head, not in its middle: its last length bends to where that is. */
const bendToFoot = (c: PlanCase): void => {
  const { f, line, head, layout } = c
  const foot = deepOf(c) * head
  if (foot === 0) return
  const { stem } = layout
  stem.until = Math.max(line.total * 0.2, line.total - 1.9 * foot)
  // It arrives along the axis of the head.
  stem.neck = bow(frameAt(line, stem.until).o, at(f, 0, 0, -1.15 * foot), at(f, 0, 0, -foot), 5).slice(1)
}

/** One head at the tip. */
export const single: Plan = (c) => {
  const { input, f, head, shape, layout, random } = c
  layout.heads.push({
    f,
    kind: input.plant.habit,
    size: head,
    open: input.openness,
    seed: input.seed + 17 * Math.floor(random() * 1000),
    shape,
    small: false,
    least: c.least,
  })
  bendToFoot(c)
  flowerLeaves(c)
}
