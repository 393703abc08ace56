import type { Arrangement } from '../arrangement/index.ts'
import type { Half, OwnStem } from '../catalogue/index.ts'

/** One design of an event, as often as it stands there. */
export interface EventPart {
  /** Key among the event's designs; each design stands in it once. */
  design: string
  /** How many are made. */
  copies: number
  /** Where they stand, in the person's words: "guest tables". */
  place: string
  /** What the design was called when the event was last kept: to tell which one is missing, should it be gone. */
  title?: string
  /** Minutes to place the stems of one, as a trial piece took; missing: reckoned from the minutes for a stem and for a piece. */
  placing_min?: number
}

/** Minutes of one pair of hands; the person's own timing of a trial piece is better than any table. */
export interface HandMinutes {
  /** For each stem that is placed. */
  stem: number
  /** To set up and clear for each piece. */
  piece: number
  /** To take in, count and look over each delivery, by one. */
  receiving: number
  /** To unpack, strip, recut and stand in water, for each bought stem. */
  conditioning: number
  /** To prepare each vessel: wire, grid, foam. */
  vessel: number
  /** To bind each piece that nothing holds. */
  binding: number
  /** To top up each piece that stands for a day. */
  watering: number
  /** To top up, check and pack each piece. */
  packing: number
  /** To set each piece in its place at the venue. */
  setting: number
}

export interface Work {
  /** Pairs of hands. */
  people: number
  /** Their names, as many as are known: at most `people`. */
  names: string[]
  /** Key of a task → the hands that are at it, by number from 1, instead of what is usual. */
  who: Record<string, number[]>
  /** The day's work, local clock `HH:MM`. */
  from: string
  to: string
  /** What goes in last goes in on the evening before, where it may stand so long; else on the day itself. */
  evening: boolean
  /** On the road, minutes. */
  drive: number
  minutes: HandMinutes
}

/** When flowers come. Days before the event's day. */
export interface Deliveries {
  /** Those on which they can come; none named: any. */
  days: number[]
  /** Plant id → the day on which it comes, whatever else is said. */
  of: Record<string, number>
}

/** Where flowers wait in the cool; null where there is none. */
export interface Cooler {
  /** °C */
  celsius: number
  /** Stems that have room in it. */
  stems: number
}

/**
 * The event, version 1: several designs with their numbers, one order, one plan of work. Plain data. In a file the designs
 * lie in it whole; in the browser they are kept by themselves, so that a change in one is a change in the event.
 */
export interface EventPlan {
  format: 'pedicel-event'
  version: 1
  /** Made once, and kept in the file: by it the same event is known again. '' in files that were written without one. */
  id: string
  title: string
  /** ISO 8601 local date and time, by the clock of the zone; '' not yet known. */
  date: string
  /** IANA time zone, such as Europe/Lisbon. */
  zone: string
  /** Whose seasons hold, where the place is not on the half of the earth that the zone says; null: as the zone lies. */
  seasons: Half | null
  /** How long the flowers are to look well, hours. */
  hours: number
  /** Tables that the cost is divided by; 0 not asked. */
  tables: number
  parts: EventPart[]
  /** Cut long first: so much over each piece, mm. */
  trim_mm: number
  /** Plant id → spare as a share of the stems needed, instead of what is usual. */
  spare: Record<string, number>
  /** Plant id → what its stems are like, measured on those that came. */
  stems: Record<string, OwnStem>
  /** Most that may be spent on stems, whole minor units of `currency`; null not asked. */
  budget: number | null
  /** Of the budget, ISO 4217; '' in files that were written without one: that of the price book. */
  currency: string
  work: Work
  deliveries: Deliveries
  cooler: Cooler | null
  /** Keys of tasks that are ticked off. */
  done: string[]
}

/** An event with its designs, as it lies in a file and as it is worked out. */
export interface WholeEvent extends EventPlan {
  designs: Record<string, Arrangement>
}
