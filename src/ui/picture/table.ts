import {
  clipLine,
  clipShape,
  ellipsePoints,
  type Frame,
  type Layer,
  type Place,
  roomMarks,
  type ViewAngle,
  wallIn,
} from '../../drawing/index.ts'
import { projectPoint } from '../../geometry/index.ts'
import type { Facts } from './facts.ts'
import type { Box, Item } from './types.ts'

/** A part of the sheet through which the table is seen: `frame` is the part of the view that fills `box`. */
export interface Window {
  box: Box
  frame: Frame
  angle: ViewAngle
}

/** Thinner where the table is small on the sheet: of the hairline, by px per mm of a sheet of A4. Ours. */
const hairAt = (scale: number): number => Math.min(1, 0.4 + 0.18 * scale)
/** A hairline, and from one line of hatching to the next, of the sheet's width. Ours. */
const HAIR = 1 / 1240
const HATCH = 1 / 225

/** Where the table ends toward the viewer, mm of the view from the centre of the vessel's mouth. */
export const nearEdge = ({ room: { resolved, scene } }: Facts, angle: ViewAngle): number => {
  const { table } = scene
  const deep = table.shape === 'round' ? table.diameter : table.width
  return projectPoint([0, -deep / 2, -resolved.vessel.height], angle)[1]
}

/**
 * The table and what stands on it, at its true place and size: `behind` is to be drawn before the arrangement, `before` over
 * it. Nothing stands before the vessel itself, no glass is cut in two; a plate that the window does not wholly show is cut off.
 */
export const tableItems = (
  { room: { resolved, scene }, light }: Facts,
  { box, frame, angle }: Window,
  sheetWidth: number,
): Record<Layer, Item[]> => {
  const place = ([x, y]: Place): Place => [
    box.x + (x - frame.left) * frame.scale,
    box.y + (frame.top - y) * frame.scale,
  ]
  const pane = { left: box.x, right: box.x + box.w, bottom: box.y, top: box.y + box.h }
  const items: Record<Layer, Item[]> = { behind: [], before: [] }
  const hair = sheetWidth * HAIR * hairAt((frame.scale * 2480) / sheetWidth)
  const step_mm = (sheetWidth * HATCH) / frame.scale
  for (const mark of roomMarks(resolved, scene, angle, { step_mm, composed: frame, wall: wallIn(light) })) {
    const into = items[mark.layer]
    const all = (mark.kind === 'ellipse' ? ellipsePoints(mark) : mark.points).map(place)
    if (mark.kind === 'polygon') {
      const points = clipShape(all, pane)
      if (points.length > 0) into.push({ kind: 'shape', points, fill: mark.fill })
      continue
    }
    const pen = { weight: mark.weight * hair, colour: mark.colour }
    for (const points of clipLine(all, pane))
      into.push(
        points.length === 2
          ? { kind: 'line', from: points[0]!, to: points[1]!, ...pen }
          : { kind: 'path', points, ...pen },
      )
  }
  return items
}
