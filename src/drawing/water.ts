import type { Vessel } from '../arrangement/index.ts'
import { heightFraction, innerSection, outerSection, shownHalfWidth, viewAxes, waterlineZ } from '../geometry/index.ts'
import { pixelOf } from './compose.ts'
import type { Frame, Picture, ViewAngle } from './types.ts'
import { reachAlong } from './vessel-mesh.ts'

/** Water makes what stands in it a little cooler and paler. Ours. */
const WATER_RGB = [196, 206, 212] as const
const WATER_SHARE = 0.22
const LINE_RGB = 40
const LINE_MM = 0.35

/** Lays the water, or the line of its surface, over a pixel. */
export const wet = (picture: Picture, i: number, share: number, isLine: boolean): void => {
  // Where only clear glass is, the water itself has to be seen.
  const cover = 4 * i + 3
  picture.rgba[cover] = Math.max(picture.rgba[cover]!, 255 * share)
  for (let c = 0; c < 3; c++) {
    const to = isLine ? LINE_RGB : WATER_RGB[c]!
    picture.rgba[4 * i + c] = picture.rgba[4 * i + c]! * (1 - share) + to * share
  }
}

/**
 * Draws water in the elevation: its body, and its surface as a line.
 * @param whole glass shows all of it; a vessel that is cut open shows the right half
 */
export const showWater = (picture: Picture, vessel: Vessel, angle: ViewAngle, frame: Frame, whole: boolean): void => {
  const surface = waterlineZ(vessel)
  const { right } = viewAxes(angle)
  const [centre, top] = pixelOf(frame, 0.4, surface)
  const [middle] = pixelOf(frame, 0, 0)
  const [, bottom] = pixelOf(frame, 0, -vessel.height)
  const line = Math.max(1, Math.round(frame.scale * LINE_MM))
  for (let y = Math.max(0, top); y < Math.min(picture.height, bottom); y++) {
    const z = frame.top - (y + 0.5) / frame.scale
    const f = heightFraction(vessel, Math.min(z, surface))
    const outer = outerSection(vessel, f)
    // Through a round wall that is not very thick the water reaches to the outline: every ray that gets in bends into it.
    const section = whole && vessel.plan !== 'rectangular' ? outer : innerSection(vessel, f)
    const half = whole
      ? shownHalfWidth(vessel, section, right[0], -right[1])
      : reachAlong(vessel, section, right[0], right[1])
    // Of glass, the wall itself is before the water and not in front of the vessel.
    const deep = whole
      ? shownHalfWidth(vessel, outer, -right[1], -right[0])
      : reachAlong(vessel, section, -right[1], right[0])
    if (half <= 0.4) continue
    const share = y < top + line ? 0.75 : WATER_SHARE
    const [end] = pixelOf(frame, half, 0)
    const start = whole ? 2 * middle - end : centre
    for (let x = Math.max(0, start); x < Math.min(picture.width, end); x++) {
      const i = y * picture.width + x
      // What hangs in front of the vessel is not in the water.
      if (picture.owner[i] === 0 || picture.depth[i]! > deep) continue
      wet(picture, i, share, y < top + line)
    }
  }
}
