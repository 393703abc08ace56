import type { Caution, Plant } from '../../catalogue/index.ts'
import { listed, spokenName } from './words.ts'

/** A row that warns of nothing, or only says that nobody has looked, is no caution for one line under a picture. */
const NO_WARNING = /\b(not (been )?(checked|listed|known)|non-?toxic|harmless|none known|no (harm|danger|risk))\b/i

type Group = 'cats' | 'pets' | 'plates'
const GROUPS: readonly (readonly [Group, string])[] = [
  ['cats', 'keep from cats'],
  ['pets', 'keep from pets'],
  ['plates', 'keep off plates and food'],
]

const groupOf = ({ about, text }: Caution): Group | null => {
  if (NO_WARNING.test(text)) return null
  if (about === 'pets') return /\bcats?\b/i.test(text) && !/\b(dogs?|pets?)\b/i.test(text) ? 'cats' : 'pets'
  return about === 'eaten' || about === 'food' ? 'plates' : null
}

/** More plants than this are counted, not named. Ours. */
const MOST_NAMED = 4

const names = (plants: readonly Plant[]): string => {
  const said = plants.map((p) => spokenName(p.name))
  if (said.length <= MOST_NAMED) return listed(said)
  return listed([...said.slice(0, MOST_NAMED - 1), `${said.length - MOST_NAMED + 1} others`])
}

/** One sentence for the foot of the picture: who must not come near what, and where the rest is written. '' if nothing. */
export const cautionLine = (plants: readonly Plant[]): string => {
  const parts = GROUPS.flatMap(([group, words]) => {
    const those = plants.filter((p) => p.cautions.some((c) => groupOf(c) === group))
    return those.length > 0 ? [`${names(those)}: ${words}`] : []
  })
  return parts.length > 0 ? `${parts.join('. ')}. See the list of cautions.` : ''
}
