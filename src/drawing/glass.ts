import type { Vessel } from '../arrangement/index.ts'
import {
  cosSin,
  heightFraction,
  innerSection,
  type Mesh,
  shownHalfWidth,
  viewAxes,
  waterlineZ,
} from '../geometry/index.ts'
import { paneShare } from './optics.ts'
import type { Raster } from './raster.ts'
import type { Sprite, ViewAngle } from './types.ts'
import { CUT_FACE, RIM, WALL } from './vessel-mesh.ts'

/** How much the outline and the rim hide. Ours. */
const LINE = 0.8
const RIM_SHARE = 0.45
/** A wall seen along itself is bright; under water it has no inner face that light would turn at. Ours. */
const EDGE = { dry: 0.62, wet: 0.2, white: 250 }
/** Its inner face, as a line: mm wide, at least a pixel, how dark. Ours. */
const INNER = { mm: 0.3, share: 0.3, grey: 96 }
/** Seen more from above than this, a wall has no sides, cosine of the pitch. Ours. */
const STEEP = 0.5
/** A window far off, in the wall that lies to the light: where, of the half width, and how bright. Ours. */
const WINDOW = { from: -0.72, to: -0.6, share: 0.3 }

/**
 * Makes a vessel's sprite one of clear glass: it lets through what is behind as Fresnel's law has it, its wall and foot show as
 * brighter edges. The outline stays.
 */
export const glaze = (
  sprite: Sprite,
  raster: Raster,
  mesh: Mesh,
  samples: number,
  vessel: Vessel,
  angle: ViewAngle,
  scale: number,
): void => {
  const { right, toward } = viewAxes(angle)
  const [cos, sin] = cosSin(angle.pitch)
  const { triangle, width } = raster
  const { rgba } = sprite
  const surface = waterlineZ(vessel)
  const foot = -vessel.height + vessel.wall
  const line = Math.max(1 / scale, INNER.mm)
  const lay = (o: number, white: number, share: number): void => {
    const alpha = rgba[o + 3]! / 255
    const all = share + alpha * (1 - share)
    for (let c = 0; c < 3; c++) rgba[o + c] = (white * share + rgba[o + c]! * alpha * (1 - share)) / all
    rgba[o + 3] = 255 * all
  }
  for (let y = 0; y < sprite.height; y++)
    for (let x = 0; x < sprite.width; x++) {
      const i = y * samples * width + x * samples
      const p = y * sprite.width + x
      const o = 4 * p
      if (rgba[o + 3] === 0) continue
      const t = triangle[i]!
      const material = t < 0 ? WALL : mesh.tissues[t]!
      if (material === CUT_FACE) continue
      const outline =
        t < 0 ||
        triangle[i - samples]! < 0 ||
        triangle[i + samples]! < 0 ||
        triangle[i - samples * width]! < 0 ||
        triangle[i + samples * width]! < 0
      if (outline) {
        rgba[o + 3] = rgba[o + 3]! * LINE
        continue
      }
      if (material === RIM) {
        rgba[o + 3] = rgba[o + 3]! * RIM_SHARE
        continue
      }
      const k = 3 * mesh.triangles[3 * t]!
      const n = mesh.normals
      const facing = Math.abs(n[k]! * toward[0] + n[k + 1]! * toward[1] + n[k + 2]! * toward[2])
      rgba[o + 3] = rgba[o + 3]! * paneShare(Math.min(1, facing))
      if (material !== WALL || cos < STEEP) continue
      const across = (sprite.left + x + 0.5) / scale
      const z = -((sprite.top + y + 0.5) / scale) * cos + sprite.depth[p]! * sin
      const section = innerSection(vessel, Math.max(heightFraction(vessel, z), vessel.wall / vessel.height))
      const half = shownHalfWidth(vessel, section, right[0], -right[1])
      const off = Math.abs(across) - half
      if (off > 0 || z < foot) lay(o, EDGE.white, z < foot || z > surface ? EDGE.dry : EDGE.wet)
      else if (across > WINDOW.from * half && across < WINDOW.to * half) lay(o, EDGE.white, WINDOW.share)
      if (z > surface && z > foot && Math.abs(off) < line / 2) lay(o, INNER.grey, INNER.share)
    }
}
