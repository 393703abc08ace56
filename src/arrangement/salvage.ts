import { GREY_SLOT, REQUIRED_OF_STEM } from './cross.ts'
import { isThing } from './fields.ts'
import { LIMITS } from './limits.ts'
import type { Problem } from './types.ts'
import type { Fault, Path } from './words.ts'

/**
 * What has to go so that a fault is gone: the shortest part of its path that can be left out.
 * - 'all': nothing can be saved (the file itself, its vessel or a size of it);
 * - a stem, where something is wrong that every stem must have;
 * - else the optional key itself, which gets its default.
 */
const whatGoes = ({ path }: Fault, depthIsFree: boolean): Path | 'all' => {
  const [top, second, third] = path
  if (top === undefined || top === 'format' || top === 'version') return 'all'
  if (top === 'vessel') {
    const needed =
      second === undefined || second === 'width' || second === 'height' || (second === 'depth' && !depthIsFree)
    return needed ? 'all' : [top, second]
  }
  if (top === 'stems' && typeof second === 'number')
    return third === undefined || REQUIRED_OF_STEM.includes(third as string) ? [top, second] : path.slice(0, 3)
  if (top === 'palette' && second === 'slots' && third !== undefined) return path.slice(0, 4)
  return path.slice(0, top === 'palette' || top === 'setting' || top === 'bands' ? 2 : 1)
}

const without = (thing: Record<string, unknown>, key: string): Record<string, unknown> =>
  Object.fromEntries(Object.entries(thing).filter(([k]) => k !== key))

/** The data without what stands at a path; a slot of the palette is not taken out but made grey. */
const takeOut = (raw: unknown, path: Path, whole: Path = path): unknown => {
  const [key, ...rest] = path
  if (key === undefined) return whole[0] === 'palette' && whole.length === 3 ? { ...GREY_SLOT } : undefined
  if (Array.isArray(raw)) return raw.map((item, i) => (i === key ? takeOut(item, rest, whole) : item))
  if (!isThing(raw)) return raw
  if (rest.length > 0) return { ...raw, [key]: takeOut(raw[key], rest, whole) }
  if (whole[1] === 'slots' && key === 'colour') return { ...raw, colour: GREY_SLOT.colour }
  if (whole.length === 1 && Array.isArray(raw[key]) && raw[key].length > LIMITS.stems)
    return { ...raw, [key]: raw[key].slice(0, LIMITS.stems) }
  return without(raw, key as string)
}

/**
 * The data with everything that is wrong left out, or null if nothing can be saved of it.
 * @param raw data whose stems are a list or something wrong
 */
export const leaveOut = (raw: Record<string, unknown>, faults: readonly Fault[]): Record<string, unknown> | null => {
  const vessel = raw.vessel
  const depthIsFree = isThing(vessel) && (vessel.plan === undefined || vessel.plan === 'round')
  const going = new Map<string, Path>()
  for (const fault of faults) {
    const path = whatGoes(fault, depthIsFree)
    if (path === 'all') return null
    going.set(JSON.stringify(path), path)
  }
  const perStem = new Map<number, Path[]>()
  let rest: unknown = raw
  for (const path of going.values()) {
    if (path[0] === 'stems' && typeof path[1] === 'number')
      perStem.set(path[1], [...(perStem.get(path[1]) ?? []), path.slice(2)])
    else rest = takeOut(rest, path)
  }
  const kept = rest as Record<string, unknown>
  if (perStem.size === 0 || !Array.isArray(kept.stems)) return kept
  const stems = kept.stems.flatMap((stem: unknown, i) => {
    const bad = perStem.get(i) ?? []
    if (bad.some((path) => path.length === 0)) return []
    return [bad.reduce<unknown>((now, [key]) => without(now as Record<string, unknown>, key as string), stem)]
  })
  return { ...kept, stems }
}

/** What opening the rest would do about a problem, in a few words for the list that the person agrees to. */
export const consequence = ({ path }: Problem): string => {
  const stem = /^stems\[\d+\](?:\.(\w+))?/.exec(path)
  if (stem)
    return stem[1] === undefined || REQUIRED_OF_STEM.includes(stem[1])
      ? 'this stem is left out'
      : 'gets the usual value'
  if (path.startsWith('palette.slots[')) return 'becomes a plain grey of no part'
  if (path === 'stems') return 'stems are left out'
  return path === '' ? '' : 'gets the usual value'
}
