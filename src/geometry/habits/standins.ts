import type { Point3 } from '../../arrangement/index.ts'
import { KINDS } from '../types.ts'
import { type Fitted, type LeafFactors, SLAB, stageAt } from './fitted.ts'
import { LEAF_PARTS, type LeafForm, leafAxes, leafParts, leafShare } from './leaf.ts'
import { frameAt, type Line } from './line.ts'
import { type HeadOrgan, type Layout, num, type RopeOrgan, type Twig } from './organs.ts'
import { beginPack, endPack, packCapsule, packEllipsoid } from './pack.ts'
import { along, at, cross, dot, GOLDEN, lerp, scale, sub, turned, unit } from './vector.ts'

const BLOOM = KINDS.indexOf('bloom')
const LEAF = KINDS.indexOf('leaf')
const STEM = KINDS.indexOf('stem')

/** Least thickness of a flat stand-in, mm. */
const THIN = 0.3
/** Of many twigs alike this many are kept, each so much larger. Ours. */
const MOST_TWIGS = 12
/** And so many where leaves hide them. Ours. */
const FEW_TWIGS = 6
/** Radius of a ball that covers what a cluster of seed cups does, over one of them. Ours. */
const CLUSTER = 2.2
/** Leaves, twigs and fruits together make so many stand-ins at most. Ours. */
const MOST_LEAVES = 36
/** Needles stand off the plane of their branch by so much of its half width. Ours. */
const TUFTED = 0.4
/** A group of leaves covers less than the root of its squares says (0.87 where they face every way), for they overlap. */
const SHOWN = 0.8
/** How much of its area a group shows edge on, at a factor of 1. Ours. */
const SWELL = 0.025
/** Of a few large leaves, those that hang more than this get an ellipsoid for each half, those that twist one for each sixth. Ours. */
const BENT = 0.3
const FEW = 6

/** Number at i of two stages, mixed. */
const mixAt = (low: Float64Array, high: Float64Array, i: number, t: number): number => lerp(low[i]!, high[i]!, t)

