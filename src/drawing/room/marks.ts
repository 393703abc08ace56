import type { Resolved } from '../../geometry/index.ts'
import type { ViewAngle } from '../types.ts'
import type { Pane } from './clip.ts'
import { composedScene, layerOf } from './composed.ts'
import { copyMarks } from './copy-marks.ts'
import { shadowMarks } from './shadow-marks.ts'
import { FLAME, SOLIDS } from './solids.ts'
import { tableMarks } from './table-marks.ts'
import { thingMarks } from './thing-marks.ts'
import { tonesOn, WALL } from './tones.ts'
import type { Mark, Scene } from './types.ts'
import { type Looking, looking } from './view.ts'

export interface RoomOptions {
  /** Between two lines of hatching, mm of the view. */
  step_mm: number
  /**
   * For a composed picture of the part of the view in this pane: cleared as `composedScene` says.
   */
  composed?: Pane
  /** The wall behind it, #rrggbb as in daylight, if it is not the paper. */
  wall?: string
}

/**
 * The cloth as seen under an angle, with the shadows of all that stands on it; from the farthest to the nearest.
 * @param step_mm between two lines of hatching, mm of the view
 */
export const clothMarks = (resolved: Resolved, scene: Scene, angle: ViewAngle, step_mm: number): Mark[] => {
  const look = looking(angle, resolved.vessel.height)
  const tones = tonesOn(scene.linen)
  return [...tableMarks(scene, look, tones), ...shadowMarks(resolved, scene, look, tones, step_mm)]
}

/**
 * The room as seen under an angle, in vector pieces: first what lies behind the painted arrangement (cloth, shadows, what
 * stands beyond), then what stands before it; from the farthest to the nearest.
 */
export const roomMarks = (resolved: Resolved, whole: Scene, angle: ViewAngle, options: RoomOptions): Mark[] => {
  const look = looking(angle, resolved.vessel.height)
  const { composed, wall = WALL } = options
  const tones = tonesOn(whole.linen, wall)
  const scene = composed ? composedScene(resolved, whole, angle, composed) : whole
  const copies = copyMarks(resolved, scene, look, wall).map(({ beyond, of }) => ({
    beyond,
    marks: of(beyond < -1e-6 ? 'before' : 'behind'),
  }))
  const things = scene.things.map((thing) => {
    const layer = layerOf(thing, resolved, look)
    // A cup comes after the saucer it stands in.
    const beyond = look.beyond(thing.at) - (thing.kind === 'cup' ? 1e-3 : 0)
    return { beyond, marks: thingMarks(thing, look, layer, tones) }
  })
  const standing = [...copies, ...things].sort((a, b) => b.beyond - a.beyond).flatMap(({ marks }) => marks)
  return [
    ...clothMarks(resolved, scene, angle, options.step_mm),
    ...standing.filter(({ layer }) => layer === 'behind'),
    ...standing.filter(({ layer }) => layer === 'before'),
  ]
}

/** What holds the whole table as seen and what stands on it besides the flowers, mm; the cloth that hangs is left out. */
export const roomBox = (scene: Scene, angle: ViewAngle, vesselHeight: number) => {
  const look = looking(angle, vesselHeight)
  const { table } = scene
  const [w, d] = table.shape === 'round' ? [table.diameter, table.diameter] : [table.length, table.width]
  const turned = viewExtent(w / 2, d / 2, table.shape === 'round', look)
  const foot = look.see(0, 0, 0)[1]
  const tops = scene.things.map(({ kind, at }) => {
    const { radius, height, stands } = SOLIDS[kind]
    const flame = kind === 'candle' ? FLAME.wick + FLAME.height : 0
    return look.see(at[0], at[1], height + stands + flame)[1] + radius * look.level
  })
  return {
    left: -turned.wide,
    right: turned.wide,
    bottom: foot - turned.deep * look.level,
    top: Math.max(foot + turned.deep * look.level, ...tops),
  }
}

const viewExtent = (w: number, d: number, round: boolean, look: Looking): { wide: number; deep: number } => {
  if (round) return { wide: w, deep: d }
  const corners = [
    [w, d],
    [w, -d],
  ] as const
  return {
    wide: Math.max(...corners.map(([x, y]) => Math.abs(look.see(x, y, 0)[0]))),
    deep: Math.max(...corners.map(([x, y]) => Math.abs(look.beyond([x, y])))),
  }
}
