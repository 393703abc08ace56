import type { ReadingId } from './types.ts'

/** Plain names of our own. */
export const READING_NAMES: Record<ReadingId, string> = {
  'focal-prominence': 'What leads the eye',
  'negative-space': 'Air and holes',
  'palette-harmony': 'Colours together',
  proportion: 'Height to the vessel',
  'visual-balance': 'Balance of weight',
  stability: 'Tilt before it tips',
  mechanics: 'Hold of the stems',
  'sight-line': 'View across the table',
}
