import type { Arrangement } from '../../arrangement/index.ts'

/** mm; on the table x right and y away from the viewer at turn 0, from the foot of the vessel's axis; in a view right and up. */
export type Place = [x: number, y: number]

export const THINGS = ['dinner-plate', 'side-plate', 'wine-glass', 'water-glass', 'saucer', 'cup', 'candle'] as const
export type ThingKind = (typeof THINGS)[number]

/** Something that stands on the table beside the flowers. */
export interface Thing {
  kind: ThingKind
  at: Place
  /** Toward the middle of the table from the guest it belongs to: a unit vector. */
  inward: Place
  /** Whose it is, by the order of the seats; a candle is nobody's. */
  seat?: number
}

/** How a table is laid: plates round one piece, a row of pieces down a long table, or a cup beside a small one. */
export type Manner = 'round' | 'row' | 'café'

/** What stands on the table, for no view in particular. */
export interface Scene {
  manner: Manner
  table: Arrangement['setting']['table']
  linen: string
  seats: number
  things: Thing[]
  /** Where the same piece stands again; the one that is designed is at the middle and not among them. */
  copies: Place[]
  /** How many of each would lie under the flowers and are left out. */
  under: Partial<Record<ThingKind, number>>
  /** What this table has no room for, whatever the flowers. */
  noRoom: ThingKind[]
}

/** Drawn before the arrangement is painted, or over it. */
export type Layer = 'behind' | 'before'

interface Drawn {
  layer: Layer
}
/** Thickness as a share of the hairline that the sheet chooses. */
interface Pen {
  colour: string
  weight: number
}
export type Line = Drawn & Pen & { kind: 'line'; points: Place[] }
/** Level circles stay upright ellipses in every view. */
export type Ellipse = Drawn & Pen & { kind: 'ellipse'; centre: Place; half: Place }
export type Polygon = Drawn & { kind: 'polygon'; points: Place[]; fill: string }

/**
 * A vector piece of a view: mm right and up from the centre of the vessel's mouth, as the views have them; colours #rrggbb in
 * daylight. What comes later lies over what came before.
 */
export type Mark = Line | Ellipse | Polygon
