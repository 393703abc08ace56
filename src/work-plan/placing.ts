import type { Role } from '../arrangement/index.ts'
import { type Resolved, type ResolvedStem, waterlineZ } from '../geometry/index.ts'
import { EVENING, placeKey } from './timing.ts'
import type { Plan, Task } from './types.ts'

/** Greens first, to hide the mechanics and to set the outline with the lines; then what carries it, then what fills (common practice). */
export const PLACING_ORDER: readonly Role[] = ['greens', 'line', 'focal', 'form', 'mass', 'filler']

/** A stem in the order of placing. */
export interface Placing {
  /** From 1. */
  number: number
  id: string
  stem: ResolvedStem
  /** From the cut end to the middle of the head or to the tip, mm. */
  cut_mm: number
  /** So much of it stands under water, from the cut end, mm: stripped of leaves. */
  under_mm: number
}

/** Length of a stem from its cut end to where it leaves the water, mm. */
const underWater = ({ curve }: ResolvedStem, water: number): number => {
  const { points } = curve
  let length = 0
  for (let i = 0; i + 5 < points.length; i += 3) {
    const [z0, z1] = [points[i + 2]!, points[i + 5]!]
    if (z0 >= water) break
    const step = Math.hypot(points[i + 3]! - points[i]!, points[i + 4]! - points[i + 1]!, z1 - z0)
    if (z1 > water) return length + (step * (water - z0)) / (z1 - z0)
    length += step
  }
  return length
}

/** Round the mouth from the front, clockwise seen from above: 0 … 2π. */
const round = ({ stem }: ResolvedStem): number => {
  const angle = Math.atan2(-stem.tip[0], -stem.tip[1])
  return angle < 0 ? angle + 2 * Math.PI : angle
}

/** The day on which a task of placing is done, days before the event's day; the evening before the event comes half a day later. */
export const placedOnDay = ({ key, daysBefore }: Pick<Task, 'key' | 'daysBefore'>): number =>
  key === placeKey(EVENING) ? EVENING : daysBefore

/**
 * How many days before the event's day each plant of a plan is placed in a design, by its id: where nothing holds the stems they are
 * all placed in one go, with the last of them.
 */
export const placeDaysOf = ({ tasks }: Pick<Plan, 'tasks'>, resolved?: Resolved): Map<string, number> => {
  const days = new Map<string, number>()
  for (const task of tasks)
    if (task.kind === 'place')
      for (const plant of task.plants) days.set(plant, Math.max(days.get(plant) ?? 0, placedOnDay(task)))
  if (resolved?.vessel.mechanics !== 'none') return days
  const last = Math.min(...resolved.stems.map((s) => days.get(s.plant.id) ?? 0))
  return new Map([...days.keys()].map((plant) => [plant, last]))
}

/**
 * The stems of a design in the order in which they are placed: by the day that the plan places them on, then by role, each plant
 * and colour together, and those round the vessel from the front, clockwise seen from above.
 * @param days see placeDaysOf; plants without one count as placed on the day itself
 */
export const placingOf = (resolved: Resolved, days: ReadonlyMap<string, number> = new Map()): Placing[] => {
  const water = waterlineZ(resolved.vessel)
  const groups = new Map<string, number>()
  for (const s of resolved.stems) {
    const key = `${s.role} ${s.plant.id} ${s.colour}`
    if (!groups.has(key)) groups.set(key, groups.size)
  }
  const rank = (s: ResolvedStem): number => groups.get(`${s.role} ${s.plant.id} ${s.colour}`) ?? 0
  return [...resolved.stems]
    .sort(
      (a, b) =>
        (days.get(b.plant.id) ?? 0) - (days.get(a.plant.id) ?? 0) ||
        PLACING_ORDER.indexOf(a.role) - PLACING_ORDER.indexOf(b.role) ||
        rank(a) - rank(b) ||
        round(a) - round(b) ||
        a.index - b.index,
    )
    .map((stem, i) => ({
      number: i + 1,
      id: stem.id,
      stem,
      cut_mm: stem.curve.cut_mm,
      under_mm: underWater(stem, water),
    }))
}
