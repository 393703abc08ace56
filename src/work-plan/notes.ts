import { keepingOf, type Standing } from '../catalogue/index.ts'
import type { Reason } from './types.ts'

interface Note {
  /** Plant ids, space between. */
  plants: string
  text: string
  standing: Standing
  source: string
}

/** What a plant wants on arrival besides clean water and a fresh cut. */
const ON_ARRIVAL: readonly Note[] = [
  {
    plants: 'daffodil',
    text: 'Alone in their water for 6 to 12 h, and not cut again after, for their sap harms others',
    standing: 'source',
    source: 'California Cut Flower Commission; Super Floral',
  },
  {
    plants: 'euc-silver euc-seeded salal pittosporum myrtle boxwood olive lilac hypericum waxflower',
    text: 'Woody: a slanting or split cut, and a night in deep water',
    standing: 'source',
    source: 'Brookfield garden club; the cut: from memory',
  },
  {
    plants: 'gerbera gerbera-mini ranunculus calla calla-mini tulip',
    text: 'In shallow water, for soft stems rot in deep',
    standing: 'common practice',
    source: 'common practice; in part from memory',
  },
  {
    plants: 'tulip anemone gerbera gerbera-mini',
    text: 'Wrapped upright while they drink, or they bend',
    standing: 'common practice',
    source: 'common practice',
  },
  {
    plants: 'snapdragon gladiolus bells liatris delphinium',
    text: 'Upright from the first, for tips turn up when they lie',
    standing: 'source',
    source: 'Floral Design Institute (snapdragon); the rest from memory',
  },
  {
    plants: 'hydrangea stock snapdragon sunflower alstroemeria anemone',
    text: 'They drink much, so look at their water morning and evening',
    standing: 'source',
    source: 'Floral Design Institute, FloraLife (snapdragon, anemone, sunflower); the rest from memory',
  },
  {
    plants: 'hydrangea',
    text: 'It wilts. One that hangs may be put under water whole, and some shops place it on the day only',
    standing: 'common practice',
    source: 'common practice; sources differ',
  },
  {
    plants: 'anthurium',
    text: 'The whole head under water for 15 to 20 min',
    standing: 'source',
    source: 'Floral Design Institute',
  },
  {
    plants: 'amaryllis',
    text: 'Hollow: fill the stem with water, plug it, or put a stick in',
    standing: 'common practice',
    source: 'common practice',
  },
  {
    plants: 'lily-oriental lily-asiatic',
    text: 'Take the anthers out as each opens, for they stain',
    standing: 'common practice',
    source: 'common practice',
  },
  {
    plants: 'rose rose-garden rose-sweetheart',
    text: 'Outer petals off; an hour and a half in the warm to draw, then cool',
    standing: 'common practice',
    source: 'common practice',
  },
]

const forThose = (plants: readonly string[], note: Note): string[] => {
  const ids = note.plants.split(' ')
  return plants.filter((p) => ids.includes(p))
}

/** Lines for those of the plants that want something of their own on arrival, and where each is known from. */
export const arrivalNotes = (
  plants: readonly string[],
  nameOf: (plant: string) => string,
): { steps: string[]; reasons: Reason[] } => {
  const found = ON_ARRIVAL.flatMap((note) => {
    const those = forThose(plants, note)
    return those.length > 0 ? [{ text: `${note.text}: ${those.map(nameOf).join(', ')}.`, note }] : []
  })
  return {
    steps: found.map((f) => f.text),
    reasons: found.map(({ text, note }) => ({ text, standing: note.standing, source: note.source })),
  }
}

/** Plants that ethylene makes fade or drop: moderately or highly so, by the catalogue. */
export const ethyleneSensitive = (plants: readonly string[]): string[] =>
  plants.filter((p) => ['moderate', 'high'].includes(keepingOf(p)?.ethylene?.level ?? ''))
