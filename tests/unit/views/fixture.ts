import { type Arrangement, newArrangement, type Stem } from '../../../src/arrangement/index.ts'

export const stem = (id: string, part: Partial<Stem> = {}): Stem => ({
  id,
  plant: 'rose-garden',
  role: 'focal',
  colour: '#d9a0a0',
  openness: 0.8,
  mouth: [0, 0],
  tip: [0, 0, 100],
  bend: 0,
  piece: 'whole',
  ...part,
})

/** A round bowl, 140 mm wide and 84 high, with these stems. */
export const bowl = (...stems: Stem[]): Arrangement => {
  const empty = newArrangement()
  const vessel = { ...empty.vessel, plan: 'round' as const, width: 140, depth: 140, height: 84, wall: 4 }
  return { ...empty, vessel, stems }
}
