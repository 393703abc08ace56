import type { Arrangement } from '../../../arrangement/index.ts'
import { newArrangement } from '../../../arrangement/index.ts'
import { findPlant } from '../../../catalogue/index.ts'
import { colourWords, dateWords } from '../../../telling/index.ts'
import type { Units } from '../../../units/index.ts'
import { type Laid, type Measure, SHEETS, type SizeName } from '../../picture/types.ts'
import type { WorkedEvent } from '../use-worked-event.ts'
import { benchPages } from './bench.ts'
import { dayPages } from './day-page.ts'
import { orderPages } from './order-page.ts'

export interface SheetChoices {
  size: Exclude<SizeName, 'phone'>
  bench: boolean
  order: boolean
  days: boolean
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
  language: string
  /** A name for a #rrggbb. */
  generalName: (hex: string) => string
}

const NOTHING = newArrangement()

const dayWords = (day: string, language: string): string => {
  const date = new Date(`${day}T12:00Z`)
  return new Intl.DateTimeFormat(language, { weekday: 'long', day: 'numeric', month: 'long', timeZone: 'UTC' }).format(
    date,
  )
}

/** All the pages that were asked for: bench sheets, one design after another, the order, the days. */
export const eventPages = (
  worked: WorkedEvent,
  choices: SheetChoices,
  { units, language, generalName }: PageWordsFrom,
  measure: Measure,
): EventPage[] => {
  const pen = { sheet: SHEETS[choices.size], measure }
  const { event } = worked
  const when = event.date ? `for ${dateWords(event.date, language)}, ${event.date.slice(11)}` : 'no date yet'
  const inches = units === 'in'
  const pages: EventPage[] = []
  const add = (some: Laid[], document: Arrangement, label: string): void =>
    some.forEach(
      (laid, i) => void pages.push({ laid, document, label: some.length > 1 ? `${label}, page ${i + 1}` : label }),
    )
  if (choices.bench)
    for (const design of worked.designs)
      add(benchPages(pen, design, units, event.title), design.document, `Bench sheet, ${design.title}`)
  if (choices.order) {
    const colourOf = ({ plant, colour }: { plant: string; colour: string }): string =>
      colourWords(colour, findPlant(plant) ?? null, new Map(), generalName)
    add(orderPages(pen, worked, { colourOf, withCost: choices.withCost, when, inches }), NOTHING, 'What to buy')
  }
  if (choices.days && worked.plan.tasks.length > 0)
    add(dayPages(pen, worked, { when, dayOf: (day) => dayWords(day, language), inches }), NOTHING, 'Day by day')
  return pages
}
