import {
  toColour,
  toCopies,
  toFraction,
  toPalette,
  toPoint2,
  toPoint3,
  toProfile,
  toSize,
  toSlot,
  toTable,
  toText,
  toWord,
  withFields,
} from './clamp.ts'
import { DEFAULTS, UNKNOWN_COLOUR } from './defaults.ts'
import type { Edit } from './edits.ts'
import { newStemIds } from './ids.ts'
import { fitWall, isBand, isDate, LIMITS } from './limits.ts'
import { putPalette } from './recolour.ts'
import { same } from './same.ts'
import { cosSin, mirrored, turned } from './turning.ts'
import type { Arrangement, OwnBands, Point3, Setting, Stem, Vessel } from './types.ts'
import { FORMS, LIGHTS, MATERIALS, MECHANICS, VESSEL_PLANS } from './types.ts'

/** The document with other stems; stems that come out equal keep their identity, and so does a list of such stems. */
const withStems = (document: Arrangement, stems: readonly Stem[]): Arrangement => {
  const kept = stems.map((stem, i) => (same(document.stems[i], stem) ? document.stems[i]! : stem))
  const all = kept.length === document.stems.length && kept.every((stem, i) => stem === document.stems[i])
  return all ? document : { ...document, stems: kept }
}

const eachOf = (document: Arrangement, ids: readonly string[], change: (stem: Stem) => Stem): Arrangement => {
  const named = new Set(ids)
  return withStems(
    document,
    document.stems.map((stem) => (named.has(stem.id) ? change(stem) : stem)),
  )
}

const moved = (stem: Stem, [dx, dy, dz]: Point3, whole: boolean): Stem => {
  const [x, y, z] = stem.tip
  const [mx, my] = stem.mouth
  const tip = toPoint3([x + dx, y + dy, z + dz], stem.tip)
  return whole ? { ...stem, tip, mouth: toPoint2([mx + dx, my + dy], stem.mouth) } : { ...stem, tip }
}

/** The tip goes out or in along the line from the mouth, as far as the limits let it. */
const lengthened = (stem: Stem, factor: number): Stem => {
  if (!(factor > 0)) return stem
  const [x, y] = stem.mouth
  const from: Point3 = [x, y, 0]
  const most = stem.tip.map((t, i) => {
    const step = t - from[i]!
    return step === 0 ? Number.POSITIVE_INFINITY : (Math.sign(step) * LIMITS.mm - from[i]!) / step
  })
  const k = Math.min(factor, ...most)
  return { ...stem, tip: toPoint3(stem.tip.map((t, i) => from[i]! + (t - from[i]!) * k) as Point3, stem.tip) }
}

const GROUND: Omit<Stem, 'id' | 'plant'> = { ...DEFAULTS.stem, colour: UNKNOWN_COLOUR, mouth: [0, 0], tip: [0, 0, 100] }

/** Adds stems at the end, as many as the limit lets in; an id that is empty, too long or taken is replaced by a new one. */
const added = (document: Arrangement, stems: readonly Stem[]): Arrangement => {
  const room = stems
    .filter((s) => typeof s.plant === 'string' && s.plant !== '')
    .slice(0, LIMITS.stems - document.stems.length)
  const ids = newStemIds({ stems: [...document.stems, ...room] }, room.length)
  const taken = new Set(document.stems.map((s) => s.id))
  const news = room.map((stem) => {
    const good = typeof stem.id === 'string' && stem.id !== '' && toText(stem.id, '') === stem.id && !taken.has(stem.id)
    const id = good ? stem.id : ids.shift()!
    taken.add(id)
    const { head, ...rest } = stem
    return withFields(
      { ...rest, ...GROUND, id, plant: stem.plant },
      { ...rest, ...(head === undefined ? {} : { head }) },
      document.palette.slots.length,
    )
  })
  return withStems(document, [...document.stems, ...news])
}

const duplicated = (
  document: Arrangement,
  ids: readonly string[],
  newIds: readonly string[],
  by: Point3,
): Arrangement => {
  const byId = new Map(document.stems.map((s) => [s.id, s]))
  const copies = ids.flatMap((id, i) => {
    const stem = byId.get(id)
    return stem ? [{ ...moved(stem, by, true), id: newIds[i] ?? '' }] : []
  })
  return added(document, copies)
}

/** A round vessel stays as deep as it is wide; a wall that would be too thick is made as thick as fits. */
const withVessel = (document: Arrangement, set: Extract<Edit, { do: 'set-vessel' }>['set']): Arrangement => {
  const old = document.vessel
  const { profile, plan, width, depth, height, wall, material, colour, mechanics, waterFill, ...unknown } = set
  const next: Vessel = { ...old, ...unknown }
  if (plan !== undefined) next.plan = toWord(plan, VESSEL_PLANS, old.plan)
  if (width !== undefined) next.width = toSize(width, old.width)
  if (depth !== undefined) next.depth = toSize(depth, old.depth)
  if (next.plan === 'round') {
    if (width === undefined && plan === undefined) next.width = next.depth
    next.depth = next.width
  }
  if (height !== undefined) next.height = toSize(height, old.height)
  if (wall !== undefined) next.wall = toSize(wall, old.wall)
  if (material !== undefined) next.material = toWord(material, MATERIALS, old.material)
  if (colour !== undefined) next.colour = toColour(colour, old.colour)
  if (mechanics !== undefined) next.mechanics = toWord(mechanics, MECHANICS, old.mechanics)
  if (waterFill !== undefined) next.waterFill = toFraction(waterFill, old.waterFill)
  if (profile === null) delete next.profile
  else if (profile !== undefined) {
    const good = toProfile(profile)
    if (good) next.profile = good
  }
  const fitting = fitWall(next)
  if (fitting === null) return document
  next.wall = fitting
  return same(next, old) ? document : { ...document, vessel: next }
}

