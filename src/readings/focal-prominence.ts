import { type Draw, drawsOf, shareOf } from './draw.ts'
import type { Engine } from './engine.ts'
import { HALF_WAYS, WAYS } from './extents.ts'
import { ownSilhouette } from './seen.ts'
import type { Because, Mark, ReadingResult } from './types.ts'
import {
  formWords,
  hold,
  listed,
  type Measured,
  notApplicable,
  numbered,
  percent,
  round,
  scoreOf,
  shown,
} from './words.ts'

export interface Prominence {
  focalShare: number | null
  focalVisible: number | null
  focalRank: number | null
  vesselRank: number
  /** Strongest focal against the strongest other stem, and the vessel against all focals together. */
  focalLead: number | null
  vesselPull: number | null
  /** Strongest first, the vessel not among them. */
  stems: Draw[]
  vessel: Draw
  /** Places of the focal stems, and the unhidden share of each over the half turn in which it shows best. */
  focal: number[]
  unhidden: number[]
}

/** Unhidden share of one bloom, over the half turn in which it shows best, and how large it is there (pixels). */
const unhiddenOf = (engine: Engine, place: number): { shown: number; whole: number } => {
  const whole = ownSilhouette(engine, place)
  const { byWay } = engine.seen()
  let best = 0
  let bestWhole = 0
  for (let first = 0; first < WAYS; first++) {
    let shown = 0
    let all = 0
    for (let j = 0; j < HALF_WAYS; j++) {
      const way = (first + j) % WAYS
      shown += byWay[way]![place * 4 + 1]!
      all += whole[way]!
    }
    if (all <= 0 || (bestWhole > 0 && shown * bestWhole <= best * all)) continue
    best = shown
    bestWhole = all
  }
  return { shown: best, whole: bestWhole }
}

/** Beyond ten times, more or less makes no difference and the number stays one that can be shown. */
const ratio = (a: number, b: number): number => (b > 0 ? Math.min(10, a / b) : a > 0 ? 10 : 0)

export const measureProminence = (engine: Engine): Prominence => {
  const { stems } = engine.resolved
  const { stems: order, vessel } = drawsOf(engine)
  const stronger = (than: Draw): number => {
    let count = 0
    for (let i = 0; i < order.length; i++) if (order[i]!.strength > than.strength) count += 1
    return count
  }
  const focal = stems.flatMap((s, i) => (s.role === 'focal' && engine.ready[i]!.bloom ? [i] : []))
  const base = { vesselRank: 1 + stronger(vessel), stems: order, vessel, focal }
  const best = order.find((d) => focal.includes(d.place))
  if (!best)
    return {
      ...base,
      focalShare: null,
      focalVisible: null,
      focalRank: null,
      focalLead: null,
      vesselPull: null,
      unhidden: [],
    }
  const each = focal.map((i) => unhiddenOf(engine, i))
  const whole = each.reduce((sum, x) => sum + x.whole, 0)
  const rival = order.find((d) => !focal.includes(d.place))
  const group = order.reduce((sum, d) => sum + (focal.includes(d.place) ? d.strength : 0), 0)
  return {
    ...base,
    focalShare: shareOf(engine, focal),
    focalVisible: whole > 0 ? each.reduce((sum, x) => sum + x.shown, 0) / whole : 0,
    focalRank: 1 + stronger(best),
    focalLead: rival ? ratio(best.strength, rival.strength) : 10,
    vesselPull: ratio(vessel.strength, group),
    unhidden: each.map((x) => (x.whole > 0 ? x.shown / x.whole : 0)),
  }
}

const HOW =
  'Each stem draws the eye by visible area × contrast × unlikeness × place, over the half turn in which it is seen best: contrast is the Lab distance to what surrounds it at three scales (Cheng et al. 2011, 2015), to the ground and to the rest apart, the lesser counting more (ours); the ground is the cloth, and by a quarter (ours) the room behind, of which nobody knows the colour: a middle grey (Buchsbaum 1980); for the vessel the cloth alone; unlikeness is what is left of all else that is seen when what passes for the same colour is taken off (after Duncan and Humphreys 1989); place favours the middle of the picture (Cheng et al. 2015). One patch counts more than a scatter of the same area; greens and vessel, the ground of the picture, count half. The score is the geometric mean of share, unhidden part, rank, lead and vessel, each full inside its band.'

const partsOf = (engine: Engine, p: Prominence) => {
  const { document } = engine.resolved
  const { form } = document
  const held = (m: Measured) => hold('focal-prominence', document, m)
  return [
    held({
      key: 'focalShare',
      name: "Focal flowers' share of the eye",
      value: p.focalShare ?? 0,
      unit: '',
      scale: [0, 1],
      rule: `Of all that blooms, leaves and vessel draw, over the half turn in which it is most, the focal blooms' part, for ${formWords(form)}.`,
    }),
    held({
      key: 'focalVisible',
      name: 'Focal flowers unhidden',
      value: p.focalVisible ?? 0,
      unit: '',
      scale: [0, 1],
      rule: 'Share of the focal blooms that nothing hides, each over the half turn in which it shows best.',
    }),
    held({
      key: 'focalRank',
      name: 'Rank of the strongest focal flower',
      value: p.focalRank ?? 0,
      unit: '',
      whole: true,
      scale: [1, 20],
      rule: 'Its place among all stems, in the order in which they draw the eye.',
    }),
    held({
      key: 'focalLead',
      name: 'Lead over the next stem',
      value: p.focalLead ?? 0,
      unit: '×',
      scale: [0, 3],
      rule: 'The strongest focal bloom against the strongest stem that is not focal.',
    }),
    held({
      key: 'vesselPull',
      name: 'Vessel against the focal flowers',
      value: p.vesselPull ?? 0,
      unit: '×',
      scale: [0, 3],
      rule: 'What the vessel draws against all focal blooms together: the flowers come first.',
    }),
  ]
}

