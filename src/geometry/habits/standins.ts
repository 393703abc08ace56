import type { Point3 } from '../../arrangement/index.ts'
import { KINDS } from '../types.ts'
import { type Fitted, type LeafFactors, SLAB, stageAt } from './fitted.ts'
import { type LeafForm, leafAxes, leafShares } from './leaf.ts'
import { frameAt, type Line } from './line.ts'
import { type HeadOrgan, type Layout, num, type RopeOrgan, type Twig } from './organs.ts'
import { beginPack, endPack, packCapsule, packEllipsoid } from './pack.ts'
import { along, at, cross, GOLDEN, lerp, scale, sub, turned, unit } from './vector.ts'

const BLOOM = KINDS.indexOf('bloom')
const LEAF = KINDS.indexOf('leaf')
const STEM = KINDS.indexOf('stem')

/** Least thickness of a flat stand-in, mm. */
const THIN = 0.3
/** Of many twigs alike this many are kept, each so much larger. Ours. */
const MOST_TWIGS = 12
/** Of a few large leaves, those that hang more than this get an ellipsoid for each half. Ours. */
const BENT = 0.3
const FEW = 6

/** Number at i of two stages, mixed. */
const mixAt = (low: Float64Array, high: Float64Array, i: number, t: number): number => lerp(low[i]!, high[i]!, t)

const leafStandin = (leaf: LeafForm, [wide, thick, over]: LeafFactors, few: boolean): void => {
  const [d, s] = leafAxes(leaf)
  const { o, length, width, stalk, droop, fold } = leaf
  const [lower, upper] = leafShares(leaf)
  const point = (u: number): Point3 =>
    along(along(o, d, length * (stalk + (1 - stalk) * u)), [0, 0, -1], (droop * length * u * u) / 2)
  const piece = (from: Point3, till: Point3, share: number, lift: number, reach: number): void => {
    const chord = sub(till, from)
    const long = Math.hypot(chord[0], chord[1], chord[2])
    const w = unit(chord, d)
    const a = (long / 2) * reach
    const b = (share * long * width) / (Math.PI * a)
    const c = Math.max(THIN, (fold * width * share * long) / (2 * Math.PI * a))
    const middle = along(along(from, chord, 0.5), [0, 0, 1], lift)
    packEllipsoid(LEAF, middle, scale(w, a * over), scale(s, b * wide), scale(unit(cross(w, s)), c * thick))
  }
  if (droop <= BENT || !few) {
    const share = (lower + upper) / 2
    // The leaf bows over its chord by a quarter of what its tip hangs.
    piece(point(0), point(1), share, (droop * length) / 12, Math.min(1, 0.8 + 0.2 * share))
    return
  }
  const half = point(0.5)
  piece(point(0), half, lower, 0, 1.1)
  piece(half, point(1), upper, 0, 1.1)
}

/** Rays inside an umbel, as umbel.ts lays them; some of them stand for all. */
const KEPT_RAYS = 6
const umbelRays = ({ f, size, open, shape }: HeadOrgan): void => {
  const n = Math.round(num(shape, 'rays', 23))
  const tall = size * num(shape, 'height', 0.3) * lerp(2.1, 1, open)
  for (let j = 0; j < KEPT_RAYS; j++) {
    const i = ((j + 0.5) * n) / KEPT_RAYS - 0.5
    const q = Math.sqrt((i + 0.5) / n)
    const r = (q * size * 0.88) / 2
    const z = tall * (0.5 - q * q * lerp(0.1, 0.62, open))
    const turn = j * GOLDEN
    const end = at(f, r * Math.cos(turn), r * Math.sin(turn), z)
    packCapsule(STEM, at(f, 0, 0, -tall * 0.5), end, size * 0.007 * (n / KEPT_RAYS) * 0.75)
  }
}

const headStandins = (head: HeadOrgan, { flower }: Fitted): void => {
  const { f } = head
  const [stage, t] = stageAt(head.open)
  const [low, high] = [flower[stage]!, flower[stage + 1]!]
  const k = head.size
  const m = (i: number): number => k * mixAt(low, high, i, t)
  for (let i = 0; i < low.length; i += SLAB) {
    const o = at(f, m(i), m(i + 1), m(i + 2))
    const axis = (j: number): Point3 => turned(f, m(i + j), m(i + j + 1), m(i + j + 2))
    packEllipsoid(BLOOM, o, axis(3), axis(6), axis(9))
  }
  if (head.kind === 'umbel' && !head.small) umbelRays(head)
}

