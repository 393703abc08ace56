import type { Mechanics } from '../arrangement/index.ts'
import type { EventPart } from '../event/index.ts'
import type { Order } from '../stem-list/index.ts'
import { type Timing, timingOf } from './timing.ts'

/** Stems of one plant and colour that arrive together. */
export interface Arriving extends Timing {
  name: string
  bought: number
}

/** How much work the event is: what comes when, how many pieces are placed when, and in how many vessels. */
export interface Load {
  arriving: Arriving[]
  /** Days before → pieces placed on that day, all copies together. */
  placed: Map<number, number>
  /** Days before → ids of the plants placed on that day. */
  plantsPlaced: Map<number, Set<string>>
  vessels: number
  /** Designs that have pieces to place on a day: their vessels are set up once more on each. */
  pieces: Map<number, number>
  mechanics: Set<Mechanics>
}

const add = <K>(map: Map<K, number>, key: K, by: number): void => void map.set(key, (map.get(key) ?? 0) + by)

/**
 * The work in an order. A plant with several colours comes on one day.
 * @param nameOf the name of a plant by its id
 * @param mechanicsOf what holds the stems of a design
 */
export const loadOf = (
  order: Order,
  parts: readonly EventPart[],
  hours: number,
  nameOf: (plant: string) => string,
  mechanicsOf: (design: string) => Mechanics | undefined,
): Load => {
  const arriving = order.lines.map((line) => ({
    ...timingOf(line.plant, hours),
    name: nameOf(line.plant),
    bought: line.bought,
  }))
  const placed = new Map<number, number>()
  const plantsPlaced = new Map<number, Set<string>>()
  const designs = new Map<number, Set<string>>()
  order.lines.forEach((line, i) => {
    const { place } = arriving[i]!
    for (const { design, count } of line.places) {
      add(placed, place, count)
      const there = designs.get(place) ?? new Set()
      designs.set(place, there.add(design))
    }
    const plants = plantsPlaced.get(place) ?? new Set()
    plantsPlaced.set(place, plants.add(line.plant))
  })
  const copiesOf = new Map(parts.map((p) => [p.design, p.copies]))
  const pieces = new Map(
    [...designs].map(([day, all]) => [day, [...all].reduce((n, d) => n + (copiesOf.get(d) ?? 0), 0)]),
  )
  return {
    arriving,
    placed,
    plantsPlaced,
    vessels: parts.reduce((n, p) => n + p.copies, 0),
    pieces,
    mechanics: new Set(parts.map((p) => mechanicsOf(p.design)).filter((m) => m !== undefined)),
  }
}
