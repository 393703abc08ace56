import { mouthFor, newStemIds, type Point3, type Stem, type Vessel } from '../arrangement/index.ts'
import { findPlant, type Plant } from '../catalogue/index.ts'
import {
  bareCount,
  COVER_WIDTH,
  type Cover,
  createCover,
  outerSection,
  type Resolved,
  reachIn,
  standinsOf,
} from '../geometry/index.ts'
import { type Ready, readyStem } from './extents.ts'
import { coverMouth, type MouthView, mouthViews } from './mouth.ts'
import { resolveAfter } from './trial.ts'

/** What hides the mouth where the design has no greens: broad leaves, of which few cover much (ours). */
const COVER_PLANT = 'salal'
/** And over a mouth narrower than this, mm, smaller leaves, which stay within it. Ours. */
const NARROW = 90
const SMALL_COVER = 'ruscus-israeli'
/** Most stems of one collar. Ours. */
const MOST = 16
/** Places of a collar: on the rim, within it and in the middle, as shares of the way out, with how many. Ours. */
const RINGS: readonly [share: number, places: number][] = [
  [0.8, 12],
  [0.45, 6],
  [0, 1],
]

const IN_NARROW: typeof RINGS = [
  [0.5, 8],
  [0, 1],
]

/** One stem of a collar is like this: a stem of the design, or a plant of the catalogue. */
export interface CollarOf {
  stem: Omit<Stem, 'id' | 'mouth' | 'tip'>
  name: string
  head_mm: number
}

export const likeOf = (stem: Stem, plant: Plant, head_mm: number): CollarOf => ({
  stem: { ...stem, bend: 0 },
  name: plant.name,
  head_mm,
})

/** Is the mouth so narrow that only small leaves stay within it? */
export const isNarrow = ({ width, depth }: Vessel): boolean => Math.min(width, depth) < NARROW

/** The catalogue's cover for a vessel. */
export const commonCover = (vessel: Vessel): CollarOf => {
  const plant = findPlant(isNarrow(vessel) ? SMALL_COVER : COVER_PLANT)!
  const stem = {
    plant: plant.id,
    role: 'greens' as const,
    colour: plant.leafColour,
    openness: 0.8,
    bend: 0,
    piece: 'whole' as const,
  }
  return { stem, name: plant.name, head_mm: plant.headOpen_mm.value }
}

const orInto = (cover: Cover, with_: Cover): Cover => {
  const both = cover.slice()
  for (let i = 0; i < both.length; i++) both[i]! |= with_[i]!
  return both
}

/** Places for tips, `h` over the rim and as far out as their share says; from 45° above, what is h high hides what is h behind it. */
const tipsOver = (vessel: Vessel, h: number): Point3[] => {
  const rim = outerSection(vessel, 1)
  return (isNarrow(vessel) ? IN_NARROW : RINGS).flatMap(([share, places]) =>
    Array.from({ length: places }, (_, i): Point3 => {
      const a = (i * 2 * Math.PI) / places
      const reach = reachIn(vessel, rim, Math.cos(a), Math.sin(a))
      const far = reach > 0 ? share / reach : 0
      return [Math.round(far * Math.cos(a)), Math.round(far * Math.sin(a)), Math.round(h)]
    }),
  )
}

/**
 * As few stems as bring the mouth's bare share, seen from 45° above, to `most` (0–1) all ways round: one after the other
 * where most is bare, up to sixteen. What else they do is for the trial to find out.
 * @param h how high their tips stand over the rim, mm
 */
export const collar = (
  resolved: Resolved,
  ready: readonly Ready[],
  like: CollarOf,
  h: number,
  most: number,
): Stem[] => {
  const { vessel, document } = resolved
  const tips = tipsOver(vessel, h)
  const ids = newStemIds(document, tips.length)
  const places = tips.map((tip, i): Stem => ({ ...like.stem, id: ids[i]!, tip, mouth: mouthFor(vessel, tip) }))
  const tried = resolveAfter(resolved, { do: 'add-stems', stems: places }).stems.slice(resolved.stems.length)
  const parts = tried.map((s) => readyStem(s, vessel, standinsOf))
  const views = mouthViews(vessel).filter((v) => v.pixels > 0)
  const alone = (view: MouthView, i: number): Cover => {
    const cover = createCover(COVER_WIDTH)
    coverMouth(cover, view, parts, [i])
    return cover
  }
  const each = parts.map((_, i) => views.map((view) => alone(view, i)))
  const all = ready.map((_, i) => i)
  let now = views.map((view) => {
    const cover = view.closed.slice()
    coverMouth(cover, view, ready, all)
    return cover
  })
  const excess = (covers: readonly Cover[]): number =>
    covers.reduce((sum, c, v) => sum + Math.max(0, bareCount(c) / views[v]!.pixels - most) ** 2, 0)
  const chosen: number[] = []
  let left = excess(now)
  while (left > 0 && chosen.length < MOST) {
    let best: { i: number; covers: Cover[]; left: number } | null = null
    for (let i = 0; i < places.length; i++) {
      if (chosen.includes(i)) continue
      const covers = now.map((c, v) => orInto(c, each[i]![v]!))
      const then = excess(covers)
      if (then < (best?.left ?? left)) best = { i, covers, left: then }
    }
    if (!best) break
    chosen.push(best.i)
    now = best.covers
    left = best.left
  }
  return chosen.sort((a, b) => a - b).map((i, k) => ({ ...places[i]!, id: ids[k]! }))
}

/** How high the tips of a collar stand: a little over the rim, with this share of the leaf's size. mm */
export const collarHeight = ({ width, depth }: Vessel, like: CollarOf, share: number): number =>
  0.075 * Math.min(width, depth) + share * like.head_mm
