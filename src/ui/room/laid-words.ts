import {
  EACH_mm,
  FLAME_LEAST_mm,
  FLAME_STRICT_mm,
  type NearFlame,
  type Scene,
  THINGS,
  type ThingKind,
} from '../../drawing/index.ts'
import { listed, plainName } from '../../telling/index.ts'
import { formatLength, type Units } from '../../units/index.ts'

const THING_WORDS: Record<ThingKind, [one: string, many: string]> = {
  'dinner-plate': ['plate', 'plates'],
  'side-plate': ['small plate', 'small plates'],
  'wine-glass': ['wine glass', 'wine glasses'],
  'water-glass': ['water glass', 'water glasses'],
  saucer: ['cup', 'cups'],
  cup: ['cup', 'cups'],
  candle: ['candle', 'candles'],
}

/** How the table is laid, and what is left out and why; sentences. */
export const laidWords = ({ manner, seats, things, copies, under, noRoom }: Scene, units: Units): string[] => {
  const hidden = THINGS.flatMap((kind) => {
    const n = under[kind] ?? 0
    return n > 0 ? [`${n} ${THING_WORDS[kind][n === 1 ? 0 : 1]}`] : []
  })
  const none = noRoom.map((kind) => THING_WORDS[kind][1])
  const laid = things.some(({ kind }) => kind !== 'candle')
  return [
    ...(laid && manner === 'café' ? ['A small table for two.'] : []),
    ...(laid && manner !== 'café'
      ? [`Laid for ${seats}, ${formatLength(EACH_mm, units)} of edge each (common practice).`]
      : []),
    ...(copies.length > 0 ? [`The piece stands ${copies.length + 1} times down the table, evenly.`] : []),
    ...(hidden.length > 0
      ? [
          `Left out, because the flowers would hang over ${hidden.length > 1 || !/^1 /.test(hidden[0]!) ? 'them' : 'it'}: ${listed(hidden)}.`,
        ]
      : []),
    ...(none.length > 0 ? [`No room on this table for ${listed(none)}.`] : []),
  ]
}

/** More kinds than this are counted, not named. Ours. */
const MOST_NAMED = 5

const nearWords = ({ plant, distance_mm, dries, hangs }: NearFlame, units: Units): string => {
  const marks = [...(dries ? ['dries'] : []), ...(hangs ? ['hangs'] : [])]
  return `${plainName(plant.name)} ${formatLength(distance_mm, units)}${marks.length > 0 ? ` (${marks.join(', ')})` : ''}`
}

/**
 * What stands too near to a flame as drawn, dry and hanging plants first, then the nearest; '' where the least distance is kept. What dries or hangs within
 * the strictest distance is named besides.
 */
export const flameWords = (near: readonly NearFlame[], units: Units): string[] => {
  if (near.length === 0) return []
  const least = formatLength(FLAME_LEAST_mm, units)
  const strict = formatLength(FLAME_STRICT_mm, units)
  const all = near.filter((n) => n.distance_mm < FLAME_LEAST_mm)
  // What burns soonest is never among those that are only counted.
  const close = [...all.filter((n) => n.dries || n.hangs), ...all.filter((n) => !n.dries && !n.hangs)]
  const risky = near.filter(
    (n) => n.distance_mm >= FLAME_LEAST_mm && n.distance_mm < FLAME_STRICT_mm && (n.dries || n.hangs),
  )
  const named = (those: readonly NearFlame[]): string =>
    listed([
      ...those.slice(0, MOST_NAMED).map((n) => nearWords(n, units)),
      ...(those.length > MOST_NAMED ? [`${those.length - MOST_NAMED} other kinds`] : []),
    ])
  return [
    close.length > 0
      ? `Nearer than ${least} to a flame as drawn: ${named(close)}.`
      : `As drawn the flames keep ${formatLength(near[0]!.distance_mm, units)} from the flowers; the least that is advised is ${least}.`,
    ...(risky.length > 0 ? [`Dry or hanging, and within the strictest distance, ${strict}: ${named(risky)}.`] : []),
  ]
}
