import type { Edit } from '../arrangement/index.ts'

/** What another vessel counts as, in stems: it has to be bought. Ours. */
const VESSEL = 12
/** Points that one stem to be touched must be worth, and most that a whole design is held against. Ours. */
const PER_STEM = 0.4
const MOST = 8

const gather = (edit: Edit, ids: Set<string>): number => {
  switch (edit.do) {
    case 'many':
      return edit.edits.reduce((sum, e) => sum + gather(e, ids), 0)
    case 'add-stems':
      return edit.stems.length
    case 'set-vessel':
      return 'height' in edit.set || 'width' in edit.set ? VESSEL : 1
    default:
      if ('ids' in edit) for (const id of edit.ids) ids.add(id)
      return edit.do === 'duplicate-stems' ? edit.ids.length : 0
  }
}

/** How many stems an edit touches or adds, each once; another vessel counts as a dozen. */
export const touchedBy = (edit: Edit): number => {
  const ids = new Set<string>()
  return gather(edit, ids) + ids.size
}

/** What a gain is worth by the work that it takes: of two that help about as much, the one of fewer stems. Points. */
export const worthOf = (gain: number, edit: Edit): number => gain - Math.min(MOST, PER_STEM * touchedBy(edit))

/** Does the edit take stems out? */
export const takesOut = (edit: Edit): boolean =>
  edit.do === 'remove-stems' || (edit.do === 'many' && edit.edits.some(takesOut))

/** What an edit does to which stem, as `lengthen-stems s1`. */
export const handledBy = (edit: Edit): string[] => {
  if (edit.do === 'many') return edit.edits.flatMap(handledBy)
  return 'ids' in edit ? edit.ids.map((id) => `${edit.do} ${id}`) : []
}
