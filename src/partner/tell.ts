import { type Arrangement, applyEdit, type Light } from '../arrangement/index.ts'
import { findPlant } from '../catalogue/index.ts'
import { reachOf } from '../drawing/index.ts'
import { type Resolved, resolveArrangement } from '../geometry/index.ts'
import { formatMoney, inventedAmong, purchase, stemList } from '../stem-list/index.ts'
import type { OfferedPalette, Parcel } from '../storage/index.ts'
import {
  cautionLine,
  colourWords,
  counted,
  dateWords,
  flameLine,
  listed,
  plainName,
  ROLE_ORDER,
  subtitle,
} from '../telling/index.ts'
import { formatLength } from '../units/index.ts'

/** One plant in one colour. */
export interface PlantTold {
  name: string
  colour: string
  colourWord: string
  count: string
}

/** What the page says of the design in one of its palettes. */
export interface Told {
  title: string
  subtitle: string
  plants: PlantTold[]
  /** Facts with their names, in order. */
  facts: [name: string, value: string][]
  caution: string
  /** Width of the drawing to its height, to make room for. */
  aspect: number
  /** The drawing in words, without the side that it is seen from. */
  picture: string
}

/** The design in each of the palettes on offer. */
export const dressedIn = ({ design, offers }: Parcel): Arrangement[] =>
  offers.map(({ name, slots }) =>
    applyEdit(design, {
      do: 'set-palette',
      palette: { name, slots: slots.map(({ colour, part }) => ({ colour, part })) },
    }),
  )

/** Words for a light, as in `seen from the left, in candlelight`. */
export const LIGHT_WORDS: Record<Light, string> = {
  daylight: 'daylight',
  overcast: 'the light of an overcast day',
  'warm-lamp': 'the light of warm lamps',
  candle: 'candlelight',
}

/** The words of a palette: its own names for its colours, else the nearest of the general ones. */
export const paletteWords = (offer: OfferedPalette, general: (hex: string) => string): string[] =>
  offer.slots.map((s) => s.name ?? general(s.colour))

const costOf = (document: Arrangement, prices: NonNullable<Parcel['prices']>, language: string): Told['facts'] => {
  const bought = purchase(resolveArrangement(document), document.setting.copies, prices)
  if (bought.lines.length === 0) return []
  const standing = { none: '', all: ', at example prices', some: ', some prices are examples' }[
    inventedAmong(bought.lines, prices)
  ]
  return [['flowers cost', `${formatMoney(bought.total, bought.currency, language)}${standing}`]]
}

/** How far it reaches from its axis, seen from a turn, mm. */
const farthest = (resolved: Resolved, turn: number): number => {
  const reach = reachOf(resolved, turn)
  return reach ? Math.max(-reach.left, reach.right) : 0
}

/**
 * @param document the design in the palette `offer`
 * @param language BCP 47, for date and money
 * @param general a name for any #rrggbb
 */
export const tell = (
  { prices, units }: Parcel,
  document: Arrangement,
  offer: OfferedPalette,
  language: string,
  general: (hex: string) => string,
): Told => {
  const named = new Map(offer.slots.flatMap((s) => (s.name ? [[s.colour.toLowerCase(), s.name] as const] : [])))
  const resolved = resolveArrangement(document)
  const rows = new Map<string, { plant: string; colour: string; pieces: number; order: number }>()
  for (const { plant, colour, pieces, role } of stemList(resolved)) {
    const before = rows.get(`${plant} ${colour}`)
    if (before) before.pieces += pieces
    else rows.set(`${plant} ${colour}`, { plant, colour, pieces, order: ROLE_ORDER.indexOf(role) })
  }
  const plants = [...rows.values()]
    .sort((a, b) => a.order - b.order || b.pieces - a.pieces)
    .map(({ plant, colour, pieces }): PlantTold => {
      const row = findPlant(plant) ?? null
      return {
        name: plainName(row?.name ?? plant),
        colour,
        colourWord: colourWords(colour, row, named, general),
        count: String(pieces),
      }
    })
  const { setting, vessel } = document
  const reach = reachOf(resolved, 0)
  const high = Math.max(0, reach?.top ?? 0) + vessel.height
  // The widest of any side; seen from a little above, it is higher by the table's depth. Margins ours.
  const wide = Math.max(vessel.width, vessel.depth, ...[0, 45, 90, 135].map((turn) => 2 * farthest(resolved, turn)))
  const facts: Told['facts'] = []
  const date = dateWords(setting.date, language)
  if (date) facts.push(['for', date])
  facts.push(['tables', setting.copies === 1 ? 'one' : counted(setting.copies)])
  if (reach) facts.push(['wide', formatLength(reach.right - reach.left, units)])
  facts.push(['high', formatLength(high, units)])
  if (prices) facts.push(...costOf(document, prices, language))
  const words = subtitle(document)
  return {
    title: document.title.trim() || 'For the table',
    subtitle: words,
    plants,
    facts,
    caution: [
      flameLine(document.setting.light),
      cautionLine(
        [...new Map(resolved.stems.map((s) => [s.plant.id, s.plant])).values()],
        '',
        Number.POSITIVE_INFINITY,
      ),
    ]
      .filter((line) => line !== '')
      .join(' '),
    aspect: wide / (high + wide * 0.14),
    picture: `${words[0]!.toUpperCase()}${words.slice(1)}${plants.length > 0 ? `: ${listed(plants.map((p) => `${p.name} in ${p.colourWord}`))}` : ''}`,
  }
}
