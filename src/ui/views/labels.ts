import type { Point2 } from '../../arrangement/index.ts'

/** A rectangle on the sheet, CSS px. */
export interface Box {
  x: number
  y: number
  width: number
  height: number
}

export interface Asked {
  /** What the leader points at. */
  anchor: Point2
  /** How far from the anchor the leader starts (the radius of a circle, half of a head). */
  clear: number
  width: number
  height: number
}

export const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height

const ends = (a: number, b: number, from: number, to: number): [number, number] | null => {
  if (a === b) return a >= from && a <= to ? [0, 1] : null
  const [p, q] = [(from - a) / (b - a), (to - a) / (b - a)]
  return p < q ? [p, q] : [q, p]
}

/** Whether a line through these points goes through a rectangle (each piece clipped by Liang and Barsky's rule, 1984). */
export const crosses = (points: readonly Point2[], { x, y, width, height }: Box): boolean =>
  points.some((to, i) => {
    const from = points[i - 1]
    if (!from) return false
    const [across, up] = [ends(from[0], to[0], x, x + width), ends(from[1], to[1], y, y + height)]
    if (!across || !up) return false
    return Math.max(across[0], up[0], 0) <= Math.min(across[1], up[1], 1)
  })

const DISTANCES = [26, 44, 66, 92, 122, 156, 194, 236]
const WAYS = 16

/**
 * Finds free paper for words beside what they name: tries rings of growing distance, to the right and up first.
 * @param isFree whether nothing is drawn in a rectangle
 * @param within the rectangle of the sheet that words may stand in
 * @returns the place of the words, or null when there is no free paper near enough
 */
export const placeLabel = (asked: Asked, within: Box, isFree: (box: Box) => boolean): Box | null => {
  const { anchor, clear, width, height } = asked
  for (const away of DISTANCES)
    for (let i = 0; i < WAYS; i++) {
      // From 45° upwards to the right, alternately to either side.
      const k = (i % 2 === 0 ? i : -i - 1) / 2
      const a = -Math.PI / 4 + (k * 2 * Math.PI) / WAYS
      const [cx, cy] = [anchor[0] + (clear + away) * Math.cos(a), anchor[1] + (clear + away) * Math.sin(a)]
      const x = Math.cos(a) >= 0 ? cx : cx - width
      const box = { x, y: cy - height / 2, width, height }
      const inside =
        box.x >= within.x &&
        box.y >= within.y &&
        box.x + width <= within.x + within.width &&
        box.y + height <= within.y + within.height
      if (inside && isFree(box)) return box
    }
  return null
}

/** Words stand so far over or under their line, px. Ours. */
const OFF_LINE = 3
const ALONG_STEP = 8

/**
 * Places words just over or under the level line that they name, as far right as there is room: where least is hidden.
 * @param line ends and height of the line on the sheet
 * @param cost how bad it is to stand on a rectangle: 0 not at all; Infinity not to be done
 * @returns the best place; right over the right end when there is none that can be done
 */
export const placeOnLine = (
  { from, to, y }: { from: number; to: number; y: number },
  { width, height }: Pick<Box, 'width' | 'height'>,
  within: Box,
  cost: (box: Box) => number,
): Box => {
  const right = Math.min(to, within.x + within.width)
  const rows = [y - OFF_LINE - height, y + OFF_LINE]
  let best: Box = { x: right - width, y: rows[0]!, width, height }
  let least = Infinity
  for (let x = right - width; x >= Math.max(from, within.x); x -= ALONG_STEP)
    for (const top of rows) {
      if (top < within.y || top + height > within.y + within.height) continue
      const box = { x, y: top, width, height }
      const price = cost(box)
      if (price < least) {
        best = box
        least = price
      }
      if (price === 0) return box
    }
  return best
}

/** The leader of placed words: from the thing to the near side of the words. */
export const leaderOf = ({ anchor, clear }: Asked, box: Box): Point2[] => {
  const toRight = box.x + box.width / 2 >= anchor[0]
  const end: Point2 = [toRight ? box.x - 3 : box.x + box.width + 3, box.y + box.height / 2]
  const elbow: Point2 = [end[0] + (toRight ? -8 : 8), end[1]]
  const long = Math.hypot(elbow[0] - anchor[0], elbow[1] - anchor[1])
  if (long <= clear) return [elbow, end]
  const k = clear / long
  return [[anchor[0] + (elbow[0] - anchor[0]) * k, anchor[1] + (elbow[1] - anchor[1]) * k], elbow, end]
}
