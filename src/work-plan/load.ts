import type { Mechanics } from '../arrangement/index.ts'
import { findPlant } from '../catalogue/index.ts'
import type { EventPlan, HandMinutes } from '../event/index.ts'
import type { Order } from '../stem-list/index.ts'
import { settledTiming } from './deliveries.ts'
import { PLACING_ORDER } from './placing.ts'
import { bearsEvening, EVENING, type Timing } from './timing.ts'

/** What a plan has to be told of plants and designs, by their ids and keys. */
export interface About {
  nameOf: (plant: string) => string
  /** What holds the stems of a design. */
  mechanicsOf: (design: string) => Mechanics | undefined
  /** Missing: its key. */
  titleOf?: (design: string) => string
  /** What one piece weighs, full of water, g; missing or undefined where nobody knows. */
  massOf?: (design: string) => number | undefined
}

/** Stems of one plant that arrive together, its colours as one. */
export interface Arriving extends Timing {
  name: string
  bought: number
  /** The day on which the first of them go in; `place` is that of the last, for a tied design may have them later than a bowl. */
  first: number
}

/** What there is to do for one design, all its copies together. */
export interface Work {
  design: string
  title: string
  copies: number
  mechanics: Mechanics | undefined
  /** Minutes to place the stems of one, as the person timed it. */
  placing_min: number | undefined
  /** Of one piece full of water, g. */
  mass_g: number | undefined
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

/** What nothing holds is made in one go, on the day of the flower that goes in last: it is tied, or its stems would fall. */
const placeDayIn = (order: Order, arriving: ReadonlyMap<string, Arriving>, works: ReadonlyMap<string, Work>) => {
  const last = new Map<string, number>()
  for (const { plant, places } of order.lines)
    for (const { design } of places)
      last.set(design, Math.min(last.get(design) ?? Number.POSITIVE_INFINITY, arriving.get(plant)?.place ?? 0))
  return (plant: string, { design }: Work): number => {
    const whole = works.get(design)?.mechanics === 'none' ? last.get(design) : undefined
    return whole ?? arriving.get(plant)?.place ?? 0
  }
}

/**
 * The work in an order. A plant with several colours comes on one day.
 */
export const loadOf = (
  order: Order,
  { parts, hours, deliveries, work }: Pick<EventPlan, 'parts' | 'hours' | 'deliveries' | 'work'>,
  { nameOf, mechanicsOf, titleOf = (design) => design, massOf = () => undefined }: About,
): Load => {
  const timed = (plant: string): Timing => {
    const timing = settledTiming(plant, hours, deliveries)
    return work.evening && bearsEvening(timing) ? { ...timing, place: EVENING } : timing
  }
  const arriving = new Map<string, Arriving>()
  const works = new Map<string, Work>()
  for (const { design, copies, placing_min } of parts)
    works.set(design, {
      design,
      title: titleOf(design),
      copies,
      mechanics: mechanicsOf(design),
      placing_min,
      mass_g: massOf(design),
      stems: new Map(),
    })
  for (const { plant, bought } of order.lines) {
    const known = arriving.get(plant)
    const now = {
      ...(known ?? { ...timed(plant), name: nameOf(plant), first: 0 }),
      bought: (known?.bought ?? 0) + bought,
    }
    arriving.set(plant, now)
  }
  const dayIn = placeDayIn(order, arriving, works)
  const plants = new Map<number, string[]>()
  for (const { plant, places } of order.lines)
    for (const { design, count } of places) {
      const made = works.get(design)
      if (!made) continue
      const day = dayIn(plant, made)
      made.stems.set(day, (made.stems.get(day) ?? 0) + count)
      const ids = plants.get(day) ?? []
      if (!ids.includes(plant)) plants.set(day, [...ids, plant])
    }
  for (const ids of plants.values()) ids.sort((a, b) => rank(a) - rank(b))
  const all = [...arriving.values()].map((a): Arriving => {
    const days = [...plants].filter(([, ids]) => ids.includes(a.plant)).map(([day]) => day)
    return days.length > 0 ? { ...a, place: Math.min(...days), first: Math.max(...days) } : { ...a, first: a.place }
  })
  return { arriving: all, works: [...works.values()], plants, vessels: parts.reduce((n, p) => n + p.copies, 0) }
}

const total = (stems: Work['stems']): number => [...stems.values()].reduce((a, b) => a + b, 0)

/**
 * Minutes of placing one design's pieces on a day. The minutes for a piece are those of a trial piece made at one sitting, so they are
 * counted once: shared evenly by the days on which it is worked at; minutes of one's own for all of it go by the stems (ours).
 */
const placedIn_min = ({ copies, stems, placing_min }: Work, day: number, minutes: HandMinutes): number => {
  const today = stems.get(day)
  if (today === undefined) return 0
  if (placing_min !== undefined) return (copies * placing_min * today) / total(stems)
  return today * minutes.stem + (copies * minutes.piece) / stems.size
}

/** Minutes of placing on a day, all designs. */
export const placedOn_min = (works: readonly Work[], day: number, minutes: HandMinutes): number =>
  works.reduce((sum, w) => sum + placedIn_min(w, day, minutes), 0)

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
  /** That is the person's own figure for this design. */
  own: boolean
  /** Packing, setting, and taking down, which is taken to need as long as setting (ours). */
  after_min: number
  all_min: number
}

/** How the hours of each design come about, from the person's own minutes. */
export const pieceTimes = (works: readonly Work[], minutes: HandMinutes): PieceTime[] =>
  works.map(({ design, copies, stems, placing_min }) => {
    const each = total(stems) / copies
    const placing = each === 0 ? 0 : (placing_min ?? each * minutes.stem + minutes.piece)
    const after = minutes.packing + 2 * minutes.setting
    return {
      design,
      copies,
      stems: each,
      vessel_min: minutes.vessel,
      placing_min: placing,
      own: placing_min !== undefined,
      after_min: after,
      all_min: copies * (minutes.vessel + placing + after),
    }
  })
