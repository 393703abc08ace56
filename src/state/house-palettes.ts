import type { NamedPalette } from './palettes.ts'

const files = import.meta.glob<NamedPalette>('../../palettes/*.json', { eager: true, import: 'default' })

/** The palettes of the house, one file each, by name. */
export const HOUSE_PALETTES: readonly NamedPalette[] = Object.values(files).sort((a, b) => a.name.localeCompare(b.name))
