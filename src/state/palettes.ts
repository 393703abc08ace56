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

const files = import.meta.glob<NamedPalette>('../../palettes/*.json', { eager: true, import: 'default' })

/** The palettes of the house, one file each, by name. */
export const PALETTES: readonly NamedPalette[] = Object.values(files).sort((a, b) => a.name.localeCompare(b.name))

/** What goes into a document. */
export const paletteOf = ({ name, slots }: NamedPalette): Palette => ({
  name,
  slots: slots.map(({ colour, part }) => ({ colour, part })),
})

export const dressed = (document: Arrangement, palette: NamedPalette): Arrangement =>
  applyEdit(document, { do: 'set-palette', palette: paletteOf(palette) })
