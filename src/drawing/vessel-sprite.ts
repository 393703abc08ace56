import type { Vessel } from '../arrangement/index.ts'
import { type Mesh, viewAxes } from '../geometry/index.ts'
import { type Cache, keep, recall } from './cache.ts'
import { glaze } from './glass.ts'
import { hexToLch, type Lch } from './oklch.ts'
import type { Raster } from './raster.ts'
import { meshSteps, type Steps, samplesOf, spriteBytes } from './steps.ts'
import { type Tint, tintFrom } from './tint.ts'
import type { PaintOptions, Sprite, ViewAngle } from './types.ts'
import { CUT_FACE, INSIDE, MECHANICS_PART, mechanicsMesh, PINS, RIM, vesselMesh, WALL } from './vessel-mesh.ts'

/** The quiet greys of the sheet: OKLCH lightness, no chroma. Ours. */
const GREY: [Lch, Lch, Lch] = [
  [0.79, 0, 90],
  [0.84, 0, 90],
  [0.87, 0, 90],
]
const FOAM: Lch = [0.5, 0.05, 150]
const WIRE_GREY: Lch = [0.42, 0, 90]
const BRASS: Lch = [0.74, 0.07, 88]
const TAPE_GREY: Lch = [0.78, 0.01, 150]
/** Hatching at 45°: distance and weight of its lines, pixels, at least; mm, ordinarily. After ISO 128-3; sizes ours. */
const HATCH_MM = 3
const HATCH_LINE_MM = 0.45

const STILL = {
  veins: 0,
  veinStrength: 0,
  leaf: 0,
  ink: 1,
  petalEdge: 1,
  glow: 0,
  rib: 0,
  lateral: 0,
  margin: 0,
  under: 0,
  hueTurn: 0,
  stem: 1,
  strength: 0.95,
  jitter: [0, 0, 0] as [number, number, number],
}

/** Tints of what holds the stems, by what it is of. */
const mechanicsTints = (vessel: Vessel): Tint[] => {
  const held = vessel.mechanics === 'foam' ? FOAM : vessel.mechanics === 'tape-grid' ? TAPE_GREY : WIRE_GREY
  const plain = { ...STILL, strength: 0.5, ink: 0.3, petalEdge: 0 }
  const tints: Tint[] = []
  tints[MECHANICS_PART] = tintFrom({ ...plain, ramp: [held, held, held] })
  tints[PINS] = tintFrom({ ...plain, ramp: [held, BRASS, BRASS] })
  return tints
}

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
  const tints = mechanicsTints(vessel)
  tints[WALL] = tintFrom({ ...STILL, ramp })
  tints[RIM] = tintFrom({ ...STILL, ramp: shifted(ramp, 0.03) })
  // Cut open, a vessel that is filled with foam shows the foam where its inside would be.
  const filled = open && vessel.mechanics === 'foam'
  tints[INSIDE] = tintFrom({ ...STILL, ramp: filled ? [FOAM, FOAM, FOAM] : shifted(ramp, -0.12) })
  tints[CUT_FACE] = tintFrom({ ...STILL, ramp: [GREY[2], GREY[2], GREY[2]], strength: 0 })
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

/** Is the front right quarter taken away? Only in the elevation. */
export const isCutOpen = (angle: ViewAngle, options: PaintOptions): boolean =>
  options.section && Math.abs(angle.pitch) < 0.01

const shapeOf = ({ plan, width, depth, height, profile, wall }: Vessel): string =>
  JSON.stringify([plan, width, depth, height, profile, wall])
const viewOf = ({ turn, pitch }: ViewAngle, scale: number, { quality }: PaintOptions): string =>
  `${turn.toFixed(2)} ${pitch.toFixed(2)} ${scale.toFixed(4)} ${quality}`

/** What holds the stems in a glass vessel, by itself: it is seen through the wall. Relative to the centre of the mouth. */
export function* mechanicsSteps(
  vessel: Vessel,
  angle: ViewAngle,
  scale: number,
  options: PaintOptions,
  cache: Cache,
): Steps<Sprite> {
  const key = `mechanics ${shapeOf(vessel)} ${vessel.mechanics} ${viewOf(angle, scale, options)}`
  const known = recall<Sprite>(cache, key)
  if (known) return known
  const { sprite } = yield* meshSteps(mechanicsMesh(vessel), angle, scale, options.quality, mechanicsTints(vessel), 1)
  keep(cache, key, sprite, spriteBytes(sprite))
  return sprite
}

/** The vessel alone, in steps, relative to the centre of its mouth. Its alpha is under 255 where it is glass. */
export function* vesselSteps(
  vessel: Vessel,
  angle: ViewAngle,
  scale: number,
  options: PaintOptions,
  cache: Cache,
): Steps<Sprite> {
  const open = isCutOpen(angle, options)
  const skin = [vessel.material, vessel.colour, vessel.mechanics, vessel.waterFill, options.vessel, open].join(' ')
  const key = `vessel ${shapeOf(vessel)} ${skin} ${viewOf(angle, scale, options)}`
  const known = recall<Sprite>(cache, key)
  if (known) return known
  const mesh = vesselMesh(vessel, open ? viewAxes(angle).right : null)
  yield
  const cut = open ? { right: 0.4, toward: 0.2 } : undefined
  const tints = tintsFor(vessel, options.vessel === 'own', open)
  const { sprite, raster } = yield* meshSteps(mesh, angle, scale, options.quality, tints, 1, cut)
  const samples = samplesOf(options.quality, scale)
  if (vessel.material === 'glass') glaze(sprite, raster, mesh, samples, vessel, angle, scale)
  hatch(sprite, raster, mesh, samples, scale)
  keep(cache, key, sprite, spriteBytes(sprite))
  return sprite
}
