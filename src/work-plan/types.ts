import type { Standing } from '../catalogue/index.ts'

export const TASK_KINDS = [
  'book',
  'trial',
  'settle',
  'arrive',
  'condition',
  'open',
  'vessels',
  'water',
  'place',
  'bind',
  'pack',
  'carry',
  'set',
  'clear',
] as const
export type TaskKind = (typeof TASK_KINDS)[number]

/** Why something is done then, and how well that is known. */
export interface Reason {
  text: string
  standing: Standing
  source: string
}

/** Something to be done on a day. Times are local, by the clock of the event's zone. */
export interface Task {
  /** Stays the same while the plan changes, so that what is ticked off stays ticked off. */
  key: string
  kind: TaskKind
  title: string
  /** Days before the event's day that it is planned for, though it may run on past midnight; after it negative. */
  daysBefore: number
  /** `YYYY-MM-DDTHH:MM`; for one that takes no certain hour, a day alone, `YYYY-MM-DD`. */
  start: string
  end: string
  /** The same as moments, milliseconds since 1970; null for one that takes no certain hour. */
  span_ms: [from: number, to: number] | null
  /** Work of one pair of hands, minutes; 0 where there is only waiting or driving. */
  hand_min: number
  /** Pairs of hands that it is planned with. */
  people: number
  /** Which hands, by number from 0. */
  hands: number[]
  /** Who has to be there, in words: names where they are known; '' where nobody has to. */
  who: string
  /** What to do, a line each. */
  steps: string[]
  reasons: Reason[]
  /** Ids of the plants that it is about. */
  plants: string[]
}

/** Something in the plan that will not go as it stands. */
export interface Clash {
  /** Keys of the tasks that it is about, the one where it shows first. */
  tasks: string[]
  text: string
  /** How it is known: sources, or the words of the house. */
  known: string
  /** What one press would mend: bringing flowers together on fewer days, placing on the evening before. */
  mend?: 'together' | 'evening'
}

export interface Plan {
  tasks: Task[]
  clashes: Clash[]
}
