import type { Vessel } from '../arrangement/index.ts'
import { widestSection } from '../geometry/index.ts'
import { bandOf } from './bands.ts'
import type { Engine } from './engine.ts'
import { HALF_WAYS, spanAcross, turnOf } from './extents.ts'
import { standsOnTable, WIDER_THAN_TABLE } from './on-table.ts'
import type { Mark, ReadingResult } from './types.ts'
import { formWords, hold, inMm, type Lengths, notApplicable, scoreOf } from './words.ts'

export interface Proportion {
  /** Height of blooms and leaves over the rim, mm. */
  height: number
  /** Widest extent over the rim of all ways round, mm, and where. */
  spread: number
  way: number
  from: number
  to: number
  heightRatio: number
  spreadRatio: number
  vesselShare: number
  tableShare: number
  /** Height of vessel and plants over the table, mm. */
  top: number
}

/** A vessel is as wide as its widest part, outside, mm: of a bud vase its belly, not its mouth. */
export const vesselWidth = (vessel: Vessel): number => {
  const { a, b } = widestSection(vessel)
  return 2 * Math.max(a, b)
}

/** Measured on the stand-ins' own edges, not on pixels. Null when nothing stands over the rim. */
export const measureProportion = (engine: Engine): Proportion | null => {
  const { resolved, ready } = engine
  const { vessel, document } = resolved
  let height = 0
  for (const r of ready) height = Math.max(height, r.top)
  if (!(height > 0)) return null
  let [spread, way, from, to] = [0, 0, 0, 0]
  for (let w = 0; w < HALF_WAYS; w++) {
    const [a, b] = spanAcross(ready, w)
    if (b - a > spread + 1e-6) [spread, way, from, to] = [b - a, w, a, b]
  }
  const width = vesselWidth(vessel)
  const { table } = document.setting
  return {
    height,
    spread,
    way,
    from,
    to,
    heightRatio: height / Math.max(vessel.height, width),
    spreadRatio: spread / width,
    vesselShare: vessel.height / (vessel.height + height),
    top: vessel.height + height,
    tableShare: spread / (table.shape === 'round' ? table.diameter : table.length),
  }
}

const partsOf = (engine: Engine, p: Proportion, lengths: Lengths) => {
  const { document, vessel } = engine.resolved
  const { form } = document
  const larger = vessel.height > vesselWidth(vessel) ? 'height' : 'width'
  const height = hold('proportion', document, {
    key: 'heightRatio',
    name: 'Height to the vessel',
    value: p.heightRatio,
    unit: '×',
    scale: [0, 4],
    rule: `Height of the plants over the rim against the vessel's ${larger}, the larger of its two. Other teachers measure from the table (1.5–2 × the vessel's height in all), or do not say whether the vessel counts; between 0.5 and 2.5 × some teacher allows it.`,
    without: `A low design is exempt from the height rule (Indian Council of Agricultural Research, e-course Flower Arrangement).`,
  })
  const spread = hold('proportion', document, {
    key: 'spreadRatio',
    name: 'Spread to the vessel',
    value: p.spreadRatio,
    unit: '×',
    scale: [0, 5],
    rule: `Widest extent over the rim, any way round, against the vessel's width at its widest, for ${formWords(form)}.`,
  })
  const share = hold('proportion', document, {
    key: 'vesselShare',
    name: "Vessel's share of the height",
    value: p.vesselShare,
    unit: '',
    scale: [0, 1],
    rule: 'Height of the vessel against the whole height from the table.',
    without: 'A low design is exempt from the height rule, and so from this.',
  })
  const table = hold('proportion', document, {
    key: 'tableShare',
    name: 'Share of the table',
    value: p.tableShare,
    unit: '',
    scale: [0, 1],
    rule: 'Widest extent against the diameter or length of the table; about a third at most leaves room for plates.',
    without:
      'common practice; a third of the length is in the Sope Creek Garden Club class notes. Not part of the score.',
  })
  // Only a low piece has a ceiling, or one of which a person wants it.
  const ceiling = bandOf('proportion', 'topOverTable_mm', document)
    ? hold('proportion', document, {
        key: 'topOverTable_mm',
        name: 'Top over the table',
        value: p.top,
        unit: 'mm',
        scale: [0, 600],
        rule: `Height of vessel and plants over the table. A low piece ends under ${lengths(305)} to ${lengths(356)}, whatever its vessel, so that one sees over it.`,
      })
    : null
  return { height, spread, share, table, ceiling }
}

export const readProportion = (engine: Engine, lengths: Lengths = inMm): ReadingResult => {
  const p = measureProportion(engine)
  const none = {
    heightRatio: null,
    spreadRatio: null,
    vesselShare: null,
    tableShare: null,
    topOverTable_mm: null,
    height_mm: null,
    spread_mm: null,
  }
  if (!p) {
    const why = engine.resolved.stems.length === 0 ? 'There are no stems yet.' : 'No bloom or leaf stands over the rim.'
    return notApplicable('proportion', why, none)
  }
  const values = {
    heightRatio: p.heightRatio,
    spreadRatio: p.spreadRatio,
    vesselShare: p.vesselShare,
    tableShare: p.tableShare,
    topOverTable_mm: p.top,
    height_mm: p.height,
    spread_mm: p.spread,
  }
  const { vessel, document } = engine.resolved
  // What is wrong then is the vessel: nothing in it mends that.
  if (!standsOnTable(vessel, document.setting.table)) return notApplicable('proportion', WIDER_THAN_TABLE, values)
  const { height, spread, share, table, ceiling } = partsOf(engine, p, lengths)
  const larger = Math.max(vessel.height, vesselWidth(vessel))
  const marks: Mark[] = [
    { kind: 'level', z: p.height, label: `${p.heightRatio.toFixed(1)} ×` },
    {
      kind: 'span',
      view: 'elevation',
      turn: turnOf(p.way),
      from: [p.from, 0],
      to: [p.to, 0],
      // The sheet's own width counts what hangs below the rim as well.
      label: `${lengths(p.spread)} over the rim`,
    },
  ]
  // Where the height is not as wanted, the nearer end of what is.
  if (height.held.band && (height.part ?? 1) < 1) {
    const end = p.heightRatio < height.held.band[0] ? height.held.band[0] : height.held.band[1]
    marks.push({
      kind: 'level',
      z: end * larger,
      label: `${Number(end.toFixed(2))} × ${height.held.wants?.own ? 'your own wish' : 'wanted'}`,
    })
  }
  const most = ceiling?.held.wants?.ends[1]
  if (ceiling && most && (ceiling.part ?? 1) < 1 && marks.length < 3)
    marks.push({ kind: 'level', z: most - vessel.height, label: `${lengths(most)} over the table` })
  return {
    id: 'proportion',
    score: scoreOf([height.part, spread.part, share.part, ceiling?.part ?? null]),
    notApplicable: '',
    values,
    because: {
      main: height.held,
      others: [...(ceiling ? [ceiling.held] : []), spread.held, share.held, table.held],
      how: `Full inside each band, falling smoothly outside it; the score is the geometric mean of ${
        ceiling ? 'what is held of height, spread, share and top' : 'height, spread and share'
      }.`,
      trust: 'The lengths are measured; the rule is a habit of teaching, and teachers read it in three ways.',
    },
    advice: [],
    marks,
  }
}
