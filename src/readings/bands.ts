import { type Arrangement, FORMS, type Form } from '../arrangement/index.ts'
import { rowForStems } from './few-stems.ts'
import type { Band, ReadingId } from './types.ts'

const INGELS = 'Ingels, Ornamental Horticulture'
const ICAR = 'Indian Council of Agricultural Research, e-course Flower Arrangement'
const RUTT = 'Rutt, Home Furnishing, 2nd ed. 1948, pp. 353–355'
const OURS = 'ours: no published number was found'

/** Stands for "no upper end": far beyond anything that is measured. */
export const NO_END = 1e6

type Ends = [least: number, most: number]
type Row = [band: Ends, fall: number, source: string]

const rows = (reading: ReadingId, key: string, table: Partial<Record<Form, Row>>): Band[] =>
  Object.entries(table).map(([form, [band, fall, source]]) => ({
    reading,
    key,
    form: form as Form,
    band,
    fall,
    source,
  }))

/** The same band for every form. */
const every = (ends: Ends) => Object.fromEntries(FORMS.map((form) => [form, ends])) as Record<Form, Ends>

/** The same source and fall for every form; only the band differs. */
const ours = (reading: ReadingId, key: string, fall: number, table: Record<Form, Ends>, source = OURS): Band[] =>
  Object.entries(table).map(([form, band]) => ({ reading, key, form: form as Form, band, fall, source }))

/**
 * What is wanted of each form. One row per reading, value and form, each with its source. A value without a row for a
 * form is shown but not held against anything (a low design is exempt from the height rule).
 */
