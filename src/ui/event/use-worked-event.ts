import { useDeferredValue, useMemo } from 'react'
import type { Arrangement } from '../../arrangement/index.ts'
import { findPlant } from '../../catalogue/index.ts'
import type { EventPlan } from '../../event/index.ts'
import { type Resolved, resolveArrangement } from '../../geometry/index.ts'
import { useEvent, useStudio } from '../../state/index.ts'
import { type Demand, type Order, orderOf } from '../../stem-list/index.ts'
import { type Plan, planOf } from '../../work-plan/index.ts'

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
const resolvedOf = (document: Arrangement): Resolved => {
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

/** The event worked out: its order and its plan, live. The design that is open in the tool is taken as it is there. */
export const useWorkedEvent = (): WorkedEvent => {
  const event = useEvent((s) => s.event)
  const kept = useEvent((s) => s.designs)
  const openId = useStudio((s) => s.designId)
  const open = useStudio((s) => s.document)
  const prices = useStudio((s) => s.prices)
  const later = useDeferredValue(event)
  const designs = useMemo(() => {
    const found = later.parts.flatMap((part) => {
      const document = part.design === openId ? open : kept[part.design]
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
  }, [later, kept, openId, open])
  return useMemo(() => {
    const order = orderOf(designs, { prices, trim_mm: later.trim_mm, spare: later.spare })
    const mechanics = new Map(designs.map((d) => [d.design, d.document.vessel.mechanics]))
    const here = { ...later, parts: later.parts.filter((p) => mechanics.has(p.design)) }
    return { event: later, designs, order, plan: planOf(here, order, plantName, (id) => mechanics.get(id)) }
  }, [later, designs, prices])
}
