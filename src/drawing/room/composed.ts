import { outerSection, PART_STRIDE, type Resolved, shownHalfWidth, widestSection } from '../../geometry/index.ts'
import { partsOf } from '../parts.ts'
import type { ViewAngle } from '../types.ts'
import type { Pane } from './clip.ts'
import { partOutline } from './copy-marks.ts'
import { FLAME, SOLIDS } from './solids.ts'
import type { Layer, Place, Scene, Thing, ThingKind } from './types.ts'
import { type Looking, looking } from './view.ts'

/**
 * Before the arrangement is what stands nearer than the vessel's axis and is high enough to hide a part of its foot;
 * all else, a flat plate seen from a little above, lies behind whatever is over the table.
 */
export const layerOf = ({ kind, at }: Thing, { vessel }: Resolved, look: Looking): Layer => {
  const beyond = look.beyond(at)
  if (beyond >= 0) return 'behind'
  const { radius, height, stands } = SOLIDS[kind]
  const section = outerSection(vessel, 0)
  const foot = -Math.min(shownHalfWidth(vessel, section, 1, 0), shownHalfWidth(vessel, section, 0, 1))
  const top = (height + stands) * look.upright + (beyond + radius) * look.level
  return top > foot * look.level + 1e-9 ? 'before' : 'behind'
}

const isFlat = (kind: ThingKind): boolean => kind === 'dinner-plate' || kind === 'side-plate' || kind === 'saucer'

/** What comes first where two would stand in each other's way. Ours. */
const FIRST: readonly ThingKind[] = ['candle', 'cup', 'wine-glass', 'water-glass']
/** Of what stands upright so much may be hidden by flowers, or be crossed by another thing. Ours. */
const HIDDEN = 0.3
const CROSSED = 0.1
/** An upright thing keeps so far from the sides of the picture. Ours. */
const INSIDE_mm = 4
/** A plate of which less is seen than this is a sliver at the edge. Ours. */
const SLIVER = 0.12
/** Points at which is looked for what covers a thing. Ours. */
const ACROSS = 6
const UP = 10

/** The upright box about a thing as seen. */
const paneOf = ({ kind, at }: Thing, look: Looking): Pane => {
  const { radius, height, stands } = SOLIDS[kind]
  const deep = radius * look.level
  const [x, foot] = look.see(at[0], at[1], 0)
  const flame = kind === 'candle' ? FLAME.wick + FLAME.height : 0
  const top = look.see(at[0], at[1], height + stands + flame)[1]
  return { left: x - radius, right: x + radius, bottom: foot - deep, top: top + deep }
}

const areaOf = ({ left, right, bottom, top }: Pane): number => Math.max(0, right - left) * Math.max(0, top - bottom)
const common = (a: Pane, b: Pane): Pane => ({
  left: Math.max(a.left, b.left),
  right: Math.min(a.right, b.right),
  bottom: Math.max(a.bottom, b.bottom),
  top: Math.min(a.top, b.top),
})

/** Whether a convex outline, either way round, holds a point. */
const holds = (outline: readonly Place[], [x, y]: Place): boolean => {
  let sign = 0
  for (let i = 0; i < outline.length; i++) {
    const [a, b] = [outline[i]!, outline[(i + 1) % outline.length]!]
    const side = (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])
    if (side * sign < 0) return false
    if (side !== 0) sign = side
  }
  return true
}

/** How much of a pane plants cover, by points spread evenly over it. */
const coverOf = ({ stems }: Resolved, look: Looking): ((pane: Pane) => number) => {
  const outlines = stems.flatMap((stem) => {
    const parts = partsOf(stem)
    return Array.from({ length: parts.length / PART_STRIDE }, (_, i) => {
      const outline = partOutline(parts, i * PART_STRIDE, look.angle)
      const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)]
      return {
        outline,
        pane: { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) },
      }
    })
  })
  return (pane) => {
    const near = outlines.filter((o) => areaOf(common(o.pane, pane)) > 0)
    if (near.length === 0) return 0
    let covered = 0
    for (let i = 0; i < ACROSS; i++)
      for (let k = 0; k < UP; k++) {
        const point: Place = [
          pane.left + ((i + 0.5) / ACROSS) * (pane.right - pane.left),
          pane.bottom + ((k + 0.5) / UP) * (pane.top - pane.bottom),
        ]
        if (near.some(({ outline }) => holds(outline, point))) covered++
      }
    return covered / (ACROSS * UP)
  }
}

/**
 * The table as a photographer would clear it for a picture of the part of the view in this pane. Taken away is what stands
 * before the vessel; what the upper or lower border cuts, and an upright thing that a side border cuts; a glass before the
 * flowers whose guest's plate is not seen; and of upright things that cross each other, or that the flowers hide, the less wanted.
 */
export const composedScene = (resolved: Resolved, scene: Scene, angle: ViewAngle, pane: Pane): Scene => {
  const look = looking(angle, resolved.vessel.height)
  const cover = coverOf(resolved, look)
  const { a, b } = widestSection(resolved.vessel)
  const widest = Math.max(a, b)
  const seen = scene.things.map((thing) => ({ thing, own: paneOf(thing, look) }))
  const whole = seen.filter(({ thing, own }) => {
    if (own.bottom < pane.bottom || own.top > pane.top) return false
    if (isFlat(thing.kind)) return areaOf(common(own, pane)) > SLIVER * areaOf(own)
    if (own.left < pane.left + INSIDE_mm || own.right > pane.right - INSIDE_mm) return false
    return !(
      layerOf(thing, resolved, look) === 'before' &&
      Math.abs((own.left + own.right) / 2) < widest + SOLIDS[thing.kind].radius
    )
  })
  const served = new Set(
    whole.flatMap(({ thing, own }) => {
      const middle = (own.left + own.right) / 2
      return isFlat(thing.kind) && middle > pane.left && middle < pane.right ? [thing.seat] : []
    }),
  )
  const upright = whole
    .filter(
      ({ thing }) =>
        !isFlat(thing.kind) && (thing.seat === undefined || served.has(thing.seat) || look.beyond(thing.at) > 0),
    )
    .sort((p, q) => FIRST.indexOf(p.thing.kind) - FIRST.indexOf(q.thing.kind))
  const kept: typeof upright = []
  for (const one of upright) {
    const area = areaOf(one.own)
    const crossed = kept.some((other) => areaOf(common(one.own, other.own)) > CROSSED * area)
    if (!crossed && cover(one.own) <= HIDDEN) kept.push(one)
  }
  const those = new Set([...whole.filter(({ thing }) => isFlat(thing.kind)), ...kept].map(({ thing }) => thing))
  return { ...scene, things: scene.things.filter((thing) => those.has(thing)) }
}
