import type { Vessel } from '../../../arrangement/index.ts'
import type { Resolved, ResolvedStem } from '../../../geometry/index.ts'
import { plainName } from '../../../telling/index.ts'
import { formatLength, type Units } from '../../../units/index.ts'
import { type Placing, type Plan, placedOnDay, weekdayWords } from '../../../work-plan/index.ts'
import type { EventDesign } from '../use-worked-event.ts'

export interface BenchWords {
  units: Units
  /** Of the event. */
  title: string
  plan: Plan
  /** The sheet Take care is printed too. */
  withCare: boolean
  /** A stem's colour in words. */
  colourOf: (stem: { plant: string; colour: string }) => string
}

/** What stands under a stem: its plant, that it is a sprig of one, and its colour where the design has the plant in others too. */
export const nameIn = (resolved: Resolved, colourOf: BenchWords['colourOf']) => {
  const hues = new Map<string, Set<string>>()
  for (const { plant, colour } of resolved.stems) hues.set(plant.id, (hues.get(plant.id) ?? new Set()).add(colour))
  return ({ plant, colour, stem }: ResolvedStem): string => {
    const hue = (hues.get(plant.id)?.size ?? 1) > 1 ? `, ${colourOf({ plant: plant.id, colour })}` : ''
    return `${plainName(plant.name)}${stem.piece === 'lateral' ? ' (sprigs)' : ''}${hue}`
  }
}

/** How many are made, and where they stand. */
export const madeWords = ({ copies, place }: EventDesign, title: string): string =>
  `${title ? `${title}: ` : ''}${copies} to make${place ? `, ${place}` : ''}.`

/** `Place in the order of the numbers: 1–11 on Thursday 7 October, 12–39 on Friday 8 October.` */
export const orderWords = (placings: readonly Placing[], days: ReadonlyMap<string, number>, plan: Plan): string => {
  const dayOf = (p: Placing): number => days.get(p.stem.plant.id) ?? 0
  const runs = [...new Set(placings.map(dayOf))].flatMap((day) => {
    const task = plan.tasks.find((t) => t.kind === 'place' && placedOnDay(t) === day)
    const those = placings.filter((p) => dayOf(p) === day).map((p) => p.number)
    const [first, last] = [Math.min(...those), Math.max(...those)]
    const evening = task && placedOnDay(task) !== task.daysBefore
    return task
      ? [
          `${first === last ? first : `${first}–${last}`} on ${evening ? 'the evening of ' : ''}${weekdayWords(task.start)}`,
        ]
      : []
  })
  return `Place in the order of the numbers${runs.length > 0 ? `: ${runs.join(', ')}` : ''}.`
}

/** How wide the mouth is. */
export const mouthWords = ({ plan, width, depth }: Vessel, units: Units): string =>
  plan === 'round' ? `⌀ ${formatLength(width, units)}` : `${formatLength(width, units)} × ${formatLength(depth, units)}`
