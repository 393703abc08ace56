import type { Plant } from '../../catalogue/index.ts'
import type { SolidInput } from './organs.ts'

const STEPS = 24

/**
 * A straight upright stem of a plant, cut so long (mm above a mouth) that its flowering or leafy part shows with a
 * little bare stem: for plates, lists and legends. Give it to `buildSolid`.
 */
export const cutStem = (plant: Plant, openness: number, head_mm: number, seed: number): SolidInput => {
  const above = Math.max(1.3 * (plant.headLength_mm?.value ?? 0), 2.2 * head_mm, 60)
  const points = new Float32Array(3 * (STEPS + 1))
  for (let i = 0; i <= STEPS; i++) points[3 * i + 2] = -above * (1 - i / STEPS)
  return {
    plant,
    openness,
    head_mm,
    seed,
    axis: [0, 0, 1],
    curve: { points, mouthIndex: 0, above_mm: above, below_mm: 0, cut_mm: above, middle: [0, 0, -above / 2] },
    piece: 'whole',
  }
}
