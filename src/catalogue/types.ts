import type { Mechanics, ProfilePoint, Role, TableShape, VesselMaterial, VesselPlan } from '../arrangement/index.ts'

export type FormClass = 'line' | 'form' | 'mass' | 'filler' | 'foliage'

/** How a figure is known: a named source, or the words of the house for what has none. */
export type Standing = 'source' | 'common practice' | 'from memory' | 'ours' | 'not known'

/**
 * A working figure chosen inside a range; the range is kept and shown. The rule of choice: the middle of the range,
 * rounded to 5 mm (heads), 50 mm (stems) or a whole number; where the range is wide (a sunflower is 50 to 250 mm) or
 * lopsided, the size a florist meets most, from memory. A bunch is the size most often sold.
 */
export interface Figure {
  value: number
  range: [least: number, most: number]
  standing: Standing
  /** A citation where standing is `source`; else why this value. */
  source: string
}

/** Botanical forms that can be drawn; each is one solid (src/geometry/habits). */
export const HABITS = [
  'rosette',
  'quilled',
  'ray',
  'pincushion',
  'globe',
  'umbel',
  'spike',
  'spray',
  'opposite-leaves',
  'alternate-leaves',
  'trailing',
  'cup',
  'trumpet',
  'broad-leaf',
  'spathe',
  'fern',
  'plume',
  'blade',
  'cloud',
  'berry-branch',
  'dome',
  'orchid',
] as const
export type Habit = (typeof HABITS)[number]

export interface Caution {
  /** What it is about: pets, people if eaten, skin, food table, sharp, dust. */
  about: 'pets' | 'eaten' | 'skin' | 'food' | 'sharp' | 'dust' | 'flame' | 'lifting'
  text: string
  standing: Standing
  source: string
}

/** What is known of a plant's danger, in short. That it is listed as not poisonous is no promise: lists have gaps. */
export interface Danger {
  pets: 'emergency' | 'poisonous' | 'not checked' | 'not poisonous'
  /** Not on a table with food; or clear of food, plates and glasses; null: nothing of its own. */
  food: 'barred' | 'clear' | null
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
  /**
   * Small numbers and words that tell this plant from others of its habit, read by `geometry/habits`; what is missing has a
   * default there. leafLength, breadth and floretSize are mm; colours are #rrggbb; ratios and shares are plain fractions.
   *
   * | habit | keys |
   * |---|---|
   * | any flower | leaves, leafLength, leafRatio, leafOutline (on its stem); secondColour, discColour, pollenColour; woody |
   * | rosette | petals, tightness, fringe, ruffle, cupping, stamens |
   * | quilled | petals, incurve, narrow; kind `protea` |
   * | ray | rays, rows, disc (share of diameter), width, dome, outline, notch |
   * | pincushion | outer, centre; kind `thistle` |
   * | globe | florets, spiky; kind `stars` `thistle` |
   * | umbel | rays, florets (of a ray), height, bracts |
   * | spike | floret `open` `bee` `double` `trumpet` `snap` `thread` `bell` `star`, florets, petals, taper, oneSided, floretSize |
   * | plume | flames, florets, arch |
   * | spray | head (`rose` `carnation` `lisianthus` `daisy` `aster` `mum` `alstroemeria` `thistle` `pea` `umbel` …), heads, reach, keys of that head |
   * | cloud | head (`speck` `wax` `limonium`), pairs, breadth |
   * | berry-branch | berries, pairs, leafLength, ratio |
   * | cup | petals, whorls, tall, pointed, fringe, ruffle, stamens |
   * | trumpet | flower `lily` `amaryllis` `daffodil` `freesia` `alstroemeria` `iris`, heads, corona, coronaWidth |
   * | spathe | kind `calla` `anthurium` `crane`, tall, lean |
   * | dome | florets, petals, height |
   * | orchid | kind `moth` `cymbidium` `dendrobium`, heads, lip |
   * | opposite-, alternate-leaves | pairs or leaves, leafLength, ratio, outline, whorl, droop, spread |
   * | trailing | kind `rope` `ivy` `strand`, clusters, leaves, leafLength, ratio |
   * | fern, blade, broad-leaf | kind, pinnae; blades, breadth; kind `aspidistra` `monstera` |
   */
  shape: Record<string, number | string>
  /** Head diameter closed and open, mm; spike width for lines, leafy width for foliage, one floret for sprays. */
  headClosed_mm: Figure | null
  headOpen_mm: Figure
  /** Width of the flowering part, where the head above is one floret of it and the width is known. */
  spread_mm?: Figure
  /** Length of the flowering part for spikes and plumes, of the leafy part for foliage, mm along the stem; null for single heads. */
  headLength_mm: Figure | null
  stem_mm: Figure
  stemDiameter_mm: Figure
  /** Blooms on a stem; for `manyHeaded`, the side stems it can be cut into. */
  bloomsPerStem: Figure
  /** It can be cut apart into pieces that each have a stalk of their own. */
  manyHeaded: boolean
  bunch: Figure | null
  stemMass_g: Figure
  /** Colours it comes in, words of the care table and a #rrggbb of ours for each. */
  colours: { name: string; hex: string }[]
  /** The green of its leaves and stem. */
  leafColour: string
  care: { label: string; text: string; standing: Standing; source: string }[]
}

/** Outer sizes in mm; the profile as in the document (arrangement/types.ts). */
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

export interface TableRow {
  id: string
  name: string
  table: TableShape
  seats: string
  source: string
}
export interface MechanicsRow {
  id: Mechanics
  name: string
  about: string
  cautions: Caution[]
}