export const BANDS: readonly Band[] = [
  ...rows('proportion', 'heightRatio', {
    round: [
      [1, 2],
      0.75,
      `from memory: a round design is about half as high as it is wide; upper end 2 × from ${ICAR}`,
    ],
    airy: [[1.5, 3], 1, `${ICAR}: 1.5 × at least, 2–3 × where light and airy`],
    vertical: [[1.5, 3.5], 1, `${RUTT}: about 1.5 ×, up to 3.5 × for effect`],
    triangle: [[1.5, 2.5], 1, `${INGELS}: 1.5–2.5 × the vessel's height, or width where that is more`],
    crescent: [[1.5, 2.5], 1, `${INGELS}: 1.5–2.5 × the vessel's height, or width where that is more`],
    cascade: [[1, 2], 0.75, `upper end 2 × from ${ICAR}; lower end ours, since most of its length falls`],
  }),
  ...rows('proportion', 'spreadRatio', {
    round: [[1.5, 3], 1, 'ours: half as high as wide, held against the height band'],
    low: [[1.5, 4], 1.5, 'common practice: about twice as long as high; the numbers are ours'],
    airy: [[1.5, 3.5], 1, OURS],
    vertical: [[0.6, 1.6], 0.8, 'common practice: kept near the width of the vessel; the numbers are ours'],
    triangle: [
      [1.2, 2.8],
      1,
      `${INGELS}: each side about half of the upright, so about as wide as high; widened by us`,
    ],
    crescent: [[1.2, 3.5], 1, OURS],
    cascade: [[1, 3], 1, OURS],
  }),
  ...rows('proportion', 'vesselShare', {
    round: [
      [0.22, 0.5],
      0.25,
      'ours, around one third (Indiana Public Media, Focus on Flowers: container shapes); upper end follows from 1 ×',
    ],
    airy: [[0.18, 0.4], 0.2, `one third to two fifths follows from 1.5–2 × (${ICAR}); lower end ours, for low vessels`],
    vertical: [[0.18, 0.4], 0.2, `one third to two fifths follows from 1.5–2 × (${ICAR}); lower end ours`],
    triangle: [[0.18, 0.4], 0.2, `one third to two fifths follows from 1.5–2 × (${ICAR}); lower end ours`],
    crescent: [[0.18, 0.4], 0.2, `one third to two fifths follows from 1.5–2 × (${ICAR}); lower end ours`],
    cascade: [[0.25, 0.6], 0.25, 'ours: what falls needs a taller vessel'],
  }),
  ...rows('proportion', 'topOverTable_mm', {
    low: [
      [0, 356],
      150,
      'common practice: low pieces end under 12–14 in (Rowlee’s Buds and Balloons), 12–15 in (Yusaki Florist); how fast it falls is ours',
    ],
  }),
  ...ours(
    'negative-space',
    'voidFraction',
    0.2,
    {
      round: [0.05, 0.25],
      low: [0.1, 0.35],
      airy: [0.25, 0.6],
      vertical: [0.2, 0.55],
      triangle: [0.15, 0.45],
      crescent: [0.25, 0.6],
      cascade: [0.15, 0.5],
    },
    `${OURS}; that a closed mass wants fewer voids than a line design is in the Wilton Garden Club's notes and in Rutt`,
  ),
  ...ours('negative-space', 'holeShare', 0.15, {
    round: [0, 0.12],
    low: [0, 0.15],
    airy: [0, 0.2],
    vertical: [0, 0.2],
    triangle: [0, 0.16],
    crescent: [0, 0.25],
    cascade: [0, 0.2],
  }),
  ...ours(
    'negative-space',
    'mouthShowing',
    0.6,
    {
      round: [0, 0.1],
      low: [0, 0.1],
      airy: [0, 0.25],
      vertical: [0, 0.3],
      triangle: [0, 0.15],
      crescent: [0, 0.25],
      cascade: [0, 0.2],
    },
    "the number is ours; that foliage hides the mechanics is in the Texas State Florists' Association's notes",
  ),
  ...ours(
    'focal-prominence',
    'focalShare',
    0.15,
    {
      round: [0.15, 1],
      low: [0.15, 1],
      airy: [0.2, 1],
      vertical: [0.2, 1],
      triangle: [0.2, 1],
      crescent: [0.2, 1],
      cascade: [0.2, 1],
    },
    'ours; a tenth to a fifth of the face is taught, from memory, no published number was found',
  ),
  ...ours('focal-prominence', 'focalVisible', 0.35, {
    round: [0.6, 1],
    low: [0.6, 1],
    airy: [0.65, 1],
    vertical: [0.6, 1],
    triangle: [0.6, 1],
    crescent: [0.6, 1],
    cascade: [0.6, 1],
  }),
  ...ours(
    'focal-prominence',
    'focalRank',
    9,
    {
      round: [1, 2],
      low: [1, 2],
      airy: [1, 1],
      vertical: [1, 1],
      triangle: [1, 1],
      crescent: [1, 1],
      cascade: [1, 1],
    },
    `the number is ours; that one focal flower or area leads is in the ${ICAR}; a round design may do without`,
  ),
  ...ours(
    'focal-prominence',
    'focalLead',
    0.6,
    {
      round: [0.9, NO_END],
      low: [0.9, NO_END],
      airy: [1, NO_END],
      vertical: [1, NO_END],
      triangle: [1, NO_END],
      crescent: [1, NO_END],
      cascade: [1, NO_END],
    },
    `the number is ours; that the focal flower leads by size, colour and contrast is in the ${ICAR}`,
  ),
  ...ours('focal-prominence', 'vesselPull', 1.2, every([0, 0.6])),
  ...ours(
    'visual-balance',
    'offsetWorst',
    0.3,
    {
      round: [-0.12, 0.12],
      low: [-0.12, 0.12],
      airy: [-0.18, 0.18],
      vertical: [-0.15, 0.15],
      triangle: [-0.15, 0.15],
      crescent: [-0.4, 0.4],
      cascade: [-0.25, 0.25],
    },
    `the number is ours; that stems stand in pairs at the same distance left and right of the axis is in ${INGELS}; a crescent or cascade, an asymmetrical design, is let off more`,
  ),
  ...ours(
    'visual-balance',
    'topHeaviness',
    0.25,
    {
      round: [0.2, 0.55],
      low: [0.2, 0.6],
      airy: [0.2, 0.6],
      vertical: [0.25, 0.6],
      triangle: [0.15, 0.5],
      crescent: [0.15, 0.55],
      cascade: [0.1, 0.55],
    },
    `the number is ours; that large and dark flowers go low is in the ${ICAR}, and that mass over feathery stems looks top-heavy is common practice`,
  ),
  ...ours(
    'stability',
    'tippingAngle_deg',
    10,
    every([15, NO_END]),
    'ours: no standard for arrangements was found; candle holders and toys are tried on a slope of 10° (from memory)',
  ),
  ...ours(
    'stability',
    'spillAngle_deg',
    8,
    every([8, NO_END]),
    'ours: what is carried level by hand leans a few degrees',
  ),
  ...ours(
    'mechanics',
    'crowding',
    0.4,
    every([0, 0.7]),
    'ours: stems that cross need slack, between six and eight tenths of the tightest packing (common practice)',
  ),
  ...ours('mechanics', 'heldShare', 0.25, every([0.95, 1]), 'ours: one stem of twenty may be braced on its neighbours'),
  ...ours('mechanics', 'dryShare', 0.4, every([0, 0]), 'ours; that every end stands in water is common practice'),
  ...ours(
    'mechanics',
    'underWaterShare',
    0.4,
    every([0, 0]),
    'ours; that leaves are stripped below the waterline is common practice',
  ),
  ...ours('mechanics', 'throughTableShare', 0.25, every([0, 0]), 'ours: nothing can be set through a table'),
  ...ours(
    'sight-line',
    'blockedFraction',
    0.4,
    {
      round: [0, 0.08],
      low: [0, 0.04],
      airy: [0, 0.08],
      vertical: [0, 0.08],
      triangle: [0, 0.08],
      crescent: [0, 0.08],
      cascade: [0, 0.08],
    },
    `the number is ours; that guests see over or under a table piece is in ${INGELS} and in the Sope Creek Garden Club class notes`,
  ),
  ...ours(
    'sight-line',
    'blockedWorst',
    0.6,
    {
      round: [0, 0.2],
      low: [0, 0.1],
      airy: [0, 0.2],
      vertical: [0, 0.2],
      triangle: [0, 0.2],
      crescent: [0, 0.2],
      cascade: [0, 0.2],
    },
    'ours: a fifth of a face leaves eyes and mouth to be seen by who moves a little',
  ),
]

