import { GENERAL_CAUTIONS } from '../catalogue/index.ts'
import { openingOf } from './crowding.ts'
import type { Engine } from './engine.ts'
import { reasonWords } from './loose-words.ts'
import { type Mechanical, measureMechanics, stemsWhere } from './measure-mechanics.ts'
import type { Because, Held, Mark, ReadingResult } from './types.ts'
import { LIES, throughTable } from './under-table.ts'
import { hold, inMm, type Lengths, notApplicable, scoreOf, shown } from './words.ts'

const share = (some: number, all: number): number => (all > 0 ? some / all : 0)

const partsOf = (engine: Engine, m: Mechanical, lengths: Lengths) => {
  const { document, stems } = engine.resolved
  const held = (key: string, name: string, some: number, rule: string) =>
    hold('mechanics', document, { key, name, value: share(some, stems.length), unit: '', scale: [0, 1], rule })
  const crowding = hold('mechanics', document, {
    key: 'crowding',
    name: 'How full the neck is',
    value: m.crowding,
    unit: '',
    scale: [0, 1],
    rule: `The smallest opening that ${stems.length === 1 ? 'such a stem passes' : `${stems.length} such stems pass`} is ${lengths(m.needed_mm)} across, the neck ${lengths(m.opening_mm)}; as areas, so that 1 is as tight as circles are known to pack (E. Specht). Stems that cross need slack.`,
  })
  const kept = held(
    'heldShare',
    'Stems that stay as drawn',
    m.holds.filter((h) => !h.loose).length,
    `Stems that rim, wall, depth in the vessel and mechanics hold at their lean, of all stems.${reasonWords(m.holds)}`,
  )
  const dry = held(
    'dryShare',
    'Ends out of water',
    m.holds.filter((h) => h.dry).length,
    'Stems whose cut end stands above the waterline, of all stems; soaked foam waters what is pushed into it.',
  )
  const under = held(
    'underWaterShare',
    'Leaf or bloom under water',
    m.under.filter(Boolean).length,
    'Stems with leaf or bloom under the waterline, of all stems: it rots and shortens the life of the rest. Strip it.',
  )
  const table = held(
    'throughTableShare',
    'Stems through the table',
    m.below_mm.reduce((sum, mm) => sum + throughTable(mm), 0),
    `Stems that are drawn through the table top, of all stems: no table lets them. A trail may lie on it; what goes up to ${lengths(LIES)} under counts as lying, what goes a little farther counts in part.`,
  )
  return { crowding, kept, dry, under, table }
}

const CARE = {
  netting: 'wire netting',
  foam: 'foam',
} as const

/** The usual caution for what holds the stems, and who has the last word. */
const cautionFor = (engine: Engine): string => {
  const { mechanics } = engine.resolved.vessel
  const word = mechanics === 'netting' || mechanics === 'foam' ? CARE[mechanics] : null
  const known = GENERAL_CAUTIONS.find((c) => word !== null && c.text.includes(word))
  if (known) return ` ${known.text}`
  return mechanics === 'pin-holder' ? ' Pins are sharp: set it down before the stems, and keep it from children.' : ''
}

const because = (
  engine: Engine,
  m: Mechanical,
  { crowding, kept, dry, under, table }: ReturnType<typeof partsOf>,
): Because => {
  const others: Held[] = [crowding.held, dry.held, under.held, table.held]
  others.push(
    shown(
      'sharedShare',
      'Two in one place',
      share(m.shares.filter(Boolean).length, m.shares.length),
      '',
      [0, 1],
      'Stems that cross the mouth nearer to another one than half of their thicknesses, of all stems. In the hand one of them goes beside the other.',
      'measured; only shown, not part of the score',
    ),
  )
  if (engine.resolved.vessel.mechanics !== 'none') {
    const showing = Math.max(0, ...engine.mouth())
    others.push(
      shown(
        'mouthShowing',
        'Mechanics showing',
        showing,
        '',
        [0, 1],
        'Share of the mouth that is seen uncovered from 45° above, the worst way round. It counts in the reading of air and holes.',
        'measured as there',
      ),
    )
  }
  return {
    main: kept.held,
    others,
    how: 'Full inside each band, falling smoothly outside it; the score is the geometric mean of support, neck, ends in water, leaves out of it and table.',
    trust: `Each stem is taken as a stiff rod by itself; neighbours hold one another up more than is reckoned, and soft stems bend. What grips how far is ours or common practice. Try it with one stem of each kind.${cautionFor(engine)} The venue’s rules come first.`,
  }
}

