import type { Vessel } from '../arrangement/index.ts'
import { type Mesh, viewAxes } from '../geometry/index.ts'
import { type Cache, keep, recall } from './cache.ts'
import { hexToLch, type Lch } from './oklch.ts'
import type { Raster } from './raster.ts'
import { meshSteps, type Steps, samplesOf, spriteBytes } from './steps.ts'
import { type Tint, tintFrom } from './tint.ts'
import type { PaintOptions, Sprite, ViewAngle } from './types.ts'
import { CUT_FACE, INSIDE, MECHANICS_PART, RIM, vesselMesh, WALL, WATER } from './vessel-mesh.ts'

/** The quiet greys of the sheet: OKLCH lightness, no chroma. Ours. */
const GREY: [Lch, Lch, Lch] = [
  [0.79, 0, 90],
  [0.84, 0, 90],
  [0.87, 0, 90],
]
const FOAM: Lch = [0.5, 0.05, 150]
const WIRE_GREY: Lch = [0.42, 0, 90]
const WATER_GREY: Lch = [0.74, 0.02, 220]
const TAPE_GREY: Lch = [0.78, 0.01, 150]
/** Share of light that a glass wall takes where it faces the eye, and where it is seen edge on. Ours. */
const GLASS_FACE = 0.07
const GLASS_EDGE = 0.5
const GLASS_RIM = 0.45
const GLASS_LINE = 0.8
const WATER_ALPHA = 0.22
/** Hatching at 45°: distance and weight of its lines, pixels, at least; mm, ordinarily. After ISO 128-3; sizes ours. */
const HATCH_MM = 3
const HATCH_LINE_MM = 0.45

const shifted = (ramp: [Lch, Lch, Lch], dl: number): [Lch, Lch, Lch] =>
  ramp.map(([l, c, h]) => [Math.max(0.05, l + dl), c, h]) as [Lch, Lch, Lch]

const tintsFor = (vessel: Vessel, own: boolean, open: boolean): Tint[] => {
  const [l, c, h] = hexToLch(vessel.colour)
  const ramp: [Lch, Lch, Lch] = own
    ? [
        [l - 0.05, c, h],
        [l, c, h],
        [Math.min(0.98, l + 0.03), c * 0.95, h],
      ]
    : GREY
  const held = vessel.mechanics === 'foam' ? FOAM : vessel.mechanics === 'tape-grid' ? TAPE_GREY : WIRE_GREY
  const still = {
    veins: 0,
    veinStrength: 0,
    leaf: 0,
    ink: 1,
    petalEdge: 1,
    hueTurn: 0,
    stem: 1,
    strength: 0.95,
    jitter: [0, 0, 0] as [number, number, number],
  }
  const tints: Tint[] = []
  tints[WALL] = tintFrom({ ...still, ramp })
  tints[RIM] = tintFrom({ ...still, ramp: shifted(ramp, 0.03) })
  // Cut open, a vessel that is filled with foam shows the foam where its inside would be.
  const filled = open && vessel.mechanics === 'foam'
  tints[INSIDE] = tintFrom({ ...still, ramp: filled ? [FOAM, FOAM, FOAM] : shifted(ramp, -0.12) })
  tints[CUT_FACE] = tintFrom({ ...still, ramp: [GREY[2], GREY[2], GREY[2]], strength: 0 })
  tints[MECHANICS_PART] = tintFrom({ ...still, ramp: [held, held, held], strength: 0.5, ink: 0.3, petalEdge: 0 })
  tints[WATER] = tintFrom({ ...still, ramp: [WATER_GREY, WATER_GREY, WATER_GREY], strength: 0.2 })
  return tints
}

