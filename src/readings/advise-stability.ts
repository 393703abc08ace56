import type { Edit, Point2, Point3, Vessel } from '../arrangement/index.ts'
import type { ResolvedStem } from '../geometry/index.ts'
import { LOWEST_VESSEL } from './advise-sight.ts'
import { grouped } from './advise-words.ts'
import { bandOf } from './bands.ts'
import { openingOf } from './crowding.ts'
import type { Engine } from './engine.ts'
import { oneMore } from './mend-stems.ts'
import { measureStability, type Stability, stands } from './stability.ts'
import type { Idea, Topic, Values } from './trial.ts'
import { loadOf } from './weight.ts'
import { type Lengths, numbered, percent, round, steps } from './words.ts'

const degrees = (value: unknown): string => `${round(value as number)}°`

/** The narrowest mouth that a pin-holder goes through, mm: small ones are about 40 wide (from memory). */
const PINS_FIT = 45

/** So full a vessel is steadied by its water and can still be carried. Ours. */
const WELL_FILLED = 0.8

/** Water along with another step, where there is little of it: edits, and the words for them. */
interface Filling {
  dry: boolean
  fill: Edit[]
  also: string
}
const fillingOf = ({ waterFill }: Vessel): Filling => {
  const dry = waterFill < WELL_FILLED
  return {
    dry,
    fill: dry ? [{ do: 'set-vessel', set: { waterFill: WELL_FILLED } }] : [],
    also: dry ? ', and fill it to four fifths' : '',
  }
}

/** A moved tip moves about this part of a stem's weight: its head, and half of its stalk. Ours. */
const MOVED = 0.75

/** All stems set back, against the way (c, s) in which it falls, so far that their weight lies over the foot again, with enough water besides: for what is far gone. */
const setBack = (
  { resolved: { stems } }: Engine,
  m: Stability,
  [c, s]: Point2,
  { fill, also }: Filling,
  text: string,
  lengths: Lengths,
): Idea[] => {
  const { centre, mass_g, stems_g } = m.weight
  const off = centre[0] * c + centre[1] * s
  if (stems.length === 0 || off < 5 || stems_g <= 0) return []
  const ids = stems.map((x) => x.id)
  const by = Math.min(steps((off * mass_g) / stems_g / MOVED), 300)
  const shift: Edit = { do: 'shift-stems', ids, by: [-by * c, -by * s, 0] }
  return [
    {
      edit: { do: 'many', label: 'Stems set back over the vessel', edits: [shift, ...fill] },
      stems: ids,
      say: (v) =>
        `${text}Set all stems back over the vessel by ${lengths(by)}${also}: then it goes over at ${degrees(v.tippingAngle_deg)}.`,
    },
  ]
}

