import { seasonIn, seasonSource, seasonWords } from '../catalogue/index.ts'
import { type EventPlan, whenOf } from '../event/index.ts'
import type { Load } from './load.ts'
import type { Clash } from './types.ts'

/** Plants of the order that are certainly not to be had in the event's month, each with what to do about it. */
export const outOfSeason = ({ arriving }: Load, plan: EventPlan): Clash[] => {
  const when = whenOf(plan)
  if (!when) return []
  return arriving
    .filter(({ plant }) => seasonIn(plant, when) === 'out')
    .map(({ plant, name }) => ({
      tasks: ['book'],
      text: `${name} is ${seasonWords(plant, when)}. Ask your seller early, or swap it.`,
      known: seasonSource(plant, when.half),
    }))
}
