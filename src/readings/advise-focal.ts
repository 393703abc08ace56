import type { Edit } from '../arrangement/index.ts'
import type { ResolvedStem } from '../geometry/index.ts'
import { bandOf } from './bands.ts'
import type { Engine } from './engine.ts'
import { measureProminence, type Prominence, scoreProminence } from './focal-prominence.ts'
import { bestOf, tryOut } from './trial.ts'
import type { Advice } from './types.ts'
import { numbered, percent, round } from './words.ts'

const along = (stem: ResolvedStem, mm: number): Edit => ({
  do: 'shift-stems',
  ids: [stem.id],
  by: [stem.axis[0] * mm, stem.axis[1] * mm, stem.axis[2] * mm],
})

const aboutHidden = (engine: Engine, p: Prominence): Advice[] => {
  const { stems } = engine.resolved
  const worst = p.unhidden.indexOf(Math.min(...p.unhidden))
  const stem = stems[p.focal[worst]!]!
  const before = p.unhidden[worst]!
  const edits = [0.35, 0.7].map((k) => along(stem, k * stem.head_mm))
  const shownOf = (e: Engine): number => measureProminence(e).unhidden[worst] ?? 0
  const best = bestOf(tryOut(engine, edits, shownOf), before + 0.03)
  const text = `${numbered(stem)}, shows only ${percent(before)} of itself, all ways round`
  if (best?.edit.do !== 'shift-stems') return [{ text: `${text}: cut back what stands round it.`, stems: [stem.id] }]
  return [
    {
      text: `${text}. Bring it out by ${round(Math.hypot(...best.edit.by))} mm the way it faces: then ${percent(best.value)} shows.`,
      stems: [stem.id],
      edit: best.edit,
    },
  ]
}

const aboutLead = (engine: Engine, p: Prominence, score: number): Advice[] => {
  const { stems } = engine.resolved
  const rival = p.stems.find((d) => !p.focal.includes(d.place))
  const best = p.stems.find((d) => p.focal.includes(d.place))
  if (!rival || !best) return []
  const [strong, focal] = [stems[rival.place]!, stems[best.place]!]
  const edits: Edit[] = [along(focal, 0.5 * focal.head_mm), along(strong, -0.6 * strong.head_mm)]
  if (focal.openness < 0.95 && focal.stem.head === undefined)
    edits.push({ do: 'set-stems', ids: [focal.id], set: { openness: 1 } })
  const found = bestOf(tryOut(engine, edits, scoreProminence), score + 0.5)
  const text = `${numbered(strong)}, draws the eye before ${numbered(focal)}`
  if (!found)
    return [
      {
        text: `${text}: set it deeper, or give the focal flower a larger or stronger neighbour.`,
        stems: [strong.id, focal.id],
      },
    ]
  const how =
    found.edit.do === 'set-stems'
      ? 'a focal flower fully open leads better'
      : found.edit.do === 'shift-stems' && found.edit.ids[0] === strong.id
        ? `set it ${round(0.6 * strong.head_mm)} mm deeper`
        : `bring the focal flower out by ${round(0.5 * focal.head_mm)} mm`
  return [{ text: `${text}: ${how}.`, stems: [strong.id, focal.id], edit: found.edit }]
}

/** Advice on what leads the eye, each edit tried and measured. */
export const adviseFocal = (engine: Engine): Advice[] => {
  const p = measureProminence(engine)
  const score = scoreProminence(engine)
  if (score === null || p.focalShare === null) return []
  const { form } = engine.resolved.document
  const under = (key: string, value: number): boolean => value < bandOf('focal-prominence', key, form)!.band[0]
  const advice: Advice[] = []
  if (under('focalVisible', p.focalVisible!)) advice.push(...aboutHidden(engine, p))
  if (under('focalLead', p.focalLead!)) advice.push(...aboutLead(engine, p, score))
  const best = engine.resolved.stems[p.stems.find((d) => p.focal.includes(d.place))!.place]!
  if (p.vesselPull! > bandOf('focal-prominence', 'vesselPull', form)!.band[1])
    advice.push({
      text: `The vessel draws the eye before ${numbered(best)}: let greens fall over its rim, or choose a vessel nearer the colour of the cloth.`,
      stems: [best.id],
    })
  if (under('focalShare', p.focalShare) && advice.length === 0) {
    const twin = engine.resolved.stems[p.focal[0]!]!
    advice.push({
      text: `The focal flowers hold ${percent(p.focalShare)} of the eye: set another beside ${numbered(twin)}, or open them further.`,
      stems: p.focal.map((i) => engine.resolved.stems[i]!.id),
    })
  }
  return advice
}
