import { type EventPlan, newEvent } from '../../../src/event/index.ts'
import type { Order, OrderLine } from '../../../src/stem-list/index.ts'
import { type About, type Plan, planOf } from '../../../src/work-plan/index.ts'

/** A line of an order as far as the plan looks at it: `count` pieces of a plant, a stem each, in one design. */
export const line = (plant: string, count: number, design = 'bowl'): OrderLine => ({
  plant,
  colour: '#ffffff',
  pieces: count,
  given: { main_mm: 475, sides: 0, side_mm: 0 },
  stems: count,
  least: count,
  tooLong: 0,
  spareShare: 0,
  spareStems: 0,
  packs: [],
  bought: count,
  leftover: 0,
  sidesLeft: 0,
  uses: [],
  minor: 0,
  example: true,
  places: [{ design, stem: plant, count, length_mm: 200, cut_mm: 180, piece: 'whole' }],
  minorOf: {},
})
export const order = (...lines: OrderLine[]): Order => ({ currency: 'EUR', lines, minor: 0, minorOf: {} })

/** A Saturday in June at three in the afternoon; twelve bowls, two pairs of hands from nine to six. */
export const event = (over: Partial<EventPlan> = {}): EventPlan => ({
  ...newEvent('Europe/Lisbon'),
  title: 'June',
  date: '2027-06-12T15:00',
  hours: 8,
  parts: [{ design: 'bowl', copies: 12, place: 'guest tables' }],
  ...over,
})

/** Plants are called by their ids; all is held by netting, and nobody knows what it weighs. */
export const about: About = { nameOf: (id) => id, mechanicsOf: () => 'netting' }

export const plan = (over: Partial<EventPlan>, ...lines: OrderLine[]): Plan =>
  planOf(event(over), order(...lines), about)
