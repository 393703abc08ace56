import {
  type Caution,
  cautionsOf,
  findPlant,
  GENERAL_CAUTIONS,
  gravestFirst,
  MECHANICS_ROWS,
} from '../../../catalogue/index.ts'
import { listed } from '../../../telling/index.ts'
import type { Item, Laid } from '../../picture/types.ts'
import { INK2, LINE } from '../../picture/types.ts'
import type { WorkedEvent } from '../use-worked-event.ts'
import { plantsOf } from '../words.ts'
import { DEFER } from './care.ts'
import { type Block, flowIn } from './flow.ts'
import { bodyOf, numberedPages } from './frame.ts'
import { HEAD, type Pen, paragraph, rule, STRONG, TEXT, words } from './pen.ts'

/** Heads of the page, in order: what is warned of. */
const ABOUT: readonly (readonly [Caution['about'], string])[] = [
  ['pets', 'Cats, dogs and other pets'],
  ['eaten', 'If eaten'],
  ['food', 'On a table with food'],
  ['skin', 'Skin'],
  ['sharp', 'Sharp things'],
  ['dust', 'Dust'],
  ['flame', 'Flames'],
  ['lifting', 'Lifting and setting down'],
]

/** One caution with all that it is said of. */
interface Warned {
  about: Caution['about']
  text: string
  source: string
  /** Plants by their whole names, or what holds the stems; nothing: it is said of every event. */
  of: string[]
}

const nameOf = (id: string): string => {
  const plant = findPlant(id)
  if (!plant) return id
  return plant.botanical === plant.name ? plant.name : `${plant.name} (${plant.botanical})`
}

/** Every caution of an event's plants, gravest first, and of its mechanics once, with all that it is said of, and those of every event. */
const warnedOf = ({ order, designs }: WorkedEvent): Warned[] => {
  const all = new Map<string, Warned>()
  const add = ({ about, text, source }: Caution, name: string | null): void => {
    const key = `${about} ${text} ${source}`
    const one = all.get(key) ?? { about, text, source, of: [] }
    if (name !== null && !one.of.includes(name)) one.of.push(name)
    all.set(key, one)
  }
  for (const plant of gravestFirst(plantsOf(order.lines)))
    for (const caution of cautionsOf(plant)) add(caution, nameOf(plant))
  const held = new Set(designs.map((d) => d.document.vessel.mechanics))
  for (const row of MECHANICS_ROWS) if (held.has(row.id)) for (const caution of row.cautions) add(caution, row.name)
  for (const caution of GENERAL_CAUTIONS) add(caution, null)
  return [...all.values()]
}

/** What hands, pets and guests are kept from, all of it, each with its source, and whose word goes before ours. */
export const carePages = (pen: Pen, worked: WorkedEvent, when: string): Laid[] => {
  const body = bodyOf(pen.sheet, 1)
  const flow = flowIn(body)
  const warned = warnedOf(worked)
  for (const [about, title] of ABOUT) {
    const those = warned.filter((w) => w.about === about)
    if (those.length === 0) continue
    const head = (said: string): Block => ({
      items: [words(pen, said, HEAD, body.x, 56), rule([body.x, 76], [body.x + body.w, 76], 2, LINE)],
      height: 92,
    })
    flow.head(head(title), head(`${title}, continued`), 150)
    for (const { text, source, of } of those) {
      const items: Item[] = []
      let y = 40
      const add = (said: string, font: typeof TEXT, colour?: string): void => {
        const block = paragraph(pen, said, font, { x: body.x, y, width: body.w })
        items.push(...block.items.map((item) => (colour && item.kind === 'text' ? { ...item, colour } : item)))
        y = block.y
      }
      if (of.length > 0) add(`${listed(of)}:`, { ...STRONG, size: 34 })
      add(text, { ...TEXT, size: 34 })
      add(`Source: ${source}.`, { ...TEXT, size: 28 }, INK2)
      flow.put({ items, height: y - 40 + 22 })
    }
    flow.put({ items: [], height: 20 })
  }
  return numberedPages(pen, flow.pages(), {
    title: 'Take care',
    aside: worked.event.title || 'The event',
    facts: when,
    lines: [DEFER],
    inches: false,
    foot: [
      'Not checked means that no entry was found. It does not mean harmless. If a person or an animal may have eaten of a plant, call a poison line, a doctor or a vet at once: look up the numbers for the country you are in before the event.',
    ],
  })
}
