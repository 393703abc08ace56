import { type Arrangement, applyEdit } from '../../../arrangement/index.ts'
import type { EventPlan } from '../../../event/index.ts'
import { READING_NAMES, type ReadingResult } from '../../../readings/index.ts'
import { readApart } from '../../../state/index.ts'
import {
  type Order,
  type OrderLine,
  orderOf,
  type PriceBook,
  type SwapOffer,
  swapEdit,
} from '../../../stem-list/index.ts'
import { choicesOf, type EventDesign, resolvedOf } from '../../../work-plan/index.ts'

/** A design with another plant in place of one. */
export interface Swapped {
  design: EventDesign
  document: Arrangement
}

/** The designs that have any of the plant, as they would be with the other; nothing is changed yet. */
export const swappedIn = (designs: readonly EventDesign[], line: OrderLine, offer: SwapOffer): Swapped[] =>
  designs.flatMap((design) => {
    const edit = swapEdit(design.document.stems, line, design.design, offer)
    return edit ? [{ design, document: applyEdit(design.document, edit) }] : []
  })

/** The order with these designs changed. */
export const orderWith = (
  designs: readonly EventDesign[],
  swapped: readonly Swapped[],
  event: EventPlan,
  prices: PriceBook,
): Order => {
  const changed = new Map(swapped.map((s) => [s.design.design, s.document]))
  const demands = designs.map((d) => {
    const document = changed.get(d.design)
    return document ? { ...d, resolved: resolvedOf(document) } : d
  })
  return orderOf(demands, choicesOf(event, prices))
}

export const stemsIn = ({ lines }: Order): number => lines.reduce((n, l) => n + l.stems, 0)
export const tooLongIn = ({ lines }: Order): number => lines.reduce((n, l) => n + l.tooLong, 0)

/** A document is read once, however often it is asked about. */
const read = new WeakMap<Arrangement, Promise<ReadingResult[]>>()
const readingsOf = (document: Arrangement): Promise<ReadingResult[]> => {
  const asked = read.get(document) ?? readApart(document).then(({ readings }) => readings)
  read.set(document, asked)
  return asked
}

/** Scores that move by less are left out, points: they can't be seen in the drawing. Ours. */
const LEAST = 1

/** What the swap does to the readings of a design, as `What leads the eye 72 → 65`; what moves most first. */
export const movesOf = async ({ design, document }: Swapped): Promise<string[]> => {
  const [before, after] = [await readingsOf(design.document), await readingsOf(document)]
  return before
    .flatMap(({ id, score }) => {
      const now = after.find((r) => r.id === id)?.score ?? null
      if (score === null || now === null) return score === now ? [] : [{ id, score, now, by: 100 }]
      return Math.abs(now - score) < LEAST ? [] : [{ id, score, now, by: Math.abs(now - score) }]
    })
    .sort((a, b) => b.by - a.by)
    .map(({ id, score, now }) => `${READING_NAMES[id]} ${figure(score)} → ${figure(now)}`)
}

const figure = (score: number | null): string => (score === null ? 'not judged' : String(Math.round(score)))
