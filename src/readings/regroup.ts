import { type Edit, mouthFor, newStemIds, type Point3, type Stem } from '../arrangement/index.ts'
import type { ResolvedStem } from '../geometry/index.ts'
import { openingOf } from './crowding.ts'
import type { Engine } from './engine.ts'

// What a florist does with a whole group at once, as plain edits. Nothing here is measured: that is for the trial.

const many = (label: string, edits: Edit[]): Edit => (edits.length === 1 ? edits[0]! : { do: 'many', label, edits })

const out = ({ stem: { tip } }: ResolvedStem): number => Math.hypot(tip[0], tip[1])

/** How low the outermost stem of a dome stands against the highest. Ours: its outline falls nearly to the rim. */
const DOME_FOOT = 0.25

/** Cuts what stands over a dome, from the highest tip down to the outermost, so that the outline falls to the rim; null where none does. */
export const dome = (stems: readonly ResolvedStem[]): { edit: Edit; cut: ResolvedStem[] } | null => {
  const far = stems.reduce((most, s) => Math.max(most, out(s)), 1)
  const high = stems.reduce((most, s) => Math.max(most, s.stem.tip[2]), 0)
  const lower = stems.flatMap((s) => {
    const z = Math.round(high * (1 - (1 - DOME_FOOT) * (out(s) / far) ** 2))
    return s.stem.tip[2] - z > 5 ? [{ s, z }] : []
  })
  if (lower.length < 2) return null
  const edits = lower.map(({ s, z }): Edit => {
    const [x, y] = s.stem.tip
    return { do: 'set-stems', ids: [s.id], set: { tip: [x, y, z] } }
  })
  return { edit: many('Cut to a dome', edits), cut: lower.map(({ s }) => s) }
}

/** Brings what reaches farther than `reach_mm` from the axis in to there, or, `outward`, the rest of it out to there; each stem moves its tip level. */
export const toReach = (
  engine: Engine,
  stems: readonly ResolvedStem[],
  reach_mm: number,
  outward: boolean,
): { edit: Edit; moved: ResolvedStem[] } | null => {
  const { stems: all } = engine.resolved
  const change = stems.flatMap((s) => {
    const [x, y, z] = s.stem.tip
    const from = Math.hypot(x, y)
    const over = Math.max(0, engine.ready[all.indexOf(s)]!.radius - from)
    const to = Math.max(0, reach_mm - over)
    if (from < 1 || (outward ? to <= from : to >= from)) return []
    const tip: Point3 = [Math.round((x * to) / from), Math.round((y * to) / from), z]
    // Less than a millimetre is no move.
    return tip[0] === x && tip[1] === y ? [] : [{ s, tip }]
  })
  if (change.length === 0) return null
  const edits = change.map(({ s, tip }): Edit => ({ do: 'set-stems', ids: [s.id], set: { tip } }))
  return { edit: many(outward ? 'spread out' : 'drawn in', edits), moved: change.map(({ s }) => s) }
}

/** A mouth narrower than this bears a few stems as a stand bears them, mm; and so many stems are more than a few. Ours. */
const NARROW = 75
const FEW = 6
/** Heights of the stems that stay, against the tallest: one leads, the others low under it, clear of faces opposite. Ours. */
const STEPS = [1, 0.4, 0.25, 0.25, 0.3]
/** A neck under this takes no grid of tape, mm. Ours, as for netting. */
const GRID = 50

export interface Thinned {
  edit: Edit
  kept: ResolvedStem[]
  gone: ResolvedStem[]
  grid: boolean
}

/**
 * Takes all but so many stems out of a crowded narrow vessel at once, and lets those that stay stand `high_mm` over the rim,
 * close together and upright, under a grid of tape where nothing holds them and it fits; the water is filled up. Focal
 * stems stay first, then those seen most. Null where the vessel is wide or the stems are few.
 */
