import type { Form } from '../arrangement/index.ts'
import type { ResolvedStem } from '../geometry/index.ts'
import { formatLength } from '../units/index.ts'
import { BAND_RANGES } from './band-ranges.ts'
import { bandOf, bandScore, NO_END, tableBandFor, together, type Wanting } from './bands.ts'
import { isShare } from './share.ts'
import type { Because, Held, ReadingId, ReadingResult } from './types.ts'

/** `14, a spray rose`: the stem's number in the list and its plant. */
export const numbered = (stem: ResolvedStem): string => {
  const name = stem.plant.name.toLowerCase()
  return `${stem.index + 1}, ${/^[aeio]/.test(name) ? 'an' : 'a'} ${name}`
}

/** `a bold and c`, of any number. */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join('; ')} and ${words.at(-1)}`

const FORM_WORDS: Record<Form, string> = {
  round: 'a round design',
  low: 'a low design',
  airy: 'an airy design',
  vertical: 'a vertical design',
  triangle: 'a triangle',
  crescent: 'a crescent',
  cascade: 'a cascade',
}
export const formWords = (form: Form): string => FORM_WORDS[form]

/** A value to be held: key, words, unit, ends of the gauge, and the rule in a sentence. */
export interface Measured {
  key: string
  name: string
  value: number
  unit: string
  scale: [number, number]
  beyond?: [under: string, over: string]
  rule: string
  /** Used where the form has no row in the table. */
  without?: string
}

/** A band in the unit of its value: `1.5–3 ×`, `at least 15°`, `at most 12 %`, `0 %`. */
export const bandWords = ([least, most]: readonly [number, number], of: Pick<Measured, 'unit' | 'scale'>): string => {
  const share = isShare(of)
  const say = (x: number): string => String(Number((share ? 100 * x : x).toFixed(3))).replace('-', '−')
  const unit = share ? ' %' : of.unit === '' || of.unit === '°' ? of.unit : ` ${of.unit}`
  if (most >= NO_END) return `at least ${say(least)}${unit}`
  if (least <= -NO_END) return `at most ${say(most)}${unit}`
  return least === most ? `${say(least)}${unit}` : `${say(least)}${least < 0 ? ' to ' : '–'}${say(most)}${unit}`
}

/** Where a band is from; of a person's own, what the table would have. */
const sourceOf = (reading: ReadingId, of: Wanting, m: Measured, own: boolean): string => {
  const row = tableBandFor(reading, m.key, of)
  const table = row?.source ?? m.without ?? 'only shown, not part of the score'
  if (!own) return table
  return row
    ? `your own band; the table has ${bandWords(row.band, m)} (${table})`
    : `your own band; the table has none for ${formWords(of.form)}`
}

/** Holds a value against its band; where there is none it is only shown. Part of the score: null when not held. */
export const hold = (reading: ReadingId, of: Wanting, m: Measured): { held: Held; part: number | null } => {
  const row = bandOf(reading, m.key, of)
  const { key, name, value, unit, scale, beyond, rule } = m
  const band = row?.band ?? null
  const end = (x: number): number | null => (Math.abs(x) >= NO_END ? null : x)
  const name_ = `${reading}.${m.key}`
  const range = BAND_RANGES[name_]
  const wide: [number, number] = [scale[0], scale[1]]
  // What a person wants may lie beyond the ends of the gauge: there it goes on a little.
  if (row?.own && range)
    for (const x of row.band) {
      if (end(x) === null) continue
      wide[0] = Math.min(wide[0], Math.max(range[0], x - 0.1 * Math.abs(x)))
      wide[1] = Math.max(wide[1], Math.min(range[1], x + 0.1 * Math.abs(x)))
    }
  const held: Held = {
    key,
    name,
    value,
    unit,
    scale: wide,
    // Cut off at the ends of the gauge, but never between the band and a value in it that lies beyond them.
    band: band && [Math.max(Math.min(wide[0], value), band[0]), Math.min(Math.max(wide[1], value, band[0]), band[1])],
    ...(beyond && { beyond }),
    rule,
    source: sourceOf(reading, of, m, row?.own === true),
    ...(range && {
      wants: {
        name: name_,
        ends: row ? [end(row.band[0]), end(row.band[1])] : [null, null],
        own: row?.own === true,
        range,
      },
    }),
  }
  return { held, part: row ? bandScore(value, row.band, row.fall) : null }
}

/** A value that is only shown, held against nothing. */
export const shown = (
  key: string,
  name: string,
  value: number,
  unit: string,
  scale: [number, number],
  rule: string,
  source: string,
): Held => ({
  key,
  name,
  value,
  unit,
  scale,
  band: null,
  rule,
  source,
})

/** 0–100 from the parts that are held. */
export const scoreOf = (parts: readonly (number | null)[]): number | null => {
  const held = parts.filter((p) => p !== null)
  return held.length > 0 ? 100 * together(held) : null
}

/** A reading that says why it has no score. */
export const notApplicable = (
  id: ReadingId,
  why: string,
  values: ReadingResult['values'],
  because: Because | null = null,
): ReadingResult => ({ id, score: null, notApplicable: why, values, because, advice: [], marks: [] })

export const round = (value: number, digits = 0): string => {
  const text = value.toFixed(digits)
  return Number(text) === 0 ? (0).toFixed(digits) : text
}
export const percent = (share: number): string => `${round(100 * share)} %`

/** `the front`, `90° round`: whence one looks. */
export const sideWords = (turn: number): string => (turn === 0 ? 'the front' : `${turn}° round`)

/** Lengths of moves go in steps of 5 mm, so that what is said is what is done. */
export const steps = (mm: number): number => Math.max(5, 5 * Math.round(mm / 5))

/** The first three by name, the rest counted. */
export const named = (stems: readonly ResolvedStem[]): string =>
  listed([...stems.slice(0, 3).map(numbered), ...(stems.length > 3 ? [`${stems.length - 3} more`] : [])])

/** `: then none is left`, `: then 3 are left` of a list of stems among the values. */
export const leftOf = (ids: ReadingResult['values'][string] | undefined): string => {
  const count = Array.isArray(ids) ? ids.length : 0
  return `: then ${count === 0 ? 'none is' : count === 1 ? '1 is' : `${count} are`} left`
}

/** Writes a length of so many mm in a person's own units. */
export type Lengths = (mm: number) => string
export const inMm: Lengths = (mm) => formatLength(mm, 'mm')