const withSetting = (document: Arrangement, set: Extract<Edit, { do: 'set-setting' }>['set']): Arrangement => {
  const old = document.setting
  const { copies, date, light, linen, table, ...unknown } = set
  const next: Setting = { ...old, ...unknown }
  if (copies !== undefined) next.copies = toCopies(copies, old.copies)
  if (light !== undefined) next.light = toWord(light, LIGHTS, old.light)
  if (linen !== undefined) next.linen = toColour(linen, old.linen)
  if (table !== undefined) next.table = toTable(table, old.table)
  if (date === null) delete next.date
  else if (date !== undefined && isDate(date)) next.date = date
  return same(next, old) ? document : { ...document, setting: next }
}

const withBand = (document: Arrangement, name: string, ends: OwnBands[string] | null): Arrangement => {
  const { bands = {}, ...rest } = document
  const { [name]: old, ...others } = bands
  if (ends === null) {
    if (!old) return document
    return Object.keys(others).length > 0 ? { ...document, bands: others } : (rest as Arrangement)
  }
  if (!isBand(ends) || same(old, ends)) return document
  return { ...document, bands: { ...bands, [name]: [ends[0], ends[1]] } }
}

/**
 * Carries out an edit and gives the new document; the old one stays as it was. What did not change keeps its identity
 * (stems, vessel, palette), and an edit that changes nothing gives the same document back. Values out of range are pulled
 * to the limits at the door, ids that are not there are passed over, stems beyond the limit are not added: an edit never
 * makes a document that can't be read. Plant ids are taken as they come, since this room does not know the catalogue.
 */
export const applyEdit = (document: Arrangement, edit: Edit): Arrangement => {
  switch (edit.do) {
    case 'add-stems':
      return added(document, edit.stems)
    case 'remove-stems': {
      const gone = new Set(edit.ids)
      const stems = document.stems.filter((s) => !gone.has(s.id))
      return stems.length === document.stems.length ? document : { ...document, stems }
    }
    case 'shift-stems':
      return eachOf(document, edit.ids, (stem) => moved(stem, edit.by, edit.whole ?? false))
    case 'set-stems':
      return eachOf(document, edit.ids, (stem) => withFields(stem, edit.set, document.palette.slots.length))
    case 'lengthen-stems':
      return eachOf(document, edit.ids, (stem) => lengthened(stem, edit.factor))
    case 'duplicate-stems':
      return duplicated(document, edit.ids, edit.newIds, edit.by)
    case 'mirror-stems': {
      if (!Number.isFinite(edit.turn)) return document
      const at = cosSin(edit.turn)
      return eachOf(document, edit.ids, (stem) => ({
        ...placed(stem, mirrored(stem.mouth, at), mirrored(stem.tip, at)),
        bend: -stem.bend + 0,
      }))
    }
    case 'turn-arrangement': {
      if (!Number.isFinite(edit.degrees)) return document
      const by = cosSin(edit.degrees)
      return withStems(
        document,
        document.stems.map((stem) => placed(stem, turned(stem.mouth, by), turned(stem.tip, by))),
      )
    }
    case 'set-vessel':
      return withVessel(document, edit.set)
    case 'set-palette':
      return putPalette(document, toPalette(edit.palette))
    case 'set-slot': {
      const { slots } = document.palette
      if (!Number.isInteger(edit.index) || edit.index < 0 || edit.index > slots.length || edit.index >= LIMITS.slots)
        return document
      const slot = toSlot(edit.slot)
      if (same(slots[edit.index], slot)) return document
      const next = edit.index === slots.length ? [...slots, slot] : slots.with(edit.index, slot)
      return { ...document, palette: { ...document.palette, slots: next } }
    }
    case 'set-title': {
      const title = toText(edit.title, document.title)
      return title === document.title ? document : { ...document, title }
    }
    case 'set-form': {
      const form = toWord(edit.form, FORMS, document.form)
      return form === document.form ? document : { ...document, form }
    }
    case 'set-setting':
      return withSetting(document, edit.set)
    case 'set-band':
      return withBand(document, edit.name, edit.ends)
    case 'many': {
      const after = edit.edits.reduce(applyEdit, document)
      return withOldIdentities(document, after)
    }
  }
}

/** What came out equal after several edits is the same object as before them. */
const withOldIdentities = (before: Arrangement, after: Arrangement): Arrangement => {
  if (after === before || same(after, before)) return before
  const old = new Map(before.stems.map((s) => [s.id, s]))
  const kept = <K extends 'vessel' | 'palette' | 'setting' | 'stems'>(key: K): Arrangement[K] =>
    same(before[key], after[key]) ? before[key] : after[key]
  const stems = kept('stems').map((stem) => {
    const was = old.get(stem.id)
    return was && same(was, stem) ? was : stem
  })
  const sameStems = kept('stems') === before.stems
  return {
    ...after,
    vessel: kept('vessel'),
    palette: kept('palette'),
    setting: kept('setting'),
    stems: sameStems ? before.stems : stems,
  }
}

const placed = (stem: Stem, mouth: Stem['mouth'], tip: Stem['tip']): Stem => ({
  ...stem,
  mouth: toPoint2(mouth, stem.mouth),
  tip: toPoint3(tip, stem.tip),
})
