import type { Resolved } from '../geometry/index.ts'
import { formatLength, type Units } from '../units/index.ts'
import type { Engine } from './engine.ts'
import { readProminence } from './focal-prominence.ts'
import { readMechanics } from './mechanics.ts'
import { readSpace } from './negative-space.ts'
import { readColours } from './palette-harmony.ts'
import { readProportion } from './proportion.ts'
import { readSight } from './sight-line.ts'
import { readStability } from './stability.ts'
import type { Readers } from './trial.ts'
import type { ReadingResult } from './types.ts'
import { readBalance } from './visual-balance.ts'

/** Every reading there is, in the order in which they are shown. A new one is a file and a line here. */
export const READINGS: Readers = {
  'focal-prominence': readProminence,
  'negative-space': readSpace,
  'palette-harmony': readColours,
  proportion: readProportion,
  'visual-balance': readBalance,
  stability: readStability,
  mechanics: readMechanics,
  'sight-line': readSight,
}

/**
 * All readings of an arrangement, without advice: while something moves.
 * @param engine made once and given each time, it paints only what changed
 * @param units how lengths are written on marks
 */
export const measureAll = (resolved: Resolved, engine: Engine, units: Units = 'mm'): ReadingResult[] => {
  engine.update(resolved)
  const lengths = (mm: number): string => formatLength(mm, units)
  return Object.values(READINGS).map((read) => read(engine, lengths))
}
