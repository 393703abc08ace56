import { outerSection, type Resolved, shownHalfWidth, widestSection } from '../../geometry/index.ts'
import type { ViewAngle } from '../types.ts'
import type { Pane } from './clip.ts'
import { copyMarks } from './copy-marks.ts'
import { shadowMarks } from './shadow-marks.ts'
import { FLAME, SOLIDS } from './solids.ts'
import { tableMarks } from './table-marks.ts'
import { thingMarks } from './thing-marks.ts'
import { tonesOn } from './tones.ts'
import type { Layer, Mark, Scene, Thing } from './types.ts'
import { type Looking, looking } from './view.ts'

/**
 * Before the arrangement is what stands nearer than the vessel's axis and is high enough to hide a part of its foot;
 * all else, a flat plate seen from a little above, lies behind whatever is over the table.
 */
const layerOf = ({ kind, at }: Thing, { vessel }: Resolved, look: Looking): Layer => {
  const beyond = look.beyond(at)
  if (beyond >= 0) return 'behind'
  const { radius, height, stands } = SOLIDS[kind]
  const section = outerSection(vessel, 0)
  const foot = -Math.min(shownHalfWidth(vessel, section, 1, 0), shownHalfWidth(vessel, section, 0, 1))
  const top = (height + stands) * look.upright + (beyond + radius) * look.level
  return top > foot * look.level + 1e-9 ? 'before' : 'behind'
}

/** Whether it would stand in front of the vessel itself. */
const hidesVessel = ({ kind, at }: Thing, { vessel }: Resolved, look: Looking): boolean => {
  const { a, b } = widestSection(vessel)
  return Math.abs(look.see(at[0], at[1], 0)[0]) < Math.max(a, b) + SOLIDS[kind].radius
}

const isCut = ({ kind, at }: Thing, look: Looking, { bottom, top }: Pane): boolean => {
  if (kind === 'dinner-plate' || kind === 'side-plate') return false
  const { radius, height, stands } = SOLIDS[kind]
  const deep = radius * look.level
  return look.see(at[0], at[1], height + stands)[1] + deep > top || look.see(at[0], at[1], 0)[1] - deep < bottom
}

export interface RoomOptions {
  /** Between two lines of hatching, mm of the view. */
  step_mm: number
  /**
   * For a composed picture of the part of the view in this pane: as a photographer would, take away what stands before the
   * vessel, and every glass, cup or candle that the upper or lower border cuts through.
   */
  composed?: Pane
}

/**
 * The room as seen under an angle, in vector pieces: first what lies behind the painted arrangement (cloth, shadows, what
 * stands beyond), then what stands before it; from the farthest to the nearest.
 */
export const roomMarks = (resolved: Resolved, whole: Scene, angle: ViewAngle, options: RoomOptions): Mark[] => {
  const look = looking(angle, resolved.vessel.height)
  const tones = tonesOn(whole.linen)
  const { composed } = options
  const taken = (thing: Thing): boolean =>
    composed !== undefined &&
    ((layerOf(thing, resolved, look) === 'before' && hidesVessel(thing, resolved, look)) ||
      isCut(thing, look, composed))
  const scene = { ...whole, things: whole.things.filter((thing) => !taken(thing)) }
  const copies = copyMarks(resolved, scene, look).map(({ beyond, of }) => ({
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
    ...tableMarks(scene, look, tones),
    ...shadowMarks(resolved, scene, look, tones, options.step_mm),
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