const leafStandin = (leaf: LeafForm, [wide, thick, over]: LeafFactors, few: boolean): void => {
  const [d, s, n] = leafAxes(leaf)
  const { o, length, width, stalk, droop, fold, arch = 0, twist = 0, back = 0 } = leaf
  const parts = leafParts(leaf)
  const point = (u: number): Point3 => {
    const hung = along(along(o, d, length * (stalk + (1 - stalk) * u)), [0, 0, -1], (droop * length * u * u) / 2)
    return along(hung, n, (-arch * length * u * u) / 2)
  }
  const piece = (u: number, v: number, lift: number, reach: number): void => {
    const own = parts.slice(Math.round(LEAF_PARTS * u), Math.round(LEAF_PARTS * v))
    const share = own.reduce((sum, x) => sum + x, 0) / own.length
    const chord = sub(point(v), point(u))
    const long = Math.hypot(chord[0], chord[1], chord[2])
    const w = unit(chord, d)
    const a = (long / 2) * reach
    const b = (share * long * width) / (Math.PI * a)
    const c = Math.max(THIN, ((leaf.needles ? TUFTED : fold) * width * share * long) / (2 * Math.PI * a))
    // The weight of a blade that reaches back lies nearer to its stalk.
    const half =
      back > 0 ? parts.reduce((sum, x, i) => sum + (x * (i + 0.5)) / LEAF_PARTS ** 2, 0) / leafShare(leaf) : 0.5
    const middle = along(along(point(u), chord, half), [0, 0, 1], lift)
    const turn = (twist * (u + v)) / 2
    const across = twist === 0 ? s : along(scale(s, Math.cos(turn)), n, Math.sin(turn))
    packEllipsoid(LEAF, middle, scale(w, a * over), scale(across, b * wide), scale(unit(cross(w, across)), c * thick))
  }
  const pieces = few && twist !== 0 ? 6 : few && droop > BENT ? 2 : 1
  // In one piece the leaf bows over its chord by a quarter of what its tip hangs.
  if (pieces === 1) piece(0, 1, (droop * length) / 12, Math.min(1, 0.8 + 0.2 * leafShare(leaf)))
  else for (let i = 0; i < pieces; i++) piece(i / pieces, (i + 1) / pieces, 0, 1.1)
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
const twigStandins = ({ points, r0, r1, tissue }: Twig, more: number, wide: number, alone: boolean): void => {
  const n = points.length - 1
  const leaf = tissue === 'leaf'
  const pieces = Math.min(n, leaf ? (alone ? 9 : 5) : n > 3 && more === 1 ? 2 : 1)
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

/**
 * Leaves that stand together, as one ellipsoid that shows from every side about what they show: leaves of areas a and
 * faces m cover Σ a |n·m| seen along n, which is near √(Σa · Σ a (n·m)²); an ellipsoid of second moments M covers
 * π √(n · adj(M) n). So adj(M) is a sum over faces, and M = adj(A) / √det A. Ours.
 */
const groupStandin = (leaves: readonly LeafForm[], stem: Point3, [wide, thick, over]: LeafFactors): void => {
  let [xx, yx, yy, zx, zy, zz, all] = [0, 0, 0, 0, 0, 0, 0]
  let middle: Point3 = [0, 0, 0]
  for (const leaf of leaves) {
    const [d, , [x, y, z]] = leafAxes(leaf)
    const { o, length, width, stalk, droop } = leaf
    const area = leafShare(leaf) * length * (1 - stalk) * width
    const centre = along(along(o, d, (length * (1 + stalk)) / 2), [0, 0, -1], (droop * length) / 7)
    middle = along(middle, centre, area)
    all += area
    xx += area * x * x
    yx += area * y * x
    yy += area * y * y
    zx += area * z * x
    zy += area * z * y
    zz += area * z * z
  }
  // A little of every direction, or flat groups would have no edge.
  const every = SWELL * thick * all
  const A = [xx + every, yx, yy + every, zx, zy, zz + every] as const
  const B = adjoint(A)
  const k = (SHOWN * Math.sqrt(all)) / (Math.PI * Math.sqrt(A[0] * B[0] + A[1] * B[1] + A[3] * B[3]))
  // Any vectors whose outer products make up the moments are half axes of the same ellipsoid: here Cholesky's factor.
  const a = Math.sqrt(k * B[0])
  const [ba, ca] = [(k * B[1]) / a, (k * B[3]) / a]
  const b = Math.sqrt(Math.max(0, k * B[2] - ba * ba))
  const cb = b > 0 ? (k * B[4] - ca * ba) / b : 0
  const c = Math.sqrt(Math.max(0, k * B[5] - ca * ca - cb * cb))
  const drawn = (v: Point3): Point3 => along(scale(v, wide), stem, (over - wide) * dot(v, stem))
  packEllipsoid(LEAF, scale(middle, 1 / all), drawn([a, ba, ca]), drawn([0, b, cb]), drawn([0, 0, c]))
}

/** A symmetric 3 × 3: xx, yx, yy, zx, zy, zz. */
type Symmetric = readonly [number, number, number, number, number, number]
/** Its adjugate. */
const adjoint = ([xx, yx, yy, zx, zy, zz]: Symmetric): Symmetric => [
  yy * zz - zy * zy,
  zx * zy - yx * zz,
  xx * zz - zx * zx,
  yx * zy - yy * zx,
  yx * zx - xx * zy,
  xx * yy - yx * yx,
]

/** Leaves as stand-ins, each for itself or, where they are more, neighbours together. */
const leavesStandins = (leaves: readonly LeafForm[], line: Line, factors: LeafFactors, most: number): void => {
  if (leaves.length <= most) {
    for (const one of leaves) leafStandin(one, factors, leaves.length <= FEW)
    return
  }
  const stem = frameAt(line, line.total).w
  const starts = leaves.flatMap((leaf, i) => (i === 0 || leaf.shoot !== leaves[i - 1]!.shoot ? [i] : []))
  let [left, free] = [leaves.length, most]
  let shootsLeft = starts.length
  for (const [i, start] of starts.entries()) {
    const own = leaves.slice(start, starts[i + 1] ?? leaves.length)
    // Each shoot has one, and of what is over as much as it has leaves.
    const groups = Math.max(1, Math.min(own.length, free - shootsLeft + 1, Math.round((free * own.length) / left)))
    for (let i = 0; i < groups; i++) {
      const [from, till] = [i, i + 1].map((k) => Math.floor((k * own.length) / groups)) as [number, number]
      groupStandin(own.slice(from, till), stem, factors)
    }
    left -= own.length
    free -= groups
    shootsLeft -= 1
  }
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
  const keptTwigs = Math.min(twigs.length, leaves.length > MOST_LEAVES ? FEW_TWIGS : MOST_TWIGS)
  const twigAt = (i: number): Twig => twigs[Math.floor((i * twigs.length) / keptTwigs)]!
  let [all, kept] = [0, 0]
  for (const twig of twigs) all += sideOf(twig)
  for (let i = 0; i < keptTwigs; i++) kept += sideOf(twigAt(i))
  for (let i = 0; i < keptTwigs; i++)
    twigStandins(twigAt(i), keptTwigs < twigs.length ? all / kept : 1, leaf[0], twigs.length === 1)
  for (const { o, r, towards } of layout.fruits) {
    const k = r * (towards.length > 1 ? CLUSTER : 1)
    packEllipsoid(LEAF, o, [k, 0, 0], [0, k, 0], [0, 0, k])
  }
  leavesStandins(leaves, line, leaf, MOST_LEAVES - keptTwigs - layout.fruits.length)
  for (const head of heads) headStandins(head, fitted)
  for (const rope of ropes) ropeStandins(line, rope, fitted)
  return endPack()
}
