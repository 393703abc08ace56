import { cosSin, shownHalfWidth, widestSection } from '../geometry/index.ts'
import type { Engine } from './engine.ts'
import { HALF_WAYS, SIDE, turnOf, WAYS } from './extents.ts'
import { bitsIn, FACE_PIXELS, ROWS } from './face-picture.ts'
import { guestView } from './guest-view.ts'
import { EYE_HIGH, EYE_LOW, FACE, GUESTS, halfTable } from './guests.ts'
import { standsOnTable, WIDER_THAN_TABLE } from './on-table.ts'
import type { Held, Mark, ReadingResult } from './types.ts'
import { hold, inMm, type Lengths, notApplicable, scoreOf } from './words.ts'

export interface Sight {
  /** Share of the face opposite that is hidden, mean of all ways round and of short, middling and tall pairs. */
  blocked: number
  /** Each way round, mean of the pairs; null where the piece would reach over the table's edge. */
  ways: (number | null)[]
  /** The worst way, −1 for none. */
  way: number
  blockedWorst: number
  /** Mean of all ways round, for each pair. */
  pairs: number[]
  /** Share that the vessel alone hides, mean. */
  vessel: number
  /** Pixels that a stem hides, by its place. */
  stems: number[]
  top: number
  /** Underside over the table of what is wide enough to hide a face; null where nothing is. */
  underside: number | null
}

/** As wide as half a head: what hides a face from side to side halfway across the table, mm. */
const WIDE = FACE.width / 2

/** The least height over the rim at which blooms and leaves are that wide from some side; none of it is under the table. */
const undersideOf = (engine: Engine): number | null => {
  const { mm, zeroRow } = engine.frame.grid
  const least = WIDE / mm
  for (let r = Math.max(0, Math.ceil(zeroRow - engine.resolved.vessel.height / mm)); r < SIDE; r++)
    for (let way = 0; way < HALF_WAYS; way++) {
      const mass = engine.layers[way]!.mass!
      let wide = 0
      for (let i = r * SIDE; i < (r + 1) * SIDE; i++) wide += mass[i]!
      if (wide >= least) return (r - zeroRow) * mm
    }
  return null
}

/** How far plants and vessel reach toward each seat or the one opposite, mm: whichever is more, and the vessel alone. */
const reachEachWay = ({ resolved: { vessel }, ready }: Engine): { all: Float64Array; vessel: Float64Array } => {
  const [all, body] = [new Float64Array(WAYS), new Float64Array(WAYS)]
  const widest = widestSection(vessel)
  for (let way = 0; way < WAYS; way++) {
    const aside = (way + HALF_WAYS / 2) % HALF_WAYS
    const [c, s] = cosSin(turnOf(aside))
    let most = shownHalfWidth(vessel, widest, c, s)
    body[way] = most
    for (let i = 0; i < ready.length; i++) {
      const { across } = ready[i]!
      const from = across[2 * aside]!
      const to = across[2 * aside + 1]!
      if (to > from) most = Math.max(most, -from, to)
    }
    all[way] = most
  }
  return { all, vessel: body }
}

type Unseen = 'no stems' | 'vessel' | 'plants'

/** What the guests see, or why it can't be said. */
export const measureSight = (engine: Engine): Sight | Unseen => {
  const { resolved, ready } = engine
  if (ready.length === 0) return 'no stems'
  const { table } = resolved.document.setting
  if (!standsOnTable(resolved.vessel, table)) return 'vessel'
  const half = halfTable(table)
  const reach = reachEachWay(engine)
  if (reach.vessel.every((r) => r >= half)) return 'vessel'
  const fits = Array.from(reach.all, (r) => r < half)
  if (!fits.includes(true)) return 'plants'
  const { rows, stems, vessel } = guestView(engine)
  const pairs = new Array<number>(GUESTS).fill(0)
  const count = fits.filter((f) => f).length
  let way = -1
  const ways = fits.map((fit, w) => {
    if (!fit) return null
    let sum = 0
    for (let g = 0; g < GUESTS; g++) {
      const at = (w * GUESTS + g) * ROWS
      const share = bitsIn(rows, at, at + ROWS) / FACE_PIXELS
      sum += share
      pairs[g]! += share / count
    }
    return sum / GUESTS
  })
  ways.forEach((v, w) => {
    if (v !== null && v > (way < 0 ? 0 : ways[way]!) + 1e-9) way = w
  })
  let top = 0
  for (const r of ready) top = Math.max(top, r.top)
  const underside = undersideOf(engine)
  return {
    blocked: pairs.reduce((sum, p) => sum + p, 0) / GUESTS,
    ways,
    way,
    blockedWorst: way < 0 ? 0 : ways[way]!,
    pairs,
    vessel: vessel.pixels / (FACE_PIXELS * GUESTS * WAYS),
    stems: stems.map((s) => s.pixels),
    top: top + resolved.vessel.height,
    underside: underside === null ? null : underside + resolved.vessel.height,
  }
}

const ANSUR =
  'Eyes and faces from ANSUR II, the 2012 survey of U.S. Army personnel, on a seat of 450 mm at a table of 762 mm (common practice), 100 mm behind its edge (ours)'

/**
 * Heights over the table that the trade names, mm. A low piece ends under 12 to 14 in, some say 15 (common practice). A
 * tall one begins at 22 in, where our figures put the eyes of tall guests, or at 24 in (common practice).
 */
const LOW: [number, number] = [305, 356]
const HIGH: [number, number] = [560, 610]