const FACTORS = [
  ['contrast', 'contrast'],
  ['unlike', 'being unlike the rest'],
  ['size', 'visible size'],
  ['where', 'place, and being one patch'],
  ['weight', 'being a flower'],
] as const

/**
 * What each factor did: the strongest focal bloom against the strongest other stem, factor by factor; multiplied they are
 * the lead. '' where either draws nothing.
 */
export const leadWords = (focal: Draw, rival: Draw | undefined): string => {
  if (!rival || focal.strength === 0 || rival.strength === 0) return ''
  const each = FACTORS.map(([key, name]) => ({ key, name, times: focal[key] / rival[key] }))
  const said = each.filter(({ key, times }) => key !== 'weight' || times !== 1)
  return listed(said.map(({ name, times }) => `${times.toFixed(2)} × by ${name}`))
}

const MODEL = 'Cheng et al., CVPR 2011 and TPAMI 2015; the local scales are ours'

const because = (engine: Engine, p: Prominence, parts: ReturnType<typeof partsOf>): Because => {
  const { stems } = engine.resolved
  const [share, visible, rank, lead, pull] = parts.map((x) => x.held)
  const best = p.stems.find((d) => p.focal.includes(d.place))!
  const rival = p.stems.find((d) => !p.focal.includes(d.place))
  const wide = Math.sqrt(best.pixels) * engine.frame.grid.mm
  const words = leadWords(best, rival)
  const against = words && `${numbered(stems[best.place]!)}, against ${numbered(stems[rival!.place]!)}: ${words}.`
  const unhidden = p.unhidden[p.focal.indexOf(best.place)]!
  const others = [visible!, rank!, { ...lead!, rule: `${lead!.rule}${against && ` ${against}`}` }, pull!]
  const of = `Of ${numbered(stems[best.place]!)}.`
  return {
    main: share!,
    others: [
      ...others,
      shown(
        'focalContrast',
        'Contrast of the strongest focal bloom',
        best.contrast,
        'ΔE',
        [0, 100],
        `${of} Lab distance to what surrounds it.`,
        MODEL,
      ),
      shown(
        'focalUnlike',
        'How unlike it is to the rest',
        best.unlike,
        '',
        [0, 1],
        `${of} Less where more of the rest passes for its colour.`,
        MODEL,
      ),
      shown(
        'focalPlace',
        'Its place, and being one patch',
        best.where,
        '',
        [0, 1],
        `${of} 1 in the middle of the picture, in one patch.`,
        MODEL,
      ),
      shown(
        'focalWidth_mm',
        'Its visible width',
        wide,
        'mm',
        [0, 150],
        `${of} Of a square of its visible area; ${percent(unhidden)} of it is unhidden.`,
        MODEL,
      ),
    ],
    how: HOW,
    trust:
      'The model is published and was fitted to photographs, not to flowers; the shares wanted are our own scale. Shape and scent of a flower are not in it.',
  }
}

export const readProminence = (engine: Engine): ReadingResult => {
  const { stems } = engine.resolved
  const p = measureProminence(engine)
  const { focalShare, focalVisible, focalRank, vesselRank, focalLead, vesselPull } = p
  const values: ReadingResult['values'] = {
    focalShare,
    focalVisible,
    focalRank,
    vesselRank: stems.length > 0 ? vesselRank : null,
    focalLead,
    vesselPull,
    focalStems: p.focal.map((i) => stems[i]!.id),
    leadingStems: p.stems.slice(0, 3).map((d) => stems[d.place]!.id),
  }
  if (p.focal.length === 0) {
    const why = stems.length === 0 ? 'There are no stems yet.' : 'No stem with a bloom plays the focal part.'
    return notApplicable('focal-prominence', why, values)
  }
  const parts = partsOf(engine, p)
  const focalIds = p.focal.map((i) => stems[i]!.id)
  const marks: Mark[] = [{ kind: 'stems', ids: focalIds, label: `focal, ${round(100 * focalShare!)} % of the eye` }]
  const ahead = p.stems.slice(0, focalRank! - 1).filter((d) => !p.focal.includes(d.place))
  if (ahead.length > 0)
    marks.push({ kind: 'stems', ids: ahead.slice(0, 3).map((d) => stems[d.place]!.id), label: 'leads now' })
  return {
    id: 'focal-prominence',
    score: scoreOf(parts.map((x) => x.part)),
    notApplicable: '',
    values,
    because: because(engine, p, parts),
    advice: [],
    marks,
  }
}
