import { buildStandins, type SolidInput } from './habits/index.ts'
import type { ResolvedStem, StemCurve } from './types.ts'

/** The stem as the builders of habits want it: the curve relative to the tip. */
export const solidInput = (stem: ResolvedStem): SolidInput => {
  const { points } = stem.curve
  const n = points.length
  const moved = new Float32Array(n)
  for (let i = 0; i < n; i++) moved[i] = points[i]! - points[n - 3 + (i % 3)]!
  return {
    plant: stem.plant,
    openness: stem.openness,
    head_mm: stem.head_mm,
    seed: stem.seed,
    axis: stem.axis,
    curve: { ...stem.curve, points: moved },
    piece: stem.stem.piece,
  }
}

// Everything that a solid depends on comes with one stem object, and so with its curve: see resolve.ts.
const standins = new WeakMap<StemCurve, Float32Array>()

/** The light stand-ins alone (see STANDIN_STRIDE), mm, relative to the tip; never builds the mesh. */
export const standinsOf = (stem: ResolvedStem): Float32Array => {
  const known = standins.get(stem.curve)
  if (known) return known
  const made = buildStandins(solidInput(stem))
  standins.set(stem.curve, made)
  return made
}
