import type { Item, Place } from '../../picture/types.ts'
import { INK } from '../../picture/types.ts'
import { disc, type Pen, ring, rule, SMALL, words } from './pen.ts'

export interface Numbered {
  number: number
  at: Place
  /** Of the ring round it. */
  colour: string
}

/** Radius of a number's disc, px. */
const R = 27
const ROUNDS = 120

/** Discs pushed apart until none covers another, as far as that goes, and kept near where they belong. */
export const spreadOut = (points: readonly Place[], radius: number = R): Place[] => {
  const now = points.map(([x, y]): Place => [x, y])
  for (let round = 0; round < ROUNDS; round += 1) {
    let moved = false
    for (let i = 0; i < now.length; i += 1)
      for (let j = i + 1; j < now.length; j += 1) {
        const [a, b] = [now[i]!, now[j]!]
        // Two at one place part along a direction that follows from their order alone.
        const [dx, dy] = [b[0] - a[0] || Math.cos(i + 2 * j) * 0.01, b[1] - a[1] || Math.sin(i + 2 * j) * 0.01]
        const far = Math.hypot(dx, dy)
        const less = 2 * radius + 4 - far
        if (less <= 0.5) continue
        moved = true
        const [ux, uy] = [(dx / far) * (less / 2), (dy / far) * (less / 2)]
        now[i] = [a[0] - ux, a[1] - uy]
        now[j] = [b[0] + ux, b[1] + uy]
      }
    if (!moved) break
  }
  return now
}

/** Numbers in discs at their places; one that had to give way keeps a thin line to its own. */
export const numbers = (pen: Pen, all: readonly Numbered[]): Item[] => {
  const places = spreadOut(all.map((n) => n.at))
  const leaders = all.flatMap(({ at }, i): Item[] => {
    const [x, y] = places[i]!
    return Math.hypot(x - at[0], y - at[1]) > R ? [rule(at, [x, y], 2, INK), ...disc(at[0], at[1], 4, INK, INK, 1)] : []
  })
  return [
    ...leaders,
    ...all.flatMap(({ number, colour }, i): Item[] => {
      const [x, y] = places[i]!
      return [
        ...disc(x, y, R, '#ffffff', INK, 2),
        ring(x, y, R - 5, colour, 6),
        words(pen, String(number), SMALL, x, y + 12, 'centre'),
      ]
    }),
  ]
}
