import type { Point3 } from '../arrangement/index.ts'
import {
  createLayer,
  type Layer,
  preparedParts,
  type Resolved,
  type ResolvedStem,
  splatParts,
  standinsOf,
  stemOf,
  TISSUES,
  viewAxes,
} from '../geometry/index.ts'
import type { Cache } from './cache.ts'
import { emptyPicture, layIn, pixelOf } from './compose.ts'
import { partsOf } from './parts.ts'
import { showInLight } from './room-light.ts'
import { LIGHT } from './shade.ts'
import type { Steps } from './steps.ts'
import { ALONG, mixTint, SHADE_FROM, SHADE_TO, SHADES, type Tint, VARIANTS } from './tint.ts'
import { tintsOf } from './tints.ts'
import { tipOf } from './tip.ts'
import { type Frame, type PaintOptions, type Picture, VESSEL_OWNER, type ViewAngle } from './types.ts'
import { vesselSteps } from './vessel-sprite.ts'

/** Tissue that each kind of stand-in is coloured as: bloom, leaf, stem. */
const TISSUE_OF = [TISSUES.indexOf('petal'), TISSUES.indexOf('leaf'), TISSUES.indexOf('stem')] as const
/** One shade in eight is mixed: mixing takes time, and masses need no more. Ours. */
const EVERY = 8
/** Stems painted at one go before others have their turn. */
const STEMS_A_STEP = 40

/** How depth changes from a pixel to the next by `step`, as far as that belongs to the same part; mm a pixel. */
const slopeAt = (owner: Uint16Array, depth: Float32Array, i: number, step: number): number => {
  const code = owner[i]
  const here = depth[i]!
  const [hasAfter, hasBefore] = [owner[i + step] === code, owner[i - step] === code]
  if (hasAfter && hasBefore) return (depth[i + step]! - here + (here - depth[i - step]!)) / 2
  if (hasAfter) return depth[i + step]! - here
  return hasBefore ? here - depth[i - step]! : 0
}

/** Where one pixel's surface lies to the light. */
const shadeAt = ({ owner, depth }: Layer, i: number, width: number, perMm: number): number => {
  const x = slopeAt(owner, depth, i, 1) * perMm
  const y = slopeAt(owner, depth, i, width) * perMm
  const lit = (LIGHT[2] - LIGHT[0] * x - LIGHT[1] * y) / Math.sqrt(1 + x * x + y * y)
  return SHADE_FROM + (SHADE_TO - SHADE_FROM) * Math.min(1, Math.max(0.2, 0.42 + 0.45 * lit))
}

const colourOf = (tint: Tint, variant: number, shade: number): number => {
  const at = Math.min(
    SHADES - 1,
    EVERY * Math.round(((shade - SHADE_FROM) / (SHADE_TO - SHADE_FROM)) * (SHADES / EVERY)),
  )
  const along = ALONG >> 1
  return tint.table[(variant * ALONG + along) * SHADES + at] || mixTint(tint, variant, along, at)
}

/** A stem's stand-ins, so far to the left as the frame's middle lies to the right; mostly that is nowhere. */
const partsBeside = (stem: ResolvedStem, beside: number, right: Point3): Float64Array => {
  if (beside === 0) return partsOf(stem)
  const [x, y, z] = tipOf(stem)
  return preparedParts(standinsOf(stem), [x - beside * right[0], y - beside * right[1], z - beside * right[2]])
}

/**
 * Blocks the masses in: the light stand-ins of all stems in their colours, by depth, before any flower is built. The same
 * size and frame as paintSteps makes, in a hundredth of the time; place, depth and owner are right, so that it can be
 * pointed at.
 */
export function* sketchSteps(
  resolved: Resolved,
  angle: ViewAngle,
  frame: Frame,
  options: PaintOptions,
  cache: Cache,
): Steps<Picture> {
  const picture = emptyPicture(frame)
  const { width, height } = picture
  const { scale } = frame
  const without = new Set(options.without ?? [])
  const axes = viewAxes(angle)
  const layer = createLayer(width * height, false, false)
  const grid = { width, height, mm: 1 / scale, zeroRow: height - frame.top * scale }
  // The grid has its middle at 0: everything is moved by as much as the frame's middle lies beside it.
  const beside = width / 2 / scale + frame.left
  let done = 0
  for (const stem of resolved.stems) {
    if (without.has(stem.id)) continue
    splatParts(layer, grid, axes, partsBeside(stem, beside, axes.right), stem.index)
    if (++done % STEMS_A_STEP === 0) yield
  }
  yield
  const tints: Tint[][] = []
  for (const { index, plant, colour, seed } of resolved.stems) tints[index] = tintsOf(plant, colour, seed)
  const rgba = new Uint32Array(picture.rgba.buffer)
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const i = row * width + column
      const code = layer.owner[i]!
      if (code === 0) continue
      const stem = stemOf(code)
      const tint = tints[stem]![TISSUE_OF[(code - 1) & 3]!]!
      // Row 0 of the layer is the lowest, of the picture the highest.
      const to = (height - 1 - row) * width + column
      rgba[to] = colourOf(tint, stem % VARIANTS, shadeAt(layer, i, width, scale))
      picture.depth[to] = layer.depth[i]!
      picture.owner[to] = stem + 1
    }
  }
  yield
  if (options.vessel !== 'none') {
    const [vx, vy] = pixelOf(frame, 0, 0)
    const glass = resolved.vessel.material === 'glass'
    layIn(picture, yield* vesselSteps(resolved.vessel, angle, scale, options, cache), vx, vy, 0, VESSEL_OWNER, glass)
  }
  showInLight(picture, options.light ?? 'daylight')
  return picture
}
