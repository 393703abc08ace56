import type { Point3 } from '../../../arrangement/index.ts'
import { PLAIN_LEAF } from '../leaf.ts'
import { frameAt, type Line } from '../line.ts'
import { num, word } from '../organs.ts'
import { isOutline } from '../petal.ts'
import { about, along, at, clamp, GOLDEN, lerp, turned, unit } from '../vector.ts'
import type { Plan } from './index.ts'
import { leafOn } from './leaves.ts'

/** A face turned from the stem at s, `more` radians beyond azimuth `turn`, and a little up. */
const outward = (line: Line, s: number, turn: number, more: number): Point3 => {
  const f = frameAt(line, s)
  return along(turned(f, Math.cos(turn + more), Math.sin(turn + more), 0), [0, 0, 1], 0.35)
}

/** A rope of flowers that hangs, or a strand of leaves. shape: kind ('rope', 'ivy', 'strand'), leaves, ratio. */
export const trailing: Plan = (c) => {
  const { input, line, shape, head, above, long, layout, random } = c
  const kind = word(shape, 'kind', input.plant.formClass === 'foliage' ? 'ivy' : 'rope')
  if (kind === 'rope') {
    layout.ropes.push({
      kind: 'rope',
      from: line.total - Math.min(long, above * 0.9),
      to: line.total,
      width: head,
      open: input.openness,
      seed: input.seed,
      shape,
    })
    layout.leaves.push(
      leafOn(line, line.mouth + (above - Math.min(long, above * 0.9)) * 0.6, 1.2, head * 1.4, head * 0.6, {
        droop: 0.5,
      }),
    )
    layout.stem.r1 *= 0.4
    return
  }
  const leafy = Math.min(long, above * 0.96)
  const n = Math.max(5, Math.min(32, Math.round(num(shape, 'leaves', kind === 'ivy' ? leafy / 22 : leafy / 11))))
  const length = num(shape, 'leafLength', head * 0.55)
  for (let i = 0; i < n; i++) {
    const k = i / (n - 1)
    const l = length * lerp(1.1, 0.5, k) * about(random, 0.08)
    const ivy = kind === 'ivy'
    const outline = word(shape, 'outline', ivy ? 'ivy' : 'leaf')
    const s = line.total - leafy * (1 - k)
    const turn = i * 2.4 + (random() - 0.5) * 0.9
    layout.leaves.push(
      leafOn(line, s, turn, l, l * num(shape, 'ratio', ivy ? 0.95 : 0.45), {
        outline: isOutline(outline) ? outline : 'leaf',
        stalk: ivy ? 0.3 : 0.08,
        droop: ivy ? 0.1 : 0.45,
        fold: 0.1,
        nu: ivy ? 12 : 7,
        slant: ivy ? 0.42 : 0,
        back: ivy ? 0.9 : 0,
        // Leaves of a strand that hangs turn their faces outward, each on its own long stalk.
        ...(ivy ? { face: outward(line, s, turn, 1.6 * (random() - 0.5)), spread: 0.45, rise: 0.7 } : {}),
      }),
    )
  }
  layout.stem.r1 *= 0.4
}

/**
 * One frond: pinnae left and right in one plane, long below, short at the tip; those of leatherleaf and plumosus are cut
 * again. shape: kind ('leather', 'sword'; 'plumosus' see tiers), pinnae (pairs).
 */