export const thinTo = (engine: Engine, keep: number, high_mm: number): Thinned | null => {
  const { stems, vessel } = engine.resolved
  const { pixels } = engine.seen()
  const flowers = stems.filter((s) => s.role !== 'greens').length
  if (openingOf(vessel) > NARROW || flowers < FEW || keep >= flowers) return null
  const rank = stems.map((s, i) => ({
    s,
    seen: (s.role === 'focal' ? 1e9 : s.role === 'greens' ? -1e9 : 0) + pixels[i * 4 + 1]!,
  }))
  const order = rank.sort((a, b) => b.seen - a.seen).map(({ s }) => s)
  const [kept, gone] = [order.slice(0, keep), order.slice(keep)]
  if (gone.some((s) => s.role === 'focal')) return null
  const around = Math.max(0, (Math.min(vessel.width, vessel.depth) / 2) * 0.45)
  const edits: Edit[] = [{ do: 'remove-stems', ids: gone.map((s) => s.id) }]
  kept.forEach((s, i) => {
    const a = (i * 2 * Math.PI) / keep
    const far = keep === 1 ? 0 : around
    const z = Math.round((high_mm - s.head_mm / 2) * STEPS[i % STEPS.length]!)
    const tip: Point3 = [Math.round(far * Math.cos(a)), Math.round(far * Math.sin(a)), z]
    edits.push({ do: 'set-stems', ids: [s.id], set: { tip, mouth: mouthFor(vessel, tip), bend: 0 } })
  })
  const grid = vessel.mechanics === 'none' && openingOf(vessel) >= GRID
  if (grid || vessel.waterFill < 0.8)
    edits.push({
      do: 'set-vessel',
      set: { ...(grid && { mechanics: 'tape-grid' }), ...(vessel.waterFill < 0.8 && { waterFill: 0.8 }) },
    })
  return { edit: many('thinned out', edits), kept, gone, grid }
}

/** Places of a group about its leader, as angles in its own plane, degrees: below it and at both sides, then over it. Ours. */
const AROUND = [-35, 215, 75, 125]

/** Where others of a group of three or five stand about a bloom: nearly a head away, a little behind it. mm */
export const placesAbout = ({ stem, axis, head_mm }: ResolvedStem, count: number): Point3[] => {
  const flat = Math.hypot(axis[0], axis[1])
  const u: Point3 = flat > 0.1 ? [-axis[1] / flat, axis[0] / flat, 0] : [1, 0, 0]
  const v: Point3 = [axis[1] * u[2] - axis[2] * u[1], axis[2] * u[0] - axis[0] * u[2], axis[0] * u[1] - axis[1] * u[0]]
  return AROUND.slice(0, count).map((degrees): Point3 => {
    const a = (degrees * Math.PI) / 180
    return stem.tip.map((t, i) =>
      Math.round(t + head_mm * (0.9 * Math.cos(a) * u[i]! + 0.9 * Math.sin(a) * v[i]! - 0.15 * axis[i]!)),
    ) as Point3
  })
}

/** More stems like one, each with its head at one of the places. */
export const moreLike = (
  { document, vessel }: Engine['resolved'],
  like: ResolvedStem,
  places: readonly Point3[],
): Edit => {
  const ids = newStemIds(document, places.length)
  const stems = places.map(
    (tip, i): Stem => ({ ...like.stem, id: ids[i]!, tip, mouth: mouthFor(vessel, tip), bend: 0 }),
  )
  return { do: 'add-stems', stems }
}

/** Other stems become flowers like one: the same plant, colour and part, where they stand. */
export const becomeLike = (stems: readonly ResolvedStem[], { stem }: ResolvedStem): Edit => ({
  do: 'set-stems',
  ids: stems.map((s) => s.id),
  set: {
    plant: stem.plant,
    role: stem.role,
    colour: stem.colour,
    openness: stem.openness,
    piece: stem.piece,
    head: stem.head ?? null,
  },
})
