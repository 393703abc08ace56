import type { TableShape } from '../../arrangement/index.ts'
import { FLAME_LEAST_mm } from './flame.ts'
import { clearOf, type Footprint, widthAlong } from './footprint.ts'
import { EACH_mm, fromEdge } from './seats.ts'
import { SOLIDS } from './solids.ts'
import type { Manner, Place, Thing } from './types.ts'

/** The grid on which a place is looked for, no finer than so many steps, and the room that a candle keeps from what stands beside it and from the edge, mm. Ours. */
const STEP_mm = 20
const MOST_STEPS = 32
const APART_mm = 30

/**
 * What a mm farther from the flowers is worth up to the least that is advised, and that this is kept, and a mm nearer to the
 * edge than the glasses stand; in mm nearer to the middle. Ours.
 */
const FAR = 6
const KEPT = 200
const OUT = 2
/** Behind plates and glasses, from the edge. */
const AMONG_mm = 400

/** A part of the table, mm. */
interface Zone {
  from: Place
  to: Place
}

/**
 * One candle aslant on either side of a piece on a round table, beyond its left and before its right; one between two in a row,
 * a single one on a café table. Ours.
 */
const zonesOf = (table: TableShape, manner: Manner, copies: readonly Place[], footprint: Footprint): Zone[] => {
  const [w, d] =
    table.shape === 'round' ? [table.diameter / 2, table.diameter / 2] : [table.length / 2, table.width / 2]
  if (manner === 'café') return [{ from: [-w, -d], to: [w, d] }]
  if (manner === 'round') {
    const aside = Math.min(0.6 * w, widthAlong(footprint) / 2 + SOLIDS.candle.radius)
    return [
      { from: [-w, 0.1 * d], to: [-aside, d] },
      { from: [aside, -d], to: [w, -0.1 * d] },
    ]
  }
  const pieces = [0, ...copies.map(([x]) => x)].sort((a, b) => a - b)
  // Between bottles that stand close, a candle every two feet.
  const far: number[] = []
  for (const x of pieces) if (x - (far.at(-1) ?? -Infinity) >= EACH_mm) far.push(x)
  const borders = far.length > 1 ? far : [-w, 0, w]
  return borders.slice(1).map((to, i) => ({ from: [borders[i]!, -d], to: [to, d] }))
}

/**
 * Where candles stand: in each zone clear of all else, as near to the middle as the least advised distance from the flowers
 * allows; where that can hardly be kept, nearer to them.
 */
export const candlesOf = (
  table: TableShape,
  manner: Manner,
  things: readonly Thing[],
  copies: readonly Place[],
  footprint: Footprint,
): Thing[] => {
  const own = SOLIDS.candle.radius
  const pieces: Place[] = [[0, 0], ...copies]
  const candles: Thing[] = []
  // At a café table rather beside or behind the flowers than before them; on a round one near to them as seen from before; in
  // a row on the middle line, or else beyond it.
  const aside = ([x, y]: Place): number =>
    manner === 'café' ? -Math.abs(x) - 0.6 * y : manner === 'round' ? 0.8 * Math.abs(x) : Math.max(y, -1.6 * y)
  for (const { from, to } of zonesOf(table, manner, copies, footprint)) {
    let best: { at: Place; worth: number } | null = null
    const steps = (k: 0 | 1): number => Math.max(1, Math.min(MOST_STEPS, Math.round((to[k] - from[k]) / STEP_mm)))
    const [nx, ny] = [steps(0), steps(1)]
    for (let i = 0; i <= nx; i++)
      for (let j = 0; j <= ny; j++) {
        const at: Place = [from[0] + ((to[0] - from[0]) * i) / nx, from[1] + ((to[1] - from[1]) * j) / ny]
        if (fromEdge(table, at) < own + APART_mm) continue
        const beside = [...things, ...candles].some(
          (t) => Math.hypot(t.at[0] - at[0], t.at[1] - at[1]) < SOLIDS[t.kind].radius + own + APART_mm,
        )
        if (beside) continue
        const clear = Math.min(...pieces.map(([x, y]) => clearOf(footprint, [at[0] - x, at[1] - y])))
        if (clear < own) continue
        const nearest = Math.min(...pieces.map(([x, y]) => Math.hypot(at[0] - x, at[1] - y)))
        const worth =
          FAR * Math.min(clear, FLAME_LEAST_mm) +
          (clear >= FLAME_LEAST_mm ? KEPT : 0) -
          nearest -
          aside(at) -
          OUT * Math.max(0, AMONG_mm - fromEdge(table, at))
        if (!best || worth > best.worth + 1e-6) best = { at, worth }
      }
    if (best) candles.push({ kind: 'candle', at: best.at, inward: [0, 1] })
  }
  return candles
}
