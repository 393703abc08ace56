import {
  type Advice,
  type Because,
  type Held,
  isShare,
  READING_NAMES,
  type ReadingId,
  type ReadingResult,
  type WaysRound,
} from '../../readings/index.ts'
import { formatLength, type Units } from '../../units/index.ts'
import { digitsFor, formatNumber } from '../parts/format.ts'
import { placeInBand, type Range } from '../parts/gauge-scale.ts'

/** Plain names of our own. */
export const NAMES = READING_NAMES

/** Harmony has no good end: its scale runs from quiet to vivid, and nothing is wanted of it. */
export const isScale = (id: ReadingId): boolean => id === 'palette-harmony'

type Scaled = Pick<Held, 'unit' | 'scale' | 'whole'>

/** Number and unit apart: `34` and `%`, `51` and `mm`. */
export const figureOf = (held: Scaled, value: number, units: Units = 'mm'): { figure: string; unit: string } => {
  if (isShare(held)) return { figure: formatNumber(value * 100), unit: '%' }
  if (held.whole) return { figure: formatNumber(value, 1), unit: held.unit }
  if (held.unit === 'mm') return { figure: formatLength(value, units), unit: '' }
  return {
    figure: formatNumber(value, Math.max(digitsFor(held.scale), held.unit === '×' ? 2 : 0), true),
    unit: held.unit,
  }
}

/** Which third of the scale from vivid (0) to quiet (100): thirds are ours. */
export const quietness = (score: number): string => (score > 200 / 3 ? 'quiet' : score < 100 / 3 ? 'vivid' : 'middling')

/** The word beside the value: inside, under or over what is wanted, or the reading's own words for these; '' where nothing is. */
export const wordOf = ({ value, band, beyond }: Held): string => {
  const word = placeInBand(value, band)
  return word === 'under' ? (beyond?.[0] ?? word) : word === 'over' ? (beyond?.[1] ?? word) : word
}

/** Colours that make no pair are still lighter or darker than each other, and than the cloth. */
const UNJUDGED = ['lightnessRange', 'groundContrast']

/** All that is measured where nothing can be judged, what matters most first. */
export const unjudged = ({ main, others }: Because): Held[] => {
  const rank = ({ key }: Held): number => (UNJUDGED.includes(key) ? 0 : key.startsWith('harmony') ? 2 : 1)
  return [...others, main].sort((a, b) => rank(a) - rank(b))
}

/** The two that matter most: `From dark to light 12 L*; against the linen 8 ΔE00`. */
export const unjudgedWords = (because: Because, units: Units): string =>
  UNJUDGED.flatMap((key, i) => {
    const held = because.others.find((h) => h.key === key)
    return held ? [`${i === 0 ? held.name : held.name.toLowerCase()} ${heldWords(held, units)}`] : []
  }).join('; ')

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
  const wanted = held.wants?.own ? 'wanted, your own' : 'wanted'
  if (held.band[0] <= held.scale[0]) return `${wanted}: at most ${to.figure}${unit}`
  if (held.band[1] >= held.scale[1]) return `${wanted}: at least ${from.figure}${unit}`
  return `${wanted}: ${from.figure} to ${to.figure}${unit}`
}

/** `held against 2 bands of your own`, of all that a reading holds; '' where the table's are in force. */
export const ownOf = ({ main, others }: Pick<Because, 'main' | 'others'>): string => {
  const count = [main, ...others].filter((held) => held.wants?.own).length
  return count === 0 ? '' : `held against ${count} ${count === 1 ? 'band' : 'bands'} of your own`
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

/**
 * `Would be 74 of 100, now 61. Colours together 80, now 82.` What was measured when the edit of a piece of advice was
 * tried: its own reading first, then each other one that moves by a whole point. '' where nothing was tried.
 */
export const foreseenWords = ({ after }: Advice, id: ReadingId, readings: readonly ReadingResult[]): string => {
  if (!after) return ''
  const now = (of: ReadingId): string => scoreFigure(readings.find((r) => r.id === of)?.score ?? 0)
  const ends = isScale(id) ? ' toward quiet' : ''
  const own = `Would be ${scoreFigure(after.scores[id] ?? 0)} of 100${ends}, now ${now(id)}`
  const others = readings.flatMap(({ id: other }) => {
    const then = after.scores[other]
    return other === id || then === undefined || scoreFigure(then) === now(other)
      ? []
      : [`${NAMES[other]} ${scoreFigure(then)}, now ${now(other)}`]
  })
  return `${own}. ${others.length > 0 ? `${others.join('; ')}.` : 'No other reading moves by a point.'}`
}

/** `, cm` or `, %`: the unit of all sides, said once. */
export const unitOfSides = (ways: WaysRound, units: Units): string => {
  const unit = ways.unit === 'mm' ? units : figureOf(ways, 0).unit
  return unit ? `, ${unit}` : ''
}

/** One value from one side: its figure for the eye, the whole of it for the ear, and whether none is worse. */
export interface Side {
  figure: string
  words: string
  worst: boolean
}

/** The value of every side; null where it can't be said. Sides that are equally bad are all the worst, if another is better. */
export const tellSides = (ways: WaysRound, units: Units): (Side | null)[] => {
  const { values, worst, name } = ways
  const known = values.filter((v) => v !== null)
  const [least, most] = [Math.min(...known), Math.max(...known)]
  const bad = worst === null || most - least < 1e-6 ? null : worst === 'least' ? least : most
  return values.map((value) => {
    if (value === null) return null
    const figure = figureOf(ways, value, units).figure.replace(` ${units}`, '')
    const isWorst = value === bad
    const words = `${name} ${figure}${unitOfSides(ways, units).replace(',', '')}${isWorst ? `, the ${worst}` : ''}`
    return { figure, words, worst: isWorst }
  })
}
