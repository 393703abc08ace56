import { GENERAL_CAUTIONS } from '../catalogue/index.ts'
import { heightFraction, innerSection, PART_STRIDE, type ResolvedStem, reachIn, waterlineZ } from '../geometry/index.ts'
import { openingFor, openingOf } from './crowding.ts'
import type { Engine } from './engine.ts'
import { type Hold, holdsOf } from './held-stems.ts'
import type { Because, Held, Mark, ReadingResult } from './types.ts'
import { hold, inMm, type Lengths, notApplicable, scoreOf, shown } from './words.ts'

export interface Mechanical {
  /** Area of the smallest opening that the stems pass, over that of the neck: 1 where nothing more fits. */
  crowding: number
  needed_mm: number
  opening_mm: number
  holds: Hold[]
  /** Stems with bloom or leaf under the waterline. */
  under: boolean[]
}

/** Nothing that touches the water by less than this counts as under it, mm. Ours. */
const SPLASH = 3

const isUnder = (engine: Engine, place: number, level: number): boolean => {
  const { vessel } = engine.resolved
  const { parts } = engine.ready[place]!
  for (let o = 0; o < parts.length; o += PART_STRIDE) {
    if (parts[o + 1] === 2) continue
    const z = parts[o + 4]!
    if (z > level - SPLASH) continue
    const section = innerSection(vessel, Math.max(0, heightFraction(vessel, z)))
    if (reachIn(vessel, section, parts[o + 2]!, parts[o + 3]!) <= 1) return true
  }
  return false
}

export const measureMechanics = (engine: Engine): Mechanical => {
  const { stems, vessel } = engine.resolved
  const needed_mm = openingFor(stems.map((s) => s.plant.stemDiameter_mm.value))
  const opening_mm = openingOf(vessel)
  const crowding = opening_mm > 0 ? (needed_mm / opening_mm) ** 2 : Number.MAX_VALUE
  const level = waterlineZ(vessel)
  return {
    crowding,
    needed_mm,
    opening_mm,
    holds: holdsOf(engine.resolved, crowding),
    under: stems.map((_, i) => vessel.waterFill > 0 && isUnder(engine, i, level)),
  }
}

/** The stems of which something is so. */
export const stemsWhere = (engine: Engine, is: (place: number) => boolean): ResolvedStem[] =>
  engine.resolved.stems.filter((_, i) => is(i))

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
    rule: `The smallest opening that ${stems.length} such stems pass is ${lengths(m.needed_mm)} across, the neck ${lengths(m.opening_mm)}; as areas, so that 1 is as tight as circles are known to pack. Stems that cross need slack.`,
  })
  const kept = held(
    'heldShare',
    'Stems that stay as drawn',
    m.holds.filter((h) => !h.loose).length,
    'Stems that rim, wall, depth in the vessel and mechanics hold at their lean, of all stems.',
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
  return { crowding, kept, dry, under }
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

const because = (engine: Engine, m: Mechanical, lengths: Lengths): Because => {
  const { crowding, kept, dry, under } = partsOf(engine, m, lengths)
  const others: Held[] = [crowding.held, dry.held, under.held]
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
    how: 'Full inside each band, falling smoothly outside it; the score is the geometric mean of support, neck, ends in water and leaves out of it.',
    trust: `Each stem is taken as a stiff rod by itself; neighbours hold one another up more than is reckoned, and soft stems bend. What grips how far is ours or common practice. Try it with one stem of each kind.${cautionFor(engine)} The venue’s rules come first.`,
  }
}

const marksOf = (engine: Engine, m: Mechanical, lengths: Lengths): Mark[] => {
  const marks: Mark[] = []
  const ids = (is: (place: number) => boolean): string[] => stemsWhere(engine, is).map((s) => s.id)
  const loose = ids((i) => m.holds[i]!.loose !== null)
  const dry = ids((i) => m.holds[i]!.dry)
  if (loose.length > 0) marks.push({ kind: 'stems', ids: loose, label: 'would not stay' })
  if (dry.length > 0) marks.push({ kind: 'stems', ids: dry, label: 'end out of water' })
  marks.push({
    kind: 'circle',
    view: 'plan',
    centre: [0, 0],
    radius: m.needed_mm / 2,
    label: `stems need ⌀ ${lengths(m.needed_mm)}`,
  })
  return marks
}

export const readMechanics = (engine: Engine, lengths: Lengths = inMm): ReadingResult => {
  const { stems } = engine.resolved
  if (stems.length === 0)
    return notApplicable('mechanics', 'There are no stems yet.', {
      crowding: 0,
      unsupported: [],
      heldShare: null,
      dryEnds: [],
      underWater: [],
      opening_mm: openingOf(engine.resolved.vessel),
      needed_mm: 0,
    })
  const m = measureMechanics(engine)
  const { crowding, kept, dry, under } = partsOf(engine, m, lengths)
  const ids = (is: (place: number) => boolean): string[] => stemsWhere(engine, is).map((s) => s.id)
  return {
    id: 'mechanics',
    score: scoreOf([kept.part, crowding.part, dry.part, under.part]),
    notApplicable: '',
    values: {
      crowding: m.crowding,
      unsupported: ids((i) => m.holds[i]!.loose !== null),
      heldShare: kept.held.value,
      dryEnds: ids((i) => m.holds[i]!.dry),
      underWater: ids((i) => m.under[i]!),
      opening_mm: m.opening_mm,
      needed_mm: m.needed_mm,
      leanMost_deg: Math.max(...m.holds.map((h) => h.lean_deg)),
    },
    because: because(engine, m, lengths),
    advice: [],
    marks: marksOf(engine, m, lengths),
  }
}
