import type { Point2 } from '../arrangement/index.ts'
import { bandOf } from './bands.ts'
import { dentCentre, largestDent } from './dents.ts'
import type { Engine } from './engine.ts'
import { SIDE, turnOf } from './extents.ts'
import { ofFullDesign } from './few-stems.ts'
import type { MouthGap } from './mouth.ts'
import type { Held, Mark, ReadingResult } from './types.ts'
import { formWords, hold, inMm, type Lengths, notApplicable, percent, scoreOf, shown, sideWords } from './words.ts'

export interface Space {
  /** 1 − seen area ÷ area of its convex hull, mean over the ways round. */
  voidFraction: number
  /** The part of it that is open to the outside: air. The rest is closed in by mass: holes. */
  airFraction: number
  /**
   * Diameter of the largest circle in a gap enclosed by mass, the worst way round, or in a crater seen from above, mm; 0
   * where there is none.
   */
  hole: number
  /** It is seen from above. */
  above: boolean
  /** Where: way round (degrees; 0 from above) and place in that elevation, or in the plan. */
  turn: number
  centre: Point2
  /** Largest extent of what stands over the rim, mm, over all ways round. */
  reach: number
  mouthShowing: number
  mouthTurn: number
  /** The widest bare circle of the mouth from there. */
  gap: MouthGap
  /** Hull of the way round with the worst hole, mm. */
  hull: Point2[]
}

/** Null when no bloom or leaf stands over the rim. */
export const measureSpace = (engine: Engine): Space | null => {
  const { mm, zeroRow } = engine.frame.grid
  const air = engine.air()
  const seen = air.filter((a) => a.massPixels > 0)
  if (seen.length === 0) return null
  const x = (column: number): number => (column + 0.5 - SIDE / 2) * mm
  const z = (row: number): number => (row + 0.5 - zeroRow) * mm
  let worst = air.indexOf(seen[0]!)
  let reach = 0
  air.forEach((a, way) => {
    if (a.radius > air[worst]!.radius) worst = way
    for (const c of [0, 1]) {
      const at = a.hull.filter((_, i) => i % 2 === c)
      if (at.length > 0) reach = Math.max(reach, (Math.max(...at) - Math.min(...at) + 1) * mm)
    }
  })
  const w = air[worst]!
  const crater = largestDent(engine)
  const above = crater.radius > w.radius
  const mouth = engine.mouth()
  const mouthShowing = Math.max(...mouth)
  const mouthWay = mouth.indexOf(mouthShowing)
  const hull: Point2[] = []
  for (let i = 0; i < w.hull.length; i += 2) hull.push([x(w.hull[i]!), z(w.hull[i + 1]!)])
  const mean = (of: (a: (typeof seen)[number]) => number): number =>
    seen.reduce((sum, a) => sum + of(a), 0) / seen.length
  return {
    voidFraction: mean((a) => 1 - a.massPixels / a.hullPixels),
    airFraction: mean((a) => 1 - (a.massPixels + a.enclosed) / a.hullPixels),
    hole: 2 * (above ? crater : w).radius * mm,
    above,
    turn: above ? 0 : turnOf(worst),
    centre: above ? dentCentre(crater, mm) : [x(w.column), z(w.row)],
    reach,
    mouthShowing,
    mouthTurn: turnOf(mouthWay),
    gap: engine.mouthGap(mouthWay),
    hull,
  }
}

/** A hole narrower than this is a chink between two petals and is not marked, mm. Ours. */
const LEAST_HOLE = 8

/** `40 mm to the left of the middle` */
const asideWords = (x: number, lengths: Lengths): string =>
  Math.abs(x) < 5 ? 'in the middle' : `${lengths(Math.abs(x))} to the ${x > 0 ? 'right' : 'left'} of the middle`

/** `seen from the front, 150 mm over the rim and 40 mm to the left of the middle`, `seen from above, …` */
export const holeWords = (
  { above, turn, centre: [x, z] }: Pick<Space, 'above' | 'turn' | 'centre'>,
  lengths: Lengths,
): string => {
  const aside = asideWords(x, lengths)
  if (above)
    return `seen from above, ${Math.abs(z) < 5 ? aside : `${aside} and ${lengths(Math.abs(z))} ${z > 0 ? 'behind' : 'before'} it`}`
  return `seen from ${sideWords(turn)}, ${lengths(z)} over the rim and ${aside}`
}

