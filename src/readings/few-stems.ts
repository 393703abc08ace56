import type { Band, Held } from './types.ts'

/** Up to so many stems are no full design: air, balance and spread are taught of three and more. Ours. */
const FEW = 2

export const isFew = (stems: readonly unknown[] | undefined): boolean =>
  stems !== undefined && stems.length > 0 && stems.length <= FEW

/** Row of the table for one or two stems, made from that of the form: never narrower. The numbers are ours where not said. */
const FEW_ROWS: Record<string, (row: Band) => Pick<Band, 'band' | 'fall' | 'source'>> = {
  'proportion.heightRatio': ({ band: [least, most], fall, source }) => ({
    band: [Math.min(1, least), most],
    fall,
    source: `one or two stems stand once as high over the rim as the vessel, or higher (common practice); else as a full design: ${source}`,
  }),
  'proportion.spreadRatio': ({ band: [, most], fall }) => ({
    band: [Number.NEGATIVE_INFINITY, Math.max(3, most)],
    fall: Math.max(1.5, fall),
    source: 'ours: one or two stems need not spread, and a bloom may be three times as wide as its vase',
  }),
  'proportion.vesselShare': ({ band: [least, most], fall }) => ({
    band: [least, Math.max(0.5, most)],
    fall,
    source: 'follows from 1 × for one or two stems; lower end ours',
  }),
}

/** The row that holds for so many stems. */
export const rowForStems = (row: Band, stems: readonly unknown[] | undefined): Band => {
  const few = isFew(stems) ? FEW_ROWS[`${row.reading}.${row.key}`] : undefined
  return few ? { ...row, ...few(row) } : row
}

/** A value whose band is written for a full design: of one or two stems it is only shown, but for a band of the person's own. */
export const ofFullDesign = (
  of: { held: Held; part: number | null },
  stems: readonly unknown[],
): { held: Held; part: number | null } =>
  isFew(stems) && !of.held.wants?.own
    ? {
        held: { ...of.held, band: null, source: 'only shown: its bands are written for three stems and more' },
        part: null,
      }
    : of
