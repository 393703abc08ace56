import type { Half, When } from '../catalogue/index.ts'
import { SOUTHERN_ZONES } from './southern-zones.ts'
import type { EventPlan } from './types.ts'

/** The half of the earth that a time zone's place lies on; a zone without a place, such as UTC, is taken as northern (ours). */
export const halfOfZone = (zone: string): Half => (SOUTHERN_ZONES.has(zone) ? 'south' : 'north')

/** Whose seasons an event has: as it says itself, else as its zone lies. Between the tropics neither says much. */
export const halfOf = ({ zone, seasons }: Pick<EventPlan, 'zone' | 'seasons'>): Half => seasons ?? halfOfZone(zone)

/** The month of an event, with the half of the earth it is on; null without a date. */
export const whenOf = (event: Pick<EventPlan, 'date' | 'zone' | 'seasons'>): When | null =>
  event.date ? { month: Number(event.date.slice(5, 7)), half: halfOf(event) } : null
