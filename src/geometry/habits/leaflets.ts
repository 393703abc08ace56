import type { Point3 } from '../../arrangement/index.ts'
import { addFace, addTube, addVertex, type Builder, makeRoom, nextPart } from './builder.ts'
import { addBlade, type LeafForm, leafAxes } from './leaf.ts'
import { OUTLINES } from './petal.ts'
import { along, lerp, mix, scale, unit } from './vector.ts'

/** How far leaflets lean toward the tip, share of their length. Ours. */
const LEAN = 0.55
/** Half the width of a needle at its foot, mm: they are 0.1 to 0.2 mm thick; stouter here, or none would be seen. Ours. */
const NEEDLE = 0.4

/** A needle: one triangle from a foot across `side` to its point. */
const addNeedle = (b: Builder, from: Point3, to: Point3, side: Point3, n: Point3, r: number, part: number): void => {
  makeRoom(b, 3, 1)
  const i = addVertex(b, along(from, side, -r), n, 0.3, 0.1)
  const j = addVertex(b, along(from, side, r), n, 0.3, 0.9)
  addFace(b, i, j, addVertex(b, to, n, 1, 0.5), part, 'leaf')
}

/** Lay one leaf that is cut into leaflets, or into needles, left and right of its midrib: as long as its outline is wide. */
export const addDivided = (b: Builder, leaf: LeafForm): void => {
  const [d, s, n] = leafAxes(leaf)
  const { o, length, width, droop, outline, needles = 0, fold } = leaf
  // A view that does with half the triangles shows half the needles, each twice as stout.
  const few = needles > 0 ? Math.min(1, b.detail) : 1
  const pairs = Math.max(2, Math.round((leaf.leaflets ?? 0) * few))
  const place = (t: number): Point3 => along(along(o, d, length * t), [0, 0, -1], (droop * t * t * length) / 2)
  addTube(b, [o, place(0.5), place(1)], needles > 0 ? 0.4 : 0.8, 0.25, needles > 0 ? 'leaf' : 'green', 3)
  const part = nextPart(b)
  const gap = length / pairs
  for (let i = 0; i < pairs; i++) {
    const t = (i + 0.6) / pairs
    const l = (width / 2) * Math.max(0.2, OUTLINES[outline](t))
    for (const side of [-1, 1]) {
      const foot = place(t + (side > 0 ? 0 : 0.3 / pairs))
      const way = unit(along(along(scale(s, side), d, LEAN), n, fold))
      if (needles > 0) {
        // Needles stand in tufts: a long one, with two short ones across it.
        const r = NEEDLE / few
        const end = along(foot, way, l)
        addNeedle(b, foot, end, i % 2 ? d : n, n, r, part)
        for (const up of [-1, 1]) {
          const from = mix(foot, end, 0.45 - 0.12 * up)
          const short = along(along(along(from, way, 0.25 * l), d, 0.3 * l), n, up * 0.3 * l)
          addNeedle(b, from, short, i % 2 ? n : d, n, r, part)
        }
      } else
        addBlade(b, {
          o: foot,
          along: way,
          face: n,
          length: l,
          width: Math.min(0.62 * l, gap * 1.7),
          outline: 'egg',
          stalk: 0,
          droop: droop * lerp(0.5, 1, t),
          fold: 0.12,
          wave: 0,
          lobes: l > 12 ? 3 : 0,
          depth: 0.3,
          nu: l > 12 ? 7 : 3,
          nv: 2,
        })
    }
  }
}

/** Lay one leaf, whole or divided. */
export const addLeaf = (b: Builder, leaf: LeafForm): void =>
  (leaf.leaflets ?? 0) > 0 ? addDivided(b, leaf) : addBlade(b, leaf)
