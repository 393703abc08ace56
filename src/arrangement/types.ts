/**
 * The document, version 1: one arrangement in one vessel. Plain data, millimetres and fractions throughout.
 * Unknown keys are kept on every object (`[key: string]: unknown` is not declared, but the reader never drops them).
 * Axes: origin at the centre of the vessel's mouth, in the plane of the rim; x right, y away from the viewer, z up.
 */

export const FORMS = ['round', 'low', 'airy', 'vertical', 'triangle', 'crescent', 'cascade'] as const
export type Form = (typeof FORMS)[number]

export const ROLES = ['focal', 'line', 'mass', 'form', 'filler', 'greens'] as const
export type Role = (typeof ROLES)[number]

export const VESSEL_PLANS = ['round', 'oval', 'rectangular'] as const
export type VesselPlan = (typeof VESSEL_PLANS)[number]

export const MATERIALS = ['ceramic', 'glass', 'resin', 'metal', 'wood'] as const
export type VesselMaterial = (typeof MATERIALS)[number]

export const MECHANICS = ['netting', 'foam', 'pin-holder', 'tape-grid', 'none'] as const
export type Mechanics = (typeof MECHANICS)[number]

export const LIGHTS = ['daylight', 'overcast', 'warm-lamp', 'candle'] as const
export type Light = (typeof LIGHTS)[number]

export type Point2 = [x: number, y: number]
export type Point3 = [x: number, y: number, z: number]

/** [height as a fraction of the whole, 0 at the table … 1 at the rim; half-width as a fraction of the mouth's]. */
export type ProfilePoint = [height: number, halfWidth: number]

export interface Vessel {
  plan: VesselPlan
  /** Outer width at the mouth, x, mm. */
  width: number
  /** Outer depth at the mouth, y, mm. */
  depth: number
  /** Base to rim, mm. */
  height: number
  /** Cylinder if absent. */
  profile?: ProfilePoint[]
  wall: number
  material: VesselMaterial
  colour: string
  mechanics: Mechanics
  /** Fraction of the inner height that is filled. */
  waterFill: number
}

export interface Slot {
  /** #rrggbb */
  colour: string
  /** The part this colour plays. */
  part: Role
}

export interface Palette {
  name: string
  slots: Slot[]
}

/** A palette slot by its index, or a colour of its own (#rrggbb). */
export type StemColour = { slot: number } | string

export interface Stem {
  id: string
  plant: string
  role: Role
  colour: StemColour
  /** 0 tight bud … 1 fully open or reflexed. */
  openness: number
  /** Where it crosses the plane of the mouth, mm. */
  mouth: Point2
  /** Centre of the head, or end of a line or leaf, mm. */
  tip: Point3
  /** Signed sideways bow at mid length, fraction of length. */
  bend: number
  /** Head diameter in mm, over the catalogue's. */
  head?: number
  /** `lateral` is one piece cut from a many-headed stem. */
  piece: 'whole' | 'lateral'
}

export type TableShape = { shape: 'round'; diameter: number } | { shape: 'rectangular'; length: number; width: number }

export interface Setting {
  copies: number
  /** ISO 8601 date or local date and time. */
  date?: string
  light: Light
  linen: string
  table: TableShape
}

/**
 * What a person wants of a measured value instead of what the table of bands says, by the band's name; null for no end on
 * that side. Of a form that is changed later they stay.
 */
export type OwnBands = Record<string, [least: number | null, most: number | null]>

export interface Arrangement {
  format: 'pedicel-arrangement'
  version: 1
  title: string
  form: Form
  vessel: Vessel
  palette: Palette
  stems: Stem[]
  setting: Setting
  /** The person's own bands; absent when the table's hold. */
  bands?: OwnBands
}

/** One thing wrong in a file: where, what was there, what is allowed. */
export interface Problem {
  /** As written in code: `stems[3].tip[2]`; '' is the file itself. */
  path: string
  /** The whole sentence after the path: `expected a number in mm, got "high"`. */
  message: string
}

/**
 * What came of reading a text.
 * - ok: everything was right.
 * - partly: something was wrong; `good` is a document made of what is right, `problems` lists everything that would be
 *   left out or replaced. Nothing may be opened before the person agrees.
 * - refused: nothing can be saved of it.
 */
export type ReadResult =
  | { kind: 'ok'; document: Arrangement }
  | { kind: 'partly'; good: Arrangement; problems: Problem[] }
  | { kind: 'refused'; problems: Problem[] }
