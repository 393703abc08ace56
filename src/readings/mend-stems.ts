import { type Edit, mouthFor, newStemId, type Point2, type Point3, type Vessel } from '../arrangement/index.ts'
import { floorFraction, innerSection, type Resolved, type ResolvedStem, reachIn } from '../geometry/index.ts'
import { PINS } from './held-stems.ts'

const many = (label: string, stems: readonly ResolvedStem[], each: (stem: ResolvedStem) => Edit): Edit => ({
  do: 'many',
  label,
  edits: stems.map(each),
})

/** The tip nearer over the crossing by this share, as much higher as keeps its distance. */
const raised = ({ stem }: ResolvedStem, share: number): Point3 => {
  const [dx, dy] = [stem.tip[0] - stem.mouth[0], stem.tip[1] - stem.mouth[1]]
  const far = Math.hypot(dx, dy, stem.tip[2])
  const k = 1 - share
  const up = Math.sqrt(Math.max(stem.tip[2] ** 2, far ** 2 - (k * Math.hypot(dx, dy)) ** 2))
  return [stem.mouth[0] + k * dx, stem.mouth[1] + k * dy, Math.round(Math.max(stem.tip[2], up))]
}

/** Sets stems steeper over where they cross; their length above the rim stays about the same. */
export const steeper = (stems: readonly ResolvedStem[], share: number): Edit =>
  many('Set steeper', stems, (s) => ({ do: 'set-stems', ids: [s.id], set: { tip: raised(s, share) } }))

/** Moves each crossing to the side to which the stem leans, most of the way to the inner edge (0.92, ours). */
export const toRim = (vessel: Vessel, stems: readonly ResolvedStem[]): Edit => {
  const rim = innerSection(vessel, 1)
  return many('Lean on the rim', stems, ({ id, stem }) => {
    const [dx, dy] = [stem.tip[0] - stem.mouth[0], stem.tip[1] - stem.mouth[1]]
    const [x, y] = Math.hypot(dx, dy) > 1 ? [dx, dy] : stem.mouth
    const reach = reachIn(vessel, rim, x, y)
    const k = reach > 1e-6 ? 0.92 / reach : 0
    return { do: 'set-stems', ids: [id], set: { mouth: [k * x, k * y] } }
  })
}

/** Moves each crossing by as much as sets the cut end well onto the pins; the head goes along, so the lean stays. */
export const ontoPins = (vessel: Vessel, stems: readonly ResolvedStem[]): Edit => {
  const foot = innerSection(vessel, Math.min(1, floorFraction(vessel) + 0.01))
  return many('Set on the pins', stems, ({ id, curve: { points } }) => {
    const end: Point2 = [points[0]!, points[1]!]
    const reach = reachIn(vessel, foot, ...end)
    const k = reach > PINS ? 1 - (0.8 * PINS) / reach : 0
    return { do: 'shift-stems', ids: [id], by: [-k * end[0], -k * end[1], 0], whole: true }
  })
}

/** Moves the head to a place. */
export const shiftTo = (stem: ResolvedStem, to: Point3): Edit => {
  const { tip } = stem.stem
  return { do: 'shift-stems', ids: [stem.id], by: [to[0] - tip[0], to[1] - tip[1], to[2] - tip[2]] }
}

/** One more stem like another, with its head at a place of its own. */
export const oneMore = ({ document, vessel }: Resolved, like: ResolvedStem, to: Point3): Edit => {
  const tip = to.map(Math.round) as Point3
  const stem = { ...like.stem, id: newStemId(document), tip, mouth: mouthFor(vessel, tip), bend: 0 }
  return { do: 'add-stems', stems: [stem] }
}
