import { findPlant, type Keeping, keepingOf, type Span } from '../catalogue/index.ts'

/** When a plant comes and when it goes into the piece, days before the event's day. */
export interface Timing {
  plant: string
  arrive: number
  place: number
  /** Days that it needs to open; 0 where it is bought as it is wanted. */
  opens: number
  /** Hours that it has to stand in water first: least, and what is better. */
  water_h: [least: number, better: number]
  /** It has fewer days than the slowest need to open: it has to be bought further on. */
  openOnBuying: boolean
  /** It is in water longer, from its day to the event's end, than the shortest vase life that a source gives. */
  fades: { days: number; lasts: Span } | null
}

/** In hand two days before, unless it opens more slowly (2 to 3 days: several practitioners, common practice). */
const USUAL_DAYS = 2
/** Water for at least two hours, better overnight (Floral Design Institute; Shaker Lakes garden club). */
const WATER_h: [number, number] = [2, 8]
/** Woody stems draw slowly: 8 h or overnight (Brookfield garden club). */
const WOODY_h = 8
/** Sturdy things and greens that may stand in the piece for two days go in two days before, all others the day before. */
const EARLY_DAYS = 2

export const isWoody = (plant: string): boolean => findPlant(plant)?.shape.woody === 1

/** The day it may go in: two days before where every source allows it, the day before where one does, else on the day. */
const placeDay = (placed: Keeping['placed_d']): number => {
  if (!placed) return 1
  return placed.least >= EARLY_DAYS ? EARLY_DAYS : Math.min(1, placed.most)
}

const waterOf = (plant: string, water: Span | null): [number, number] => {
  const [least, better] = water ? [water.least, water.most] : WATER_h
  return isWoody(plant) ? [Math.max(least, WOODY_h), Math.max(better, WOODY_h)] : [least, better]
}

/**
 * When a plant comes: as many days before as it needs to open at the most, at least two (`hand` may ask for fewer or more), and
 * a day before it is placed, for a night in water; later, where it would fade before the event has ended by the shortest vase life
 * that a source gives. The rule is ours; its figures are the catalogue's.
 * @param hours that the flowers are to look well from the event's start
 */
export const timingOf = (plant: string, hours: number): Timing => {
  const keeping = keepingOf(plant)
  const opens = keeping?.opens_d?.most ?? 0
  const hand = keeping?.hand_d ?? null
  const vase = keeping?.vase_d ?? null
  const early = placeDay(keeping?.placed_d ?? null)
  const wanted = Math.max(opens, USUAL_DAYS, early + 1)
  const asked = hand ? Math.min(Math.max(wanted, hand.least), Math.max(hand.most, early + 1)) : wanted
  const least = Math.max(keeping?.opens_d?.least ?? 0, hand?.least ?? 0)
  const fresh = vase ? Math.floor(vase.least - hours / 24) : asked
  const arrive = Math.max(least, Math.min(asked, fresh))
  const days = arrive + hours / 24
  return {
    plant,
    arrive,
    place: Math.min(early, Math.max(0, arrive - 1)),
    opens,
    water_h: waterOf(plant, keeping?.water_h ?? null),
    openOnBuying: arrive < opens,
    fades: vase && days > vase.least ? { days, lasts: vase } : null,
  }
}
