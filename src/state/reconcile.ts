import type { Arrangement } from '../arrangement/index.ts'

const same = (a: unknown, b: unknown): boolean => {
  if (a === b) return true
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
  const ka = Object.keys(a)
  if (ka.length !== Object.keys(b).length) return false
  return ka.every((k) => same((a as Record<string, unknown>)[k], (b as Record<string, unknown>)[k]))
}

/**
 * A document that came through a message has new objects throughout; this puts the known ones back where nothing
 * changed, so that what is remembered by object (curves, solids) is found again.
 */
export const reconcile = (before: Arrangement | null, now: Arrangement): Arrangement => {
  if (!before) return now
  const old = new Map(before.stems.map((s) => [s.id, s]))
  return {
    ...now,
    vessel: same(before.vessel, now.vessel) ? before.vessel : now.vessel,
    palette: same(before.palette, now.palette) ? before.palette : now.palette,
    stems: now.stems.map((s) => {
      const o = old.get(s.id)
      return o && same(o, s) ? o : s
    }),
  }
}
