import { EXAMPLE_PRICES, type OwnStem, type Plant, spareShare, TRIM_mm } from '../catalogue/index.ts'
import type { Resolved, ResolvedStem } from '../geometry/index.ts'
import { fewestOf } from './cutting.ts'
import { type Use, usesOf } from './left.ts'
import { packsOf } from './money.ts'
import { type Bought, cheapestPacks } from './packs.ts'
import type { Wanted, Yield } from './pieces.ts'
import { colourKey, grouped } from './rows.ts'
import { shareOut } from './share-out.ts'
import { tradeColour } from './trade-colour.ts'
import type { PriceBook } from './types.ts'
import { yieldOf } from './yield.ts'

/** One design of an event, as often as it stands there. */
export interface Demand {
  /** Key of the design within the event. */
  design: string
  /** Whole number from 1 up. */
  copies: number
  resolved: Resolved
}

export interface OrderChoices {
  prices: PriceBook
  examples?: PriceBook
  /** Cut long first: so much over each piece, mm. */
  trim_mm?: number
  /** Plant id → spare as a share of the stems needed, instead of what is usual for it. */
  spare?: Readonly<Record<string, number>>
  /** Plant id → what the stems that came are like, instead of the catalogue's working figures. */
  stems?: Readonly<Record<string, OwnStem>>
  /** `apart`: a line for each colour of the document by itself, as the list of one design has it. */
  shades?: 'apart'
}

/** A stem of a design that is wanted once in each copy. */
export interface Place extends Wanted {
  design: string
  /** Id of the stem in its design. */
  stem: string
  /** Cut length without the allowance, mm. */
  cut_mm: number
}

export interface OrderLine {
  plant: string
  /** #rrggbb */
  colour: string
  pieces: number
  /** What one of its stems gives. */
  given: Yield
  /** The fewest that give all the pieces. */
  stems: number
  /** Fewer than these can't do; under `stems` where those are not proven to be the fewest (alongStems). */
  least: number
  /** Pieces longer than any usual stem of it; they are counted among the stems. */
  tooLong: number
  spareShare: number
  spareStems: number
  packs: Bought[]
  /** Stems that are in those packs; what is neither needed nor spare is left over. */
  bought: number
  leftover: number
  /** Side stems of the stems cut apart that no piece takes, each of at most given.side_mm; the last stems have them. */
  sidesLeft: number
  uses: Use[]
  /** Whole minor units. */
  minor: number
  /** The price is invented. */
  example: boolean
  places: Place[]
  /** Design → its part of the cost, whole minor units; they add up to the whole. */
  minorOf: Record<string, number>
}

/** What to buy for all the designs of an event together. */
export interface Order {
  currency: string
  lines: OrderLine[]
  /** Whole minor units. */
  minor: number
  /** Design → cost of all its copies, whole minor units; they add up to the whole. */
  minorOf: Record<string, number>
}

const placesOf = (demand: Demand, stems: readonly ResolvedStem[], trim_mm: number): Place[] =>
  stems.map(({ id, stem, curve }) => ({
    design: demand.design,
    stem: id,
    count: demand.copies,
    cut_mm: curve.cut_mm,
    length_mm: curve.cut_mm + trim_mm,
    piece: stem.piece,
  }))

/** How many stems each design takes of a line, in parts of a stem: a lateral is one head of it. */
const weightsOf = (places: readonly Place[], heads: number): Map<string, number> => {
  const weights = new Map<string, number>()
  for (const { design, count, piece } of places)
    weights.set(design, (weights.get(design) ?? 0) + count * (piece === 'whole' ? heads : 1))
  return weights
}

/** So many stems with their spare in the cheapest packs; money in whole minor units. */
export const bunchesFor = (plant: Plant, stems: number, spare: number, choices: OrderChoices) => {
  // The hair keeps 50 × 0.1 from asking for a sixth.
  const spareStems = Math.max(0, Math.ceil(stems * spare - 1e-9))
  const sold = packsOf(plant, choices.prices, choices.examples ?? EXAMPLE_PRICES)
  const packs = cheapestPacks(stems + spareStems, sold.packs)
  const bought = packs.reduce((sum, p) => sum + p.count * p.stems, 0)
  const minor = packs.reduce((sum, p) => sum + p.count * p.minor, 0)
  return { spareStems, packs, bought, leftover: bought - stems - spareStems, minor, example: sold.example }
}

const lineOf = (first: ResolvedStem, places: Place[], choices: OrderChoices): OrderLine => {
  const { plant } = first
  const given = yieldOf(plant, choices.stems?.[plant.id])
  const { stems, least, sidesLeft, tooLong } = fewestOf(places, given)
  const spare = choices.spare?.[plant.id] ?? spareShare(plant).value
  const bunches = bunchesFor(plant, stems, spare, choices)
  return {
    plant: plant.id,
    colour: colourKey(first),
    pieces: places.reduce((sum, p) => sum + p.count, 0),
    given,
    stems,
    least,
    tooLong,
    spareShare: spare,
    ...bunches,
    sidesLeft,
    uses: usesOf(places, given, { stems: bunches.leftover, sides: sidesLeft }),
    places,
    minorOf: shareOut(bunches.minor, weightsOf(places, 1 + given.sides)),
  }
}

/**
 * What a stem is ordered as. Designs that have a plant in shades of one colour are served from one bunch: the trade sells by words,
 * and the catalogue names them (tradeColour). A flower that is near none keeps its own line.
 */
const boughtAs = (stem: ResolvedStem): string => {
  const exact = colourKey(stem)
  return `${stem.plant.id} ${tradeColour(stem.plant, exact) ?? exact}`
}

/**
 * What to buy for an event: a line for each plant and colour over all the designs together (boughtAs). Stems are counted by the fewest
 * that give all pieces at their cut lengths, spare is put on top, and only then is it rounded up to bunches, once (per table it would
 * buy too much: common practice). Money in whole minor units, exact. Throws a RangeError unless each `copies` is a whole number from 1
 * up and each spare share is from 0 to 1.
 */
export const orderOf = (demands: readonly Demand[], choices: OrderChoices): Order => {
  for (const { copies } of demands)
    if (!Number.isSafeInteger(copies) || copies < 1)
      throw new RangeError(`copies: expected a whole number from 1 up, got ${copies}`)
  for (const share of Object.values(choices.spare ?? {}))
    if (!(share >= 0 && share <= 1)) throw new RangeError(`spare: expected a share from 0 to 1, got ${share}`)
  const trim_mm = choices.trim_mm ?? TRIM_mm
  const wanted = new Map<string, { first: ResolvedStem; places: Place[] }>()
  for (const demand of demands)
    for (const stems of grouped(demand.resolved, (s) => `${s.plant.id} ${colourKey(s)}`)) {
      const first = stems[0] as ResolvedStem
      const key = choices.shades === 'apart' ? `${first.plant.id} ${colourKey(first)}` : boughtAs(first)
      const places = placesOf(demand, stems, trim_mm)
      const so = wanted.get(key)
      if (so) so.places.push(...places)
      else wanted.set(key, { first, places })
    }
  const lines = [...wanted.values()].map(({ first, places }) => lineOf(first, places, choices))
  const minorOf: Record<string, number> = Object.fromEntries(demands.map(({ design }) => [design, 0]))
  for (const line of lines)
    for (const [design, minor] of Object.entries(line.minorOf)) minorOf[design] = (minorOf[design] ?? 0) + minor
  return { currency: choices.prices.currency, lines, minor: lines.reduce((sum, l) => sum + l.minor, 0), minorOf }
}
