import { projectPoint, type Resolved } from '../geometry/index.ts'
import type { Cache } from './cache.ts'
import { emptyPicture, layIn, pixelOf } from './compose.ts'
import { finish } from './finish.ts'
import { layInWater } from './lay-in-water.ts'
import { waterLens } from './lens.ts'
import { showInLight } from './room-light.ts'
import { spriteSteps } from './sprite.ts'
import { allAtOnce, type Steps } from './steps.ts'
import { tipOf } from './tip.ts'
import { type Frame, type PaintOptions, type Picture, VESSEL_OWNER, type ViewAngle } from './types.ts'
import { isCutOpen, mechanicsSteps, vesselSteps } from './vessel-sprite.ts'
import { showWater } from './water.ts'
import { showWaterFromAbove } from './water-surface.ts'

/**
 * Paints an arrangement in steps, so that others may have their turn in between; the last value is the picture.
 * See paintPicture.
 */
export function* paintSteps(
  resolved: Resolved,
  angle: ViewAngle,
  frame: Frame,
  options: PaintOptions,
  cache: Cache,
): Steps<Picture> {
  const picture = emptyPicture(frame)
  const without = new Set(options.without ?? [])
  const placed = resolved.stems
    .filter((stem) => !without.has(stem.id))
    .map((stem) => ({ stem, at: projectPoint(tipOf(stem), angle) }))
    // From the farthest to the nearest, so that soft edges lie over what is behind them.
    .sort((a, b) => a.at[2] - b.at[2] || a.stem.index - b.stem.index)
  const { vessel } = resolved
  const shown = options.vessel !== 'none'
  const glass = vessel.material === 'glass'
  // A vessel that is cut open is there to be measured: all stands where it is.
  const lens = shown && !isCutOpen(angle, options) ? waterLens(vessel, angle) : null
  const [vx, vy] = pixelOf(frame, 0, 0)
  const shell = shown ? yield* vesselSteps(vessel, angle, frame.scale, options, cache) : null
  if (shell && !glass) layIn(picture, shell, vx, vy, 0, VESSEL_OWNER)
  if (shell && glass) {
    const held = yield* mechanicsSteps(vessel, angle, frame.scale, options, cache)
    // Foam lies at the wall, with no water between.
    if (lens && vessel.mechanics !== 'foam') layInWater(picture, frame, lens, held, vx, vy, 0, VESSEL_OWNER)
    else layIn(picture, held, vx, vy, 0, VESSEL_OWNER)
  }
  for (const { stem, at } of placed) {
    const sprite = yield* spriteSteps(stem, angle, frame.scale, options.quality, cache)
    const [x, y] = pixelOf(frame, at[0], at[1])
    if (lens) layInWater(picture, frame, lens, sprite, x, y, at[2], stem.index + 1)
    else layIn(picture, sprite, x, y, at[2], stem.index + 1)
    yield
  }
  if (shell && glass) layIn(picture, shell, vx, vy, 0, VESSEL_OWNER, true)
  const level = Math.abs(angle.pitch) < 0.01
  if (shell && level && (isCutOpen(angle, options) || glass)) showWater(picture, vessel, angle, frame, glass)
  if (shell && angle.pitch >= 1) showWaterFromAbove(picture, vessel, angle, frame, shell, [vx, vy])
  yield
  finish(picture, frame.scale, options.quality)
  showInLight(picture, options.light ?? 'daylight')
  return picture
}

/**
 * The whole arrangement as seen from one way, by depth: stems in front hide those behind, in part if they pass through
 * each other. Pixels whose `alpha` is 0 have depth −1e9 and owner 0.
 * @param resolved document with everything looked up
 * @param frame rectangle of the view, mm, and pixels per mm
 * @param cache kept by the caller between pictures
 */
export const paintPicture = (
  resolved: Resolved,
  angle: ViewAngle,
  frame: Frame,
  options: PaintOptions,
  cache: Cache,
): Picture => allAtOnce(paintSteps(resolved, angle, frame, options, cache))
