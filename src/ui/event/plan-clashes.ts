import { type Clash, lateOf, type WorkedEvent } from '../../work-plan/index.ts'

/** What in a plan will not go, what is late by now first; ms since 1970, and the keys of what is done. */
export const clashesOf = (plan: WorkedEvent['plan'], now: number, done: readonly string[]): Clash[] => [
  ...lateOf(plan.tasks, now, done),
  ...plan.clashes,
]
