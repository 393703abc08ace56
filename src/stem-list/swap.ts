import type { Edit, Stem } from '../arrangement/index.ts'
import { PLANTS, type Plant } from '../catalogue/index.ts'
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
  /** How far it is in all; 1 is one step in colour or in size. */
  far: number
}

/** One step of colour is ΔE00 10, where `a shade off` ends (colour's nearest.ts); one step of size a quarter larger. Ours. */
const STEP_COLOUR = 10
const STEP_SIZE = Math.log(1.25)

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

/** Other plants of the same form class, nearest in colour (#rrggbb) and size first. */
export const swapsFor = (wanted: Plant, colour: string, plants: readonly Plant[] = PLANTS): SwapOffer[] =>
  plants
    .filter((plant) => plant.id !== wanted.id && plant.formClass === wanted.formClass)
    .map((plant) => {
      const { hex, apart } = nearestColours(colour, coloursOf(plant))[0]!
      const times = timesOf(wanted, plant)
      return { plant, colour: hex, apart, times, far: Math.hypot(apart / STEP_COLOUR, Math.log(times) / STEP_SIZE) }
    })
    .sort((a, b) => a.far - b.far)

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
