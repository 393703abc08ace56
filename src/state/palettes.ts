import type { Arrangement, Palette, Role } from '../arrangement/index.ts'
import { applyEdit } from '../arrangement/index.ts'

export interface NamedSlot {
  colour: string
  part: Role
  /** The colour in words. */
  name?: string
}

/** A palette as it stands in `palettes/` or in the person's own drawer. */
export interface NamedPalette {
  name: string
  /** Where its idea comes from. */
  about: string
  slots: NamedSlot[]
  own?: boolean
}

/** What goes into a document. */
export const paletteOf = ({ name, slots }: NamedPalette): Palette => ({
  name,
  slots: slots.map(({ colour, part }) => ({ colour, part })),
})

export const dressed = (document: Arrangement, palette: NamedPalette): Arrangement =>
  applyEdit(document, { do: 'set-palette', palette: paletteOf(palette) })
