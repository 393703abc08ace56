import { TRIM_mm } from '../catalogue/index.ts'
import type { EventPlan, HandMinutes } from './types.ts'

/**
 * Minutes to start a learner with, before a trial piece has been timed. Stem and piece: 1 and 10 (ours, inside the 15 to 30 min
 * for a low centrepiece that practitioners report: common practice). Conditioning: 20 to 40 stems in 10 min (from memory).
 * Vessels: wire 2–3, foam 2–4, tape grid 3–5 min; finish, top up, label 3–5 min (from memory). Setting, 10 to take in a delivery, 2
 * to bind and 1 to top up a piece: ours.
 */
export const HAND_MINUTES: HandMinutes = {
  stem: 1,
  piece: 10,
  receiving: 10,
  conditioning: 0.33,
  vessel: 3,
  binding: 2,
  watering: 1,
  packing: 4,
  setting: 3,
}

/** An event with nothing in it yet. The zone is the caller's to give: no pure room knows where it is. */
export const newEvent = (zone: string): EventPlan => ({
  format: 'pedicel-event',
  version: 1,
  id: '',
  title: '',
  date: '',
  zone,
  seasons: null,
  hours: 8,
  tables: 0,
  parts: [],
  trim_mm: TRIM_mm,
  spare: {},
  stems: {},
  budget: null,
  currency: '',
  work: { people: 2, names: [], who: {}, from: '09:00', to: '18:00', evening: false, drive: 30, minutes: HAND_MINUTES },
  deliveries: { days: [], of: {} },
  cooler: null,
  done: [],
})
