import type { TableShape } from '../../arrangement/index.ts'
import type { Frame, ViewAngle } from '../../drawing/index.ts'
import { cosSin } from '../../geometry/index.ts'
import type { Facts } from './facts.ts'
import { mixed } from './light.ts'
import type { Shade } from './shades.ts'
import { type Box, INK, INK2, type Item, type Place } from './types.ts'

/** A part of the sheet through which the table is seen: `frame` is the part of the view that fills `box`. */
export interface Window {
  box: Box
  frame: Frame
  angle: ViewAngle
}

const ROUND_POINTS = 180
/** The table's edge: as the table line of the sheet. */
const EDGE = 2.4
/**
 * Hatching of the shadow: distance and weight of its lines, of the sheet's width. Shorter lines
 * are left out, shorter gaps closed, mm. Ours.
 */
const HATCH = { step: 1 / 225, weight: 1 / 1300, least_mm: 5, gap_mm: 2.5 }
/** How much ink is in the hatching. Ours. */
const HATCH_INK = 0.5
/** Where the foot stands: the closer shadow's width and shift aside, of the foot's half width, and its ink. Ours. */
const CONTACT = { wide: 1.35, aside: 0.3, ink: 0.65 }

const outline = (table: TableShape): Place[] => {
  if (table.shape === 'round')
    return Array.from({ length: ROUND_POINTS }, (_, i) => {
      const a = (2 * Math.PI * i) / ROUND_POINTS
      return [(table.diameter / 2) * Math.cos(a), (table.diameter / 2) * Math.sin(a)]
    })
  const [x, y] = [table.length / 2, table.width / 2]
  return [
    [x, -y],
    [x, y],
    [-x, y],
    [-x, -y],
  ]
}

/** The part of a convex shape on one side of a level or upright line (Sutherland and Hodgman, CACM 17:32–42, 1974). */
const clipped = (points: readonly Place[], axis: 0 | 1, at: number, sign: 1 | -1): Place[] =>
  points.flatMap((p, i): Place[] => {
    const before = points[(i + points.length - 1) % points.length]!
    const inside = sign * (p[axis] - at) >= 0
    const was = sign * (before[axis] - at) >= 0
    if (inside === was) return inside ? [p] : []
    const t = (at - before[axis]) / (p[axis] - before[axis])
    const cross: Place = [before[0] + t * (p[0] - before[0]), before[1] + t * (p[1] - before[1])]
    cross[axis] = at
    return inside ? [cross, p] : [cross]
  })

/** Runs of the outline that are the table's own edge, not the window's. */
const ownEdges = (points: readonly Place[], { box }: Window): Place[][] => {
  const cut = (a: Place, b: Place): boolean =>
    (a[0] === b[0] && (a[0] === box.x || a[0] === box.x + box.w)) ||
    (a[1] === b[1] && (a[1] === box.y || a[1] === box.y + box.h))
  const runs: Place[][] = []
  points.forEach((p, i) => {
    const next = points[(i + 1) % points.length]!
    if (cut(p, next)) return
    const last = runs.at(-1)
    if (last?.at(-1) === p) last.push(next)
    else runs.push([p, next])
  })
  return runs
}

/** Stretches that overlap, or nearly meet, as one; in order. */
const joined = (spans: [number, number][], gap: number): [number, number][] => {
  const out: [number, number][] = []
  for (const span of spans.sort((a, b) => a[0] - b[0])) {
    const last = out.at(-1)
    if (last && span[0] <= last[1] + gap) last[1] = Math.max(last[1], span[1])
    else out.push([...span])
  }
  return out
}

/** Level lines over all that these shades cover of the cloth. @param first where the first line lies, of the distance */
const hatched = (
  shades: readonly Shade[],
  vesselHeight: number,
  cloth: readonly Place[],
  { box, frame, angle }: Window,
  { step, first, weight, colour }: { step: number; first: number; weight: number; colour: string },
): Item[] => {
  const [cos, sin] = cosSin(angle.pitch)
  const { scale } = frame
  const top = Math.min(...cloth.map((p) => p[1]))
  const bottom = Math.max(...cloth.map((p) => p[1]))
  const items: Item[] = []
  for (let y = (Math.ceil(top / step) + first) * step; y < bottom; y += step) {
    const up = frame.top - (y - box.y) / scale
    const away = (up + vesselHeight * cos) / sin
    const across = edgesAt(cloth, y)
    const spans = shades.flatMap(([cx, cy, w, d]): [number, number][] => {
      const q = 1 - ((away - cy) / Math.max(d, 1e-9)) ** 2
      return q <= 0 ? [] : [[cx - w * Math.sqrt(q), cx + w * Math.sqrt(q)]]
    })
    for (const [from, to] of joined(spans, HATCH.gap_mm)) {
      const a = Math.max(across[0], box.x + (from - frame.left) * scale)
      const b = Math.min(across[1], box.x + (to - frame.left) * scale)
      if (b - a > HATCH.least_mm * scale) items.push({ kind: 'line', from: [a, y], to: [b, y], weight, colour })
    }
  }
  return items
}

/** The shadow on the cloth, as an engraver would lay it: level lines, and more between them where the foot stands. */
const shadow = (facts: Facts, cloth: readonly Place[], window: Window, sheetWidth: number): Item[] => {
  const pen = { step: sheetWidth * HATCH.step, weight: sheetWidth * HATCH.weight }
  const ink = (share: number): string => mixed(facts.linen, INK, share)
  const [x, y, w, d] = facts.foot
  const close: Shade = [x + CONTACT.aside * w, y, w * CONTACT.wide, d * CONTACT.wide]
  return [
    ...hatched(facts.shades, facts.vesselHeight, cloth, window, { ...pen, first: 0, colour: ink(HATCH_INK) }),
    ...hatched([close], facts.vesselHeight, cloth, window, { ...pen, first: 0.5, colour: ink(CONTACT.ink) }),
  ]
}

/** Where a level line enters and leaves a convex shape. */
const edgesAt = (points: readonly Place[], y: number): [number, number] => {
  let [from, to] = [Infinity, -Infinity]
  points.forEach((p, i) => {
    const next = points[(i + 1) % points.length]!
    if (p[1] > y === next[1] > y) return
    const x = p[0] + ((y - p[1]) / (next[1] - p[1])) * (next[0] - p[0])
    from = Math.min(from, x)
    to = Math.max(to, x)
  })
  return [from, to]
}

/**
 * What is seen behind and under the arrangement: the cloth as far as the table goes, at its true place and size, its edge, and
 * the shadow. What else stands on a table is to be put here.
 */
export const behind = (facts: Facts, window: Window, sheetWidth: number): Item[] => {
  const { box, frame, angle } = window
  const [cos, sin] = cosSin(angle.pitch)
  const seen = outline(facts.table).map(
    ([x, y]): Place => [
      box.x + (x - frame.left) * frame.scale,
      box.y + (frame.top - y * sin + facts.vesselHeight * cos) * frame.scale,
    ],
  )
  let cloth = clipped(seen, 0, box.x, 1)
  cloth = clipped(cloth, 0, box.x + box.w, -1)
  cloth = clipped(cloth, 1, box.y, 1)
  cloth = clipped(cloth, 1, box.y + box.h, -1)
  if (cloth.length < 3) return []
  return [
    { kind: 'shape', points: cloth, fill: facts.linen },
    ...ownEdges(cloth, window).map((points): Item => ({ kind: 'path', points, weight: EDGE, colour: INK2 })),
    ...shadow(facts, cloth, window, sheetWidth),
  ]
}
