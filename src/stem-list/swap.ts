import type { Edit, Stem } from '../arrangement/index.ts'
import { type FormClass, PLANTS, type Plant, seasonIn, type When } from '../catalogue/index.ts'
import { nearestColours } from '../colour/index.ts'
import type { OrderLine } from './order.ts'

/** A plant that may stand for another. */
export interface SwapOffer {
  plant: Plant
  /** Of its colours the nearest, #rrggbb, and how far that is from the one it stands for, ΔE00. */
  colour: string
  apart: number
  /** How many times as large: the width or the length of what is seen, whichever differs more. */
  times: number
  /** The class that both have: the wanted one's main class, where the offered plant has it at all. */
  shared: FormClass
  /** It is the main class of both. */
  main: boolean
  /** How far it is in all; 1 is one step in colour, in size or in season. */
  far: number
}

/** One step of colour is ΔE00 10, where `a shade off` ends (colour's nearest.ts); one step of size a quarter larger. Ours. */
const STEP_COLOUR = 10
const STEP_SIZE = Math.log(1.25)
/** Out of season for certain is one step more; what is not known, or known from memory alone, is none. Ours. */
const STEP_SEASON = 1

const across = (plant: Plant): number => (plant.spread_mm ?? plant.headOpen_mm).value

/** How many times as large `b` is as `a`. */
const timesOf = (a: Plant, b: Plant): number => {
  const wide = across(b) / across(a)
  if (!a.headLength_mm || !b.headLength_mm) return wide
  const long = b.headLength_mm.value / a.headLength_mm.value
  return Math.abs(Math.log(long)) > Math.abs(Math.log(wide)) ? long : wide
}

const coloursOf = (plant: Plant): { hex: string }[] =>
  plant.colours.length > 0 ? plant.colours : [{ hex: plant.leafColour }]

/** The class by which a plant may stand for the wanted one, in the wanted one's order of them. */
const sharedClass = (wanted: Plant, plant: Plant): FormClass | undefined =>
  wanted.formClasses.find((c) => plant.formClasses.includes(c))

/**
 * Other plants that share a form class, those with the same main class first; in each group nearest in colour (#rrggbb), size
 * and season first.
 * @param when the month of the event, where it is known
 */
export const swapsFor = (
  wanted: Plant,
  colour: string,
  when: When | null = null,
  plants: readonly Plant[] = PLANTS,
): SwapOffer[] =>
  plants
    .flatMap((plant): SwapOffer[] => {
      const shared = sharedClass(wanted, plant)
      if (plant.id === wanted.id || !shared) return []
      const { hex, apart } = nearestColours(colour, coloursOf(plant))[0]!
      const times = timesOf(wanted, plant)
      const late = seasonIn(plant.id, when) === 'out' ? STEP_SEASON : 0
      const far = Math.hypot(apart / STEP_COLOUR, Math.log(times) / STEP_SIZE) + late
      return [{ plant, colour: hex, apart, times, shared, main: plant.formClass === wanted.formClass, far }]
    })
    .sort((a, b) => Number(b.main) - Number(a.main) || a.far - b.far)

/**
 * Puts another plant in place of the stems that a line of the order names in a design, where they stand; heads take the size
 * of the new plant. A lateral becomes a whole stem where the new plant bears a single head. null where the design has none
 * of them, or they are of another plant by now.
 */
export const swapEdit = (
  stems: readonly Pick<Stem, 'id' | 'plant'>[],
  { plant, places }: Pick<OrderLine, 'plant' | 'places'>,
  design: string,
  to: Pick<SwapOffer, 'plant' | 'colour'>,
): Extract<Edit, { do: 'set-stems' }> | null => {
  const named = new Set(places.filter((p) => p.design === design).map((p) => p.stem))
  const ids = stems.filter((s) => s.plant === plant && named.has(s.id)).map((s) => s.id)
  if (ids.length === 0) return null
  const piece = to.plant.manyHeaded ? {} : { piece: 'whole' as const }
  return { do: 'set-stems', ids, set: { plant: to.plant.id, colour: to.colour, head: null, ...piece } }
}
