import type { Resolved } from '../../geometry/index.ts'
import { type Shade, shadesOf } from './shades.ts'
import { SOLIDS } from './solids.ts'
import { tableOutline } from './table-marks.ts'
import type { Tones } from './tones.ts'
import type { Line, Place, Scene } from './types.ts'
import type { Looking } from './view.ts'

/** Shorter lines are left out, shorter gaps closed, of the distance between two lines: a calm patch of shade, no dashes. Ours. */
const LEAST = 5
const GAP = 5
/** Of a hairline. Ours. */
const WEIGHT = 0.85
/** Where a foot stands: the closer shade's width and shift aside, of the foot's half width. Ours. */
const CONTACT = { wide: 1.35, aside: 0.3 }
/** The same for what stands beside: glasses and plates cast little. Ours. */
const BESIDE = { wide: 1.12, aside: 0.12 }

/** Stretches that overlap, or nearly meet, as one; in order. */
const joined = (spans: readonly [number, number][], gap: number): [number, number][] => {
  const out: [number, number][] = []
  for (const span of [...spans].sort((a, b) => a[0] - b[0])) {
    const last = out.at(-1)
    if (last && span[0] <= last[1] + gap) last[1] = Math.max(last[1], span[1])
    else out.push([...span])
  }
  return out
}

/** Where a level line of the view enters and leaves a convex shape. */
const across = (points: readonly Place[], y: number): [number, number] => {
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

/** Lines that nearly meet joined, and those taken out that are short or have none over or under them. */
const calmed = (rows: ReadonlyMap<number, [number, number][]>, step: number): Map<number, [number, number][]> => {
  const long = new Map(
    [...rows].map(([row, spans]): [number, [number, number][]] => [
      row,
      joined(spans, GAP * step).filter(([from, to]) => to - from > LEAST * step),
    ]),
  )
  const meets = (row: number, [from, to]: [number, number]): boolean =>
    (long.get(row) ?? []).some(([a, b]) => a < to && b > from)
  return new Map(
    [...long].map(([row, spans]) => [row, spans.filter((span) => meets(row - 1, span) || meets(row + 1, span))]),
  )
}

/** Each end drawn toward those of the lines over and under it: an outline without teeth. */
const evened = (rows: ReadonlyMap<number, [number, number][]>): Map<number, [number, number][]> => {
  const nearest = (row: number, [from, to]: [number, number]): [number, number][] => {
    const those = (rows.get(row) ?? []).filter(([a, b]) => a < to && b > from)
    return those.length > 0 ? [[those[0]![0], those.at(-1)![1]]] : []
  }
  const mean = (values: number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length
  return new Map(
    [...rows].map(([row, spans]) => [
      row,
      spans.map((span): [number, number] => {
        const those = [span, ...nearest(row - 1, span), ...nearest(row + 1, span)]
        return [mean(those.map(([from]) => from)), mean(those.map(([, to]) => to))]
      }),
    ]),
  )
}

interface Hatching {
  /** Between two lines of the view, mm, and where the first lies, of that. */
  step: number
  first: number
  colour: string
}

const hatched = (
  shades: readonly Shade[],
  cloth: readonly Place[],
  look: Looking,
  { step, first, colour }: Hatching,
): Line[] => {
  const foot = look.see(0, 0, 0)[1]
  const rows = new Map<number, [number, number][]>()
  for (const [cx, cy, w, d] of shades) {
    if (d <= 0) continue
    const [low, high] = [foot + (cy - d) * look.level, foot + (cy + d) * look.level]
    for (let row = Math.ceil(low / step - first); (row + first) * step < high; row++) {
      const away = ((row + first) * step - foot) / look.level
      const half = w * Math.sqrt(Math.max(0, 1 - ((away - cy) / d) ** 2))
      const spans = rows.get(row)
      if (spans) spans.push([cx - half, cx + half])
      else rows.set(row, [[cx - half, cx + half]])
    }
  }
  const calm = evened(evened(calmed(rows, step)))
  return [...calm]
    .sort(([a], [b]) => b - a)
    .flatMap(([row, spans]) => {
      const y = (row + first) * step
      const [from, to] = across(cloth, y)
      return joined(spans, step).flatMap(([left, right]): Line[] => {
        const [a, b] = [Math.max(from, left), Math.min(to, right)]
        if (b - a <= step) return []
        return [
          {
            kind: 'line',
            layer: 'behind',
            points: [
              [a, y],
              [b, y],
            ],
            colour,
            weight: WEIGHT,
          },
        ]
      })
    })
}

const moved = ([x, y, w, d]: Shade, at: Place): Shade => [x + at[0], y + at[1], w, d]

/**
 * Shadows on the cloth, as an engraver would lay them: level lines under everything that stands there, and more between them
 * where a foot stands. None where the table is seen level.
 * @param step_mm between two lines of the view
 */
export const shadowMarks = (resolved: Resolved, scene: Scene, look: Looking, tones: Tones, step_mm: number): Line[] => {
  if (Math.abs(look.level) < 1e-6) return []
  const { shades, foot } = shadesOf(resolved, look.angle.turn)
  const onTable = (at: Place): Place => [look.see(at[0], at[1], 0)[0], look.beyond(at)]
  const pieces = [[0, 0] as Place, ...scene.copies].map(onTable)
  const cloth = tableOutline(scene.table).map(([x, y]) => look.see(x, y, 0))
  const close = ({ wide, aside }: typeof CONTACT, [x, y, w, d]: Shade): Shade => [x + aside * w, y, w * wide, d * wide]
  const beside = scene.things
    .filter(({ kind }) => kind !== 'cup')
    .map(({ kind, at }): Shade => {
      const { profile, radius, clear } = SOLIDS[kind]
      const r = clear ? profile[0]![0] : radius
      return close(BESIDE, moved([0, 0, r, r], onTable(at)))
    })
  return [
    ...hatched([...pieces.flatMap((at) => shades.map((s) => moved(s, at))), ...beside], cloth, look, {
      step: step_mm,
      first: 0,
      colour: tones.shade,
    }),
    ...hatched(
      pieces.map((at) => close(CONTACT, moved(foot, at))),
      cloth,
      look,
      {
        step: step_mm,
        first: 0.5,
        colour: tones.closeShade,
      },
    ),
  ]
}
