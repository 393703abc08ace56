import type { Role, Slot } from '../../arrangement/index.ts'
import { PLANTS, type Plant } from '../../catalogue/index.ts'
import { NOT_NEAR, nearestColours } from '../../colour/index.ts'
import type { Resolved } from '../../geometry/index.ts'

/** A colour in which a plant comes, held against one that is wanted. */
export interface Match {
  plant: Plant
  /** Word of the trade, and our swatch for it. */
  colour: string
  hex: string
  /** ΔE00 to the wanted colour. */
  apart: number
}

/** What a plant comes in that is nearest to #rrggbb; null for a plant without colours. */
export const nearestOf = (plant: Plant, wanted: string): Match | null => {
  const [best] = nearestColours(wanted, plant.colours)
  return best ? { plant, colour: best.name, hex: best.hex, apart: best.apart } : null
}

export interface Worn extends Match {
  wanted: string
  stems: number
}

/** Each plant of the design in each colour that it wears there, with the nearest that it comes in; in order of the stems. */
export const wornColours = (resolved: Resolved): Worn[] => {
  const worn = new Map<string, Worn>()
  for (const { plant, colour } of resolved.stems) {
    const wanted = colour.toLowerCase()
    const key = `${plant.id} ${wanted}`
    const known = worn.get(key)
    if (known) known.stems += 1
    else {
      const match = nearestOf(plant, wanted)
      if (match) worn.set(key, { ...match, wanted, stems: 1 })
    }
  }
  return [...worn.values()]
}

/** Names of plants that do not come near a colour that they wear, each once, lower case and without what is in brackets. */
export const notToBeHad = (worn: readonly Worn[]): string[] => [
  ...new Set(worn.filter((w) => w.apart >= NOT_NEAR).map((w) => w.plant.name.replace(/ \(.*\)/, '').toLowerCase())),
]

/** Plants that play a part and come near its colour, each in the nearest of its colours; nearest first, `without` these. */
export const offersFor = (slot: Slot, without: ReadonlySet<string>, most = 3): Match[] =>
  PLANTS.filter((plant) => playsPart(plant, slot.part) && !without.has(plant.id))
    .flatMap((plant) => nearestOf(plant, slot.colour) ?? [])
    .filter((m) => m.apart < NOT_NEAR)
    .sort((p, q) => p.apart - q.apart)
    .slice(0, most)

/** Any mass or form flower may lead; the other parts are what the catalogue says a new stem of the plant plays. */
const playsPart = (plant: Plant, part: Role): boolean =>
  part === 'focal' ? ['focal', 'mass', 'form'].includes(plant.role) : plant.role === part