/** The stems that a person should see to first, and the neck. The water is drawn already. */
const marksOf = (engine: Engine, m: Mechanical, { crowding }: ReturnType<typeof partsOf>, lengths: Lengths): Mark[] => {
  const marks: Mark[] = []
  const ids = (is: (place: number) => boolean): string[] => stemsWhere(engine, is).map((s) => s.id)
  const first = [
    { kind: 'stems' as const, ids: ids((i) => m.holds[i]!.loose === 'neck'), label: 'does not go into the neck' },
    { kind: 'stems' as const, ids: ids((i) => throughTable(m.below_mm[i]!) > 0), label: 'through the table' },
    { kind: 'stems' as const, ids: ids((i) => m.holds[i]!.loose !== null), label: 'would not stay' },
    { kind: 'stems' as const, ids: ids((i) => m.holds[i]!.dry), label: 'end out of water' },
    { kind: 'stems' as const, ids: ids((i) => m.under[i]!), label: 'leaf or bloom under water' },
  ].find((mark) => mark.ids.length > 0)
  if (first) marks.push(first)
  // The neck is drawn where it is too full, or where nothing else is amiss.
  if (marks.length === 0 || crowding.part !== 1)
    marks.push({
      kind: 'circle',
      view: 'plan',
      centre: [0, 0],
      radius: m.needed_mm / 2,
      label: `stems need ⌀ ${lengths(m.needed_mm)} of ${lengths(m.opening_mm)}`,
    })
  return marks
}

export const readMechanics = (engine: Engine, lengths: Lengths = inMm): ReadingResult => {
  const { stems, vessel } = engine.resolved
  const m = measureMechanics(engine)
  if (!m)
    return notApplicable('mechanics', stems.length === 0 ? 'There are no stems yet.' : 'The walls close the mouth.', {
      crowding: stems.length === 0 ? 0 : null,
      unsupported: [],
      unsupportedWhy: [],
      heldShare: null,
      dryEnds: [],
      underWater: [],
      throughTable: [],
      underTable_mm: 0,
      sharedPlace: [],
      opening_mm: openingOf(vessel),
      needed_mm: 0,
      leanMost_deg: null,
    })
  const parts = partsOf(engine, m, lengths)
  const ids = (is: (place: number) => boolean): string[] => stemsWhere(engine, is).map((s) => s.id)
  return {
    id: 'mechanics',
    score: scoreOf([parts.kept.part, parts.crowding.part, parts.dry.part, parts.under.part, parts.table.part]),
    notApplicable: '',
    values: {
      crowding: m.crowding,
      unsupported: ids((i) => m.holds[i]!.loose !== null),
      unsupportedWhy: m.holds.flatMap((h) => (h.loose ? [h.loose] : [])),
      heldShare: parts.kept.held.value,
      dryEnds: ids((i) => m.holds[i]!.dry),
      underWater: ids((i) => m.under[i]!),
      throughTable: ids((i) => throughTable(m.below_mm[i]!) > 0),
      underTable_mm: m.below_mm.reduce((most, mm) => Math.max(most, mm), 0),
      sharedPlace: ids((i) => m.shares[i]!),
      opening_mm: m.opening_mm,
      needed_mm: m.needed_mm,
      leanMost_deg: m.holds.reduce((most, h) => Math.max(most, h.lean_deg), 0),
    },
    because: because(engine, m, parts),
    advice: [],
    marks: marksOf(engine, m, parts, lengths),
  }
}
