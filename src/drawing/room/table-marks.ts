import type { Tones } from './tones.ts'
import type { Mark, Place, Scene } from './types.ts'
import type { Looking } from './view.ts'

const ROUND_POINTS = 180
/** The table's edge, of a hairline. */
const EDGE = 1.2
/** Cloth hangs so far down: 15 in, a common practice for a table of 60 in under a cloth of 90. */
const DROP_mm = 381
/** One fold of the cloth every so far along the edge, give or take two fifths, mm. Ours. */
const FOLD_mm = 130
/** (√5 − 1) / 2: shares that never fall into a rhythm. */
const GOLDEN = 0.6180339887

/** Points along the edge of a table, against the clock from above, mm. */
export const tableOutline = (table: Scene['table']): Place[] => {
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

const down = ([x, y]: Place, by: number): Place => [x, y - by]

/** The cloth that hangs from the near edge: none from above. */
const hanging = (seen: readonly Place[], look: Looking, tones: Tones): Mark[] => {
  const drop = DROP_mm * look.upright
  if (drop < 1e-6) return []
  // The near part of a convex outline goes from left to right.
  const near = seen
    .flatMap((a, i): Place[] => {
      const b = seen[(i + 1) % seen.length]!
      return b[0] - a[0] > 1e-9 ? [a, b] : []
    })
    .sort((a, b) => a[0] - b[0])
  return [
    {
      kind: 'polygon',
      layer: 'behind',
      points: [...near, ...near.map((p) => down(p, drop)).reverse()],
      fill: tones.hanging,
    },
  ]
}

/** Folds: lines down from the edge at uneven distances along it. */
const folds = (outline: readonly Place[], look: Looking, tones: Tones): Mark[] => {
  if (look.upright < 1e-6) return []
  const marks: Mark[] = []
  let along = 0
  let next = FOLD_mm / 2
  let count = 0
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    const faces = look.see(b[0], b[1], 0)[0] - look.see(a[0], a[1], 0)[0] > 1e-9
    while (next <= along + length) {
      const t = (next - along) / length
      const [x, y] = look.see(a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), 0)
      const share = (count * GOLDEN) % 1
      const drop = DROP_mm * look.upright
      if (faces)
        marks.push({
          kind: 'line',
          layer: 'behind',
          points: [
            [x, y - drop * 0.03],
            [x + (share - 0.5) * 5, y - drop * 0.3],
            [x + (share - 0.5) * 14, y - drop],
          ],
          colour: tones.onLinen,
          weight: 0.45,
        })
      count += 1
      next += FOLD_mm * (0.6 + 0.8 * ((count * GOLDEN) % 1))
    }
    along += length
  })
  return marks
}

/** The table in its linen, its edge, and the cloth that hangs from it. */
export const tableMarks = ({ table }: Scene, look: Looking, tones: Tones): Mark[] => {
  const outline = tableOutline(table)
  const seen = outline.map(([x, y]) => look.see(x, y, 0))
  // Seen level, the top is its edge.
  const top: Mark[] =
    Math.abs(look.level) < 1e-9 ? [] : [{ kind: 'polygon', layer: 'behind', points: seen, fill: tones.linen }]
  return [
    ...hanging(seen, look, tones),
    ...folds(outline, look, tones),
    ...top,
    { kind: 'line', layer: 'behind', points: [...seen, seen[0]!], colour: tones.over, weight: EDGE },
  ]
}
