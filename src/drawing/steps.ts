import type { Mesh } from '../geometry/index.ts'
import { occlude } from './occlusion.ts'
import { type Cut, type Raster, rasterise } from './raster.ts'
import { inksFor, shadeRaster } from './shade.ts'
import type { Tint } from './tint.ts'
import type { Quality, Sprite, ViewAngle } from './types.ts'

/** Work that lets others have their turn at every yield; the last value is what it makes. */
export type Steps<T> = Generator<undefined, T, undefined>

/** Does all steps at once. */
export const allAtOnce = <T>(steps: Steps<T>): T => {
  for (;;) {
    const { done, value } = steps.next()
    if (done) return value
  }
}

/** Fine pictures take 2 × 2 subpixels to a pixel; small ones 4 × 4, or stems and petals fall between the pixels. */
export const samplesOf = (quality: Quality, scale: number): number => (quality === 'draft' ? 1 : scale < 0.75 ? 4 : 2)

export const spriteBytes = (s: Sprite): number => s.rgba.byteLength + s.depth.byteLength

/** A mesh in colour, and the raster that it was made from. Rasterising, measuring hollows and shading are a step each. */
export function* meshSteps(
  mesh: Mesh,
  angle: ViewAngle,
  scale: number,
  quality: Quality,
  tints: readonly Tint[],
  seed: number,
  cut?: Cut,
): Steps<{ sprite: Sprite; raster: Raster }> {
  const samples = samplesOf(quality, scale)
  const inks = inksFor(scale * samples)
  const raster = rasterise(mesh, angle, scale * samples, inks.outline + 1, 2 * samples, cut)
  yield
  const hollows = quality === 'fine' ? occlude(raster, scale * samples) : null
  yield
  return { sprite: shadeRaster(raster, mesh, angle, tints, seed, samples, inks, hollows), raster }
}
