import type { Work } from '../event/index.ts'
import { onFive } from './clock.ts'
import type { Draft } from './draft.ts'

/** Hands that are at a task, by number from 0: those that the person named; else all, or the first few where few do. */
export const handsAt = ({ key, few }: Pick<Draft, 'key' | 'few'>, { people, who }: Work): number[] => {
  const named = (Object.hasOwn(who, key) ? who[key]! : []).filter((n) => n <= people).map((n) => n - 1)
  if (named.length > 0) return named.sort((a, b) => a - b)
  return Array.from({ length: Math.min(people, few ?? people) }, (_, i) => i)
}

/** How long a task takes by the clock, minutes on five: its own time, or its work shared by the hands that are at it. */
export const clockMinutes = (draft: Draft, work: Work): number =>
  onFive(draft.clock_min ?? (draft.hand_min ?? 0) / handsAt(draft, work).length)

/** `1 person`, `2 people`. */
const people = (n: number): string => (n === 1 ? '1 person' : `${n} people`)

/** Hands in words: `Ana and Rui`, `Ana and 1 more`, `2 people`. */
export const whoWords = (hands: readonly number[], { names }: Pick<Work, 'names'>): string => {
  const known = hands.flatMap((h) => names[h] ?? [])
  const more = hands.length - known.length
  if (known.length === 0) return people(hands.length)
  const all = more > 0 ? [...known, `${more} more`] : known
  return all.length === 1 ? all[0]! : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`
}

/** A task of a day, in minutes from the day's beginning. */
export interface Slot {
  draft: Draft
  hands: number[]
  from: number
  to: number
}

/**
 * Tasks of a day, each as soon as its hands are free and what it waits for is done. Where all are at every task they stand one
 * after another; tasks of different hands stand side by side.
 * @param drafts in their order; what one waits for stands before it
 */
export const inTurn = (drafts: readonly Draft[], work: Work): Slot[] => {
  const free = new Map<number, number>()
  const ends = new Map<string, number>()
  return drafts.map((draft) => {
    const hands = handsAt(draft, work)
    const rested = draft.rests ? (ends.get(draft.rests.key) ?? 0) + draft.rests.min : 0
    const from = Math.max(
      draft.from_min ?? 0,
      rested,
      ...hands.map((h) => free.get(h) ?? 0),
      ...(draft.after ?? []).map((k) => ends.get(k) ?? 0),
    )
    const to = from + clockMinutes(draft, work)
    for (const h of hands) free.set(h, to)
    ends.set(draft.key, to)
    return { draft, hands, from, to }
  })
}

/**
 * The same tasks by so many hands. Those that are never told apart work as one, with all of their strength, so that any number is
 * reckoned as quickly as a few.
 */
export const byHands = <D extends Draft>(
  drafts: readonly D[],
  work: Work,
  people: number,
): { drafts: D[]; work: Work } => {
  const apart = Math.max(...drafts.map((d) => Math.max(d.few ?? 0, ...(work.who[d.key] ?? []))), 0)
  const few = Math.min(people, apart + 1)
  const crew = { ...work, people: few }
  const share = (d: D): D =>
    handsAt(d, crew).length === few && d.few === undefined ? { ...d, hand_min: ((d.hand_min ?? 0) * few) / people } : d
  return { drafts: drafts.map(share), work: crew }
}

/** More than any event has. */
const MOST = 1 << 20

/** The fewest pairs of hands with which it fits; null where no number does. @param fits stays true from there on */
export const fewestHands = (fits: (people: number) => boolean): number | null => {
  if (!fits(MOST)) return null
  let [low, high] = [0, MOST]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (fits(middle)) high = middle
    else low = middle
  }
  return high
}
