import type { Light } from '../arrangement/index.ts'
import { type Danger, dangerOf, type Plant } from '../catalogue/index.ts'
import { listed, plainName } from './words.ts'

/** What is said of pets and of food, gravest first. What has nothing to say of both is no group. */
const PETS: readonly [words: string, pets: readonly Danger['pets'][]][] = [
  ['an emergency for cats', ['emergency']],
  ['poisonous to pets', ['poisonous']],
  ['', ['not checked', 'not poisonous']],
]
const FOOD: readonly [words: string, food: Danger['food']][] = [
  ['not on a table with food', 'barred'],
  ['keep clear of food and plates', 'clear'],
  ['', null],
]
const GROUPS = PETS.flatMap(([pet, pets]) =>
  FOOD.map(([table, food]) => ({ words: [pet, table].filter((w) => w !== '').join(', '), pets, food })),
).filter(({ words }) => words !== '')

/** More plants than this are counted, not named, where there is little room. Ours. */
const MOST_NAMED = 4

const sentence = (words: string): string => `${words[0]?.toUpperCase()}${words.slice(1)}`

const names = (plants: readonly Plant[], most: number): string => {
  const said = plants.map((p) => plainName(p.name))
  if (said.length <= most) return listed(said)
  return listed([...said.slice(0, most - 1), `${said.length - most + 1} others`])
}

/**
 * What a picture has to say of danger, in a few lines: what is an emergency for cats, poisonous to pets, not on a table with
 * food or to be kept clear of it, and what nobody has checked. '' only without plants. No plant is called safe.
 * @param more where all of them are to be read: a sentence, said if some are counted
 * @param most so many plants of a kind are named before the others are counted; emergencies, and what is off a table with
 * food, are always named
 */
export const cautionLine = (plants: readonly Plant[], more = '', most = MOST_NAMED): string => {
  if (plants.length === 0) return ''
  const dangers = plants.map((plant) => ({ plant, ...dangerOf(plant.id) }))
  const parts = GROUPS.flatMap(({ words, pets, food }) => {
    const those = dangers.filter((d) => pets.includes(d.pets) && d.food === food).map((d) => d.plant)
    const all = pets.includes('emergency') || food === 'barred'
    return those.length > 0 ? [`${sentence(words)}: ${names(those, all ? those.length : most)}.`] : []
  })
  const unchecked = dangers.filter((d) => d.pets === 'not checked').map((d) => d.plant)
  if (unchecked.length === plants.length) {
    const what =
      plants.length > 1
        ? 'None of these plants has been checked, so keep them'
        : 'This plant has not been checked, so keep it'
    parts.push(`${what} from pets and food: ${names(unchecked, most)}.`)
  } else if (unchecked.length > 0) parts.push(`Not checked, so keep from pets and food too: ${names(unchecked, most)}.`)
  const listedOnly = dangers.some((d) => d.pets === 'not poisonous' && d.food === null)
  if (listedOnly)
    parts.push(
      parts.length > 0
        ? 'Keep the rest from pets and plates too.'
        : 'Listed as not poisonous to cats, but florists’ flowers carry pesticides: keep them from pets and plates.',
    )
  const counted = parts.some((part) => / and \d+ others\.$/.test(part))
  return [...parts, ...(counted && more ? [more] : [])].join(' ')
}

/** The same from all named to few named, for those who look which has room. */
export const cautionLines = (plants: readonly Plant[], more = ''): string[] =>
  [...new Set([plants.length, 12, 8, 6, MOST_NAMED, 2])].map((most) => cautionLine(plants, more, most))

/** What a design that is shown by candle says of the flame; '' in any other light. The distances are those of the catalogue's caution. */
export const flameLine = (light: Light): string =>
  light === 'candle'
    ? 'Candles: nothing that can burn within 12 in (305 mm) of a flame, or farther where the venue asks for it, and never dried material.'
    : ''
