import {
  outerSection,
  PART_STRIDE,
  preparedParts,
  type Resolved,
  reachAlong,
  shownHalfWidth,
  standinsOf,
  viewAxes,
} from '../geometry/index.ts'
import { tipOf } from './paint.ts'
import type { Frame, ViewAngle } from './types.ts'

/**
 * The smallest upright rectangle of a view that holds everything, stems and vessel, mm. For fitting frames; read off the
 * light stand-ins, so a petal may reach a few mm farther.
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
    const parts = preparedParts(standinsOf(stem), tipOf(stem))
    for (let at = 0; at < parts.length; at += PART_STRIDE) {
      const [x0, x1] = reachAlong(parts, at, right)
      const [y0, y1] = reachAlong(parts, at, up)
      add(x0, y0)
      add(x1, y1)
    }
  }
  return box
}