const partsOf = (engine: Engine, s: Space, lengths: Lengths) => {
  const { document } = engine.resolved
  const { form, vessel, stems } = document
  const closed = s.voidFraction - s.airFraction
  const { held, part } = hold('negative-space', document, {
    key: 'voidFraction',
    name: 'Air, open to the outside',
    value: s.airFraction,
    unit: '',
    scale: [0, 1],
    rule: `What is open of the outline's convex hull, over the rim, mean of all ways round, for ${formWords(form)}. Bare stems are air. What blooms and leaves close in, ${percent(closed)}, is holes and not counted.`,
  })
  // The band keeps its name; what is held is the part of the void that is air.
  const open = ofFullDesign({ held: { ...held, key: 'airFraction' }, part }, stems)
  const share = s.reach > 0 ? s.hole / s.reach : 0
  const hole_ = hold('negative-space', document, {
    key: 'holeShare',
    name: 'Largest hole to the whole',
    value: share,
    unit: '',
    scale: [0, 0.5],
    rule: 'Largest circle in a gap that blooms and leaves close in, the worst way round or in a crater seen from above (where poured water would stand, deeper than a quarter of the height), against the widest extent.',
  })
  const hole = ofFullDesign(hole_, stems)
  const band = bandOf('negative-space', 'holeShare', document)!
  const most = Math.max(1, 0.5 * s.reach)
  const where =
    s.hole >= LEAST_HOLE ? `It is ${holeWords(s, lengths)}.` : 'No gap is closed in that is wider than a chink.'
  const hole_mm: Held = {
    ...shown('largestHole_mm', 'Largest hole', s.hole, 'mm', [0, most], where, hole.held.source),
    band: hole.part === null ? null : [0, Math.min(most, band.band[1] * s.reach)],
  }
  const mouth = hold('negative-space', document, {
    key: 'mouthShowing',
    name: 'Mouth showing',
    value: s.mouthShowing,
    unit: '',
    scale: [0, 1],
    rule: `Share of the mouth that is seen uncovered from 45° above, the worst way round, ${sideWords(s.mouthTurn)}; the widest bare circle is ${lengths(2 * s.gap.radius)}.${vessel.mechanics === 'none' ? ' There are no mechanics to hide, so it does not count.' : ''}`,
  })
  const counts = vessel.mechanics === 'none' ? [open.part, hole.part] : [open.part, hole.part, mouth.part]
  return { open, hole, hole_mm, mouth, share, score: scoreOf(counts) }
}

export const readSpace = (engine: Engine, lengths: Lengths = inMm): ReadingResult => {
  const s = measureSpace(engine)
  if (!s) {
    const mouth = engine.mouth()
    const why = engine.resolved.stems.length === 0 ? 'There are no stems yet.' : 'No bloom or leaf stands over the rim.'
    return notApplicable('negative-space', why, {
      voidFraction: null,
      airFraction: null,
      largestHole_mm: null,
      mouthShowing: Math.max(0, ...mouth),
      mouthGap_mm: null,
      holeShare: null,
      holeTurn_deg: null,
    })
  }
  const { open, hole, hole_mm, mouth, share, score } = partsOf(engine, s, lengths)
  const values = {
    voidFraction: s.voidFraction,
    airFraction: s.airFraction,
    largestHole_mm: s.hole,
    mouthShowing: s.mouthShowing,
    mouthGap_mm: 2 * s.gap.radius,
    holeShare: share,
    holeTurn_deg: s.above ? null : s.turn,
    mouthTurn_deg: s.mouthTurn,
  }
  if (score === null)
    return notApplicable(
      'negative-space',
      'One stem or two stand in the open: air and holes are read from three stems on.',
      values,
    )
  const marks: Mark[] = []
  // The hull helps only where the air is not as wanted.
  if (s.hull.length > 2 && (open.part ?? 1) < 1)
    marks.push({
      kind: 'outline',
      view: 'elevation',
      turn: s.turn,
      points: s.hull,
      label: `air ${percent(s.airFraction)}`,
    })
  if (hole.part !== null && s.hole >= LEAST_HOLE)
    marks.push({
      kind: 'circle',
      ...(s.above ? { view: 'plan' } : { view: 'elevation', turn: s.turn }),
      centre: s.centre,
      radius: s.hole / 2,
      label: `hole ⌀ ${lengths(s.hole)}`,
    })
  // A bare mouth is a hole too, where it shows what holds the stems.
  if (engine.resolved.vessel.mechanics !== 'none' && (mouth.part ?? 1) < 1 && 2 * s.gap.radius >= LEAST_HOLE)
    marks.push({
      kind: 'circle',
      view: 'plan',
      centre: s.gap.centre,
      radius: s.gap.radius,
      label: `mechanics ⌀ ${lengths(2 * s.gap.radius)}`,
    })
  return {
    id: 'negative-space',
    score,
    notApplicable: '',
    values,
    because: {
      // Of one or two stems the mouth is all that counts.
      main: open.part === null ? mouth.held : open.held,
      others: [
        ...(open.part === null ? [open.held] : []),
        hole_mm,
        hole.held,
        ...(open.part === null ? [] : [mouth.held]),
      ],
      how: 'Air is what is open to the outside; a hole is what blooms and leaves close in, or what shows the mechanics. Full inside each band, falling smoothly outside it; the score is the geometric mean of air, hole and mouth.',
      trust: 'The areas are measured on light stand-ins of the flowers; how much air a form wants is our own scale.',
    },
    advice: [],
    marks,
  }
}
