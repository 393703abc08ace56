import type { Arrangement } from '../../../arrangement/index.ts'
import { newArrangement } from '../../../arrangement/index.ts'
import type { Units } from '../../../units/index.ts'
import { weekdayWords } from '../../../work-plan/index.ts'
import { type Laid, type Measure, SHEETS, type SizeName } from '../../picture/types.ts'
import type { WorkedEvent } from '../use-worked-event.ts'
import { lineColour } from '../words.ts'
import { benchPages } from './bench.ts'
import { carePages } from './care-page.ts'
import { cutPages } from './cut-page.ts'
import { dayPages } from './day-page.ts'
import { orderPages } from './order-page.ts'

export interface SheetChoices {
  size: Exclude<SizeName, 'phone'>
  bench: boolean
  cutting: boolean
  order: boolean
  days: boolean
  care: boolean
  withCost: boolean
}

/** A page, and the design that what is painted on it is of. */
export interface EventPage {
  laid: Laid
  document: Arrangement
  label: string
}

export interface PageWordsFrom {
  units: Units
  /** A name for a #rrggbb. */
  generalName: (hex: string) => string
}

const NOTHING = newArrangement()

/** All the pages that were asked for, in the order in which they are needed: what to buy, the days, cut and bench sheets, cautions. */
export const eventPages = (
  worked: WorkedEvent,
  choices: SheetChoices,
  { units, generalName }: PageWordsFrom,
  measure: Measure,
): EventPage[] => {
  const pen = { sheet: SHEETS[choices.size], measure }
  const { event } = worked
  const when = event.date
    ? `for ${weekdayWords(event.date)} ${event.date.slice(0, 4)}, ${event.date.slice(11)}`
    : 'no date yet'
  const pages: EventPage[] = []
  const add = (some: Laid[], document: Arrangement, label: string): void =>
    some.forEach(
      (laid, i) => void pages.push({ laid, document, label: some.length > 1 ? `${label}, page ${i + 1}` : label }),
    )
  const colourOf = (line: { plant: string; colour: string }): string => lineColour(line, generalName)
  if (choices.order)
    add(
      orderPages(pen, worked, { colourOf, withCost: choices.withCost, withCare: choices.care, when, units }),
      NOTHING,
      'What to buy',
    )
  if (choices.days && worked.plan.tasks.length > 0)
    add(dayPages(pen, worked, when, choices.care), NOTHING, 'Day by day')
  if (choices.cutting && worked.order.lines.length > 0)
    add(cutPages(pen, worked, { units, when, colourOf }), NOTHING, 'Cut sheet')
  if (choices.bench)
    for (const design of worked.designs)
      add(
        benchPages(pen, design, { units, title: event.title, plan: worked.plan, withCare: choices.care, colourOf }),
        design.document,
        `Bench sheet, ${design.title}`,
      )
  if (choices.care) add(carePages(pen, worked, when), NOTHING, 'Take care')
  return pages
}
