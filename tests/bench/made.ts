import type { Arrangement, Stem } from '../../src/arrangement/index.ts'
import { newArrangement } from '../../src/arrangement/index.ts'

const KINDS = [
  ['rose-garden', 'focal', 0],
  ['dahlia', 'form', 3],
  ['zinnia', 'mass', 1],
  ['rose-spray', 'mass', 1],
  ['veronica', 'line', 2],
  ['craspedia', 'filler', 3],
  ['gypsophila', 'filler', 4],
  ['euc-silver', 'greens', 5],
  ['ruscus-italian', 'greens', 5],
  ['scabiosa', 'filler', 2],
] as const

/** An arrangement of `count` stems over a dome, the same one each time: ten plants in turn, by the golden angle. */
export const dome = (count: number): Arrangement => {
  const base = newArrangement()
  const stems = Array.from({ length: count }, (_, i): Stem => {
    const [plant, role, slot] = KINDS[i % KINDS.length]!
    const k = (i + 0.5) / count
    const a = i * 2.399963
    const reach = (role === 'greens' ? 190 : 150) * Math.sqrt(k)
    const height = 40 + 150 * (1 - k) * (role === 'line' ? 1.25 : role === 'greens' ? 0.3 : 1)
    const at = (r: number): [number, number] => [
      Math.round(r * Math.cos(a) * 10) / 10,
      Math.round(r * Math.sin(a) * 10) / 10,
    ]
    return {
      id: `s${i + 1}`,
      plant,
      role,
      colour: { slot },
      openness: 0.85,
      mouth: at(Math.min(50, reach * 0.33)),
      tip: [...at(reach), Math.round(height)],
      bend: 0,
      piece: 'whole',
    }
  })
  return { ...base, title: `Dome of ${count}`, stems }
}
