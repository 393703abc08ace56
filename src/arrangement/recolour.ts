import { same } from './same.ts'
import type { Arrangement, Palette, Role, Slot, Stem } from './types.ts'

/** Which part is nearest in what it does, nearest first. Ours: blooms stand in for blooms before greens do. */
const NEAREST: Record<Role, Role[]> = {
  focal: ['form', 'mass', 'line', 'filler', 'greens'],
  form: ['focal', 'mass', 'line', 'filler', 'greens'],
  mass: ['focal', 'form', 'filler', 'line', 'greens'],
  line: ['form', 'mass', 'filler', 'greens', 'focal'],
  filler: ['mass', 'line', 'greens', 'form', 'focal'],
  greens: ['filler', 'line', 'mass', 'form', 'focal'],
}

/**
 * Where each slot of the old palette goes in the new: the slot with the same number if it plays the same part; else the
 * first slot of that part that nothing follows yet; else the first of that part; else the same for the nearest part.
 * @returns one new index for each old slot, -1 for all when the new palette has no slots
 */
export const slotMap = (from: readonly Slot[], to: readonly Slot[]): number[] => {
  const map = from.map((slot, i) => (to[i]?.part === slot.part ? i : -1))
  const used = new Set(map)
  from.forEach(({ part }, i) => {
    if (map[i] !== -1) return
    for (const candidate of [part, ...NEAREST[part]]) {
      const free = to.findIndex((slot, n) => slot.part === candidate && !used.has(n))
      const found = free >= 0 ? free : to.findIndex((slot) => slot.part === candidate)
      if (found < 0) continue
      map[i] = found
      used.add(found)
      return
    }
  })
  return map
}

/** The old slot that a colour of a stem's own belongs to: of the same colour, before all of the stem's part. */
const slotOfOwn = (stem: Stem, slots: readonly Slot[]): number => {
  const own = String(stem.colour).toLowerCase()
  const is = (slot: Slot): boolean => slot.colour.toLowerCase() === own
  const best = slots.findIndex((slot) => is(slot) && slot.part === stem.role)
  return best >= 0 ? best : slots.findIndex(is)
}

/**
 * Puts a palette on a design. Stems that follow a slot go where `slotMap` says. A stem with a colour of its own that is
 * the colour of an old slot follows that slot too, so that the whole design is recoloured; any other colour of its own is
 * a choice and stays. In a palette without slots, stems keep the colour that they had as their own.
 */
export const putPalette = (document: Arrangement, palette: Palette): Arrangement => {
  const old = document.palette.slots
  if (same(document.palette, palette)) return document
  const map = slotMap(old, palette.slots)
  const stems = document.stems.map((stem): Stem => {
    const from = typeof stem.colour === 'string' ? slotOfOwn(stem, old) : stem.colour.slot
    if (from < 0) return stem
    const to = map[from] ?? -1
    if (to < 0) return typeof stem.colour === 'string' ? stem : { ...stem, colour: old[from]!.colour }
    if (typeof stem.colour === 'string') return { ...stem, colour: { slot: to } }
    return to === from ? stem : { ...stem, colour: { ...stem.colour, slot: to } }
  })
  return { ...document, palette, stems: stems.every((s, i) => s === document.stems[i]) ? document.stems : stems }
}
