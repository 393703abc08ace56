import { fields } from '../arrangement/index.ts'

type Path = readonly (string | number)[]

/** What a fault in one of these leaves of a part makes the whole part worthless: it says nothing without them. */
const NEEDED = new Set(['design', 'copies'])

/** The place that goes when something is wrong at `path`: a part as a whole where it lacks what it needs, else the field alone. */
const goes = (path: Path): Path => {
  if (path[0] === 'parts' && path.length === 3 && NEEDED.has(String(path[2]))) return path.slice(0, 2)
  // A cooler is one thing: with half of it gone the other half says nothing.
  return path[0] === 'cooler' ? ['cooler'] : path
}

const GONE = Symbol('gone')

/** The same value without what stands at the paths; keys go from objects and items from lists. */
const without = (value: unknown, paths: readonly Path[]): unknown => {
  if (paths.some((path) => path.length === 0)) return GONE
  if (paths.length === 0) return value
  const below = (key: string | number): Path[] =>
    paths.filter((path) => String(path[0]) === String(key)).map((path) => path.slice(1))
  if (Array.isArray(value)) return value.map((item, i) => without(item, below(i))).filter((item) => item !== GONE)
  if (!fields.isThing(value)) return value
  return Object.fromEntries(
    Object.entries(value)
      .map(([key, item]): [string, unknown] => [key, without(item, below(key))])
      .filter(([, item]) => item !== GONE),
  )
}

/**
 * A plan without what is wrong in it, field by field: whatever else stands beside a wrong field stays. Parts keep their places,
 * for faults name them by number: one that goes is null.
 * @param paths places of faults
 */
export const setBack = (raw: Readonly<Record<string, unknown>>, paths: readonly Path[]): Record<string, unknown> => {
  const gone = paths.map(goes)
  const parts = gone.filter((p) => p[0] === 'parts' && p.length > 1).map((p) => p.slice(1))
  const { parts: given, ...plan } = raw
  const left = without(
    plan,
    gone.filter((p) => p[0] !== 'parts'),
  ) as Record<string, unknown>
  if (!Array.isArray(given)) return left
  return {
    ...left,
    parts: given.map((part, i) => {
      const mine = parts.filter((p) => p[0] === i).map((p) => p.slice(1))
      const kept = without(part, mine)
      return kept === GONE || !fields.isThing(kept) ? null : kept
    }),
  }
}
