import type { Engine } from './engine.ts'
import { turnOf } from './extents.ts'
import { ofFullDesign } from './few-stems.ts'
import type { Mark, ReadingResult } from './types.ts'
import { weigh } from './visual-weight.ts'
import { formWords, hold, notApplicable, percent, scoreOf } from './words.ts'

export interface Balance {
  /** Each way round, distance of the centre of weight from the axis ÷ greatest reach, right positive; null where nothing shows. */
  offsets: (number | null)[]
  /** The way with the greatest one. */
  way: number
  offsetWorst: number
  offsetFront: number | null
  /** From above: distance from the axis ÷ greatest reach, 0–1. */
  offsetPlan: number
  /** Height of the centre of weight ÷ height of blooms and leaves over the rim, mean of all ways round. */
  topHeaviness: number
  weightAboveHalf: number
  /** Centre of weight in each elevation, and in the plan, mm. */
  centres: ([x: number, z: number] | null)[]
  plan: [x: number, y: number]
}

/** Null when no bloom or leaf shows over the rim. */
export const measureBalance = (engine: Engine): Balance | null => {
  const weighed = weigh(engine)
  if (!weighed) return null
  const { ways, plan, aboveHalf, height } = weighed
  const offsets = ways.map((w) => w && w.x / w.reach)
  let way = -1
  offsets.forEach((o, i) => {
    if (o === null) return
    // Opposite sides often tie, one left, one right: the right one is named, whichever comes first.
    const more = way < 0 ? 1 : Math.abs(o) - Math.abs(offsets[way]!)
    if (more > 1e-6 || (more > -1e-6 && o > offsets[way]!)) way = i
  })
  const shown = ways.filter((w) => w !== null)
  return {
    offsets,
    way,
    offsetWorst: offsets[way]!,
    offsetFront: offsets[0]!,
    offsetPlan: plan ? Math.hypot(plan.x, plan.y) / plan.reach : 0,
    topHeaviness: shown.reduce((sum, w) => sum + w.z / height, 0) / shown.length,
    weightAboveHalf: aboveHalf,
    centres: ways.map((w) => w && [w.x, w.z]),
    plan: plan ? [plan.x, plan.y] : [0, 0],
  }
}

/** `23 % of the reach to the left`; nothing of a side where it rounds to none. */
export const offsetWords = (offset: number): string => {
  const size = percent(Math.abs(offset))
  return size === percent(0) ? size : `${size} of the reach to the ${offset > 0 ? 'right' : 'left'}`
}

const SIDES: [under: string, over: string] = ['left', 'right']

const partsOf = (engine: Engine, b: Balance) => {
  const { document } = engine.resolved
  const { form } = document
  const worst = hold('visual-balance', document, {
    key: 'offsetWorst',
    name: 'Off the axis, worst way',
    value: b.offsetWorst,
    unit: '',
    scale: [-0.5, 0.5],
    beyond: SIDES,
    rule: `Centre of visual weight from the axis against the greatest reach, right positive, the worst way round, for ${formWords(form)}. A visible pixel of a bloom or leaf weighs 1 where it is light (L 85 and more) to 3 where it is dark (L 25 and less), evenly between, since one dark flower balances about three light ones (Indian Council of Agricultural Research, e-course Flower Arrangement).`,
  })
  const front = hold('visual-balance', document, {
    key: 'offsetFront',
    name: 'Off the axis, from the front',
    value: b.offsetFront ?? 0,
    unit: '',
    scale: [-0.5, 0.5],
    beyond: SIDES,
    rule: 'The same, seen from the front.',
    without: 'ours: only shown, since a table has no front; the worst way round is what counts',
  })
  const top = hold('visual-balance', document, {
    key: 'topHeaviness',
    name: 'Height of the weight',
    value: b.topHeaviness,
    unit: '',
    scale: [0, 1],
    beyond: ['low', 'top-heavy'],
    rule: 'Height of the centre of weight over the rim against the height of blooms and leaves, mean of all ways round: what is large and dark belongs low.',
  })
  const above = hold('visual-balance', document, {
    key: 'weightAboveHalf',
    name: 'Weight over half height',
    value: b.weightAboveHalf,
    unit: '',
    scale: [0, 1],
    rule: 'Share of the weight over half of the height of blooms and leaves, all ways round.',
  })
  const plan = hold('visual-balance', document, {
    key: 'offsetPlan',
    name: 'Off the axis, from above',
    value: b.offsetPlan,
    unit: '',
    scale: [0, 0.5],
    rule: 'Centre of the weight seen from above, its distance from the axis against the greatest reach.',
  })
  const { stems } = engine.resolved
  return { worst: ofFullDesign(worst, stems), front, top: ofFullDesign(top, stems), above, plan }
}

/** So little off that a dimension would have no length, fraction of the reach. Ours. */
const LEAST_MARK = 0.02

const marksOf = (b: Balance): Mark[] => {
  const turn = turnOf(b.way)
  const [x, z] = b.centres[b.way]!
  const marks: Mark[] = []
  if (Math.abs(b.offsetWorst) < LEAST_MARK) return marks
  marks.push({
    kind: 'span',
    view: 'elevation',
    turn,
    from: [0, z],
    to: [x, z],
    label: `weight ${percent(Math.abs(b.offsetWorst))} ${SIDES[b.offsetWorst > 0 ? 1 : 0]}`,
  })
  // The axis, as high again as the centre lies: what the dimension is measured from.
  marks.push({ kind: 'span', view: 'elevation', turn, from: [0, 0], to: [0, 2 * z], label: '' })
  if (b.offsetPlan >= LEAST_MARK)
    marks.push({ kind: 'span', view: 'plan', from: [0, 0], to: b.plan, label: `weight ${percent(b.offsetPlan)} off` })
  return marks
}

export const readBalance = (engine: Engine): ReadingResult => {
  const b = measureBalance(engine)
  if (!b) {
    const why = engine.resolved.stems.length === 0 ? 'There are no stems yet.' : 'No bloom or leaf shows over the rim.'
    return notApplicable('visual-balance', why, {
      offsetWorst: null,
      offsetWorstTurn_deg: null,
      offsetFront: null,
      offsetPlan: null,
      topHeaviness: null,
      weightAboveHalf: null,
    })
  }
  const values = {
    offsetWorst: b.offsetWorst,
    offsetWorstTurn_deg: turnOf(b.way),
    offsetFront: b.offsetFront,
    offsetPlan: b.offsetPlan,
    topHeaviness: b.topHeaviness,
    weightAboveHalf: b.weightAboveHalf,
  }
  const { worst, front, top, above, plan } = partsOf(engine, b)
  const score = scoreOf([worst.part, top.part])
  if (score === null)
    return notApplicable(
      'visual-balance',
      'One stem or two have their weight where they stand: there is nothing to balance it with.',
      values,
    )
  const seenFromFront = b.offsetFront !== null
  return {
    id: 'visual-balance',
    score,
    notApplicable: '',
    values,
    because: {
      main: worst.held,
      others: [...(seenFromFront ? [front.held] : []), top.held, plan.held, above.held],
      how: 'Full inside each band, falling smoothly outside it; the score is the geometric mean of the worst way round and the height of the weight.',
      trust:
        'Area and place are measured. That area adds to the weight is well supported; of darkness studies disagree, its number is one teacher’s rule of thumb, and vivid or warm colours may weigh more than is counted here.',
    },
    advice: [],
    marks: marksOf(b),
  }
}
