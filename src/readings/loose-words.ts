import type { Hold, Loose } from './held-stems.ts'
import { listed } from './words.ts'

/** Why a stem would not stay: said of one and of several. */
export const WHY: Record<Loose, [one: string, several: string]> = {
  neck: [
    'is thicker than the neck of the vessel and does not go in',
    'are thicker than the neck of the vessel and do not go in',
  ],
  outside: ['crosses outside the mouth', 'cross outside the mouth'],
  rim: ['has nothing to lean on before the rim', 'have nothing to lean on before the rim'],
  slips: ['would slip on the floor', 'would slip on the floor'],
  slides: [
    'would slide down the far wall until it stands steeper',
    'would slide down the far wall until they stand steeper',
  ],
  lifts: ['hangs so far over the rim that its end lifts', 'hang so far over the rim that their ends lift'],
  shallow: ['stands too little below the rim to be gripped', 'stand too little below the rim to be gripped'],
  far: ['leans farther than the mechanics hold', 'lean farther than the mechanics hold'],
  pins: ['misses the pins', 'miss the pins'],
}

/** The reasons there are with how many stems have each, the most frequent first. */
export const reasonsOf = (holds: readonly Hold[]): [why: Loose, stems: number][] => {
  const counts = new Map<Loose, number>()
  for (const { loose } of holds) if (loose) counts.set(loose, (counts.get(loose) ?? 0) + 1)
  return [...counts].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1))
}

/** ` 18 miss the pins and 1 crosses outside the mouth.` with a space before it; '' where all stay. */
export const reasonWords = (holds: readonly Hold[]): string => {
  const said = reasonsOf(holds).map(([why, n]) => `${n} ${WHY[why][n === 1 ? 0 : 1]}`)
  return said.length > 0 ? ` ${listed(said)}.` : ''
}
