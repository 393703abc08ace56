import { frameAt } from '../line.ts'
import { num, word } from '../organs.ts'
import { isOutline } from '../petal.ts'
import { about, along, at, GOLDEN, lerp, turned, unit } from '../vector.ts'
import type { Plan } from './index.ts'
import { leafOn } from './leaves.ts'

/**
 * Single leaves left and right of a stem, the tip leaf last: ruscus, salal, olive.
 * shape: leaves, ratio, outline, spread, whorl (1: round the stem, not in one plane), leafLength (mm), droop, wave.
 */
export const alternateLeaves: Plan = ({ line, shape, random, head, above, long, layout }) => {
  const leafy = Math.min(long, above * 0.96)
  const n = Math.max(3, Math.min(36, Math.round(num(shape, 'leaves', Math.min(20, Math.max(7, leafy / 14))))))
  const length = num(shape, 'leafLength', head * 0.52)
  const ratio = num(shape, 'ratio', 0.42)
  const outline = word(shape, 'outline', 'leaf')
  const form = {
    outline: isOutline(outline) ? outline : ('leaf' as const),
    fold: 0.2,
    droop: num(shape, 'droop', 0.28),
    wave: num(shape, 'wave', 0),
  }
  for (let i = 0; i < n; i++) {
    const k = i / (n - 1)
    const size =
      (0.62 + 0.5 * Math.sin(Math.PI * Math.min(1, k * 0.85 + 0.15))) * (k > 0.8 ? 0.8 : 1) * about(random, 0.07)
    const turn = num(shape, 'whorl', 0) > 0 ? i * GOLDEN : (i % 2 ? 0 : Math.PI) + (random() - 0.5) * 0.5
    layout.leaves.push(
      leafOn(line, line.total - leafy * (1 - 0.97 * k), turn, length * size, length * size * ratio, {
        ...form,
        spread: lerp(num(shape, 'spread', 0.95), 0.6, k),
      }),
    )
  }
  const f = frameAt(line, line.total)
  layout.leaves.push({
    o: f.o,
    along: f.w,
    face: f.v,
    length: length * 0.62,
    width: length * ratio * 0.6,
    lobes: 0,
    depth: 0,
    stalk: 0.04,
    ...form,
    droop: 0.1,
  })
  layout.stem.r1 *= 0.35
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
  const n = Math.max(5, Math.min(32, Math.round(num(shape, 'leaves', kind === 'ivy' ? leafy / 17 : leafy / 11))))
  const length = num(shape, 'leafLength', head * 0.55)
  for (let i = 0; i < n; i++) {
    const k = i / (n - 1)
    const l = length * lerp(1.1, 0.5, k) * about(random, 0.08)
    const ivy = kind === 'ivy'
    const outline = word(shape, 'outline', ivy ? 'heart' : 'leaf')
    layout.leaves.push(
      leafOn(
        line,
        line.total - leafy * (1 - k),
        i * (ivy ? Math.PI : 2.4) + (random() - 0.5) * 0.9,
        l,
        l * num(shape, 'ratio', ivy ? 0.95 : 0.45),
        {
          outline: isOutline(outline) ? outline : 'heart',
          stalk: ivy ? 0.28 : 0.08,
          lobes: ivy ? 2.5 : 0,
          depth: ivy ? 0.34 : 0,
          droop: 0.45,
          fold: 0.1,
          nu: ivy ? 14 : 7,
          slant: ivy ? 0.5 : 0,
        },
      ),
    )
  }
  layout.stem.r1 *= 0.4
}

/**
 * One frond: pinnae left and right in one plane, long below, short at the tip.
 * shape: kind ('leather', 'plumosus', 'sword'), pinnae (pairs).
 */
