import { preparedParts, type ResolvedStem, type StemCurve, standinsOf } from '../geometry/index.ts'
import { tipOf } from './tip.ts'

/** In parts, the kind of a bare stem. */
export const BARE = 2

// Everything that a stem's shape depends on comes with its curve: see geometry's resolve.ts.
const known = new WeakMap<StemCurve, Float64Array>()

/** A stem's stand-ins where it stands (geometry's parts.ts), made once for as long as it keeps its shape. Not to be written to. */
export const partsOf = (stem: ResolvedStem): Float64Array => {
  const before = known.get(stem.curve)
  if (before) return before
  const parts = preparedParts(standinsOf(stem), tipOf(stem))
  known.set(stem.curve, parts)
  return parts
}
