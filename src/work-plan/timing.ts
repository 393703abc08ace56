import { findPlant, type Keeping, keepingOf, type Span } from '../catalogue/index.ts'

/** When a plant comes and when it goes into the piece, days before the event's day. */
export interface Timing {
  plant: string
  arrive: number
  /** When it would come best, if it could come on any day. */
  best: number
  place: number
  /** Days that the slowest need to open; 0 where it is bought as it is wanted. */
  opens: number
  /** Hours that it has to stand in water first: least, and what is better. */
  water_h: [least: number, better: number]
  /** Days to open that the slowest lack: it has to be bought further on. */
  lacks: number
  /** Days to open that even the quickest lack: it would still be closed. */
  shut: number
  /** Days by which it comes sooner than it is had in hand, or than it lasts; 0: within its own ranges. */
  sooner: number
  /** Days by which it comes later than it is had in hand, or than the quickest need to open; 0: within its own ranges. */
  later: number
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

/** What wilts or bruises goes in last, on the day itself or in the night before it (common practice). */
const DELICATE = ['hydrangea', 'sweet-pea', 'dahlia', 'iris']

/** The evening before the event's day, as a day on which something is placed: after all that goes in on that day. */
export const EVENING = 0.5

/** Key of placing on a day, or on the evening before the event's. */
export const placeKey = (day: number): string => (day === EVENING ? 'place-evening' : `place-${day}`)

/** Whether what goes in on the day may go in on the evening before: it is there, and one source at least lets it stand so long. */
export const bearsEvening = ({ plant, arrive, place }: Pick<Timing, 'plant' | 'arrive' | 'place'>): boolean =>
  place === 0 && arrive > 0 && (keepingOf(plant)?.placed_d?.most ?? 0) >= 1

const isWoody = (plant: string): boolean => findPlant(plant)?.shape.woody === 1

/** The day it may go in: two days before where every source allows it, the day before where one does, else on the day. */
const placeDay = (plant: string, placed: Keeping['placed_d']): number => {
  if (DELICATE.includes(plant)) return 0
  if (!placed) return 1
  return placed.least >= EARLY_DAYS ? EARLY_DAYS : Math.min(1, placed.most)
}

const waterOf = (plant: string, water: Span | null): [number, number] => {
  const [least, better] = water ? [water.least, water.most] : WATER_h
  return isWoody(plant) ? [Math.max(least, WOODY_h), Math.max(better, WOODY_h)] : [least, better]
}

/** The day on which it would come best; see `timingOf`. */
const bestDay = (keeping: Keeping | null, early: number, hours: number): number => {
  const { opens_d = null, hand_d = null, vase_d = null } = keeping ?? {}
  const wanted = Math.max(opens_d?.most ?? 0, USUAL_DAYS, early + 1)
  const asked = hand_d ? Math.min(Math.max(wanted, hand_d.least), Math.max(hand_d.most, early + 1)) : wanted
  const fresh = vase_d ? Math.floor(vase_d.least - hours / 24) : asked
  return Math.max(opens_d?.least ?? 0, hand_d?.least ?? 0, Math.min(asked, fresh))
}

/**
 * When a plant comes: as many days before as it needs to open at the most, at least two (`hand` may ask for fewer or more), and
 * a day before it is placed, for a night in water; later, where it would fade before the event has ended by the shortest vase life
 * that a source gives. The rule is ours; its figures are the catalogue's.
 * @param hours that the flowers are to look well from the event's start
 * @param on days before on which it comes, where that is settled; else the best
 */
export const timingOf = (plant: string, hours: number, on?: number): Timing => {
  const keeping = keepingOf(plant)
  const { opens_d = null, hand_d = null, vase_d = null } = keeping ?? {}
  const early = placeDay(plant, keeping?.placed_d ?? null)
  const best = bestDay(keeping, early, hours)
  const arrive = on ?? best
  const days = arrive + hours / 24
  const handMost = hand_d ? Math.max(hand_d.most, early + 1) : arrive
  return {
    plant,
    arrive,
    best,
    place: Math.min(early, Math.max(0, arrive - 1)),
    opens: opens_d?.most ?? 0,
    water_h: waterOf(plant, keeping?.water_h ?? null),
    lacks: Math.max(0, (opens_d?.most ?? 0) - arrive),
    shut: Math.max(0, (opens_d?.least ?? 0) - arrive),
    sooner: Math.max(0, arrive - handMost, vase_d ? days - vase_d.least : 0),
    later: Math.max(0, Math.max(hand_d?.least ?? 0, opens_d?.least ?? 0) - arrive),
    fades: vase_d && days > vase_d.least ? { days, lasts: vase_d } : null,
  }
}