const ropeStandins = (line: Line, rope: RopeOrgan, { flower }: Fitted): void => {
  const [stage, t] = stageAt(rope.open)
  const [low, high] = [flower[stage]!, flower[stage + 1]!]
  const long = rope.to - rope.from
  const k = rope.width
  const m = (i: number): number => mixAt(low, high, i, t)
  for (let i = 0; i < low.length; i += SLAB) {
    const f = frameAt(line, rope.from + m(i + 2) * long)
    const axis = (j: number): Point3 => turned(f, m(i + j) * k, m(i + j + 1) * k, m(i + j + 2) * long)
    packEllipsoid(BLOOM, at(f, m(i) * k, m(i + 1) * k, 0), axis(3), axis(6), axis(9))
  }
}

/** Pieces of a round line that bends: as many as its tissue deserves. */
const twigStandins = ({ points, r0, r1, tissue }: Twig, more: number, wide: number): void => {
  const n = points.length - 1
  const leaf = tissue === 'leaf'
  const pieces = Math.min(n, leaf ? 5 : n > 3 && more === 1 ? 2 : 1)
  const k = leaf ? wide : more
  for (let i = 0; i < pieces; i++) {
    const [from, till] = [Math.round((i * n) / pieces), Math.round(((i + 1) * n) / pieces)]
    // A blade seen end on shows its stoutest place.
    const radius = leaf && i === 0 ? r0 : r0 + ((r1 - r0) * (i + 0.5)) / pieces
    packCapsule(leaf ? LEAF : STEM, points[from]!, points[till]!, radius * k)
  }
}

/** How much of a twig is seen from the side, mm². */
const sideOf = ({ points, r0, r1 }: Twig): number => {
  const [a, b] = [points[0]!, points[points.length - 1]!]
  return Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]) * (r0 + r1) + 1e-6
}

/** How far a line may stand off the middle of its capsule, mm. Ours. */
const SAG = 0.8

/** The bare stem in straight pieces, split where it bends, and at the mouth (what is below is often hidden). */
const stemStandins = ({ line, stem }: Layout): void => {
  const radius = (s: number): number => lerp(stem.r0, stem.r1, stem.until > 0 ? s / stem.until : 0)
  const split = (a: Point3, from: number, b: Point3, till: number, depth: number): void => {
    const s = (from + till) / 2
    const m = frameAt(line, s).o
    const off = Math.hypot(m[0] - (a[0] + b[0]) / 2, m[1] - (a[1] + b[1]) / 2, m[2] - (a[2] + b[2]) / 2)
    if (depth > 2 || off < SAG) {
      packCapsule(STEM, a, b, radius(s))
      return
    }
    split(a, from, m, s, depth + 1)
    split(m, s, b, till, depth + 1)
  }
  const mouth = Math.min(line.mouth, stem.until)
  const middle = frameAt(line, mouth).o
  if (mouth > 0) split(frameAt(line, 0).o, 0, middle, mouth, 2)
  const end = frameAt(line, stem.until).o
  if (stem.until > mouth) split(middle, mouth, end, stem.until, 0)
  const neck = stem.neck ?? []
  const bend = neck[neck.length >> 1]
  if (!bend) return
  packCapsule(STEM, end, bend, stem.r1)
  packCapsule(STEM, bend, neck[neck.length - 1]!, stem.r1)
}

/** The stand-ins of a layout, packed (see STANDIN_STRIDE). */
export const packStandins = (layout: Layout, fitted: Fitted, openness: number): Float32Array => {
  const [stage, t] = stageAt(openness)
  const [low, high] = [fitted.leaf[stage]!, fitted.leaf[stage + 1]!]
  const leaf: LeafFactors = [lerp(low[0], high[0], t), lerp(low[1], high[1], t), lerp(low[2], high[2], t)]
  const { heads, leaves, twigs, ropes, line } = layout
  beginPack()
  stemStandins(layout)
  const keptTwigs = Math.min(twigs.length, MOST_TWIGS)
  const twigAt = (i: number): Twig => twigs[Math.floor((i * twigs.length) / keptTwigs)]!
  let [all, kept] = [0, 0]
  for (const twig of twigs) all += sideOf(twig)
  for (let i = 0; i < keptTwigs; i++) kept += sideOf(twigAt(i))
  for (let i = 0; i < keptTwigs; i++) twigStandins(twigAt(i), keptTwigs < twigs.length ? all / kept : 1, leaf[0])
  for (const one of leaves) leafStandin(one, leaf, leaves.length <= FEW)
  for (const head of heads) headStandins(head, fitted)
  for (const rope of ropes) ropeStandins(line, rope, fitted)
  return endPack()
}
