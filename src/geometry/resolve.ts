import type { Arrangement, Palette, Stem, Vessel } from '../arrangement/index.ts'
import { findPlant, type Plant } from '../catalogue/index.ts'
import { facingAxis } from './facing.ts'
import { stemCurve } from './stem-curve.ts'
import type { Resolved, ResolvedStem } from './types.ts'

/** FNV-1a, 32 bit (Fowler, Noll, Vo; constants as published): the same id gives the same flower everywhere. */
export const seedOf = (id: string): number => {
  let h = 0x811c9dc5
  for (let i = 0; i < id.length; i++) {
    h ^= id.charCodeAt(i)
    h = Math.imul(h, 0x01000193)
  }
  return h >>> 0
}

/** Head diameter, mm: the stem's own, or between the catalogue's closed and open figure by openness. */
export const headOf = (stem: Stem, plant: Plant): number => {
  if (stem.head !== undefined) return stem.head
  const open = plant.headOpen_mm.value
  const closed = plant.headClosed_mm?.value ?? open
  return closed + (open - closed) * stem.openness
}

/** The stem's colour as #rrggbb. A slot that is not there falls back to the plant's first colour. */
export const colourOf = (stem: Stem, palette: Palette, plant: Plant): string => {
  if (typeof stem.colour === 'string') return stem.colour
  return palette.slots[stem.colour.slot]?.colour ?? plant.colours[0]?.hex ?? plant.leafColour
}

interface Known {
  vessel: Vessel
  palette: Palette
  resolved: ResolvedStem
}
const known = new WeakMap<Stem, Known>()

const resolveStem = (stem: Stem, index: number, vessel: Vessel, palette: Palette, plant: Plant): ResolvedStem => {
  const before = known.get(stem)
  const same = before && before.vessel === vessel && before.resolved.plant === plant ? before : undefined
  if (same && same.palette === palette && same.resolved.index === index) return same.resolved
  // A new palette or a new place in the list leaves the shape alone: the curve object is kept, and with it the solid.
  const curve = same?.resolved.curve ?? stemCurve(stem, vessel)
  const resolved: ResolvedStem = {
    id: stem.id,
    index,
    stem,
    plant,
    role: stem.role,
    colour: colourOf(stem, palette, plant),
    openness: stem.openness,
    head_mm: headOf(stem, plant),
    seed: seedOf(stem.id),
    curve,
    axis: same?.resolved.axis ?? facingAxis(plant.habit, curve),
  }
  known.set(stem, { vessel, palette, resolved })
  return resolved
}

/**
 * Looks everything up that drawing, readings and list need. Remembered by the identity of stem, vessel and palette
 * objects, so while one stem is dragged only that one is worked out. A stem whose plant is not known is left out (the
 * reader of documents refuses those at the door).
 */
export const resolveArrangement = (
  document: Arrangement,
  find: (id: string) => Plant | undefined = findPlant,
): Resolved => {
  const stems: ResolvedStem[] = []
  document.stems.forEach((stem, index) => {
    const plant = find(stem.plant)
    if (plant) stems.push(resolveStem(stem, index, document.vessel, document.palette, plant))
  })
  return { document, vessel: document.vessel, stems }
}
