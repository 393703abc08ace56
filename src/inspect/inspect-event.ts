import { type Arrangement, type Problem, problemLine } from '../arrangement/index.ts'
import { EXAMPLE_PRICES, plantIds } from '../catalogue/index.ts'
import { readEvent } from '../event/index.ts'
import { OWN_BANDS } from '../readings/index.ts'
import { type PurchaseLine, purchaseLine, toMain } from '../stem-list/index.ts'
import { type Clash, designsOf, type Task, workOut } from '../work-plan/index.ts'

/** The line of an event's file that was read. Money in the currency's main unit. */
export interface InspectedEvent {
  file: string
  title: string
  date: string
  zone: string
  designs: { design: string; title: string; copies: number; place: string; pieces: number; cost: number }[]
  /** The one order of all designs together. */
  purchase: { copies: number; currency: string; lines: PurchaseLine[]; total: number }
  plan: {
    tasks: Pick<Task, 'key' | 'kind' | 'title' | 'daysBefore' | 'start' | 'end' | 'hand_min' | 'people' | 'plants'>[]
    clashes: Clash['text'][]
  }
}

/** Whether a text is meant to be an event: it is JSON that says so. */
export const isEventText = (text: string): boolean => {
  try {
    return (JSON.parse(text.replace(/^\uFEFF/, '')) as { format?: unknown } | null)?.format === 'pedicel-event'
  } catch {
    return false
  }
}

/**
 * What the file of an event has to say: its order, priced by the example prices (invented, and they say so), and its plan of
 * work. A file with anything wrong in it is refused whole.
 */
export const inspectEvent = (
  file: string,
  text: string,
): InspectedEvent | { file: string; error: string; problems: Problem[] } => {
  const read = readEvent(text, { plants: plantIds, bands: OWN_BANDS })
  if (read.kind !== 'ok')
    return {
      file,
      error: read.problems[0] ? problemLine(read.problems[0]) : 'it can’t be read',
      problems: read.problems,
    }
  const { event } = read
  const { designs, order, plan } = workOut(
    event,
    designsOf(event, (id): Arrangement | undefined => event.designs[id]),
    EXAMPLE_PRICES,
  )
  return {
    file,
    title: event.title,
    date: event.date,
    zone: event.zone,
    designs: designs.map(({ design, title, copies, place, document }) => ({
      design,
      title,
      copies,
      place,
      pieces: document.stems.length,
      cost: toMain(order.minorOf[design] ?? 0, order.currency),
    })),
    purchase: {
      copies: designs.reduce((sum, d) => sum + d.copies, 0),
      currency: order.currency,
      lines: order.lines.map((line) => purchaseLine(line, order.currency)),
      total: toMain(order.minor, order.currency),
    },
    plan: {
      tasks: plan.tasks.map(({ key, kind, title, daysBefore, start, end, hand_min, people, plants }) => ({
        key,
        kind,
        title,
        daysBefore,
        start,
        end,
        hand_min,
        people,
        plants,
      })),
      clashes: plan.clashes.map((c) => c.text),
    },
  }
}