export const fern: Plan = (c) => {
  const { line, shape, random, head, above, long, layout } = c
  const kind = word(shape, 'kind', 'leather')
  if (kind === 'plumosus') {
    tiers(c)
    return
  }
  const sword = kind === 'sword'
  const leafy = Math.min(long, above * 0.96)
  const pairs = Math.max(5, Math.min(20, Math.round(num(shape, 'pinnae', sword ? 19 : 12))))
  const gap = leafy / pairs
  for (let i = 0; i < pairs; i++) {
    const k = i / pairs
    const taper = sword ? Math.sin(Math.PI * lerp(0.3, 0.97, k)) : (1 - k) ** 0.8
    const l = (head / 2) * 1.08 * Math.max(0.1, taper)
    for (const side of [-1, 1]) {
      // Left and right do not quite face each other.
      const f = frameAt(line, line.total - leafy * (1 - k) ** 1.2 + (side > 0 ? 0.2 * gap : 0))
      const width = sword ? Math.min(l * 0.6, gap) : Math.min(l * 0.7, gap * 1.75)
      layout.leaves.push({
        o: f.o,
        along: unit(turned(f, side, 0.32 + 0.1 * (random() - 0.5), sword ? lerp(0.38, 0.75, k) : lerp(0.3, 0.9, k))),
        face: f.v,
        length: l * about(random, 0.05),
        width,
        outline: sword ? 'strap' : 'sword',
        stalk: 0.02,
        droop: 0.22,
        fold: sword ? 0.1 : 0.14,
        wave: 0,
        lobes: 0,
        depth: 0,
        nu: 6,
        nv: 2,
        ...(sword ? {} : { leaflets: clamp(Math.round(l / 9), 4, 9) }),
      })
    }
  }
  const f = frameAt(line, line.total - 1.4 * gap)
  layout.leaves.push({
    ...PLAIN_LEAF,
    o: f.o,
    along: f.w,
    face: f.v,
    length: 1.4 * gap,
    width: gap * (sword ? 0.5 : 1),
    outline: 'sword',
    stalk: 0,
    droop: 0,
    ...(sword ? {} : { leaflets: 5 }),
  })
  layout.stem.r1 *= 0.3
}

/** Branches of one tier, about the stem. Ours. */
const TIER = 3
/** Asparagus setaceus: tiers of flat misty branches one above the other, small at the top. shape: pinnae (tiers of 300 mm), tilt. */
const tiers: Plan = ({ line, shape, random, head, above, long, layout }) => {
  const leafy = Math.min(long, above * 0.96)
  const n = Math.max(4, Math.round(num(shape, 'pinnae', 11) * clamp(leafy / 300, 0.4, 1)))
  const tilt = num(shape, 'tilt', 0.4)
  for (let i = 0; i < n; i++) {
    const k = i / (n - 1)
    for (let j = 0; j < TIER; j++) {
      const f = frameAt(line, line.total - leafy * (lerp(0.92, 0.12, k) + (0.3 * (random() - 0.5)) / n))
      const turn = (j * 2 * Math.PI) / TIER + i * GOLDEN + 0.4 * (random() - 0.5)
      // Flat to the front: long to the sides, short before and behind.
      const [x, y] = [Math.cos(turn), 0.75 * Math.sin(turn)]
      const l = (head / 2) * lerp(1, 0.4, k ** 1.2) * Math.hypot(x, y) * about(random, 0.12)
      layout.leaves.push({
        ...PLAIN_LEAF,
        o: f.o,
        along: unit(turned(f, x, y, lerp(0.1, 0.35, random()) + 0.4 * k)),
        // Now tilted forward, now back, by turns.
        face: along(f.w, f.v, (j + i) % 2 ? tilt : -tilt),
        length: l,
        width: l * 0.7,
        outline: 'egg',
        stalk: 0,
        droop: 0.16,
        fold: 0.06,
        leaflets: clamp(Math.round(l / 1.6), 8, 40),
        needles: 1,
      })
    }
  }
  const f = frameAt(line, line.total - leafy * 0.12)
  layout.leaves.push({
    ...PLAIN_LEAF,
    o: f.o,
    along: f.w,
    face: f.v,
    length: leafy * 0.12,
    width: head * 0.2,
    outline: 'egg',
    leaflets: 8,
    needles: 1,
  })
  layout.stem.r1 *= 0.3
}

/**
 * Long thin blades that fan out and arc over: bear grass, steel grass. A single one arcs to the tip, from above where
 * the stem leans. shape: blades, arch, breadth (mm).
 */
