import { cite } from './sources.ts'
import type { Caution, MechanicsRow, TableRow } from './types.ts'

const inches = (n: number): number => Math.round(n * 25.4)
const round = (size: number, seats: string): TableRow => ({
  id: `round-${size}`,
  name: `Round, ${size} in`,
  table: { shape: 'round', diameter: inches(size) },
  seats,
  source: 'common practice of those who hire tables out',
})
const long = (id: string, name: string, length: number, width: number, seats: string): TableRow => ({
  id,
  name,
  table: { shape: 'rectangular', length: inches(length), width: inches(width) },
  seats,
  source: 'common practice of those who hire tables out',
})

/** Tables as they are hired, mm. Table height 762 mm (30 in). */
export const TABLES: readonly TableRow[] = [
  round(24, '2'),
  round(30, '2, or 3 close together'),
  round(48, '4–6; some say 6–8'),
  round(54, '6'),
  round(60, '8, or 10 close together'),
  round(72, '10, or 12 close together'),
  long('long-6ft', 'Long, 6 ft × 30 in', 72, 30, '6–8'),
  long('long-8ft', 'Long, 8 ft × 30 in', 96, 30, '8, or 10 with the ends'),
  long('long-8ft-wide', 'Long, 8 ft × 36 in', 96, 36, '8–10'),
]

const caution = (about: Caution['about'], text: string, refs: string): Caution => ({ about, text, ...cite(refs) })

/** What holds the stems. */
export const MECHANICS_ROWS: readonly MechanicsRow[] = [
  {
    id: 'netting',
    name: 'Netting',
    about: 'A loose ball of wire netting: quick, holds stems at any lean and travels well; not for clear glass.',
    cautions: [caution('sharp', 'Cut ends of netting are sharp: turn them in.', 'M')],
  },
  {
    id: 'foam',
    name: 'Foam',
    about:
      'Holds stems at any lean, half its depth at least; it stands some 50 mm above the rim for side stems. Never used twice.',
    cautions: [
      caution('dust', 'Cut it wet, float it and do not push it under; its dust irritates lungs and eyes.', 'SDS+M'),
      caution('lifting', 'A soaked brick weighs about 2 kg.', 'M'),
    ],
  },
  {
    id: 'pin-holder',
    name: 'Pin holder',
    about:
      'Pins on a heavy base in a shallow dish: few stems, upright or at a firm lean; its weight steadies the dish.',
    cautions: [caution('sharp', 'Needle points: keep the cap on until it is in the dish.', 'M')],
  },
  {
    id: 'tape-grid',
    name: 'Tape grid',
    about: 'Clear tape across the mouth, one stem a cell: hardly seen, good for clear glass, slow to make.',
    cautions: [],
  },
  {
    id: 'none',
    name: 'Nothing',
    about: 'The neck and the other stems do the holding.',
    cautions: [],
  },
]
