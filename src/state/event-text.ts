import { type EventPlan, readEvent, writeEvent } from '../event/index.ts'
import type { KeptText } from '../storage/index.ts'
import { designsAtHand } from './event-designs.ts'
import type { KeptEvent } from './event-store.ts'
import { known } from './kept-store.ts'
import { titleOfCopy } from './title-of-copy.ts'

/** A design that stands for one that lies by itself: the kept text holds none, and its parts name keys that have to exist. */
const STAND_IN = { format: 'pedicel-arrangement', version: 1, vessel: { width: 100, height: 100 } }

/** The plan as it is kept, without its designs, but with what they are called. */
export const textOfPlan = (event: EventPlan): string => {
  const designs = designsAtHand()
  const parts = event.parts.map((part) => {
    const title = designs[part.design]?.title ?? part.title
    return title === undefined ? part : { ...part, title }
  })
  return writeEvent({ ...event, parts, designs: {} })
}

/** The plan as it was kept under this id, and how much of it is wrong and set back; null for what can't be read. */
export const readKept = (text: string, id: string): { plan: EventPlan; wrong: number } | null => {
  try {
    const raw = JSON.parse(text) as EventPlan
    const designs = Object.fromEntries((raw.parts ?? []).map((p) => [p.design, STAND_IN]))
    const read = readEvent(JSON.stringify({ ...raw, designs }), known)
    if (read.kind === 'refused') return null
    const { designs: _, ...plan } = read.kind === 'ok' ? read.event : read.good
    return { plan: { ...plan, id }, wrong: read.kind === 'ok' ? 0 : read.problems.length }
  } catch {
    return null
  }
}

/** The plan alone. */
export const readPlan = (text: string, id: string): EventPlan | null => readKept(text, id)?.plan ?? null

/** What a list shows of a kept text. */
export const keptEvent = ({ id, text, revision, savedAt, thrown }: KeptText): KeptEvent => {
  const plan = revision > 0 ? readPlan(text, id) : null
  return { id, title: plan?.title ?? '', date: plan?.date ?? '', savedAt, readable: plan !== null, thrown }
}

/** A kept text as one of its own beside the other: with its id, and told apart by its title. */
export const textBeside = (text: string, id: string): string => {
  const plan = readPlan(text, id)
  return plan ? writeEvent({ ...plan, title: titleOfCopy(plan.title, 'The event'), designs: {} }) : text
}