export const fern: Plan = ({ line, shape, random, head, above, long, layout }) => {
  const kind = word(shape, 'kind', 'leather')
  const leafy = Math.min(long, above * 0.96)
  const pairs = Math.max(5, Math.min(20, Math.round(num(shape, 'pinnae', kind === 'sword' ? 19 : 14))))
  for (let i = 0; i < pairs; i++) {
    const k = i / pairs
    const taper =
      kind === 'sword' ? Math.sin(Math.PI * lerp(0.3, 0.97, k)) : (1 - k) ** 0.85 * lerp(0.86, 1, Math.min(1, k * 6))
    const l = (head / 2) * 1.02 * Math.max(0.1, taper)
    const f = frameAt(line, line.total - leafy * (1 - k))
    for (const side of [-1, 1]) {
      const gap = leafy / pairs
      layout.leaves.push({
        o: f.o,
        along: unit(turned(f, side * 1, 0.06 * (random() - 0.5), lerp(0.38, 0.75, k))),
        face: f.v,
        length: l * about(random, 0.05),
        width: Math.min(l * 0.6, gap * (kind === 'sword' ? 1 : 1.35)),
        outline: kind === 'sword' ? 'strap' : 'sword',
        stalk: 0.02,
        droop: kind === 'plumosus' ? 0.05 : 0.22,
        fold: 0.1,
        wave: 0,
        lobes: kind === 'sword' ? 0 : Math.max(3, Math.round(l / (kind === 'plumosus' ? 5 : 6))),
        depth: kind === 'sword' ? 0 : kind === 'plumosus' ? 0.9 : 0.72,
        slant: 0.55,
        nu: kind === 'sword' ? 6 : 26,
        nv: kind === 'sword' ? 2 : 4,
      })
    }
  }
  const f = frameAt(line, line.total - leafy / pairs)
  layout.leaves.push({
    o: f.o,
    along: f.w,
    face: f.v,
    length: leafy / pairs,
    width: (leafy / pairs) * 0.4,
    outline: 'sword',
    stalk: 0,
    droop: 0,
    fold: 0.1,
    wave: 0,
    lobes: 0,
    depth: 0,
  })
  layout.stem.r1 *= 0.3
}

/** Long thin blades that fan out and arc over: bear grass, steel grass. shape: blades, arch, breadth (mm). */
export const blade: Plan = ({ line, shape, random, above, long, layout }) => {
  const n = Math.round(num(shape, 'blades', 7))
  const leafy = Math.min(Math.max(long, above * 0.6), above * 0.98)
  const breadth = num(shape, 'breadth', 2.6)
  const from = line.total - leafy
  for (let i = 0; i < n; i++) {
    const turn = i * GOLDEN + random()
    const far = i === 0 ? 0 : leafy * num(shape, 'arch', 0.3) * lerp(0.35, 1, random())
    const short = i === 0 ? 1 : lerp(0.72, 1, random())
    const points = Array.from({ length: 10 }, (_, j) => {
      const t = j / 9
      const f = frameAt(line, from + leafy * t * short)
      const p = at(f, Math.cos(turn) * far * t ** 1.6, Math.sin(turn) * far * t ** 1.6, 0)
      return along(p, [0, 0, -1], far * 0.5 * t ** 3)
    })
    layout.twigs.push({ points, r0: breadth / 2, r1: breadth * 0.12, tissue: 'leaf' })
  }
  layout.stem.until = from + 1
}

/** One great leaf on its stalk. shape: kind ('aspidistra', 'monstera', 'fatsia', 'hosta', 'palm'), ratio, droop. */
export const broadLeaf: Plan = ({ input, line, shape, head, above, long, layout }) => {
  const kind = word(shape, 'kind', 'aspidistra')
  const leafy = Math.min(input.plant.headLength_mm ? long : Math.max(head * 1.2, above * 0.4), above * 0.92)
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
    fold: cut ? 0.12 : 0.18,
    wave: num(shape, 'wave', 0.4),
    lobes: num(shape, 'lobes', kind === 'monstera' ? 5.5 : kind === 'palm' ? 16 : kind === 'fatsia' ? 4 : 0),
    depth: num(shape, 'depth', kind === 'monstera' ? 0.8 : kind === 'palm' ? 0.9 : 0.5),
    slant: cut ? 0.55 : kind === 'fatsia' ? 0.6 : 0,
    slit: kind === 'monstera' ? 5 : 1,
    nu: cut || kind === 'fatsia' ? 48 : 16,
    nv: 8,
  })
  layout.stem.until = line.total - leafy
  layout.stem.r1 *= 0.8
}
