import { type Arrangement, describeEdit, type Edit, type Stem } from '../../arrangement/index.ts'
import { findPlant } from '../../catalogue/index.ts'
import { formatLength, type Units } from '../../units/index.ts'

const plantName = (id: string): string => findPlant(id)?.name.toLowerCase() ?? id

/** `rose moved`, for the undo button. */
export const wordsOf = (document: Arrangement, edit: Edit): string => describeEdit(document, edit, plantName)

/** `Rose placed: 12.0 cm above the rim, 3.5 cm right of the middle.` Right and left as seen at turn 0. */
export const placedWords = ({ plant, tip }: Stem, units: Units): string => {
  const name = plantName(plant)
  const side =
    Math.round(tip[0]) === 0
      ? 'over the middle'
      : `${formatLength(Math.abs(tip[0]), units)} ${tip[0] > 0 ? 'right' : 'left'} of the middle`
  const up = `${formatLength(Math.abs(tip[2]), units)} ${tip[2] < 0 ? 'below' : 'above'} the rim`
  return `${name[0]?.toUpperCase() ?? ''}${name.slice(1)} placed: ${up}, ${side}.`
}

/** What the two views show, for those who do not see them. */
export const summaryOf = (document: Arrangement, turn: number, units: Units): string => {
  const { stems, vessel } = document
  const size = `${formatLength(vessel.width, units)} wide and ${formatLength(vessel.height, units)} high`
  if (stems.length === 0) return `An empty vessel, ${size}.`
  const counts = new Map<string, number>()
  for (const s of stems) counts.set(s.plant, (counts.get(s.plant) ?? 0) + 1)
  const most = [...counts].sort((a, b) => b[1] - a[1])
  const listed = most.slice(0, 6).map(([id, n]) => `${n} ${plantName(id)}`)
  const rest = most.length > 6 ? `, and ${most.length - 6} other plants` : ''
  const top = Math.max(...stems.map((s) => s.tip[2]))
  return `${stems.length} ${stems.length === 1 ? 'stem' : 'stems'} in a vessel ${size}: ${listed.join(', ')}${rest}. The highest head is ${formatLength(top, units)} above the rim. Turned ${Math.round(turn)}°.`
}
