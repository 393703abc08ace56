import { buildMesh, type Mesh, type ResolvedStem, solidInput } from '../geometry/index.ts'
import { solidKey } from './sprite.ts'

/** Coarse surfaces do: their outermost points are those of the fine ones. Ours. */
const DETAIL = 0.5
/** Directions in which the outermost point is kept. Ours: 96 miss the outline of a head by under 1 %. */
const DIRECTIONS = 96

/** Even directions on a sphere by the golden angle (π (3 − √5)). */
const directions = new Float32Array(3 * DIRECTIONS)
for (let i = 0; i < DIRECTIONS; i++) {
  const z = 1 - (2 * i + 1) / DIRECTIONS
  const r = Math.sqrt(1 - z * z)
  const a = i * Math.PI * (3 - Math.sqrt(5))
  directions.set([r * Math.cos(a), r * Math.sin(a), z], 3 * i)
}

const outermost = ({ positions }: Mesh): Float32Array => {
  const points = new Float32Array(3 * DIRECTIONS)
  for (let d = 0; d < 3 * DIRECTIONS; d += 3) {
    const [x, y, z] = [directions[d]!, directions[d + 1]!, directions[d + 2]!]
    let far = -Infinity
    let at = 0
    for (let k = 0; k < positions.length; k += 3) {
      const reach = positions[k]! * x + positions[k + 1]! * y + positions[k + 2]! * z
      if (reach > far) {
        far = reach
        at = k
      }
    }
    for (let c = 0; c < 3; c++) points[d + c] = positions[at + c] ?? 0
  }
  return points
}

/** A kilobyte each. */
const MOST_KEPT = 3000
const kept = new Map<string, Float32Array>()

/** Points on the outside of a stem, xyz, mm relative to its tip; remembered by all that its shape depends on. */
export const extentOf = (stem: ResolvedStem): Float32Array => {
  const key = solidKey(stem)
  const known = kept.get(key)
  if (known) return known
  if (kept.size >= MOST_KEPT) kept.delete(kept.keys().next().value!)
  const made = outermost(buildMesh({ ...solidInput(stem), detail: DETAIL }))
  kept.set(key, made)
  return made
}
