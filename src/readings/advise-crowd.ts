import type { Edit } from '../arrangement/index.ts'
import { standinsOf } from '../geometry/index.ts'
import { counted, grouped, stemsOf } from './advise-words.ts'
import { bandOf } from './bands.ts'
import { collar, collarHeight, commonCover } from './collar.ts'
import type { Engine } from './engine.ts'
import { readyStem } from './extents.ts'
import { type Proportion, vesselWidth } from './proportion.ts'
import { type Thinned, thinTo } from './regroup.ts'
import { type Idea, resolveAfter, type Topic } from './trial.ts'
import { formWords, round } from './words.ts'

/** Numbers that are left standing: odd ones, as is taught (common practice). */
const KEPT = [3, 5, 1]

const upper = (text: string): string => text.replace(/^./, (c) => c.toUpperCase())

/** A few small greens low over the mouth that is left bare. */
const collarAfter = (engine: Engine, edit: Edit): { edit: Edit; words: string } | null => {
  const then = resolveAfter(engine.resolved, edit)
  const { vessel, document } = then
  const like = commonCover(vessel)
  const ready = then.stems.map((s) => readyStem(s, vessel, standinsOf))
  const most = bandOf('negative-space', 'mouthShowing', document)!.band[1]
  const stems = collar(then, ready, like, collarHeight(vessel, like, 0.5), 0.9 * most)
  if (stems.length === 0) return null
  return { edit: { do: 'add-stems', stems }, words: `, with ${stemsOf(stems.length, like.name)} low over the rim` }
}

/**
 * Too much for a narrow vessel: most of it is taken out at once, the few that stay stand as high as they should, and a
 * few greens close the mouth. None where the vessel is wide or its stems are few.
 * @param high wanted height over the rim, in the vessel's larger dimension
 */
export const adviseCrowd = (engine: Engine, p: Proportion, high: number): Topic[] => {
  const { stems, vessel, document } = engine.resolved
  const text = `${upper(counted(stems.length))} stems are too many for a mouth so narrow`
  const high_mm = high * Math.max(vessel.height, vesselWidth(vessel))
  const say = (thin: Thinned, greens: string): Idea['say'] => {
    const held = thin.grid ? ', held by a grid of tape' : ''
    return (v) =>
      `${text}: take ${grouped(thin.gone)} out, let ${grouped(thin.kept)} stand at unlike heights, the tallest ${round(v.heightRatio as number, 2)} × the vessel${held}${greens}, and fill it with water; spread is then ${round(v.spreadRatio as number, 2)} × instead of ${round(p.spreadRatio, 2)} ×.`
  }
  const ids = stems.map((s) => s.id)
  const ideas = KEPT.flatMap((keep): Idea[] => {
    const thin = thinTo(engine, keep, high_mm)
    if (!thin) return []
    const greens = collarAfter(engine, thin.edit)
    if (!greens) return [{ edit: thin.edit, stems: ids, say: say(thin, '') }]
    const edit: Edit = { do: 'many', label: 'thinned out', edits: [thin.edit, greens.edit] }
    return [{ edit, stems: ids, say: say(thin, greens.words) }]
  })
  if (ideas.length === 0) return []
  const words = `${text} for ${formWords(document.form)}: keep one or three, or take a wider, heavier vessel.`
  return [{ ideas, otherwise: { text: words, stems: [] } }]
}
