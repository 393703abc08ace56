import type { Place } from './types.ts'

/** A part of a view or of a sheet, in its own measure; `bottom` is the lesser of the two heights. */
export interface Pane {
  left: number
  right: number
  bottom: number
  top: number
}

/** The part of a shape on one side of a level or upright line (Sutherland and Hodgman, CACM 17:32–42, 1974). */
const cut = (points: readonly Place[], axis: 0 | 1, at: number, sign: 1 | -1): Place[] =>
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

/** The part of a filled shape inside a pane; empty where there is none. */
export const clipShape = (points: readonly Place[], { left, right, bottom, top }: Pane): Place[] => {
  const made = cut(cut(cut(cut(points, 0, left, 1), 0, right, -1), 1, bottom, 1), 1, top, -1)
  return made.length < 3 ? [] : made
}

/** How much of a straight line lies inside, as shares of it from its start; null for none (Liang and Barsky, ACM TOG 3:1–22, 1984). */
const sharesInside = (a: Place, b: Place, { left, right, bottom, top }: Pane): [number, number] | null => {
  let [from, to] = [0, 1]
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  for (const [p, q] of [
    [-dx, a[0] - left],
    [dx, right - a[0]],
    [-dy, a[1] - bottom],
    [dy, top - a[1]],
  ] as const) {
    if (p === 0 && q < 0) return null
    if (p < 0) from = Math.max(from, q / p)
    if (p > 0) to = Math.min(to, q / p)
  }
  return from <= to ? [from, to] : null
}

/** Rounding puts no end over the border. */
const held = ([x, y]: Place, { left, right, bottom, top }: Pane): Place => [
  Math.min(right, Math.max(left, x)),
  Math.min(top, Math.max(bottom, y)),
]

/** The parts of a line inside a pane, each a run of points. */
export const clipLine = (points: readonly Place[], pane: Pane): Place[][] => {
  const runs: Place[][] = []
  let open = false
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!]
    const shares = sharesInside(a, b, pane)
    if (!shares) {
      open = false
      continue
    }
    const along = (t: number): Place =>
      t === 0 ? a : t === 1 ? b : held([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])], pane)
    if (open && shares[0] === 0) runs.at(-1)!.push(along(shares[1]))
    else runs.push([along(shares[0]), along(shares[1])])
    open = shares[1] === 1
  }
  return runs
}
