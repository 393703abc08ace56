import type { Resolved } from '../geometry/index.ts'
import { formatLength, type Units } from '../units/index.ts'
import { adviseAll } from './advice.ts'
import { createEngine, type Engine } from './engine.ts'
import { measureAll, READINGS } from './list.ts'
import type { ReadingResult } from './types.ts'
import { waysOf } from './ways.ts'

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
  const results = measureAll(resolved, on, units)
  if (!advice) return results
  const lengths = (mm: number): string => formatLength(mm, units)
  const round = results.map((r) => (r.score === null ? r : { ...r, ways: waysOf(on, r.id) }))
  return adviseAll(on, round, READINGS, lengths)
}
