import type { Held, ReadingId, ReadingResult } from '../../readings/index.ts'
import { formatLength, type Units } from '../../units/index.ts'
import { digitsFor, formatNumber } from '../parts/format.ts'
import { placeInBand, type Range } from '../parts/gauge-scale.ts'

/** Plain names of our own. */
export const NAMES: Record<ReadingId, string> = {
  'focal-prominence': 'What leads the eye',
  'negative-space': 'Air and holes',
  'palette-harmony': 'Colours together',
  proportion: 'Height to the vessel',
}

/** Harmony has no good end: its scale runs from quiet to vivid, and nothing is wanted of it. */
export const isScale = (id: ReadingId): boolean => id === 'palette-harmony'

/** A share without a unit is said in hundredths. */
const isShare = ({ unit, scale }: Held): boolean => unit === '' && scale[0] >= 0 && scale[1] <= 1

/** Number and unit apart: `34` and `%`, `51` and `mm`. */
export const figureOf = (held: Held, value: number, units: Units = 'mm'): { figure: string; unit: string } => {
  if (isShare(held)) return { figure: formatNumber(value * 100), unit: '%' }
  if (held.unit === 'mm') return { figure: formatLength(value, units), unit: '' }
  return {
    figure: formatNumber(value, Math.max(digitsFor(held.scale), held.unit === '×' ? 2 : 0), true),
    unit: held.unit,
  }
}

/** Which third of the scale from vivid (0) to quiet (100): thirds are ours. */
export const quietness = (score: number): string => (score > 200 / 3 ? 'quiet' : score < 100 / 3 ? 'vivid' : 'middling')

/** The word beside the value: inside, under or over what is wanted; '' where nothing is. */
export const wordOf = (held: Held): string => placeInBand(held.value, held.band)

/** What the gauge of a row shows: the value on its scale; for the harmony its place from quiet, left, to vivid. */
export const gaugeOf = (
  reading: ReadingResult | undefined,
): { value: number | null; scale: Range; band: Range | null } => {
  const held = reading?.because?.main
  if (!reading || !held || reading.score === null) return { value: null, scale: [0, 1], band: null }
  if (isScale(reading.id)) return { value: reading.score, scale: [100, 0], band: null }
  return { value: held.value, scale: held.scale, band: held.band }
}

/** Text and its source as sentences: `… for an airy design. Ours: no published number was found.` */
export const sentence = (text: string): string => {
  const plain = text.trim()
  return `${plain[0]?.toUpperCase() ?? ''}${plain.slice(1)}${/[.!?]$/.test(plain) ? '' : '.'}`
}

/** `34 %, under` */
export const heldWords = (held: Held, units: Units = 'mm'): string => {
  const { figure, unit } = figureOf(held, held.value, units)
  const word = wordOf(held)
  return `${figure}${unit ? ` ${unit}` : ''}${word ? `, ${word}` : ''}`
}

/** `wanted: 25–60 %`, said from one side where the band reaches an end of the scale. '' where nothing is wanted. */
export const wantedWords = (held: Held, units: Units = 'mm'): string => {
  if (!held.band) return ''
  const [from, to] = held.band.map((v) => figureOf(held, v, units)) as [
    ReturnType<typeof figureOf>,
    ReturnType<typeof figureOf>,
  ]
  const unit = to.unit ? ` ${to.unit}` : ''
  if (held.band[0] <= held.scale[0]) return `wanted: at most ${to.figure}${unit}`
  if (held.band[1] >= held.scale[1]) return `wanted: at least ${from.figure}${unit}`
  return `wanted: ${from.figure} to ${to.figure}${unit}`
}

/** Words for a score; the steps are ours. */
const scoreWord = (score: number): string =>
  score >= 90 ? 'as wanted' : score >= 70 ? 'nearly there' : score >= 40 ? 'some way off' : 'far off'

/** Whole points; a hundred only where nothing is missing. */
export const scoreFigure = (score: number): string => formatNumber(score < 100 ? Math.min(99, Math.round(score)) : 100)

/** `72 of 100, nearly there`; the harmony only says where it lies. */
export const scoreWords = ({ id, score }: Pick<ReadingResult, 'id' | 'score'>): string => {
  if (score === null) return ''
  const of100 = `${scoreFigure(score)} of 100`
  return isScale(id) ? `${of100} toward quiet` : `${of100}, ${scoreWord(score)}`
}
