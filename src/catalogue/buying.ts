import type { Figure, Plant } from './types.ts'

/** What the stems that came are like; what is missing is as the catalogue has it. */
export interface OwnStem {
  /** Whole length as they came, before the recut, mm. */
  stem_mm?: number
  /** Heads, or sprays, that a stem can be cut apart into, the one at its top counted; a plant with one head has no other. */
  heads?: number
  /** The longest piece that a side stem gives, mm. */
  side_mm?: number
  /** Most pieces that are cut one after the other along a stem of greens (cutsAlong); missing: one, with its own tip, as drawn. */
  pieces?: number
}

/**
 * May a stem be cut into pieces one after the other, each with leaves of its own? Greens with leaves all along it: eucalyptus is cut
 * so for garlands, to about 10 in, and so are others of the kind (common practice). A frond, a blade or a single large leaf has one tip, and that is what is wanted of it.
 */
export const cutsAlong = ({ formClass, habit }: Pick<Plant, 'formClass' | 'habit'>): boolean =>
  formClass === 'foliage' && (habit === 'opposite-leaves' || habit === 'alternate-leaves')

const memory = (value: number, least: number, most: number): Figure => ({
  value,
  range: [least, most],
  standing: 'from memory',
  source: 'from memory',
})

/** All flowers of these stand on short stalks at the top of the stem. */
const SHORT_SIDES: Record<string, Figure> = {
  alstroemeria: memory(150, 80, 200),
  'lily-oriental': memory(120, 60, 180),
  'lily-asiatic': memory(120, 60, 180),
}

/**
 * The longest piece that a side stem of a many-headed plant gives, mm; null for one that bears a single head. Growers grade
 * stems by their whole length and no source for side stems was found: half of it is taken (ours), less where all flowers
 * stand at the top (from memory).
 */
export const sideLength_mm = (plant: Pick<Plant, 'id' | 'manyHeaded' | 'stem_mm'>): Figure | null => {
  if (!plant.manyHeaded) return null
  const { value, range } = plant.stem_mm
  return (
    (Object.hasOwn(SHORT_SIDES, plant.id) ? SHORT_SIDES[plant.id] : undefined) ?? {
      value: value / 2,
      range: [range[0] / 2, range[1] / 2],
      standing: 'ours',
      source: 'ours: half the length of a stem',
    }
  )
}

/**
 * Stems for breakage and blind buds on top of those that are needed, as a share of them. No measured table was found; these
 * are from memory. Nell (Perishable News) gives 5 % as a target for loss from grower to home, and 20–30 % as what is lost.
 */
const STURDY = memory(0.08, 0.05, 0.1)
const USUAL = memory(0.1, 0.08, 0.12)
const DELICATE = memory(0.18, 0.15, 0.2)

const STURDY_ONES = new Set(
  'carnation carnation-spray chrys-disbud chrys-spray statice limonium gypsophila solidago solidaster craspedia eryngium hypericum liatris allium protea strelitzia anthurium waxflower bupleurum'.split(
    ' ',
  ),
)
const DELICATE_ONES = new Set(
  'peony dahlia hydrangea ranunculus sweet-pea anemone lilac iris daffodil cornflower zinnia astilbe'.split(' '),
)

/** The spare that is usual for a plant, as a share of the stems needed: by how easily it breaks or fails. */
export const spareShare = (plant: Pick<Plant, 'id' | 'formClass'>): Figure => {
  if (DELICATE_ONES.has(plant.id)) return DELICATE
  return plant.formClass === 'foliage' || STURDY_ONES.has(plant.id) ? STURDY : USUAL
}

/**
 * What is cut off on arrival so that stems draw water: 1–2 in (Floral Design Institute, California Cut Flower Commission).
 * The lesser is reckoned as gone from every bought stem.
 */
export const RECUT_mm = 25.4
/** Cut long first, then to fit: so much more is taken for each piece. Ours. */
export const TRIM_mm = 20
