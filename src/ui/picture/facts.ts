import type { Arrangement, Light } from '../../arrangement/index.ts'
import type { Plant } from '../../catalogue/index.ts'
import { type Frame, type Reach, reachOf, type Scene, sceneOf, stillBox, type ViewAngle } from '../../drawing/index.ts'
import { type Resolved, resolveArrangement } from '../../geometry/index.ts'
import { formatMoney, inventedAmong, type PriceBook, type PurchaseLine, purchase } from '../../stem-list/index.ts'
import {
  cautionLines,
  colourWords,
  dateWords,
  flameLine,
  plainName,
  ROLE_ORDER,
  subtitle,
  vesselWord,
} from '../../telling/index.ts'
import { formatLength, type Units } from '../../units/index.ts'
import { lightWords } from './light-words.ts'

export interface PictureOptions {
  units: Units
  /** BCP 47, for the date and the money. */
  language: string
  /** Words of the palette that is on the sheet, by #rrggbb in lower case. */
  colourNames: ReadonlyMap<string, string>
  /** A name for any other #rrggbb. */
  generalName: (hex: string) => string
  prices: PriceBook
  withCost: boolean
  /** In which the colours are shown; daylight if left out. */
  light?: Light
}

/** From a little above: degrees. As the eye of someone who sits before it; ours. */
export const QUARTER: ViewAngle = { turn: 0, pitch: 14 }
/** Where the viewer stands when the design turns by so much, degrees. */
export const SIDES = [
  { words: 'from the left', angle: { turn: 90, pitch: 0 } },
  { words: 'from behind', angle: { turn: 180, pitch: 0 } },
  { words: 'from the right', angle: { turn: 270, pitch: 0 } },
] as const

/** One plant in one colour, and how many stand in one arrangement. */
export interface PlantFact {
  id: string
  name: string
  colour: string
  colourWord: string
  openness: number
  count: number
  /** Cut from many-headed stems, all of them. */
  sprigs: boolean
}

export interface BuyFact {
  count: number
  name: string
  colourWord: string
}

type Rect = Omit<Frame, 'scale'>

/** Everything that the picture says, before it has a place. Lengths in mm. */
export interface Facts {
  title: string
  subtitle: string
  paletteName: string
  vessel: string
  front: Rect
  above: Rect
  quarter: Rect
  /** In the order of SIDES. */
  sides: Rect[]
  /** The design, and what stands on the table with it. */
  room: { resolved: Resolved; scene: Scene }
  light: Light
  lightWords: string
  vesselHeight: number
  /** What the dimensions are of: the plants, or the vessel where there are none. */
  reach: Reach
  /** As written on the sheet. */
  wide: string
  high: string
  vesselHigh: string
  vesselWide: string
  swatches: { colour: string; word: string }[]
  plants: PlantFact[]
  stems: number
  copies: number
  /** Empty where the plants themselves say it: one kind for one arrangement. */
  buy: BuyFact[]
  /** Of what is to be bought some is spare. */
  spare: boolean
  date: string
  cost: { total: string; standing: string } | null
  /** What is to be minded, all of it first, then with fewer plants by name; none where there is nothing. */
  cautions: string[]
}

const plantFacts = (resolved: Resolved, word: (hex: string, plant: Plant) => string): PlantFact[] => {
  const groups = new Map<string, PlantFact & { order: number }>()
  for (const { plant, colour, openness, role, stem } of resolved.stems) {
    const key = `${plant.id} ${colour.toLowerCase()}`
    const sprig = stem.piece === 'lateral'
    const group = groups.get(key)
    if (group) {
      group.count += 1
      group.openness = Math.max(group.openness, openness)
      group.sprigs &&= sprig
    } else
      groups.set(key, {
        id: plant.id,
        name: plainName(plant.name),
        colour: colour.toLowerCase(),
        colourWord: word(colour, plant),
        openness,
        count: 1,
        sprigs: sprig,
        order: ROLE_ORDER.indexOf(role),
      })
  }
  return [...groups.values()]
    .sort((a, b) => a.order - b.order || b.count - a.count)
    .map(({ order: _, ...fact }) => fact)
}

const costOf = (lines: readonly PurchaseLine[], total: number, { prices, language }: PictureOptions): Facts['cost'] => {
  if (lines.length === 0) return null
  const standing = `prices: ${{ none: 'yours', all: 'example', some: 'some yours, some example' }[inventedAmong(lines, prices)]}`
  return { total: formatMoney(total, prices.currency, language), standing }
}

const cautionsOf = ({ stems }: Resolved, light: Light): string[] => {
  const plants = [...new Map(stems.map((s) => [s.plant.id, s.plant])).values()]
  return cautionLines(plants, 'The tool’s list of cautions names all.')
    .map((line) => [flameLine(light), line].filter((words) => words !== '').join(' '))
    .filter((words) => words !== '')
}

/** What is true of a document, in the words and figures of the picture. */
export const factsOf = (document: Arrangement, options: PictureOptions): Facts => {
  const resolved = resolveArrangement(document)
  const { vessel, palette, setting } = document
  const light = options.light ?? 'daylight'
  const front = stillBox(resolved, { turn: 0, pitch: 0 })
  const above = stillBox(resolved, { turn: 0, pitch: 90 })
  const reach = reachOf(resolved, 0) ?? { left: -vessel.width / 2, right: vessel.width / 2, top: 0 }
  const word = (hex: string, plant: Plant | null): string =>
    colourWords(hex, plant, options.colourNames, options.generalName)
  const plants = plantFacts(resolved, word)
  const bought = purchase(resolved, setting.copies, options.prices)
  const length = (mm: number): string => formatLength(mm, options.units)
  const nameOf = new Map(plants.map((p) => [`${p.id} ${p.colour}`, p]))
  return {
    title: document.title.trim() || 'For the table',
    subtitle: subtitle(document),
    paletteName: palette.slots.length > 0 ? palette.name.trim() : '',
    vessel: vesselWord(vessel),
    front,
    above,
    quarter: stillBox(resolved, QUARTER),
    sides: SIDES.map(({ angle }) => stillBox(resolved, angle)),
    room: { resolved, scene: sceneOf(resolved) },
    light,
    lightWords: lightWords(light),
    vesselHeight: vessel.height,
    reach,
    wide: length(reach.right - reach.left),
    high: length(Math.max(0, reach.top) + vessel.height),
    vesselHigh: length(vessel.height),
    vesselWide: length(vessel.width),
    swatches: palette.slots.map((s) => ({ colour: s.colour, word: word(s.colour, null) })),
    plants,
    stems: document.stems.length,
    copies: setting.copies,
    buy: (setting.copies > 1 || bought.lines.length > 1 ? bought.lines : []).map((line) => {
      const plant = nameOf.get(`${line.plant} ${line.colour}`)
      return {
        count: line.stems + line.spareStems,
        name: plant?.name ?? line.plant,
        colourWord: plant?.colourWord ?? '',
      }
    }),
    spare: bought.lines.some((line) => line.spareStems > 0),
    date: dateWords(setting.date, options.language),
    cost: options.withCost ? costOf(bought.lines, bought.total, options) : null,
    cautions: cautionsOf(resolved, setting.light),
  }
}
