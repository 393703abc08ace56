import type { Mechanics } from '../arrangement/index.ts'
import { findPlant } from '../catalogue/index.ts'
import type { EventPart, HandMinutes } from '../event/index.ts'
import type { Order } from '../stem-list/index.ts'
import { PLACING_ORDER } from './placing.ts'
import { type Timing, timingOf } from './timing.ts'

/** Stems of one plant that arrive together, its colours as one. */
export interface Arriving extends Timing {
  name: string
  bought: number
}

/** What there is to do for one design, all its copies together. */
export interface Work {
  design: string
  title: string
  copies: number
  mechanics: Mechanics | undefined
  /** Days before → stems placed on that day. */
  stems: Map<number, number>
}

/** How much work the event is: what comes when, what is placed when, and in how many vessels. */
export interface Load {
  arriving: Arriving[]
  works: Work[]
  /** Days before → ids of the plants placed on that day, in the order in which they go in. */
  plants: Map<number, string[]>
  vessels: number
}

const rank = (plant: string): number => PLACING_ORDER.indexOf(findPlant(plant)?.role ?? 'filler')

/**
 * The work in an order. A plant with several colours comes on one day.
 * @param nameOf the name of a plant by its id
 * @param mechanicsOf what holds the stems of a design
 * @param titleOf the title of a design by its key
 */
export const loadOf = (
  order: Order,
  parts: readonly EventPart[],
  hours: number,
  nameOf: (plant: string) => string,
  mechanicsOf: (design: string) => Mechanics | undefined,
  titleOf: (design: string) => string = (design) => design,
): Load => {
  const arriving = new Map<string, Arriving>()
  const works = new Map<string, Work>()
  for (const { design, copies } of parts)
    works.set(design, { design, title: titleOf(design), copies, mechanics: mechanicsOf(design), stems: new Map() })
  for (const { plant, bought, places } of order.lines) {
    const known = arriving.get(plant)
    const now = {
      ...(known ?? { ...timingOf(plant, hours), name: nameOf(plant) }),
      bought: (known?.bought ?? 0) + bought,
    }
    arriving.set(plant, now)
    for (const { design, count } of places) {
      const stems = works.get(design)?.stems
      stems?.set(now.place, (stems.get(now.place) ?? 0) + count)
    }
  }
  const all = [...arriving.values()]
  const plants = new Map<number, string[]>()
  for (const { plant, place } of all) plants.set(place, [...(plants.get(place) ?? []), plant])
  for (const ids of plants.values()) ids.sort((a, b) => rank(a) - rank(b))
  return { arriving: all, works: [...works.values()], plants, vessels: parts.reduce((n, p) => n + p.copies, 0) }
}

const total = (stems: Work['stems']): number => [...stems.values()].reduce((a, b) => a + b, 0)

/**
 * Minutes of placing on a day, all designs. The minutes for a piece are those of a trial piece made at one sitting, so they are counted
 * once: shared evenly by the days on which it is worked at (ours).
 */
export const placing_min = (works: readonly Work[], day: number, minutes: HandMinutes): number =>
  works
    .filter((w) => w.stems.has(day))
    .reduce((sum, w) => sum + w.stems.get(day)! * minutes.stem + (w.copies * minutes.piece) / w.stems.size, 0)

/** Stems and pieces on a day. */
export const placedOn = (works: readonly Work[], day: number): { stems: number; pieces: number } => {
  const there = works.filter((w) => w.stems.has(day))
  return {
    stems: there.reduce((n, w) => n + w.stems.get(day)!, 0),
    pieces: there.reduce((n, w) => n + w.copies, 0),
  }
}

/** What one piece of a design takes, minutes of one pair of hands, and all of its copies. */
export interface PieceTime {
  design: string
  copies: number
  /** Stems in one. */
  stems: number
  vessel_min: number
  /** Its stems and its own minutes: what a trial piece measures. */
  placing_min: number
  /** Packing, setting, and taking down, which is taken to need as long as setting (ours). */
  after_min: number
  all_min: number
}

/** How the hours of each design come about, from the person's own minutes. */
export const pieceTimes = (works: readonly Work[], minutes: HandMinutes): PieceTime[] =>
  works.map(({ design, copies, stems }) => {
    const each = total(stems) / copies
    const placing = each === 0 ? 0 : each * minutes.stem + minutes.piece
    const after = minutes.packing + 2 * minutes.setting
    return {
      design,
      copies,
      stems: each,
      vessel_min: minutes.vessel,
      placing_min: placing,
      after_min: after,
      all_min: copies * (minutes.vessel + placing + after),
    }
  })
