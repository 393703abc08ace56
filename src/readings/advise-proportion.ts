import type { Edit } from '../arrangement/index.ts'
import type { ResolvedStem } from '../geometry/index.ts'
import { bandOf, isOutside } from './bands.ts'
import type { Engine } from './engine.ts'
import { measureProportion, type Proportion } from './proportion.ts'
import type { Idea, Topic } from './trial.ts'
import type { Band } from './types.ts'
import { bandWords, formWords, named, round } from './words.ts'

const TIMES = { unit: '×', scale: [0, 4] as [number, number] }

/** Just inside the band, so that the smallest change that serves is the one advised. */
const justInside = ([least, most]: readonly [number, number], low: boolean): number =>
  low ? Math.min(least * 1.03, (least + most) / 2) : Math.max(most * 0.97, (Math.max(0, least) + most) / 2)

const times = (value: unknown): string => `${round(value as number, 2)} ×`

const aboutHeight = (engine: Engine, p: Proportion, { band: [least, most], own }: Band): Topic => {
  const { stems, document } = engine.resolved
  const low = p.heightRatio < least
  const aim = justInside([least, most], low) / p.heightRatio
  const tall = stems.filter((s) => s.stem.tip[2] > 0).sort((a, b) => b.stem.tip[2] - a.stem.tip[2])
  const text = `${low ? 'Low' : 'High'} for the vessel: ${times(p.heightRatio)}, wanted ${bandWords([least, most], TIMES)}${own ? ', your own' : ` for ${formWords(document.form)}`}. `
  const idea = (some: ResolvedStem[], factor: number): Idea => ({
    edit: { do: 'lengthen-stems', ids: some.map((s) => s.id), factor },
    stems: some.map((s) => s.id),
    say: (v) =>
      `${text}${low ? 'Lengthen' : 'Shorten'} ${some.length === tall.length ? 'all stems' : named(some)}${some.length === tall.length ? '' : ','} by ${round(100 * Math.abs(factor - 1))} %: then it is ${times(v.heightRatio)}.`,
  })
  // Whole percents, so that what is said is what is done.
  const factors = [aim, (1 + aim) / 2].map((f) => Math.max(0.1, Math.round(100 * f) / 100))
  const few = tall.slice(0, Math.max(1, Math.round(tall.length / 5)))
  const half = tall.slice(0, Math.max(1, Math.round(tall.length / 2)))
  return {
    ideas: [tall, few, half].flatMap((some) => factors.map((factor) => idea(some, factor))),
    otherwise: {
      text: `${text}${named(tall.slice(0, 2))}, stand${tall.length > 1 ? '' : 's'} highest; ${low ? 'lengthening what is there costs other readings: a taller stem, or a smaller vessel, serves' : 'shortening what is there costs other readings: a taller vessel serves'}.`,
      stems: tall.slice(0, 2).map((s) => s.id),
    },
  }
}

const aboutSpread = (engine: Engine, p: Proportion, { band: [least, most], own }: Band): Topic => {
  const { stems } = engine.resolved
  const narrow = p.spreadRatio < least
  const out = stems.toSorted(
    (a, b) => Math.hypot(b.stem.tip[0], b.stem.tip[1]) - Math.hypot(a.stem.tip[0], a.stem.tip[1]),
  )
  const aim = justInside([least, most], narrow) / p.spreadRatio
  const text = `${narrow ? 'Narrow' : 'Wide'} for the vessel: ${times(p.spreadRatio)}, wanted ${bandWords([least, most], TIMES)}${own ? ', your own' : ''}. `
  const idea = (part: number, k: number): Idea => {
    const wide = out.slice(0, Math.max(1, Math.ceil(stems.length * part)))
    const edits = wide.map((s): Edit => {
      const { tip } = s.stem
      return { do: 'shift-stems', ids: [s.id], by: [tip[0] * (k - 1), tip[1] * (k - 1), 0] }
    })
    return {
      edit: { do: 'many', label: narrow ? 'spread out' : 'drawn in', edits },
      stems: wide.map((s) => s.id),
      say: (v) => `${text}${narrow ? 'Lean out' : 'Draw in'} ${named(wide)}: then it is ${times(v.spreadRatio)}.`,
    }
  }
  const few = out.slice(0, 3)
  return {
    ideas: [idea(1 / 6, aim), idea(1 / 3, aim), idea(1 / 6, (1 + aim) / 2), idea(1, aim)],
    otherwise: { text: `${text}${narrow ? 'Lean out' : 'Draw in'} ${named(few)}.`, stems: few.map((s) => s.id) },
  }
}

/** What is amiss with height and spread, and ideas against it. */
export const adviseProportion = (engine: Engine): Topic[] => {
  const p = measureProportion(engine)
  if (!p) return []
  const { document } = engine.resolved
  const height = bandOf('proportion', 'heightRatio', document)
  const spread = bandOf('proportion', 'spreadRatio', document)
  const topics: Topic[] = []
  const out = (v: number, row: Band | undefined): row is Band => !!row && isOutside(v, row.band)
  if (out(p.heightRatio, height)) topics.push(aboutHeight(engine, p, height))
  if (out(p.spreadRatio, spread)) topics.push(aboutSpread(engine, p, spread))
  return topics
}