// By the name of the value, and for each form by that: so that no text is put together to look one up.
const byName = new Map<ReadingId, Map<string, Band>>()
const byForm = new Map<Form, Map<ReadingId, Map<string, Band>>>()
const put = (into: Map<ReadingId, Map<string, Band>>, b: Band): void => {
  const rows = into.get(b.reading) ?? new Map<string, Band>()
  into.set(b.reading, rows.set(b.key, b))
}
for (const b of BANDS) {
  const rows = byForm.get(b.form) ?? new Map<ReadingId, Map<string, Band>>()
  byForm.set(b.form, rows)
  put(rows, b)
  put(byName, b)
}

/** What bands depend on: the form, the person's own ones, and whether there are more than a few stems (few-stems.ts). */
export type Wanting = Pick<Arrangement, 'form' | 'bands'> & { stems?: readonly unknown[] }

/** The band of the table for one value and form, whatever the person wants; undefined where the form has no rule for it. */
export const tableBand = (reading: ReadingId, key: string, form: Form): Band | undefined =>
  byForm.get(form)?.get(reading)?.get(key)

/** The same for a design with its stems. */
export const tableBandFor = (reading: ReadingId, key: string, { form, stems }: Wanting): Band | undefined => {
  const row = tableBand(reading, key, form)
  return row && rowForStems(row, stems)
}

/**
 * The band of one value: the person's own if there is one, else that of the table for the form; undefined where there is
 * neither. One of their own falls off as the table's does (where the form has no row, as that of another form).
 */
export const bandOf = (reading: ReadingId, key: string, of: Wanting): Band | undefined => {
  const { form, bands } = of
  const row = tableBandFor(reading, key, of)
  const own = bands ? bands[`${reading}.${key}`] : undefined
  const like = row ?? byName.get(reading)?.get(key)
  if (!own || !like) return row
  const band: Ends = [own[0] ?? -NO_END, own[1] ?? NO_END]
  return { ...like, form, band, source: 'your own band', own: true }
}

/** Is a value under or over its band? */
export const isOutside = (value: number, [least, most]: readonly [number, number]): boolean =>
  value < least || value > most

/**
 * 1 within the band, falling smoothly to 0 at `fall` outside it: (1 − d²)², d the distance over `fall`. The shape is
 * ours: level at both ends, so that no small move makes a jump.
 */
export const bandScore = (value: number, [least, most]: readonly [number, number], fall: number): number => {
  const d = Math.max(0, least - value, value - most) / fall
  return d < 1 ? (1 - d * d) ** 2 : 0
}

/** What is left of a part that failed altogether, so that a change in the others can still be seen. Ours. */
const REST = 0.001

/**
 * Several parts of one reading together: their geometric mean, so that one that fails altogether is not made up for
 * (of five parts it leaves at most a quarter). 0 where all fail.
 */
export const together = (parts: readonly number[]): number =>
  parts.every((p) => p === 0) ? 0 : parts.reduce((p, x) => p * Math.max(x, REST), 1) ** (1 / parts.length)
