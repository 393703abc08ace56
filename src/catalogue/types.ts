import type { Mechanics, ProfilePoint, Role, TableShape, VesselMaterial, VesselPlan } from '../arrangement/types.ts'

export type FormClass = 'line' | 'form' | 'mass' | 'filler' | 'foliage'

/** How a figure is known: a named source, or the words of the house for what has none. */
export type Standing = 'source' | 'common practice' | 'from memory' | 'ours' | 'not known'

/** A working figure chosen inside a range; the range is kept and shown. */
export interface Figure {
  value: number
  range: [least: number, most: number]
  standing: Standing
  /** A citation where standing is `source`; else why this value. */
  source: string
}

/** Botanical forms that can be drawn; each is one solid (src/geometry/habits). */
export const HABITS = [
  'rosette', 'quilled', 'ray', 'pincushion', 'globe', 'umbel', 'spike', 'spray', 'opposite-leaves', 'alternate-leaves',
  'trailing', 'cup', 'trumpet', 'broad-leaf', 'spathe', 'fern', 'plume', 'blade', 'cloud', 'berry-branch', 'dome', 'orchid',
] as const
export type Habit = (typeof HABITS)[number]

export interface Caution {
  /** What it is about: pets, people if eaten, skin, food table, sharp, dust. */
  about: 'pets' | 'eaten' | 'skin' | 'food' | 'sharp' | 'dust' | 'flame' | 'lifting'
  text: string
  standing: Standing
  source: string
}

export interface Plant {
  id: string
  name: string
  botanical: string
  formClass: FormClass
  /** Every class that some source gives it. */
  formClasses: FormClass[]
  /** The role a new stem of it gets. */
  role: Role
  habit: Habit
  /** Small numbers that tell this plant from others of its habit: petal count, rows, leaf shape … read by geometry/habits. */
  shape: Record<string, number | string>
  /** Head diameter closed and open, mm; spike width for lines, leafy width for foliage, one floret for sprays. */
  headClosed_mm: Figure | null
  headOpen_mm: Figure
  /** Length of the flowering part for spikes, of the leafy part for foliage, mm along the stem; null for single heads. */
  headLength_mm: Figure | null
  stem_mm: Figure
  stemDiameter_mm: Figure
  bloomsPerStem: Figure
  manyHeaded: boolean
  bunch: Figure | null
  stemMass_g: Figure
  /** Colours it comes in, words of the care table and a #rrggbb of ours for each. */
  colours: { name: string; hex: string }[]
  /** The green of its leaves and stem. */
  leafColour: string
  care: { label: string; text: string; standing: Standing; source: string }[]
  cautions: Caution[]
}

export interface VesselRow {
  id: string
  name: string
  plan: VesselPlan
  width: number
  depth: number
  height: number
  profile?: ProfilePoint[]
  wall: number
  material: VesselMaterial
  colour: string
  mechanics: Mechanics
  waterFill: number
  source: string
}

export interface TableRow { id: string; name: string; table: TableShape; seats: string; source: string }
export interface MechanicsRow { id: Mechanics; name: string; about: string; cautions: Caution[] }
