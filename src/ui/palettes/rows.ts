import type { Light } from '../../arrangement/index.ts'
import { ABOUT_LIGHT, lightWords } from '../room/words.ts'
import { type StripWay, stripsFor } from './strips.tsx'
import { BY_LIGHT } from './words.ts'

/** A row of the board. */
export interface Row {
  id: 'name' | 'view' | StripWay | 'harmony' | 'cost' | 'words' | 'plants'
  words: string
  /** Smaller words beneath. */
  more?: string[]
}

/** The rows, from the top, for a light and so many copies of the design. */
export const rowsFor = (light: Light, copies: number): Row[] => {
  const day = light === 'daylight'
  const strips: Record<StripWay, string> = { day: 'daylight', light: lightWords(light), deutan: 'red–green blind' }
  return [
    { id: 'name', words: 'palette' },
    { id: 'view', words: `${BY_LIGHT[light]}, from the front`, more: [ABOUT_LIGHT[light]] },
    ...stripsFor(light).map((way): Row => ({ id: way, words: strips[way] })),
    {
      id: 'harmony',
      words: 'flowers together',
      more: day ? [] : ['filled, in this light', 'open, by daylight'],
    },
    { id: 'cost', words: copies > 1 ? `${copies} in all` : 'cost', more: ['at the prices set'] },
    { id: 'words', words: day ? 'each colour' : `each colour, by daylight and ${BY_LIGHT[light]}` },
    { id: 'plants', words: 'what comes in them' },
  ]
}
