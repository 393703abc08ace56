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
   * Small numbers and words that tell this plant from others of its habit; all optional, `geometry/habits` has defaults.
   * Lengths end in `_mm`, colours in `Colour` (#rrggbb); shares and degrees of something are 0–1; the rest are counts.
   *
   * | habit | keys |
   * |---|---|
   * | all with leaves on the stem | leafLength_mm, leafWidth_mm, leafShape `disc` `leaf` `lance` `lobed` `feather` `needle` `heart` |
   * | rosette | petals, cup (1 closed bowl), ruffle (1 fringed), petalShape `round` `point`, eyeShare + eyeColour (heart) |
   * | quilled | petals, petalShape, dome (height ÷ diameter), curl (1 incurved, 0 flat, -1 reflexed) |
   * | ray | rays, rows, discShare (of diameter), discColour, petalShape `ray` `round` `point` `fringed` |
   * | pincushion | florets (outer), knobs, discColour |
   * | globe | florets, floret `dome` `star`, spiky (1 teasel), bracts (ruff below) |
   * | umbel | rays, florets (per ray), flat (1 plate, 0 ball), spread_mm (width of all umbels of a stem) |
   * | spike | floret `open` `snap` `bell` `trumpet` `brush` `double` `bract`, florets, taper (0 cylinder, 1 point), loose (1 see-through) |
   * | spray | head (a habit: `rosette` `ray` `quilled` `cup` `trumpet` `globe`), keys of that habit, spread_mm, budShare |
   * | opposite-, alternate-leaves | leaves (per stem), leaf…, berries, berryColour, branches (0 single stem) |
   * | trailing | kind `rope` `leaves`, strands, leaf… |
   * | cup | petals, petalShape, ruffle, reflex, discColour |
   * | trumpet | petals, flare (1 flat star, 0 tube), reflex, corona (length ÷ diameter), coronaColour, arrangement `cluster` `comb` `single` |
   * | broad-leaf | leaf…, splits, fold |
   * | spathe | flat (1 plate, 0 rolled), spadixShare (length ÷ head), spadixColour |
   * | fern | kind `flat` `needles`, pinnae, leafletLength_mm |
   * | plume | kind `feather` `arching` `comb` `cluster`, branches |
   * | blade | blades, width_mm |
   * | cloud | branches, florets, floret `double` `papery` `star`, floret_mm, spread_mm |
   * | berry-branch | berries, leaf…, spread_mm |
   * | dome | florets, petals (per floret), floret_mm |
   * | orchid | blooms, arrangement `arching` `upright`, petalWidth (÷ length), lipColour; strelitzia: kind `crane`, tongueColour |
   *
   * `spread_mm` is the width of the whole flowering part of a whole stem where the head is one floret; a habit without
   * it takes the head's diameter for its width.
   */
  shape: Record<string, number | string>
  /** Head diameter closed and open, mm; spike width for lines, leafy width for foliage, one floret for sprays. */
  headClosed_mm: Figure | null
  headOpen_mm: Figure
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
