import type { Engine } from './engine.ts'
import { ownSilhouette } from './seen.ts'
import type { Because, Held, Mark, ReadingResult } from './types.ts'
import { formWords, hold, type Measured, notApplicable, round, scoreOf } from './words.ts'

/** How a stem, or the vessel, draws the eye. */
export interface Draw {
  /** Place in the resolved list; −1 the vessel. */
  place: number
  /** Visible pixels, all views together. */
  pixels: number
  /** Mean Lab distance to the surround. */
  contrast: number
  /** Mean factor for place, 0–1. */
  where: number
  /** contrast × place × visible width (root of the visible pixels). */
  strength: number
}

export interface Prominence {
  focalShare: number | null
  focalVisible: number | null
  focalRank: number | null
  vesselRank: number
  /** Strongest focal against the strongest other stem, and the vessel against the strongest focal. */
  focalLead: number | null
  vesselPull: number | null
  /** Strongest first, the vessel not among them. */
  stems: Draw[]
  vessel: Draw
  /** Places of the focal stems, and the unhidden share of each. */
  focal: number[]
  unhidden: number[]
}

const drawOf = (place: number, pixels: number, contrast: number, pull: number): Draw => ({
  place,
  pixels,
  contrast: pixels > 0 ? contrast / pixels : 0,
  where: contrast > 0 ? pull / contrast : 0,
  strength: pixels > 0 ? pull / Math.sqrt(pixels) : 0,
})

export const measureProminence = (engine: Engine): Prominence => {
  const { stems } = engine.resolved
  const seen = engine.seen()
  const { pixels, contrast, pull, vesselCode } = seen
  const draws = stems.map((_, i) => {
    // A stem is judged by its blooms, or by its leaves where it has no bloom.
    const bloom = engine.ready[i]!.bloom
    const code = i * 4 + (bloom ? 1 : 2)
    return drawOf(i, pixels[code]!, contrast[code]!, pull[code]!)
  })
  const vessel = drawOf(-1, pixels[vesselCode]!, contrast[vesselCode]!, pull[vesselCode]!)
  const order = draws.toSorted((a, b) => b.strength - a.strength || a.place - b.place)
  const stronger = (than: Draw): number => order.filter((d) => d.strength > than.strength).length
  const focal = stems.flatMap((s, i) => (s.role === 'focal' && engine.ready[i]!.bloom ? [i] : []))
  const base = { vesselRank: 1 + stronger(vessel), stems: order, vessel, focal }
  if (focal.length === 0)
    return {
      ...base,
      focalShare: null,
      focalVisible: null,
      focalRank: null,
      focalLead: null,
      vesselPull: null,
      unhidden: [],
    }

  let all = 0
  for (let code = 1; code < seen.codes; code++) if (code === vesselCode || (code - 1) % 4 < 2) all += pull[code]!
  const own = focal.reduce((sum, i) => sum + pull[i * 4 + 1]!, 0)
  let [ways, share] = [0, 0]
  const hidden = focal.map(() => [0, 0] as [number, number])
  seen.byWay.forEach((counts, way) => {
    let [there, shown] = [0, 0]
    focal.forEach((i, k) => {
      const whole = ownSilhouette(engine, i)[way]!
      there += whole
      shown += counts[i * 4 + 1]!
      hidden[k]![0] += counts[i * 4 + 1]!
      hidden[k]![1] += whole
    })
    if (there === 0) return
    ways += 1
    share += shown / there
  })
  const best = order.find((d) => focal.includes(d.place))!
  const rival = order.find((d) => !focal.includes(d.place))
  // Beyond ten times, more or less makes no difference and the number stays one that can be shown.
  const ratio = (a: number, b: number): number => (b > 0 ? Math.min(10, a / b) : a > 0 ? 10 : 0)
  return {
    ...base,
    focalShare: all > 0 ? own / all : 0,
    focalVisible: ways > 0 ? share / ways : 0,
    focalRank: 1 + stronger(best) - order.filter((d) => focal.includes(d.place) && d.strength > best.strength).length,
    focalLead: rival ? ratio(best.strength, rival.strength) : 10,
    vesselPull: ratio(vessel.strength, best.strength),
    unhidden: hidden.map(([shown, whole]) => (whole > 0 ? shown / whole : 0)),
  }
}

const HOW =
  'Each stem draws the eye by contrast × place × visible width: contrast is the Lab distance to what surrounds it at three scales (Cheng et al. 2011, 2015), place favours the middle of the picture (Cheng et al. 2015). Share counts contrast × place × visible area. The score is the geometric mean of share, unhidden part, lead and vessel, each full inside its band.'

const partsOf = (engine: Engine, p: Prominence) => {
  const { form } = engine.resolved.document
  const held = (m: Measured) => hold('focal-prominence', form, m)
  return [
    held({
      key: 'focalShare',
      name: "Focal flowers' share of the eye",
      value: p.focalShare ?? 0,
      unit: '',
      scale: [0, 1],
      rule: `Of all that blooms, leaves and vessel draw, twelve ways round and from above, the focal blooms' part, for ${formWords(form)}.`,
    }),
    held({
      key: 'focalVisible',
      name: 'Focal flowers unhidden',
      value: p.focalVisible ?? 0,
      unit: '',
      scale: [0, 1],
      rule: 'Share of the focal blooms that nothing hides, mean of twelve ways round. A bloom that faces one side is hidden from the other.',
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
      name: 'Vessel against the focal flower',
      value: p.vesselPull ?? 0,
      unit: '×',
      scale: [0, 3],
      rule: 'What the vessel draws against the strongest focal bloom: the flowers come first.',
    }),
  ]
}

/** Score alone, for trying edits out. */
export const scoreProminence = (engine: Engine): number | null => {
  const p = measureProminence(engine)
  return p.focal.length === 0 ? null : scoreOf(partsOf(engine, p).map((x) => x.part))
}

const factor = (key: string, name: string, value: number, unit: string, scale: [number, number]): Held => ({
  key,
  name,
  value,
  unit,
  scale,
  band: null,
  rule: 'What this factor did for the strongest focal bloom.',
  source: 'Cheng et al., CVPR 2011 and TPAMI 2015; the local scales and the visible width are ours',
})

const because = (engine: Engine, p: Prominence): Because => {
  const [share, ...others] = partsOf(engine, p).map((x) => x.held)
  const best = p.stems.find((d) => p.focal.includes(d.place))!
  const views = engine.seen().byWay.length + 1
  const wide = Math.sqrt(best.pixels / views) * engine.frame.grid.mm
  return {
    main: share!,
    others: [
      ...others,
      factor('focalContrast', 'Contrast of the strongest focal bloom', best.contrast, 'ΔE', [0, 100]),
      factor('focalPlace', 'Its place', best.where, '', [0, 1]),
      factor('focalWidth_mm', 'Its visible width', wide, 'mm', [0, 150]),
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
    because: because(engine, p),
    advice: [],
    marks,
  }
}