const aboutTipping = (engine: Engine, m: Stability, least: number, lengths: Lengths): Topic => {
  const { stems, vessel } = engine.resolved
  const text = stands(m.tipping_deg)
    ? `It goes over at a tilt of ${degrees(m.tipping_deg)}, wanted at least ${least}°. `
    : 'It does not stand: its weight lies out beyond its foot. '
  const way = (m.toward_deg * Math.PI) / 180
  const [c, s] = [Math.cos(way), Math.sin(way)]
  const moment = (i: number): number => {
    const { mass_g, centre } = loadOf(stems[i]!)
    return mass_g * (centre[0] * c + centre[1] * s)
  }
  const outward = stems.map((_, i) => i).sort((a, b) => moment(b) - moment(a))
  const high = stems.toSorted((a, b) => loadOf(b).mass_g * b.stem.tip[2] - loadOf(a).mass_g * a.stem.tip[2])
  const over = (v: Values): string => `: then it goes over at ${degrees(v.tippingAngle_deg)}.`
  const idea = (edits: Edit[], some: readonly ResolvedStem[], what: string): Idea => ({
    edit: edits.length === 1 ? edits[0]! : { do: 'many', label: 'steadied', edits },
    stems: some.map((x) => x.id),
    say: (v) => `${text}${what}${over(v)}`,
  })
  const filling = fillingOf(vessel)
  const { dry, fill, also } = filling
  const leanBack = (part: number): Idea[] => {
    const some = outward.slice(0, Math.max(1, Math.round(stems.length * part))).map((i) => stems[i]!)
    if (some.length === 0) return []
    const by = steps(0.6 * Math.max(20, vessel.width / 3))
    const edit: Edit = { do: 'shift-stems', ids: some.map((x) => x.id), by: [-by * c, -by * s, 0] }
    return [idea([edit], some, `Lean ${grouped(some)} back over the vessel by ${lengths(by)}`)]
  }
  const shorten = (part: number, factor: number): Idea[] => {
    const some = high.slice(0, Math.max(1, Math.round(stems.length * part)))
    if (some.length === 0) return []
    const edit: Edit = { do: 'lengthen-stems', ids: some.map((x) => x.id), factor }
    return [idea([edit, ...fill], some, `Shorten ${grouped(some)} by ${percent(1 - factor)}${also}`)]
  }
  // As far out on the other side, and low.
  const counterweight = (): Idea[] => {
    const like = high.find((x) => x.role !== 'focal' && x.plant.formClass !== 'line')
    const off = m.weight.centre[0] * c + m.weight.centre[1] * s
    if (!like || off < 5) return []
    const far = Math.max(vessel.width, vessel.depth) / 2
    const tip: Point3 = [-far * c, -far * s, like.head_mm / 2]
    return [
      idea(
        [oneMore(engine.resolved, like, tip), ...fill],
        [like],
        `Set one more like ${numbered(like)}, low on the other side as a counterweight${also}`,
      ),
    ]
  }
  const pins: Idea[] =
    openingOf(vessel) >= PINS_FIT && (vessel.mechanics === 'none' || vessel.mechanics === 'tape-grid')
      ? [
          idea(
            [{ do: 'set-vessel', set: { mechanics: 'pin-holder', ...(dry && { waterFill: WELL_FILLED }) } }],
            [],
            `Set it on a pin-holder, the weight of which steadies it${also}`,
          ),
        ]
      : []
  // All of it lower by as much, vessel and stems alike, on the same foot: what else is measured of it stays nearly as it is.
  const lower = (part: number): Idea[] => {
    const height = 5 * Math.round((part * vessel.height) / 5)
    if (stems.length === 0 || height < LOWEST_VESSEL) return []
    return [
      idea(
        [
          { do: 'set-vessel', set: { height, ...(dry && { waterFill: WELL_FILLED }) } },
          { do: 'lengthen-stems', ids: stems.map((x) => x.id), factor: part },
        ],
        stems,
        `Set it in a vessel as wide, ${lengths(height)} high instead of ${lengths(vessel.height)}, and shorten all stems by ${percent(1 - part)}${also}`,
      ),
    ]
  }
  const ideas: Idea[] = [
    ...(dry ? [idea(fill, [], 'Fill it with water to four fifths')] : []),
    ...setBack(engine, m, [c, s], filling, text, lengths),
    ...leanBack(1 / 3),
    ...shorten(1 / 4, 0.85),
    ...pins,
    ...shorten(1, 0.85),
    ...counterweight(),
    ...leanBack(1 / 6),
    ...lower(0.75),
    ...lower(0.6),
    ...shorten(1, 0.7),
  ]
  return {
    ideas,
    otherwise: {
      text: `${text}A vessel with a wider foot, or weight on its floor (a pin-holder, pebbles), steadies it.`,
      stems: high.slice(0, 2).map((x) => x.id),
    },
  }
}

const aboutSpilling = (engine: Engine, angle: number, least: number): Topic => {
  const { vessel } = engine.resolved
  const text = `Water spills at a tilt of ${degrees(angle)}, wanted at least ${least}°. `
  return {
    ideas: [0.9, 0.8, 0.7]
      .filter((part) => part * vessel.waterFill >= 0.3)
      .map((part): Idea => {
        const fill = Math.round(100 * part * vessel.waterFill) / 100
        return {
          edit: { do: 'set-vessel', set: { waterFill: fill } },
          stems: [],
          say: (v) =>
            `${text}Fill it to ${round(100 * fill)} % only: then at ${degrees(v.spillAngle_deg)}. Top up on the table.`,
        }
      }),
    otherwise: { text: `${text}Carry it empty, and fill it where it stands.`, stems: [] },
  }
}

/** What is amiss with how it stands, and ideas against it. */
export const adviseStability = (engine: Engine, lengths: Lengths): Topic[] => {
  const m = measureStability(engine)
  const { document } = engine.resolved
  const tip = bandOf('stability', 'tippingAngle_deg', document)?.band[0] ?? 0
  const spill = bandOf('stability', 'spillAngle_deg', document)?.band[0] ?? 0
  const topics: Topic[] = []
  if (m.tipping_deg < tip) topics.push(aboutTipping(engine, m, tip, lengths))
  if (m.spill && m.spill.angle_deg < spill) topics.push(aboutSpilling(engine, m.spill.angle_deg, spill))
  return topics
}
