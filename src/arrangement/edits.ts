import type { Form, Palette, Point2, Point3, Role, Setting, Slot, Stem, StemColour, Vessel } from './types.ts'

/**
 * Every change of a document is one of these, as plain data: the page, the advice of a reading, a key and a test all
 * speak the same language. `applyEdit` (apply.ts) is the only thing that carries them out.
 */
export type Edit =
  /** A stem whose id is taken gets a new one. */
  | { do: 'add-stems'; stems: Stem[] }
  | { do: 'remove-stems'; ids: string[] }
  /** Moves heads (tips) by `by`; with `whole`, the crossings at the mouth move along in x and y. */
  | { do: 'shift-stems'; ids: string[]; by: Point3; whole?: boolean }
  /** Sets any of these fields on the stems named. */
  | {
      do: 'set-stems'
      ids: string[]
      set: Partial<{
        plant: string
        role: Role
        colour: StemColour
        openness: number
        mouth: Point2
        tip: Point3
        bend: number
        head: number | null
        piece: Stem['piece']
      }>
    }
  /** Lengthens or shortens what stands above the mouth by a factor, along each stem's own line. */
  | { do: 'lengthen-stems'; ids: string[]; factor: number }
  /** Copies the stems; `newIds[i]` names the copy of `ids[i]`; copies are shifted by `by`. */
  | { do: 'duplicate-stems'; ids: string[]; newIds: string[]; by: Point3 }
  /** Mirrors the stems in the plane x = 0 seen at turn `turn` (degrees). */
  | { do: 'mirror-stems'; ids: string[]; turn: number }
  /** Turns all stems about the vertical axis, degrees, anticlockwise seen from above. The vessel of a square or oval stays. */
  | { do: 'turn-arrangement'; degrees: number }
  | { do: 'set-vessel'; set: Partial<Omit<Vessel, 'profile'>> & { profile?: Vessel['profile'] | null } }
  /** Puts a palette on the design: stems that use slot i follow slot i, or the nearest slot of the same part (recolour.ts). */
  | { do: 'set-palette'; palette: Palette }
  /** An index one past the last adds a slot. */
  | { do: 'set-slot'; index: number; slot: Slot }
  | { do: 'set-title'; title: string }
  | { do: 'set-form'; form: Form }
  | { do: 'set-setting'; set: Partial<Omit<Setting, 'date'>> & { date?: string | null } }
  /** A band of the person's own for one measured value; null goes back to the table's. */
  | { do: 'set-band'; name: string; ends: [least: number | null, most: number | null] | null }
  | { do: 'many'; label: string; edits: Edit[] }
