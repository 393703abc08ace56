import { outerSection, type Resolved, shownHalfWidth, viewAxes } from '../geometry/index.ts'
import { extentOf } from './extent.ts'
import { tipOf } from './paint.ts'
import type { Frame, ViewAngle } from './types.ts'

/**
 * The smallest upright rectangle of a view that holds everything, stems and vessel, mm. For fitting frames and for
 * sizes in words; right within about a hundredth of a head.
 * An empty arrangement gives the vessel's own.
 */
export const stillBox = (resolved: Resolved, angle: ViewAngle): Omit<Frame, 'scale'> => {
  const { right, up } = viewAxes(angle)
  const box = { left: Infinity, right: -Infinity, bottom: Infinity, top: -Infinity }
  const add = (x: number, y: number): void => {
    if (x < box.left) box.left = x
    if (x > box.right) box.right = x
    if (y < box.bottom) box.bottom = y
    if (y > box.top) box.top = y
  }
  const { vessel } = resolved
  const deep = Math.hypot(up[0], up[1])
  for (let i = 0; i <= 20; i++) {
    const section = outerSection(vessel, i / 20)
    const wide = shownHalfWidth(vessel, section, right[0], -right[1])
    const away = shownHalfWidth(vessel, section, -right[1], -right[0])
    const z = (i / 20 - 1) * vessel.height * up[2]
    add(-wide, z - away * deep)
    add(wide, z + away * deep)
  }
  for (const stem of resolved.stems) {
    const points = extentOf(stem)
    const [x, y, z] = tipOf(stem)
    for (let k = 0; k < points.length; k += 3) {
      const [px, py, pz] = [points[k]! + x, points[k + 1]! + y, points[k + 2]! + z]
      add(px * right[0] + py * right[1], px * up[0] + py * up[1] + pz * up[2])
    }
  }
  return box
}
