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
  whole?: true
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
  const { key, name, value, unit, scale, beyond, whole, rule } = m
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
    ...(whole && { whole }),
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

/** From a quarter turn on one looks at what was the left side (view.ts: the eye then lies toward −x). */
const SIDES: Record<number, string> = { 0: 'the front', 90: 'the left', 180: 'the back', 270: 'the right' }

/** `the front`, `the left`, `30° round`: whence one looks, turn in degrees, 0 up to 360. */
export const sideWords = (turn: number): string => SIDES[turn] ?? `${turn}° round`

/** Lengths of moves go in steps of 5 mm, so that what is said is what is done. */
export const steps = (mm: number): number => Math.max(5, 5 * Math.round(mm / 5))

/** Several of a plant: `oriental lilies`, `olive branches`; greens and fillers, and what takes no plural, as stems. */
const several = ({ name, formClass }: ResolvedStem['plant']): string => {
  const one = name.toLowerCase()
  if (/ (leaf|berry|branch)$/.test(one))
    return one
      .replace(/leaf$/, 'leaves')
      .replace(/berry$/, 'berries')
      .replace(/branch$/, 'branches')
  if (formClass === 'foliage' || formClass === 'filler' || /[sx]$| of /.test(one)) return `stems of ${one}`
  return /[^aeiou]y$/.test(one) ? one.replace(/y$/, 'ies') : `${one}s`
}

/** So many numbers, or runs of them, are said of one plant at most. Ours. */
const MOST_NUMBERS = 4

/** `1–3`, `1, 2 and 5`, `1, 6, 11 and 97 more`: numbers that rise, runs of three and more drawn together. */
export const numbersWords = (numbers: readonly number[]): string => {
  const runs: number[][] = []
  for (const n of numbers) {
    const run = runs.at(-1)
    if (run && run.at(-1) === n - 1) run.push(n)
    else runs.push([n])
  }
  const said = runs.flatMap((run) => (run.length > 2 ? [run] : run.map((n) => [n])))
  const shown = said.length > MOST_NUMBERS ? said.slice(0, MOST_NUMBERS - 1) : said
  const words = shown.map((run) => (run.length > 1 ? `${run[0]}–${run.at(-1)}` : `${run[0]}`))
  const rest = numbers.length - shown.reduce((sum, run) => sum + run.length, 0)
  if (rest > 0) words.push(`${rest} more`)
  return words.length < 2 ? words.join() : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}

/** `1–3, oriental lilies; 4, an aspidistra and 2 more`: by plant, three of them at most, the stems of all others counted. */
export const named = (stems: readonly ResolvedStem[]): string => {
  const of = new Map<string, ResolvedStem[]>()
  for (const s of stems) of.set(s.plant.name, [...(of.get(s.plant.name) ?? []), s])
  const plants = [...of.values()]
  const words = plants
    .slice(0, 3)
    .map((some) =>
      some.length === 1
        ? numbered(some[0]!)
        : `${numbersWords(some.map((s) => s.index + 1).sort((a, b) => a - b))}, ${several(some[0]!.plant)}`,
    )
  const rest = plants.slice(3).reduce((sum, some) => sum + some.length, 0)
  return listed(rest > 0 ? [...words, `${rest} more`] : words)
}

/** `: then none is left`, `: then 3 are left` of a list of stems among the values. */
export const leftOf = (ids: ReadingResult['values'][string] | undefined): string => {
  const count = Array.isArray(ids) ? ids.length : 0
  return `: then ${count === 0 ? 'none is' : count === 1 ? '1 is' : `${count} are`} left`
}

/** Writes a length of so many mm in a person's own units. */
export type Lengths = (mm: number) => string
export const inMm: Lengths = (mm) => formatLength(mm, 'mm')
