import type { Vessel } from '../arrangement/index.ts'
import { type Axes, type Grid, type Layer, VESSEL_PIXEL } from './raster.ts'
import { outerSection, reachIn, shownHalfWidth } from './vessel.ts'

const put = (layer: Layer, i: number, front: number, back: number): void => {
  if (front > layer.depth[i]!) {
    layer.depth[i] = front
    layer.owner[i] = VESSEL_PIXEL
  }
  if (layer.back && -back > layer.back.depth[i]!) {
    layer.back.depth[i] = -back
    layer.back.owner[i] = VESSEL_PIXEL
  }
}

/**
 * Paints the vessel's body as seen level from any side: nearest and farthest surface at every pixel. Glass too, since
 * nothing that is measured lies inside a vessel.
 */
export const splatVessel = (layer: Layer, grid: Grid, axes: Axes, vessel: Vessel): void => {
  const { width, mm, zeroRow } = grid
  const [c, s] = [axes.right[0]!, -axes.right[1]!]
  const r0 = Math.max(0, Math.ceil(-vessel.height / mm + zeroRow - 0.5))
  for (let r = r0; r < zeroRow; r++) {
    const section = outerSection(vessel, ((r + 0.5 - zeroRow) * mm + vessel.height) / vessel.height)
    const half = shownHalfWidth(vessel, section, c, s)
    const c0 = Math.max(0, Math.ceil(-half / mm + width / 2 - 0.5))
    const c1 = Math.min(width - 1, Math.floor(half / mm + width / 2 - 0.5))
    for (let col = c0; col <= c1; col++) {
      const X = (col + 0.5 - width / 2) * mm
      const [near, far] = chord(vessel, section.a, section.b, X, c, s)
      put(layer, r * width + col, -near, -far)
    }
  }
}

/** Least and greatest Y (away from the eye) of a section along the line of sight at X. */
const chord = (vessel: Vessel, a: number, b: number, X: number, c: number, s: number): [number, number] => {
  if (vessel.plan === 'rectangular') {
    // x = X c + Y s lies within ±a, y = −X s + Y c within ±b.
    let [low, high] = [-1e6, 1e6]
    for (const [from, step, edge] of [
      [X * c, s, a],
      [-X * s, c, b],
    ] as const) {
      if (Math.abs(step) < 1e-9) continue
      const [p, q] = [(-edge - from) / step, (edge - from) / step]
      low = Math.max(low, Math.min(p, q))
      high = Math.min(high, Math.max(p, q))
    }
    return low <= high ? [low, high] : [0, 0]
  }
  const sxx = a * a * c * c + b * b * s * s
  if (sxx <= 0) return [0, 0]
  const sxy = (a * a - b * b) * c * s
  const middle = (sxy / sxx) * X
  const root = ((a * b) / Math.sqrt(sxx)) * Math.sqrt(Math.max(0, 1 - (X * X) / sxx))
  return [middle - root, middle + root]
}

/** Paints the vessel as seen from above: the mouth with what is in it at the height of the rim, and any wider body. */
export const splatVesselPlan = (layer: Layer, grid: Grid, vessel: Vessel): void => {
  const { width, height, mm, zeroRow } = grid
  const levels = 24
  // From the rim down: most of what is lower lies under what is already painted, and is not asked about.
  for (let k = levels; k >= 0; k--) {
    const f = k / levels
    const section = outerSection(vessel, f)
    const z = (f - 1) * vessel.height
    for (let r = 0; r < height; r++) {
      const y = (r + 0.5 - zeroRow) * mm
      if (Math.abs(y) > section.b) continue
      const half = Math.min(width / 2, Math.ceil(section.a / mm) + 1)
      for (let col = Math.floor(width / 2 - half); col < width / 2 + half; col++) {
        const i = r * width + col
        if (layer.depth[i]! >= z) continue
        const x = (col + 0.5 - width / 2) * mm
        if (reachIn(vessel, section, x, y) <= 1) put(layer, i, z, z)
      }
    }
  }
}