export const blade: Plan = ({ line, shape, random, above, long, layout }) => {
  const n = Math.round(num(shape, 'blades', 7))
  const leafy = Math.min(Math.max(long, above * 0.6), above * 0.98)
  const breadth = num(shape, 'breadth', 2.6)
  const from = line.total - leafy
  const arch = num(shape, 'arch', 0.3)
  for (let i = 0; i < n; i++) {
    const turn = i * GOLDEN + random()
    const far = i === 0 ? 0 : leafy * arch * lerp(0.35, 1, random())
    const short = i === 0 ? 1 : lerp(0.72, 1, random())
    const sway = leafy * 0.03 * (random() - 0.5)
    const points = Array.from({ length: 22 }, (_, j) => {
      const t = j / 21
      const f = frameAt(line, from + leafy * t * short)
      // It rises past its tip and falls to it.
      if (i === 0)
        return at(f, sway * Math.sin(6 * t), leafy * arch * 2 * (t - t ** 2.6), leafy * 0.16 * (t ** 3 - t ** 9))
      const p = at(f, Math.cos(turn) * far * t ** 1.6, Math.sin(turn) * far * t ** 1.6, 0)
      return along(p, [0, 0, -1], far * 0.5 * t ** 3)
    })
    layout.twigs.push({ points, r0: breadth / 2, r1: breadth * 0.06, tissue: 'leaf' })
  }
  layout.stem.until = from + 1
}

/** One great leaf on its stalk. shape: kind ('aspidistra', 'monstera', 'fatsia', 'hosta', 'palm'), ratio, droop. */
export const broadLeaf: Plan = ({ input, line, shape, head, above, long, layout }) => {
  const kind = word(shape, 'kind', 'aspidistra')
  const leafy = Math.min(
    input.plant.headLength_mm ? long : Math.max(head * 1.2, above * 0.4),
    above * (kind === 'aspidistra' ? 0.8 : 0.92),
  )
  const f = frameAt(line, line.total - leafy)
  const end = frameAt(line, line.total)
  // Its face: where the stem says its end looks, as far as that stands across the leaf.
  const face = along(along(input.axis, [0, 0, 1], 0.4), f.v, 0.12)
  const cut = kind === 'monstera' || kind === 'palm'
  const long2 = Math.hypot(end.o[0] - f.o[0], end.o[1] - f.o[1], end.o[2] - f.o[2])
  const outline = word(shape, 'outline', kind === 'aspidistra' ? 'lance' : kind === 'palm' ? 'egg' : 'heart')
  const width = Math.max(head, 8)
  layout.leaves.push({
    o: f.o,
    along: unit([end.o[0] - f.o[0], end.o[1] - f.o[1], end.o[2] - f.o[2]], f.w),
    face,
    length: Math.max(long2, 5),
    width: cut ? width * 1.05 : width,
    outline: isOutline(outline) ? outline : 'lance',
    stalk: 0,
    droop: num(shape, 'droop', 0.12),
    fold: num(shape, 'fold', cut ? 0.12 : 0.18),
    wave: num(shape, 'wave', 0.4),
    lobes: num(shape, 'lobes', kind === 'monstera' ? 5.5 : kind === 'palm' ? 16 : kind === 'fatsia' ? 4 : 0),
    depth: num(shape, 'depth', kind === 'monstera' ? 0.8 : kind === 'palm' ? 0.9 : 0.5),
    slant: cut ? 0.55 : kind === 'fatsia' ? 0.6 : 0,
    slit: kind === 'monstera' ? 5 : 1,
    twist: num(shape, 'twist', 0),
    arch: num(shape, 'arch', 0),
    closing: !cut,
    nu: cut || kind === 'fatsia' ? 48 : 32,
    nv: 8,
  })
  layout.stem.until = line.total - leafy
  layout.stem.r1 *= 0.8
}
