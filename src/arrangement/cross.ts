import { completeVessel, DEFAULTS } from './defaults.ts'
import { isThing } from './fields.ts'
import { LIMITS, leastInside, wallFits } from './limits.ts'
import type { Vessel } from './types.ts'
import { type Fault, type Path, wanted } from './words.ts'

/**
 * What the schema cannot see because it depends on two places at once. Each check looks only at places that are right in
 * themselves: `wrong` says whether the schema found something at or under a path.
 */
export const crossFaults = (raw: Record<string, unknown>, wrong: (...path: Path) => boolean): Fault[] => [
  ...vesselFaults(raw.vessel, wrong),
  ...stemFaults(raw, wrong),
]

const vesselFaults = (vessel: unknown, wrong: (...path: Path) => boolean): Fault[] => {
  if (!isThing(vessel) || ['width', 'depth', 'height', 'plan', 'profile', 'wall'].some((k) => wrong('vessel', k)))
    return []
  const given = vessel as Partial<Vessel> & Pick<Vessel, 'width' | 'height'>
  const full = completeVessel(given)
  const faults: Fault[] = []
  if (given.plan !== undefined && given.plan !== 'round' && given.depth === undefined)
    faults.push({
      path: ['vessel', 'depth'],
      message: wanted(`a number in mm (only a round vessel may leave it out)`, undefined),
    })
  if (full.plan === 'round' && full.depth !== full.width)
    faults.push({
      path: ['vessel', 'depth'],
      message: wanted(`the width, ${full.width} mm, since the vessel is round`, full.depth),
    })
  if (!wallFits(full)) {
    const most = Math.max(0, Math.round(leastInside(full) * 50) / 100)
    faults.push({
      path: ['vessel', 'wall'],
      message: wanted(`a wall in mm under half of the least inner size (under ${most})`, given.wall),
    })
  }
  return faults
}

const stemFaults = (raw: Record<string, unknown>, wrong: (...path: Path) => boolean): Fault[] => {
  const stems = raw.stems
  if (!Array.isArray(stems)) return []
  const slots = isThing(raw.palette) && Array.isArray(raw.palette.slots) ? raw.palette.slots : []
  const count = Math.min(slots.length, LIMITS.slots)
  const faults: Fault[] = []
  const seen = new Map<string, number>()
  stems.slice(0, LIMITS.stems).forEach((stem: unknown, i) => {
    if (!isThing(stem) || ['id', 'plant', 'mouth', 'tip'].some((k) => wrong('stems', i, k))) return
    const id = stem.id as string
    const first = seen.get(id)
    if (first === undefined) seen.set(id, i)
    else
      faults.push({
        path: ['stems', i, 'id'],
        message: wanted(`an id of its own (stems[${first}] has it already)`, id),
      })
    const slot = isThing(stem.colour) && !wrong('stems', i, 'colour') ? (stem.colour.slot as number) : -1
    if (slot >= count) {
      const words = count > 0 ? `a slot of the palette, from 0 to ${count - 1}` : 'a palette that has slots'
      faults.push({ path: ['stems', i, 'colour', 'slot'], message: wanted(words, slot) })
    }
  })
  return faults
}

export const REQUIRED_OF_STEM: readonly string[] = ['id', 'plant', 'mouth', 'tip']
/** What a slot that cannot be read becomes; it keeps its place, since stems name it by its number. */
export const GREY_SLOT = DEFAULTS.slot
