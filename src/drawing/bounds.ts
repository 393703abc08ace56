import type { Vessel } from '../arrangement/index.ts'
import { outerSection, PART_STRIDE, type Resolved, reachAlong, shownHalfWidth, viewAxes } from '../geometry/index.ts'
import { extentOf } from './extent.ts'
import { partsOf } from './parts.ts'
import { tipOf } from './tip.ts'
import type { Frame, ViewAngle } from './types.ts'

type Box = Omit<Frame, 'scale'>

const add = (box: Box, x: number, y: number): void => {
  if (x < box.left) box.left = x
  if (x > box.right) box.right = x
  if (y < box.bottom) box.bottom = y
  if (y > box.top) box.top = y
}

const vesselBox = (vessel: Vessel, { right, up }: ReturnType<typeof viewAxes>): Box => {
  const box = { left: Infinity, right: -Infinity, bottom: Infinity, top: -Infinity }
  const deep = Math.hypot(up[0], up[1])
  for (let i = 0; i <= 20; i++) {
    const section = outerSection(vessel, i / 20)
    const wide = shownHalfWidth(vessel, section, right[0], -right[1])
    const away = shownHalfWidth(vessel, section, -right[1], -right[0])
    const z = (i / 20 - 1) * vessel.height * up[2]
    add(box, -wide, z - away * deep)
    add(box, wide, z + away * deep)
  }
  return box
}

/**
 * The smallest upright rectangle of a view that holds everything, stems and vessel, mm. For fitting frames and for
 * sizes in words; right within about a hundredth of a head.
 * An empty arrangement gives the vessel's own.
 */
export const stillBox = (resolved: Resolved, angle: ViewAngle): Box => {
  const axes = viewAxes(angle)
  const { right, up } = axes
  const box = vesselBox(resolved.vessel, axes)
  for (const stem of resolved.stems) {
    const points = extentOf(stem)
    const [x, y, z] = tipOf(stem)
    for (let k = 0; k < points.length; k += 3) {
      const [px, py, pz] = [points[k]! + x, points[k + 1]! + y, points[k + 2]! + z]
      add(box, px * right[0] + py * right[1], px * up[0] + py * up[1] + pz * up[2])
    }
  }
  return box
}

/**
 * About the same from the stand-ins, without building a solid: a hundredth of the time. For a first sketch; the point of a
 * leaf may reach farther, by up to a sixth of the whole where a stem stands alone.
 */
export const roughBox = (resolved: Resolved, angle: ViewAngle): Box => {
  const axes = viewAxes(angle)
  const box = vesselBox(resolved.vessel, axes)
  for (const stem of resolved.stems) {
    const parts = partsOf(stem)
    for (let o = 0; o < parts.length; o += PART_STRIDE) {
      const [left, right] = reachAlong(parts, o, axes.right)
      const [bottom, top] = reachAlong(parts, o, axes.up)
      add(box, left, bottom)
      add(box, right, top)
    }
  }
  return box
}

/**
 * The frame that shows a box in the middle of so many pixels.
 * @param margin left free all round, as a share of the pixels
 */
export const fittingFrame = (box: Box, { width, height }: { width: number; height: number }, margin: number): Frame => {
  const scale = Math.min(width / (box.right - box.left), height / (box.top - box.bottom)) * (1 - 2 * margin)
  const [x, y] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2]
  const [w, h] = [width / scale / 2, height / scale / 2]
  return { left: x - w, right: x + w, bottom: y - h, top: y + h, scale }
}
