import type { Point3 } from '../../arrangement/index.ts'
import { KINDS, STANDIN_STRIDE } from '../types.ts'
import { type LeafForm, leafAxes, leafShares } from './leaf.ts'
import { frameAt, type Line } from './line.ts'
import { modelOfHead, modelOfRope } from './models.ts'
import type { HeadOrgan, Layout, RopeOrgan, Twig } from './organs.ts'
import type { Tuning } from './tune.ts'
import { along, at, cross, type Frame, scale, sub, turned, unit } from './vector.ts'

const BLOOM = KINDS.indexOf('bloom')
const LEAF = KINDS.indexOf('leaf')
const STEM = KINDS.indexOf('stem')

/** Stand-ins while they are gathered. */
const ellipsoid = (to: number[], kind: number, o: Point3, a: Point3, b: Point3, c: Point3): void => {
  to.push(0, kind, o[0], o[1], o[2], a[0], a[1], a[2], b[0], b[1], b[2], c[0], c[1], c[2])
}
const capsule = (to: number[], kind: number, a: Point3, b: Point3, r: number): void => {
  to.push(1, kind, a[0], a[1], a[2], b[0], b[1], b[2], r, 0, 0, 0, 0, 0)
}

/** Least thickness of a flat stand-in, mm. */
const THIN = 0.3

/** Leaves that hang more than this are bent so far that each half gets an ellipsoid of its own. Ours. */
const BENT = 0.3

/** A leaf as one or two ellipsoids along its chords: seen from above and from the side each has the leaf's area. */
const leafStandin = (to: number[], leaf: LeafForm, [wide, thick]: Tuning['leaf']): void => {
  const [d, s] = leafAxes(leaf)
  const { o, length, width, stalk, droop, fold } = leaf
  const [lower, upper] = leafShares(leaf)
  const point = (u: number): Point3 =>
    along(along(o, d, length * (stalk + (1 - stalk) * u)), [0, 0, -1], (droop * length * u * u) / 2)
  const piece = (from: Point3, till: Point3, share: number, lift: number, over: number): void => {
    const chord = sub(till, from)
    const long = Math.hypot(...chord)
    const w = unit(chord, d)
    const a = (long / 2) * over
    const b = (share * long * width) / (Math.PI * a)
    const c = Math.max(THIN, (fold * width * share * long) / (2 * Math.PI * a))
    const middle = along(along(from, chord, 0.5), [0, 0, 1], lift)
    ellipsoid(to, LEAF, middle, scale(w, a), scale(s, b * wide), scale(unit(cross(w, s)), c * thick))
  }
  if (droop <= BENT) {
    const share = (lower + upper) / 2
    // The leaf bows over its chord by a quarter of what its tip hangs.
    piece(point(0), point(1), share, (droop * length) / 12, Math.min(1, 0.8 + 0.2 * share))
    return
  }
  const half = point(0.5)
  piece(point(0), half, lower, 0, 1.1)
  piece(half, point(1), upper, 0, 1.1)
}

/** A vector of a model, with its own length, in a frame. */
const inFrame = (f: Frame, p: Point3, k: number): Point3 => turned(f, p[0] * k, p[1] * k, p[2] * k)

const headStandins = (to: number[], head: HeadOrgan, [wide, thick]: Tuning['bloom']): void => {
  const { f, size: k, twin } = head
  const model = modelOfHead(head)
  for (const s of model.slabs) {
    const o = at(f, s.o[0] * k, s.o[1] * k, s.o[2] * k)
    if (twin) {
      // Two alike: twice as long along the line between them, so twice the area across it and once along it.
      const t = unit(twin)
      const side = unit(cross(f.w, t), f.u)
      const up = cross(t, side)
      const r = ((Math.hypot(...s.a) + Math.hypot(...s.b)) / 2) * k * wide
      ellipsoid(to, BLOOM, o, scale(t, 2 * r), scale(side, r), scale(up, Math.hypot(...s.c) * k * thick))
    } else ellipsoid(to, BLOOM, o, inFrame(f, s.a, k * wide), inFrame(f, s.b, k * wide), inFrame(f, s.c, k * thick))
  }
  for (const { a, b, r } of model.rays) {
    capsule(to, STEM, at(f, a[0] * k, a[1] * k, a[2] * k), at(f, b[0] * k, b[1] * k, b[2] * k), r * k)
  }
}

const ropeStandins = (to: number[], line: Line, rope: RopeOrgan, [wide, thick]: Tuning['bloom']): void => {
  const long = rope.to - rope.from
  const k = rope.width
  for (const s of modelOfRope(rope).slabs) {
    const f = frameAt(line, rope.from + s.o[2] * long)
    const [a, b, c] = [s.a[0] * k * wide, s.b[1] * k * wide, s.c[2] * long * thick]
    ellipsoid(to, BLOOM, at(f, s.o[0] * k, s.o[1] * k, 0), scale(f.u, a), scale(f.v, b), scale(f.w, c))
  }
}

/** Pieces of a round line that bends: as many as its tissue deserves. */
const twigStandins = (to: number[], { points, r0, r1, tissue }: Twig): void => {
  const n = points.length - 1
  const kind = tissue === 'leaf' ? LEAF : STEM
  const pieces = Math.min(n, tissue === 'leaf' ? 5 : n > 3 ? 2 : 1)
  for (let i = 0; i < pieces; i++) {
    const [from, till] = [Math.round((i * n) / pieces), Math.round(((i + 1) * n) / pieces)]
    capsule(to, kind, points[from]!, points[till]!, r0 + ((r1 - r0) * (i + 0.5)) / pieces)
  }
}

const PIECES = 8

/** The stand-ins of a layout, packed. */
export const packStandins = (layout: Layout, tuning: Tuning): Float32Array => {
  const out: number[] = []
  const { line, stem } = layout
  let from = frameAt(line, 0).o
  for (let i = 1; i <= PIECES; i++) {
    const till = frameAt(line, (stem.until * i) / PIECES).o
    capsule(out, STEM, from, till, stem.r0 + ((stem.r1 - stem.r0) * (i - 0.5)) / PIECES)
    from = till
  }
  for (const twig of layout.twigs) twigStandins(out, twig)
  for (const leaf of layout.leaves) leafStandin(out, leaf, tuning.leaf)
  for (const head of layout.heads) headStandins(out, head, tuning.bloom)
  for (const rope of layout.ropes) ropeStandins(out, line, rope, tuning.bloom)
  const packed = new Float32Array(out)
  if (packed.length % STANDIN_STRIDE !== 0) throw new Error('a stand-in is not as long as it should be')
  return packed
}
