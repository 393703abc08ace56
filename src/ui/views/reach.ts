import type { Arrangement } from '../../arrangement/index.ts'
import type { Reach } from '../../drawing/index.ts'
import type { Painter } from '../../state/index.ts'
import { FRESH_MS, newestOnly } from './newest.ts'

export interface Reaches {
  /** Asks how far this document reaches from this turn; asking for the same again does nothing. */
  want(document: Arrangement, turn: number): void
  /** What is known: of the document asked for last, or of the one before while that is on its way. */
  now(): Reach | null
  stop(): void
}

/** Height and width for the dimensions, worked out by the painter: solids are not at home in the page. */
export const createReaches = (
  painter: Pick<Painter, 'reach'>,
  changed: () => void,
  failed: (why: string) => void,
): Reaches => {
  let asked: { document: Arrangement; turn: number } | null = null
  let known: Reach | null = null
  let stopped = false
  const lane = newestOnly<{ document: Arrangement; turn: number }>(async ({ document, turn }) => {
    try {
      const reach = await painter.reach(document, turn)
      if (stopped) return
      known = reach
      changed()
    } catch (why) {
      failed(String(why))
    }
  }, FRESH_MS)
  return {
    want: (document, turn) => {
      if (asked?.document === document && asked.turn === turn) return
      asked = { document, turn }
      lane.push(asked)
    },
    now: () => known,
    stop: () => {
      stopped = true
      lane.clear()
    },
  }
}
