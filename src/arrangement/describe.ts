import type { Edit } from './edits.ts'
import { shorten } from './limits.ts'
import type { Arrangement, Stem } from './types.ts'

type Name = (plant: string) => string

/** `rose`, `3 stems`, or `nothing` when none of them is there. */
const who = (stems: readonly Pick<Stem, 'plant'>[], name: Name): string =>
  stems.length === 0 ? 'nothing' : stems.length === 1 ? name(stems[0]!.plant) : `${stems.length} stems`

const named = (document: Arrangement, ids: readonly string[]): Stem[] => {
  const set = new Set(ids)
  return document.stems.filter((s) => set.has(s.id))
}

const quoted = (text: string): string => `“${[...text].length > 30 ? `${shorten(text, 29)}…` : text}”`

const VESSEL_WORDS: Record<string, string> = { plan: 'shape', waterFill: 'water', profile: 'outline' }

const setWords = (edit: Extract<Edit, { do: 'set-stems' }>, stems: readonly Stem[], name: Name): string => {
  const { set } = edit
  const keys = Object.keys(set).filter((k) => k !== 'tip' && k !== 'mouth')
  if (keys.length === 0) return 'moved'
  if (keys.length > 1) return 'changed'
  if (set.plant !== undefined) return `exchanged for ${name(set.plant)}`
  if (set.role !== undefined) return `made ${set.role}`
  if (set.colour !== undefined) return 'recoloured'
  if (set.openness !== undefined) return set.openness < (stems[0]?.openness ?? 0) ? 'closed' : 'opened'
  if (set.bend !== undefined) return 'bent'
  if (set.piece !== undefined) return set.piece === 'lateral' ? 'cut from a stem' : 'made a whole stem'
  return 'resized'
}

/**
 * What an edit does to a document, in a few words for the undo button: `rose moved`, `3 stems taken out`.
 * @param document as it is before the edit
 * @param name gives a plant's common name
 */
export const describeEdit = (document: Arrangement, edit: Edit, name: Name): string => {
  const subject = 'ids' in edit ? who(named(document, edit.ids), name) : ''
  switch (edit.do) {
    case 'add-stems':
      return `${who(edit.stems, name)} added`
    case 'remove-stems':
      return `${subject} taken out`
    case 'shift-stems':
      return `${subject} moved`
    case 'set-stems':
      return `${subject} ${setWords(edit, named(document, edit.ids), name)}`
    case 'lengthen-stems':
      return `${subject} ${edit.factor < 1 ? 'shortened' : 'lengthened'}`
    case 'duplicate-stems':
      return `${subject} copied`
    case 'mirror-stems':
      return `${subject} mirrored`
    case 'turn-arrangement':
      return Number.isFinite(edit.degrees)
        ? `arrangement turned by ${Math.round(edit.degrees * 10) / 10}°`
        : 'nothing turned'
    case 'set-vessel': {
      const keys = Object.keys(edit.set)
      return keys.length === 1 ? `vessel’s ${VESSEL_WORDS[keys[0]!] ?? keys[0]} changed` : 'vessel changed'
    }
    case 'set-palette':
      return edit.palette.name ? `palette ${quoted(edit.palette.name)} put on` : 'palette put on'
    case 'set-slot':
      return edit.index < document.palette.slots.length
        ? `palette colour ${edit.index + 1} changed`
        : 'palette colour added'
    case 'set-title':
      return edit.title ? `title changed to ${quoted(edit.title)}` : 'title taken away'
    case 'set-form':
      return `form set to ${edit.form}`
    case 'set-setting': {
      const keys = Object.keys(edit.set)
      return keys.length === 1 ? `${keys[0]} changed` : 'setting changed'
    }
    case 'set-band':
      return edit.ends ? 'own band set' : 'band of the table taken back'
    case 'many':
      return edit.label
  }
}