/** Rules the cut face with lines at 45°, each pixel by how much of it a line covers. */
const hatch = (sprite: Sprite, raster: Raster, mesh: Mesh, samples: number, scale: number): void => {
  const period = Math.max(4, HATCH_MM * scale)
  const half = Math.max(0.5, (HATCH_LINE_MM * scale) / 2)
  for (let y = 0; y < sprite.height; y++)
    for (let x = 0; x < sprite.width; x++) {
      const t = raster.triangle[y * samples * raster.width + x * samples]!
      if (t < 0 || mesh.tissues[t] !== CUT_FACE) continue
      const along = (x + sprite.left + y + sprite.top) / Math.SQRT2
      const off = Math.abs(along - period * Math.round(along / period))
      const ink = 0.8 * Math.min(1, Math.max(0, half + 0.5 - off))
      const o = 4 * (y * sprite.width + x)
      for (let c = 0; c < 3; c++) sprite.rgba[o + c] = sprite.rgba[o + c]! * (1 - ink) + 60 * ink
    }
}

/** Lets through what is behind: least where the wall is seen edge on. The outline stays. */
const glaze = (sprite: Sprite, raster: Raster, mesh: Mesh, samples: number, angle: ViewAngle): void => {
  const { toward } = viewAxes(angle)
  const { triangle, width } = raster
  const line = samples
  for (let y = 0; y < sprite.height; y++)
    for (let x = 0; x < sprite.width; x++) {
      const i = y * samples * width + x * samples
      const o = 4 * (y * sprite.width + x) + 3
      if (sprite.rgba[o] === 0) continue
      const t = triangle[i]!
      const material = t < 0 ? WALL : mesh.tissues[t]!
      if (material === CUT_FACE || material === MECHANICS_PART) continue
      const outline =
        t < 0 ||
        triangle[i - line]! < 0 ||
        triangle[i + line]! < 0 ||
        triangle[i - line * width]! < 0 ||
        triangle[i + line * width]! < 0
      let alpha = GLASS_LINE
      if (!outline) {
        const k = 3 * mesh.triangles[3 * t]!
        const n = mesh.normals
        const facing = Math.abs(n[k]! * toward[0] + n[k + 1]! * toward[1] + n[k + 2]! * toward[2])
        const through = GLASS_FACE + (GLASS_EDGE - GLASS_FACE) * (1 - facing) ** 3
        alpha = material === WATER ? WATER_ALPHA : material === RIM ? GLASS_RIM : through
      }
      sprite.rgba[o] = sprite.rgba[o]! * alpha
    }
}

/** Is the front right quarter taken away? Only in the elevation. */
export const isCutOpen = (angle: ViewAngle, options: PaintOptions): boolean =>
  options.section && Math.abs(angle.pitch) < 0.01

/** The vessel alone, in steps, relative to the centre of its mouth. Its alpha is under 255 where it is glass. */
export function* vesselSteps(
  vessel: Vessel,
  angle: ViewAngle,
  scale: number,
  options: PaintOptions,
  cache: Cache,
): Steps<Sprite> {
  const open = isCutOpen(angle, options)
  const shape = JSON.stringify([vessel.plan, vessel.width, vessel.depth, vessel.height, vessel.profile, vessel.wall])
  const skin = [vessel.material, vessel.colour, vessel.mechanics, vessel.waterFill, options.vessel, open].join(' ')
  const key = `vessel ${shape} ${skin} ${angle.turn.toFixed(2)} ${angle.pitch.toFixed(2)} ${scale.toFixed(4)} ${options.quality}`
  const known = recall<Sprite>(cache, key)
  if (known) return known
  const mesh = vesselMesh(vessel, open ? viewAxes(angle).right : null)
  yield
  const cut = open ? { right: 0.4, toward: 0.2 } : undefined
  const tints = tintsFor(vessel, options.vessel === 'own', open)
  const { sprite, raster } = yield* meshSteps(mesh, angle, scale, options.quality, tints, 1, cut)
  const samples = samplesOf(options.quality, scale)
  if (vessel.material === 'glass') glaze(sprite, raster, mesh, samples, angle)
  hatch(sprite, raster, mesh, samples, scale)
  keep(cache, key, sprite, spriteBytes(sprite))
  return sprite
}
