import { type Keeping, keepingOfRow } from './keeping.ts'
import { type PlantRow, readPlant } from './plant-row.ts'
import filler from './plants/filler.json' with { type: 'json' }
import foliage from './plants/foliage.json' with { type: 'json' }
import form from './plants/form.json' with { type: 'json' }
import line from './plants/line.json' with { type: 'json' }
import mass from './plants/mass.json' with { type: 'json' }
import type { Plant } from './types.ts'

// What the files hold is checked by tests/unit/catalogue; here they are taken at their word.
const rows = [...mass, ...form, ...line, ...filler, ...foliage] as unknown as PlantRow[]

/** Every plant: mass, form, line, filler, foliage. */
export const PLANTS: readonly Plant[] = rows.map(readPlant)

const byId = new Map(PLANTS.map((plant) => [plant.id, plant]))

/** Every plant id. */
export const plantIds: ReadonlySet<string> = new Set(byId.keys())

/** The plant of this id; undefined when there is none. */
export const findPlant = (id: string): Plant | undefined => byId.get(id)

const rowById = new Map(rows.map((row) => [row.id, row]))

/** How long a plant takes and keeps; null when there is none of this id. */
export const keepingOf = (id: string): Keeping | null => {
  const row = rowById.get(id)
  return row ? keepingOfRow(row.care) : null
}

const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/[\u0300-\u036f’']/g, '')
    .toLowerCase()

/** How far off one word is: 0 the name begins with it, 1 a word of the name does, 2 inside a name, 3 botanical, class, colour. */
const far = (plant: Plant, word: string): number => {
  const name = plain(plant.name)
  if (name.startsWith(word)) return 0
  if (name.split(/[\s(-]+/).some((w) => w.startsWith(word))) return 1
  if (name.includes(word)) return 2
  const rest = [plant.botanical, plant.id, plant.role, ...plant.formClasses, ...plant.colours.map((c) => c.name)]
  return rest.some((text) => plain(text).includes(word)) ? 3 : Number.POSITIVE_INFINITY
}

/** Plants that fit every word of the text, by name, botanical name, class or colour; the best first. '' gives all. */
export function searchPlants(text: string): Plant[] {
  const words = plain(text).split(/\s+/).filter(Boolean)
  return PLANTS.map((plant) => ({ plant, rank: words.reduce((sum, word) => sum + far(plant, word), 0) }))
    .filter(({ rank }) => Number.isFinite(rank))
    .sort((a, b) => a.rank - b.rank)
    .map(({ plant }) => plant)
}
