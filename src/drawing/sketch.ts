import type { Resolved } from '../geometry/index.ts'
import type { Cache } from './cache.ts'
import { emptyPicture } from './compose.ts'
import { paintSteps } from './paint.ts'
import type { Steps } from './steps.ts'
import type { Frame, PaintOptions, Picture, ViewAngle } from './types.ts'

/** Pixels per mm of a sketch at most: below three quarters solids are built of half as many steps (see detailFor). Ours. */
const SKETCH_SCALE = 0.7

/** How many pixels a side of a sketch's pixel takes: at least two, or it would not be the quicker one. */
export const grainOf = (scale: number): number => Math.max(2, Math.ceil(scale / SKETCH_SCALE))

/**
 * A coarse picture of the same size and frame as paintSteps makes, in a fraction of the time: painted small, every pixel
 * then laid out as a square. Place, depth and owner are right to the square, so that it can be pointed at.
 */
export function* sketchSteps(
  resolved: Resolved,
  angle: ViewAngle,
  frame: Frame,
  options: PaintOptions,
  cache: Cache,
): Steps<Picture> {
  const grain = grainOf(frame.scale)
  const whole = emptyPicture(frame)
  // Squares are counted from the origin, where sprites are laid from.
  const [x0, y0] = [Math.round(-frame.left * frame.scale), Math.round(frame.top * frame.scale)]
  const [left, above] = [Math.ceil(x0 / grain), Math.ceil(y0 / grain)]
  const [right, below] = [Math.ceil((whole.width - x0) / grain), Math.ceil((whole.height - y0) / grain)]
  const scale = frame.scale / grain
  const small = { left: -left / scale, right: right / scale, top: above / scale, bottom: -below / scale, scale }
  const picture = yield* paintSteps(resolved, angle, small, { ...options, quality: 'draft' }, cache)
  const from = new Uint32Array(picture.rgba.buffer, picture.rgba.byteOffset, picture.width * picture.height)
  const to = new Uint32Array(whole.rgba.buffer)
  for (let y = 0, o = 0; y < whole.height; y++) {
    const row = (above + Math.floor((y - y0) / grain)) * picture.width
    for (let x = 0; x < whole.width; x++, o++) {
      const i = row + left + Math.floor((x - x0) / grain)
      to[o] = from[i]!
      whole.depth[o] = picture.depth[i]!
      whole.owner[o] = picture.owner[i]!
    }
  }
  return whole
}
