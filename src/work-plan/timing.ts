import { type Keeping, keepingOf } from '../catalogue/index.ts'

/** When a plant comes and when it goes into the piece, days before the event's day. */
export interface Timing {
  plant: string
  arrive: number
  place: number
  /** Days that it needs to open; 0 where it is bought as it is wanted. */
  opens: number
  /** Hours that it has to stand in water first: least, and what is better. */
  water_h: [least: number, better: number]
  /** Worth saying of its days: it fades, or is not open in time. */
  doubts: string[]
}

/** In hand two days before, unless it opens more slowly (2 to 3 days: several practitioners, common practice). */
const USUAL_DAYS = 2
/** Water for at least two hours, better overnight (Floral Design Institute; Shaker Lakes garden club). */
const WATER_h: [number, number] = [2, 8]
/** Sturdy things and greens that may stand in the piece for two days go in two days before, all others the day before. */
const EARLY_DAYS = 2

/** The day it may go in: two days before where every source allows it, the day before where one does, else on the day. */
const placeDay = (placed: Keeping['placed_d']): number => {
  if (!placed) return 1
  return placed.least >= EARLY_DAYS ? EARLY_DAYS : Math.min(1, placed.most)
}

/**
 * When a plant comes: as many days before as it needs to open at the most, at least two (`hand` may ask for fewer or more), and
 * a day before it is placed; later, where it would fade before the event has ended by the shortest vase life that a source gives.
 * The rule is ours; its figures are the catalogue's.
 * @param hours that the flowers are to look well from the event's start
 */
export const timingOf = (plant: string, hours: number): Timing => {
  const keeping = keepingOf(plant)
  const opens = keeping?.opens_d?.most ?? 0
  const hand = keeping?.hand_d ?? null
  const vase = keeping?.vase_d ?? null
  const placed = keeping?.placed_d ?? null
  const early = placeDay(placed)
  // It stands in water for a night before it is placed.
  const wanted = Math.max(opens, USUAL_DAYS, early + 1)
  const asked = hand ? Math.min(Math.max(wanted, hand.least), Math.max(hand.most, early)) : wanted
  const least = Math.max(keeping?.opens_d?.least ?? 0, hand?.least ?? 0, placed?.least ?? 0)
  const fresh = vase ? Math.floor(vase.least - hours / 24) : asked
  const arrive = Math.max(least, Math.min(asked, fresh))
  const place = Math.min(early, Math.max(placed?.least ?? 0, arrive - 1))
  const doubts: string[] = []
  if (vase && arrive + hours / 24 > vase.least)
    doubts.push(`some last only ${vase.least} ${vase.least === 1 ? 'day' : 'days'} in water`)
  if (arrive < opens) doubts.push(`some need ${opens} days to open: buy them as open as you want them`)
  const water = keeping?.water_h
  return { plant, arrive, place, opens, water_h: water ? [water.least, water.most] : WATER_h, doubts }
}
