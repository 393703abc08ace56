import type { Setting } from '../../../../src/arrangement/index.ts'
import type { Resolved } from '../../../../src/geometry/index.ts'
import { BOWL, type Put, resolvedOf } from '../fixture.ts'

const SETTING: Setting = {
  copies: 12,
  light: 'daylight',
  linen: '#fbfaf7',
  table: { shape: 'round', diameter: 1524 },
}

/** A bowl with these stems (a low posy if left out), set as said. */
export const setWith = (
  setting: Partial<Setting>,
  puts: Put[] = [
    { id: 'a', mouth: [0, 0], tip: [0, 0, 80] },
    { id: 'b', mouth: [10, 0], tip: [60, 10, 60] },
    { id: 'c', mouth: [-10, 0], tip: [-55, -20, 50] },
  ],
): Resolved => {
  const resolved = resolvedOf(puts, BOWL)
  return { ...resolved, document: { ...resolved.document, setting: { ...SETTING, ...setting } } }
}