const partsOf = (engine: Engine, s: Sight, lengths: Lengths) => {
  const { document } = engine.resolved
  const blocked = hold('sight-line', document, {
    key: 'blockedFraction',
    name: 'Face opposite hidden',
    value: s.blocked,
    unit: '',
    scale: [0, 1],
    rule: `Share of the head of the guest straight across that plants and vessel hide, mean of twelve seats round the table and of short, middling and tall pairs. ${ANSUR}.`,
  })
  const worst = hold('sight-line', document, {
    key: 'blockedWorst',
    name: 'The same, worst seat',
    value: s.blockedWorst,
    unit: '',
    scale: [0, 1],
    rule: 'The same from the seat that sees least, mean of the pairs.',
  })
  const pair = (g: number, who: string, key: string): Held =>
    hold('sight-line', document, {
      key,
      name: `Between ${who} guests`,
      value: s.pairs[g]!,
      unit: '',
      scale: [0, 1],
      rule: `Mean of all seats, for two ${who} guests.`,
    }).held
  const high = s.underside !== null && s.underside >= HIGH[0]
  const most = Math.max(1000, s.top)
  const top: Held = {
    key: 'topOverTable_mm',
    name: 'Top over the table',
    value: s.top,
    unit: 'mm',
    scale: [0, most],
    band: high ? null : [0, LOW[1]],
    rule: `A low piece ends under ${lengths(LOW[0])} to ${lengths(LOW[1])}; so does what our figures allow two short guests. Not part of the score.`,
    source: 'common practice, 12–15 in',
  }
  const under: Held[] =
    s.underside === null
      ? []
      : [
          {
            key: 'undersideOverTable_mm',
            name: 'Underside over the table',
            value: s.underside,
            unit: 'mm',
            scale: [0, most],
            band: s.top <= LOW[1] ? null : [HIGH[0], most],
            rule: `Where blooms and leaves are first wider than ${lengths(round5(WIDE))}, half a head. In a tall piece that is at ${lengths(HIGH[0])} to ${lengths(HIGH[1])} or higher, over the eyes of tall guests. Not part of the score.`,
            source: 'common practice, 24 in; 22 in from ANSUR II',
          },
        ]
  const pairs = [pair(0, 'short', 'blockedShort'), pair(1, 'middling', 'blockedMid'), pair(2, 'tall', 'blockedTall')]
  return { blocked, worst, shown: [...pairs, top, ...under] }
}

const round5 = (mm: number): number => 5 * Math.round(mm / 5)

/** A stem that hides less than this part of all faces is not marked, and at most so many are. Ours. */
const LEAST_MARK = 0.01
const MOST_MARKED = 6

/** Places of the stems that hide most, most first. */
export const blockers = (s: Sight): number[] =>
  s.stems
    .map((pixels, i) => ({ pixels, i }))
    .filter(({ pixels }) => pixels > LEAST_MARK * FACE_PIXELS * WAYS * GUESTS)
    .sort((a, b) => b.pixels - a.pixels || a.i - b.i)
    .map(({ i }) => i)

const marksOf = (engine: Engine, s: Sight, lengths: Lengths): Mark[] => {
  const { vessel, stems } = engine.resolved
  const marks: Mark[] = []
  // A line far over everything would lie outside the sheet.
  for (const [eye, who] of [
    [EYE_LOW, 'short'],
    [EYE_HIGH, 'tall'],
  ] as const)
    if (eye <= s.top * 1.1)
      marks.push({ kind: 'level', z: eye - vessel.height, label: `${who} guests’ eyes, ${lengths(eye)}` })
  const ids = blockers(s)
    .slice(0, MOST_MARKED)
    .map((i) => stems[i]!.id)
  if (ids.length > 0) marks.push({ kind: 'stems', ids, label: 'hides a face' })
  return marks
}

const WHY: Record<Unseen, string> = {
  'no stems': 'There are no stems yet.',
  vessel: WIDER_THAN_TABLE,
  plants: 'It reaches over the edge of the table, whichever side one sits at.',
}

export const readSight = (engine: Engine, lengths: Lengths = inMm): ReadingResult => {
  const s = measureSight(engine)
  const eyes = { eyeLow_mm: EYE_LOW, eyeHigh_mm: EYE_HIGH }
  if (typeof s === 'string')
    return notApplicable('sight-line', WHY[s], {
      blockedFraction: null,
      blockedWorst: null,
      blockedWorstTurn_deg: null,
      blockedShort: null,
      blockedMid: null,
      blockedTall: null,
      topOverTable_mm: null,
      undersideOverTable_mm: null,
      ...eyes,
    })
  const { blocked, worst, shown } = partsOf(engine, s, lengths)
  const left = s.ways.filter((w) => w === null).length
  return {
    id: 'sight-line',
    score: scoreOf([blocked.part, worst.part]),
    notApplicable: '',
    values: {
      blockedFraction: s.blocked,
      blockedWorst: s.blockedWorst,
      blockedWorstTurn_deg: s.way < 0 ? null : turnOf(s.way),
      blockedShort: s.pairs[0]!,
      blockedMid: s.pairs[1]!,
      blockedTall: s.pairs[2]!,
      topOverTable_mm: s.top,
      undersideOverTable_mm: s.underside,
      ...eyes,
    },
    because: {
      main: blocked.held,
      others: [worst.held, ...shown],
      how: `Full inside each band, falling smoothly outside it; the score is the geometric mean of all seats together and the worst one.${left > 0 ? ` ${left} of 12 seats are left out, since there it would reach over the edge.` : ''}`,
      trust:
        'What is hidden is measured; the guests are upright adults of one size each pair, with one eye. Relaxed they sit 40–65 mm lower (from memory), and they move their heads, so that thin stems hide less than is counted. The piece stands in the middle; a long table is looked across.',
    },
    advice: [],
    marks: marksOf(engine, s, lengths),
  }
}
