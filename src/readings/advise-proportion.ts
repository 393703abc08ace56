import type { ResolvedStem } from '../geometry/index.ts'
import { aboutCeiling } from './advise-ceiling.ts'
import { adviseCrowd } from './advise-crowd.ts'
import { grouped } from './advise-words.ts'
import { bandOf, isOutside } from './bands.ts'
import type { Engine } from './engine.ts'
import { measureProportion, type Proportion, vesselWidth } from './proportion.ts'
import { toReach } from './regroup.ts'
import type { Idea, Topic } from './trial.ts'
import type { Band } from './types.ts'
import { bandWords, formWords, type Lengths, named, round } from './words.ts'

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
  const { stems, vessel } = engine.resolved
  const narrow = p.spreadRatio < least
  const out = stems.toSorted(
    (a, b) => Math.hypot(b.stem.tip[0], b.stem.tip[1]) - Math.hypot(a.stem.tip[0], a.stem.tip[1]),
  )
  const aim = (justInside([least, most], narrow) * vesselWidth(vessel)) / 2
  const now = p.spread / 2
  const text = `${narrow ? 'Narrow' : 'Wide'} for the vessel: ${times(p.spreadRatio)}, wanted ${bandWords([least, most], TIMES)}${own ? ', your own' : ''}. `
  const idea = (some: readonly ResolvedStem[], reach: number): Idea[] => {
    const to = toReach(engine, some, reach, narrow)
    if (!to) return []
    return [
      {
        edit: to.edit,
        stems: to.moved.map((s) => s.id),
        say: (v) =>
          `${text}${narrow ? 'Lean out' : 'Draw in'} ${grouped(to.moved)}, so far: then it is ${times(v.spreadRatio)}.`,
      },
    ]
  }
  const some = (part: number): ResolvedStem[] => out.slice(0, Math.max(2, Math.ceil(stems.length * part)))
  const few = out.slice(0, 3)
  const ideas = narrow
    ? [idea(some(1 / 6), aim), idea(some(1 / 3), aim), idea(some(1 / 6), (aim + now) / 2)]
    : [idea(stems, aim), idea(stems, 0.9 * aim), idea(stems, (aim + now) / 2), idea(stems, 1.1 * aim)]
  return {
    ideas: ideas.flat(),
    otherwise: {
      text: `${text}${narrow ? 'Lean out' : 'Draw in'} ${named(few)}, which harms other readings as it stands: a ${narrow ? 'narrower' : 'wider'} vessel serves.`,
      stems: few.map((s) => s.id),
    },
  }
}

/** What is amiss with height and spread, and ideas against it. */
export const adviseProportion = (engine: Engine, lengths: Lengths): Topic[] => {
  const p = measureProportion(engine)
  if (!p) return []
  const { document } = engine.resolved
  const height = bandOf('proportion', 'heightRatio', document)
  const spread = bandOf('proportion', 'spreadRatio', document)
  const topics: Topic[] = []
  const out = (v: number, row: Band | undefined): row is Band => !!row && isOutside(v, row.band)
  const wide = !!spread && p.spreadRatio > spread.band[1]
  if (height && (wide || p.heightRatio < height.band[0]))
    topics.push(...adviseCrowd(engine, p, justInside(height.band, true)))
  if (out(p.heightRatio, height)) topics.push(aboutHeight(engine, p, height))
  topics.push(...aboutCeiling(engine, p, lengths))
  if (out(p.spreadRatio, spread)) topics.push(aboutSpread(engine, p, spread))
  return topics
}
