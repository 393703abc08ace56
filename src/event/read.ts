import * as v from 'valibot'
import {
  type Arrangement,
  asProblem,
  type Fault,
  fields,
  type Known,
  notFinite,
  type Problem,
  parseText,
  readArrangement,
  wanted,
} from '../arrangement/index.ts'
import { newEvent } from './defaults.ts'
import { EVENT_LIMITS, eventSchema, isZone } from './schema.ts'
import { setBack } from './set-back.ts'
import type { EventPlan, WholeEvent } from './types.ts'

/**
 * What came of reading an event. `partly`: `good` is made of what is right, `problems` lists what would be left out or set
 * back; nothing may be opened before the person agrees. `refused`: nothing can be saved of it.
 */
export type EventRead =
  | { kind: 'ok'; event: WholeEvent }
  | { kind: 'partly'; good: WholeEvent; problems: Problem[] }
  | { kind: 'refused'; problems: Problem[] }

const refused = (...faults: Fault[]): EventRead => ({ kind: 'refused', problems: faults.map(asProblem) })

/** What is wrong with the plan itself, its designs left out. */
const eventFaults = (raw: unknown): Fault[] =>
  (v.safeParse(eventSchema, raw).issues ?? []).map((issue) => ({
    path: (issue.path ?? []).map((item) => item.key as string | number),
    message: issue.message,
  }))

const doorFault = (raw: unknown): Fault | null => {
  if (!fields.isThing(raw)) return { path: [], message: wanted('an event', raw) }
  if (raw.format !== 'pedicel-event') return { path: ['format'], message: wanted('"pedicel-event"', raw.format) }
  if (raw.version !== 1)
    return {
      path: ['version'],
      message: `${wanted('version 1', raw.version)}${(raw.version as number) > 1 ? ': it was written by a newer Pedicel' : ''}`,
    }
  return null
}

/** A plan with what is missing filled in by what a new one has; null for a part that is wrong. Unknown keys stay. */
const completed = (
  right: Record<string, unknown>,
): Omit<EventPlan, 'parts'> & { parts: (EventPlan['parts'][number] | null)[] } => {
  const start = newEvent(isZone(right.zone) ? (right.zone as string) : 'UTC')
  const work = fields.isThing(right.work) ? right.work : {}
  const minutes = fields.isThing(work.minutes) ? work.minutes : {}
  const stems = (right.stems ?? {}) as EventPlan['stems']
  const parts = Array.isArray(right.parts) ? (right.parts as (EventPlan['parts'][number] | null)[]) : []
  return {
    ...start,
    ...right,
    parts: parts.map((part) => part && { ...part, place: part.place ?? '' }),
    // A plant of which nothing is said any more goes by the catalogue.
    stems: Object.fromEntries(Object.entries(stems).filter(([, own]) => Object.keys(own).length > 0)),
    deliveries: { ...start.deliveries, ...(fields.isThing(right.deliveries) ? right.deliveries : {}) },
    work: { ...start.work, ...work, minutes: { ...start.work.minutes, ...minutes } },
  }
}

/** Plants that the catalogue does not list, where something is said of them by their ids. */
const unlisted = (plan: Record<string, unknown>, { plants }: Known): Fault[] => {
  const { spare, stems, deliveries } = plan
  const of = fields.isThing(deliveries) ? deliveries.of : undefined
  const named: [Fault['path'], unknown][] = [
    [['spare'], spare],
    [['stems'], stems],
    [['deliveries', 'of'], of],
  ]
  return named.flatMap(([path, given]) =>
    Object.keys(fields.isThing(given) ? given : {})
      .filter((id) => !plants.has(id))
      .map((id) => ({ path: [...path, id], message: wanted('the id of a plant of the catalogue', id) })),
  )
}

/**
 * Reads the text of an event's file: the plan by its own schema, each design as a file of its own would be, with the path in
 * front. A part without a design that can be read is left out. Never throws, whatever the text.
 * @param text JSON, at most 20 MB of UTF-8; each design in it as much as a file of its own may have
 */
export const readEvent = (text: string, known: Known): EventRead => {
  const parsed = parseText(text, EVENT_LIMITS)
  if ('fault' in parsed) return refused(parsed.fault)
  const raw = parsed.raw
  const door = doorFault(raw)
  if (door) return refused(door)
  const { designs: given, ...plan } = raw as Record<string, unknown>
  const faults = eventFaults(plan)
  const infinite = notFinite(plan).filter(({ path }) => !faults.some((f) => f.path.every((key, i) => path[i] === key)))
  faults.push(...infinite, ...unlisted(plan, known))
  const problems = faults.map(asProblem)
  const designs = new Map<string, Arrangement>()
  if (given !== undefined && !fields.isThing(given))
    problems.push(asProblem({ path: ['designs'], message: wanted('an object of arrangements', given) }))
  for (const [key, design] of Object.entries(fields.isThing(given) ? given : {})) {
    const read = readArrangement(JSON.stringify(design), known)
    if (read.kind === 'ok') designs.set(key, read.document)
    else {
      if (read.kind === 'partly') designs.set(key, read.good)
      const front = asProblem({ path: ['designs', key], message: '' }).path
      problems.push(...read.problems.map((p) => ({ ...p, path: p.path ? `${front}.${p.path}` : front })))
    }
  }
  const good = completed(
    setBack(
      plan,
      faults.map((f) => f.path),
    ),
  )
  const seen = new Set<string>()
  const parts = good.parts.filter((part, i): part is EventPlan['parts'][number] => {
    if (!part) return false
    const { design } = part
    const path = ['parts', i, 'design']
    if (!designs.has(design))
      problems.push(asProblem({ path, message: wanted('the key of one of its designs', design) }))
    else if (seen.has(design))
      problems.push(asProblem({ path, message: `expected each design once, got ${JSON.stringify(design)} again` }))
    else {
      seen.add(design)
      return true
    }
    return false
  })
  const event: WholeEvent = { ...good, parts, designs: Object.fromEntries(designs) }
  return problems.length === 0 ? { kind: 'ok', event } : { kind: 'partly', good: event, problems }
}

/** The text of an event's file: indented JSON, designs whole; those that no part names are left out. */
export const writeEvent = (event: WholeEvent): string => {
  const named = new Set(event.parts.map((p) => p.design))
  const designs = Object.fromEntries(Object.entries(event.designs).filter(([key]) => named.has(key)))
  return `${JSON.stringify({ ...event, designs }, null, 1)}\n`
}
