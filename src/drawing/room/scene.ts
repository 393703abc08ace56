import type { TableShape } from '../../arrangement/index.ts'
import type { Resolved } from '../../geometry/index.ts'
import { candlesOf } from './candles.ts'
import { clearOf, type Footprint, footprintOf, widthAlong } from './footprint.ts'
import { copiesOf, fromEdge, mannerOf, type Seat, seatsOf } from './seats.ts'
import { SOLIDS } from './solids.ts'
import type { Manner, Place, Scene, Thing, ThingKind } from './types.ts'

/** Plates stand so far inside the edge: about 1 in, common practice. */
const FROM_EDGE_mm = 25
/** Two things stand no closer than this. Ours. */
const APART_mm = 12

/** To the guest's right and inward from the middle of the plate, mm. */
type Spot = readonly [right: number, inward: number]
/** What is laid, the most wanted first, and where it may stand, the usual place first. Common practice; the figures, ours. */
const LAID: Record<'table' | 'café', readonly [ThingKind, readonly Spot[]][]> = {
  table: [
    ['dinner-plate', [[0, 0]]],
    [
      'wine-glass',
      [
        [128, 172],
        [95, 195],
        [62, 205],
      ],
    ],
    [
      'water-glass',
      [
        [30, 205],
        [-5, 200],
      ],
    ],
    [
      'side-plate',
      [
        [-240, 60],
        [-205, 115],
        [-170, 160],
        [-130, 190],
      ],
    ],
  ],
  café: [
    [
      'side-plate',
      [
        [-88, 20],
        [-95, 45],
        [0, 0],
      ],
    ],
    [
      'saucer',
      [
        [88, 20],
        [82, 5],
        [75, -8],
        [0, 0],
      ],
    ],
  ],
}

/** On a café table so covered by flowers that neither cup nor plate fits, a glass of water. Ours. */
const GLASS_SPOTS: readonly Spot[] = [
  [0, 0],
  [70, 0],
  [-70, 0],
  [100, 16],
  [-100, 16],
]

const radius = (kind: ThingKind): number => SOLIDS[kind].radius

const placed = ({ edge, inward }: Seat, kind: ThingKind, main: ThingKind, [u, v]: Spot): Thing => {
  const deep = FROM_EDGE_mm + radius(main) + v
  const [fx, fy] = inward
  return { kind, inward, at: [edge[0] + fx * deep + fy * u, edge[1] + fy * deep - fx * u] }
}

const collide = (a: Thing, b: Thing): boolean =>
  Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) < radius(a.kind) + radius(b.kind) + APART_mm - 1e-6

/** One for each seat, at the first spot that has room at all of them; null where none has. */
const laidAt = (
  table: TableShape,
  seats: readonly Seat[],
  kind: ThingKind,
  main: ThingKind,
  spots: readonly Spot[],
  there: readonly Thing[],
): Thing[] | null => {
  for (const spot of spots) {
    const those = seats.map((seat, i) => ({ ...placed(seat, kind, main, spot), seat: i }))
    const fits = those.every(
      (thing, i) =>
        fromEdge(table, thing.at) >= radius(kind) + FROM_EDGE_mm / 2 &&
        !there.some((other) => collide(thing, other)) &&
        !those.some((other, k) => k < i && collide(thing, other)),
    )
    if (fits) return those
  }
  return null
}

const laid = (table: TableShape, manner: Manner): { things: Thing[]; noRoom: ThingKind[] } => {
  const seats = seatsOf(table)
  const list = LAID[manner === 'café' ? 'café' : 'table']
  const main = list[0]![0]
  const things: Thing[] = []
  const noRoom: ThingKind[] = []
  for (const [kind, spots] of list) {
    const those = seats.length > 0 ? laidAt(table, seats, kind, main, spots, things) : null
    // No glass where there is no plate for it.
    if (those && (kind === main || manner === 'café' || things.length > 0)) things.push(...those)
    else noRoom.push(kind)
  }
  return { things, noRoom }
}

const isUnder = ({ kind, at }: Thing, footprint: Footprint, pieces: readonly Place[]): boolean =>
  pieces.some(([x, y]) => clearOf(footprint, [at[0] - x, at[1] - y]) < radius(kind))

/** The table of the document with nothing on it but the arrangement. */
export const bareScene = ({ document: { setting } }: Resolved): Scene => {
  const { table, linen } = setting
  return { manner: mannerOf(table), table, linen, seats: 0, things: [], copies: [], under: {}, noRoom: [] }
}

/**
 * What stands on the table of the document besides the arrangement: plates and glasses for as many guests as it seats, all to
 * scale; the same piece again down a long table; candles where that is the light. Nothing stands over the edge, in another
 * thing or under the flowers: what would is left out and counted.
 */
export const sceneOf = (resolved: Resolved): Scene => {
  const { table, linen, light, copies: made } = resolved.document.setting
  const manner = mannerOf(table)
  const footprint = footprintOf(resolved)
  const copies = copiesOf(table, made, widthAlong(footprint))
  const pieces: Place[] = [[0, 0], ...copies]
  const all = laid(table, manner)
  const under: Scene['under'] = {}
  const things = all.things.filter((thing) => {
    if (!isUnder(thing, footprint, pieces)) return true
    under[thing.kind] = (under[thing.kind] ?? 0) + 1
    return false
  })
  if (manner === 'café' && things.length === 0) {
    const seats = seatsOf(table)
    const free = GLASS_SPOTS.flatMap((spot) => {
      const those = laidAt(table, seats, 'water-glass', 'water-glass', [spot], things) ?? []
      return those.length > 0 && !those.some((glass) => isUnder(glass, footprint, pieces)) ? [those] : []
    })
    things.push(...(free[0] ?? []))
  }
  // A cup stands in each saucer.
  const cups = things.filter(({ kind }) => kind === 'saucer').map((thing): Thing => ({ ...thing, kind: 'cup' }))
  things.push(...cups)
  if (light === 'candle') things.push(...candlesOf(table, manner, things, copies, footprint))
  return { manner, table, linen, seats: seatsOf(table).length, things, copies, under, noRoom: all.noRoom }
}
