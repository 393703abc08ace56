import type { Light } from '../arrangement/index.ts'
import { type Caution, cautionsOf, type Plant } from '../catalogue/index.ts'
import { listed, plainName } from './words.ts'

/** Rows that say that nobody has looked, or that a list has it as harmless: no warning, and no promise either. */
const NO_WARNING = /^(not checked|listed as not poisonous)/i

const GROUPS = ['An emergency for cats', 'Poisonous to pets', 'Keep off food and plates'] as const
type Group = (typeof GROUPS)[number]

const groupOf = ({ about, text }: Caution): Group | null => {
  if (NO_WARNING.test(text)) return null
  if (about === 'pets') return /\bemergency\b/i.test(text) ? 'An emergency for cats' : 'Poisonous to pets'
  return about === 'eaten' || about === 'food' ? 'Keep off food and plates' : null
}

/** More plants than this are counted, not named, where there is little room. Ours. */
const MOST_NAMED = 4

const names = (plants: readonly Plant[], most: number): string => {
  const said = plants.map((p) => plainName(p.name))
  if (said.length <= most) return listed(said)
  return listed([...said.slice(0, most - 1), `${said.length - most + 1} others`])
}

/**
 * What a picture has to say of danger, in one or two lines: what is poisonous to pets, what must keep off food, and where
 * the rest is written. '' if there is nothing of the kind. No plant is called safe.
 * @param rest where more is to be read, where the reader has it
 * @param most so many plants are named before the others are counted
 */
export const cautionLine = (
  plants: readonly Plant[],
  rest = ': see the list of cautions',
  most = MOST_NAMED,
): string => {
  const parts = GROUPS.flatMap((group) => {
    const those = plants.filter((p) => cautionsOf(p.id).some((c) => groupOf(c) === group))
    return those.length > 0 ? [`${group}: ${names(those, most)}.`] : []
  })
  return parts.length > 0 ? `${parts.join(' ')} Not every plant has been checked${rest}.` : ''
}

/** What a design that is shown by candle says of the flame; '' in any other light. The distances are those of the catalogue's caution. */
export const flameLine = (light: Light): string =>
  light === 'candle'
    ? 'Candles: nothing that can burn within 12 in (305 mm) of a flame, or farther where the venue asks for it, and never dried material.'
    : ''
