import type { Arrangement } from '../arrangement/index.ts'
import { findPlant } from '../catalogue/index.ts'
import type { EventPlan } from '../event/index.ts'
import { type Resolved, resolveArrangement } from '../geometry/index.ts'
import { weigh } from '../readings/index.ts'
import { type Demand, type Order, type OrderChoices, orderOf, type PriceBook } from '../stem-list/index.ts'
import type { About } from './load.ts'
import { planOf } from './plan.ts'
import type { Plan } from './types.ts'

/** A design of the event with everything looked up. */
export interface EventDesign extends Demand {
  title: string
  place: string
  document: Arrangement
}

export interface WorkedEvent {
  event: EventPlan
  /** In the order of the parts; those that this browser no longer has are left out. */
  designs: EventDesign[]
  order: Order
  plan: Plan
}

/** Looking everything up is most of the work: a design that has not changed is not looked up again. */
const known = new WeakMap<Arrangement, Resolved>()
export const resolvedOf = (document: Arrangement): Resolved => {
  const found = known.get(document) ?? resolveArrangement(document)
  known.set(document, found)
  return found
}

/** Titles that stand twice are told apart by a number. */
const titlesOf = (documents: readonly Arrangement[]): string[] => {
  const seen = new Map<string, number>()
  return documents.map(({ title }) => {
    const name = title.trim() || 'Untitled'
    const n = (seen.get(name) ?? 0) + 1
    seen.set(name, n)
    return n === 1 ? name : `${name} (${n})`
  })
}

export const plantName = (id: string): string => findPlant(id)?.name ?? id

/** The designs of the event's parts; parts whose design is not here are left out. */
export const designsOf = (event: EventPlan, documentOf: (design: string) => Arrangement | undefined): EventDesign[] => {
  const found = event.parts.flatMap((part) => {
    const document = documentOf(part.design)
    return document ? [{ part, document }] : []
  })
  const titles = titlesOf(found.map((f) => f.document))
  return found.map(({ part, document }, i) => ({
    design: part.design,
    copies: part.copies,
    place: part.place,
    title: titles[i]!,
    document,
    resolved: resolvedOf(document),
  }))
}

/** Full of water, g; weighing is kept with what is looked up. */
const masses = new WeakMap<Resolved, number>()
const massOf = (resolved: Resolved): number => {
  const mass = masses.get(resolved) ?? weigh(resolved).mass_g
  masses.set(resolved, mass)
  return mass
}

/** The event with those parts alone whose design is here. */
export const withParts = (event: EventPlan, designs: readonly EventDesign[]): EventPlan => {
  const here = new Set(designs.map((d) => d.design))
  return { ...event, parts: event.parts.filter((p) => here.has(p.design)) }
}

/** What the plan of work is told of plants and designs. */
export const aboutDesigns = (designs: readonly EventDesign[]): About => {
  const found = new Map(designs.map((d) => [d.design, d]))
  return {
    nameOf: plantName,
    mechanicsOf: (id) => found.get(id)?.document.vessel.mechanics,
    titleOf: (id) => found.get(id)?.title ?? id,
    massOf: (id) => {
      const design = found.get(id)
      return design && massOf(design.resolved)
    },
  }
}

/** What the person chose for the order of an event. */
export const choicesOf = ({ trim_mm, spare, stems }: EventPlan, prices: PriceBook): OrderChoices => ({
  prices,
  trim_mm,
  spare,
  stems,
})

/** The event worked out: its order and its plan. */
export const workOut = (event: EventPlan, designs: EventDesign[], prices: PriceBook): WorkedEvent => {
  const order = orderOf(designs, choicesOf(event, prices))
  const plan = planOf(withParts(event, designs), order, aboutDesigns(designs))
  return { event, designs, order, plan }
}
