import type { Resolved } from '../geometry/index.ts'
import { formatLength, type Units } from '../units/index.ts'
import { adviseAll } from './advice.ts'
import { createEngine, type Engine } from './engine.ts'
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
import { waysOf } from './ways.ts'

/** Every reading there is, in the order in which they are shown. A new one is a file and a line here. */
const READINGS: Readers = {
  'focal-prominence': readProminence,
  'negative-space': readSpace,
  'palette-harmony': readColours,
  proportion: readProportion,
  'visual-balance': readBalance,
  stability: readStability,
  mechanics: readMechanics,
  'sight-line': readSight,
}

let house: Engine | null = null

export interface ReadOptions {
  /**
   * Look for edits that help, by trying them out and measuring again, and give the values of each way round; leave it off
   * while something moves.
   */
  advice?: boolean
  /** Made once and given each time, it paints only what changed. */
  engine?: Engine
  /** How lengths are written in advice and on marks; mm if absent. */
  units?: Units
}

/** All readings of an arrangement. Same input, same result, whatever was read before. */
export const readAll = (
  resolved: Resolved,
  { advice = true, engine, units = 'mm' }: ReadOptions = {},
): ReadingResult[] => {
  house ??= engine ? null : createEngine()
  const on = engine ?? house!
  on.update(resolved)
  const lengths = (mm: number): string => formatLength(mm, units)
  const results = Object.values(READINGS).map((read) => read(on, lengths))
  if (!advice) return results
  const round = results.map((r) => (r.score === null ? r : { ...r, ways: waysOf(on, r.id) }))
  return adviseAll(on, round, READINGS, lengths)
}

export { BAND_RANGES, OWN_BANDS } from './band-ranges.ts'
export { BANDS, bandOf, bandScore, tableBand } from './bands.ts'
export { createEngine, type Engine } from './engine.ts'
export { READING_NAMES } from './names.ts'
export { isShare } from './share.ts'
export * from './types.ts'
