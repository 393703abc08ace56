import listed from './cautions.json' with { type: 'json' }
import { cite } from './sources.ts'
import type { Caution, Danger } from './types.ts'

interface CautionRow {
  /** Plant ids, space between. */
  plants: string
  about: Caution['about']
  /** How grave it is, of rows about pets and about food. */
  grade?: Danger['pets'] | NonNullable<Danger['food']>
  text: string
  refs: string
}
const ROWS = listed as CautionRow[]

/** What is said of a plant that the list does not have: never that it is harmless. */
const NOT_CHECKED: Caution = {
  about: 'pets',
  text: 'Not checked: no entry in the list used. Keep away from pets and food until you know.',
  standing: 'not known',
  source: 'no entry in the list used',
}

const rowsOf = (plant: string): CautionRow[] => ROWS.filter((row) => row.plants.split(' ').includes(plant))

/** Cautions for a plant, pets first. A plant without a row about pets gets one that says so. */
export function cautionsOf(plant: string): Caution[] {
  const found = rowsOf(plant).map(({ about, text, refs }): Caution => ({ about, text, ...cite(refs) }))
  const pets = found.filter((c) => c.about === 'pets')
  return [...(pets.length > 0 ? pets : [NOT_CHECKED]), ...found.filter((c) => c.about !== 'pets')]
}

/** How dangerous a plant is to pets and near food. What the list does not have is not checked. */
export function dangerOf(plant: string): Danger {
  const rows = rowsOf(plant)
  const grade = (about: Caution['about']): CautionRow['grade'] => rows.find((row) => row.about === about)?.grade
  return {
    pets: (grade('pets') as Danger['pets'] | undefined) ?? 'not checked',
    food: (grade('food') as Danger['food'] | undefined) ?? null,
  }
}

const GRAVITY: readonly Danger['pets'][] = ['emergency', 'poisonous', 'not checked', 'not poisonous']

/** Plant ids, emergencies for pets first, then what is off a table with food; else in the order given. */
export const gravestFirst = (plants: readonly string[]): string[] => {
  const rank = (plant: string): number => {
    const { pets, food } = dangerOf(plant)
    return 2 * GRAVITY.indexOf(pets) - (food === 'barred' ? 1 : 0)
  }
  return [...plants].sort((a, b) => rank(a) - rank(b))
}

const say = (about: Caution['about'], text: string, refs: string): Caution => ({ about, text, ...cite(refs) })

/** Cautions that hold for every arrangement, and whose word goes before ours. */
export const GENERAL_CAUTIONS: Caution[] = [
  say(
    'sharp',
    'Cut away from the body with a sharp knife or secateurs, and cap or close the blade when you lay it down.',
    'M',
  ),
  say(
    'sharp',
    'Cut ends of wire netting are sharp: turn them in, and wear gloves and eye protection while cutting.',
    'M',
  ),
  say(
    'sharp',
    'Glass: no chipped rims, no hot water into cold glass, pebbles laid in, not dropped; carry a vessel from below, never by its rim.',
    'M',
  ),
  say(
    'dust',
    'Cut foam wet, not dry, with a window open: its dust irritates lungs and eyes. Wear gloves, and do not rub your eyes. Keep crumbs and rinse water out of drains and compost.',
    'SDS+M',
  ),
  say(
    'flame',
    'Candles: nothing that can burn near the flame, dried material never. Advice runs from 12 in (305 mm) to 4 ft (1.2 m): keep the stricter that the venue asks for, or use flameless ones. Foam burns too.',
    'FIRE+SDS',
  ),
  say(
    'lifting',
    'A litre of water is a kilogram. Lift filled vessels from the knees; over 10 kg split the piece or lift in two.',
    'NIOSH+O',
  ),
  say(
    'lifting',
    'Keep filled vessels off sockets, lamps and loudspeakers, on a tray where they may drip, and cables out of the way.',
    'M',
  ),
  say(
    'food',
    "Florists' flowers carry pesticides: never a garnish. Nothing may hang over plates or glasses; what is marked as not on a table with food stays off it. On a cake only flowers grown for food, with something between stem and cake, and ask the baker.",
    'MG+M',
  ),
  say('skin', 'Wash your hands before eating; gloves for sap and thorns.', 'M'),
  say(
    'pets',
    "'Not checked' means that no listing was found. It does not mean harmless. Trade names vary: go by the botanical name.",
    'O',
  ),
  say('pets', 'Give no trimmings to animals, and leave no vase water where they can drink it.', 'M'),
  say(
    'eaten',
    'Before the event, look up the number of the poison line of the country you are in, and of a vet on duty, and keep both at hand.',
    'O',
  ),
  say(
    'eaten',
    'This is general trade knowledge, not medical or veterinary advice. If a person or an animal may have eaten of a plant, call a poison line, a doctor or a vet at once.',
    'O',
  ),
  say(
    'lifting',
    "The venue's rules, local fire and building codes and licensed practice come before anything said here: flames may need a permit, and what is fixed overhead or to the mains needs a qualified person.",
    'O',
  ),
]
