import { UNKNOWN_COLOUR } from './defaults.ts'
import { COLOUR, LIMITS, shorten } from './limits.ts'
import type { Palette, Point2, Point3, ProfilePoint, Slot, Stem, StemColour, TableShape } from './types.ts'
import { ROLES } from './types.ts'

/**
 * Values of an edit pulled to the limits at the door. What can't be pulled (a number that is none, a word that is not
 * listed) comes back as `before`, so that the edit leaves that field alone.
 */

const range = (x: number, least: number, most: number, before: number): number =>
  typeof x !== 'number' || Number.isNaN(x) ? before : Math.min(most, Math.max(least, x)) + 0

export const toMm = (x: number, before: number): number => range(x, -LIMITS.mm, LIMITS.mm, before)
export const toFraction = (x: number, before: number): number => range(x, 0, 1, before)
export const toBend = (x: number, before: number): number => range(x, -1, 1, before)
export const toCopies = (x: number, before: number): number => Math.round(range(x, 1, LIMITS.copies, before))
export const toSize = (x: number, before: number): number =>
  typeof x !== 'number' || Number.isNaN(x) ? before : x > 0 ? Math.min(x, LIMITS.mm) : LIMITS.size_mm
export const toColour = (x: string, before: string): string => (typeof x === 'string' && COLOUR.test(x) ? x : before)
export const toText = (x: string, before: string): string => (typeof x === 'string' ? shorten(x, LIMITS.text) : before)
export const toWord = <T extends string>(x: T, all: readonly T[], before: T): T => (all.includes(x) ? x : before)

export const toPoint2 = (p: Point2, before: Point2): Point2 =>
  Array.isArray(p) ? [toMm(p[0], before[0]), toMm(p[1], before[1])] : before
export const toPoint3 = (p: Point3, before: Point3): Point3 =>
  Array.isArray(p) ? [toMm(p[0], before[0]), toMm(p[1], before[1]), toMm(p[2], before[2])] : before

/** A profile whose heights rise inside 0 … 1, half-widths pulled to the limits; else null. */
export const toProfile = (profile: readonly ProfilePoint[]): ProfilePoint[] | null => {
  if (!Array.isArray(profile) || profile.length < 2 || profile.length > LIMITS.profilePoints) return null
  const rising = profile.every(([h], i) => h >= 0 && h <= 1 && (i === 0 || h > profile[i - 1]![0]))
  const wide = profile.every(([, w]) => w > 0)
  return rising && wide ? profile.map(([h, w]) => [h + 0, Math.min(w, LIMITS.halfWidth)]) : null
}

export const toSlot = (slot: Slot): Slot => ({
  ...slot,
  colour: toColour(slot.colour, UNKNOWN_COLOUR),
  part: toWord(slot.part, ROLES, 'mass'),
})
export const toPalette = (palette: Palette): Palette => ({
  ...palette,
  name: toText(palette.name, ''),
  slots: palette.slots.slice(0, LIMITS.slots).map(toSlot),
})

export const toTable = (table: TableShape, before: TableShape): TableShape => {
  if (table?.shape === 'round') return { ...table, diameter: toSize(table.diameter, LIMITS.size_mm) }
  if (table?.shape !== 'rectangular') return before
  return { ...table, length: toSize(table.length, LIMITS.size_mm), width: toSize(table.width, LIMITS.size_mm) }
}

export const toStemColour = (colour: StemColour, slots: number, before: StemColour): StemColour => {
  if (typeof colour === 'string') return toColour(colour, typeof before === 'string' ? before : '') || before
  const slot = colour?.slot
  return Number.isInteger(slot) && slot >= 0 && slot < slots ? { ...colour, slot: slot + 0 } : before
}

type StemFields = { [K in keyof Omit<Stem, 'id' | 'head'>]?: Stem[K] } & { head?: number | null }

/** A stem with some fields set, each pulled to the limits; `head: null` goes back to the catalogue's. */
export const withFields = (stem: Stem, set: StemFields, slots: number): Stem => {
  const next: Stem = { ...stem }
  if (set.plant !== undefined && typeof set.plant === 'string' && set.plant) next.plant = toText(set.plant, stem.plant)
  if (set.role !== undefined) next.role = toWord(set.role, ROLES, stem.role)
  if (set.colour !== undefined) next.colour = toStemColour(set.colour, slots, stem.colour)
  if (set.openness !== undefined) next.openness = toFraction(set.openness, stem.openness)
  if (set.mouth !== undefined) next.mouth = toPoint2(set.mouth, stem.mouth)
  if (set.tip !== undefined) next.tip = toPoint3(set.tip, stem.tip)
  if (set.bend !== undefined) next.bend = toBend(set.bend, stem.bend)
  if (set.piece !== undefined) next.piece = toWord(set.piece, ['whole', 'lateral'], stem.piece)
  if (set.head === null) delete next.head
  else if (set.head !== undefined) {
    const head = toSize(set.head, stem.head ?? Number.NaN)
    if (!Number.isNaN(head)) next.head = head
  }
  return next
}
