import type { Point3 } from '../../../arrangement/index.ts'
import { frameAt } from '../line.ts'
import { type HeadOrgan, num, word } from '../organs.ts'
import { about, add, along, bow, dot, frameOf, GOLDEN, lerp, scale, turned, unit } from '../vector.ts'
import type { Plan, PlanCase } from './index.ts'
import { leafOn } from './leaves.ts'

/** The names that plants may use for the small heads of sprays, and the makers of heads that they mean. */
const SMALL: Record<string, string> = {
  rose: 'rosette',
  carnation: 'rosette',
  lisianthus: 'rosette',
  daisy: 'ray',
  aster: 'ray',
  button: 'globe',
  mum: 'quilled',
  chrysanthemum: 'quilled',
  alstroemeria: 'trumpet',
  thistle: 'pincushion',
}
export const headNamed = (name: string): string => SMALL[name] ?? name

export const headAt = (c: PlanCase, o: Point3, w: Point3, size: number, open: number): HeadOrgan => ({
  // A sweet pea holds its standard up; other heads may turn any way.
  f: word(c.shape, 'head', '') === 'pea' ? frameOf(o, w, [0, 0, 1]) : frameOf(o, w, c.f.u, c.random() * 6.28),
  kind: headNamed(word(c.shape, 'head', 'rosette')),
  size,
  open,
  seed: c.input.seed + Math.floor(c.random() * 1000),
  shape: c.shape,
  small: true,
  least: c.least,
})

/** A side stem from the line at s, azimuth `turn`: it leaves leaning out and turns up. */
export const sideStem = (
  c: PlanCase,
  s: number,
  turn: number,
  long: number,
  out: number,
): { points: Point3[]; w: Point3 } => {
  const f = frameAt(c.line, s)
  const d = unit(turned(f, Math.cos(turn) * out, Math.sin(turn) * out, 0.75))
  const elbow = add(f.o, add(scale(d, long * 0.55), scale(f.w, long * 0.04)))
  const end = along(along(f.o, d, long), f.w, long * 0.16)
  return { points: bow(f.o, elbow, end, 6), w: unit(along(d, [0, 0, 1], 0.35)) }
}

/** One head on a short side stem: what is left when a many-headed stem is cut apart. */
const lateral: Plan = (c) => {
  c.layout.heads.push({ ...headAt(c, [0, 0, 0], c.f.w, c.head, c.input.openness), f: c.f })
  c.layout.stem.r0 = c.layout.stem.r1 = Math.max(0.6, c.layout.stem.r1 * 0.6)
  const l = c.head * 0.7
  c.layout.leaves.push(
    leafOn(c.line, c.line.total - Math.min(c.above * 0.5, c.head * 1.1), 1 + c.random() * 4, l, l * 0.4, {
      droop: 0.4,
    }),
  )
}

/**
 * Small heads on side stems, the terminal one largest, about a fifth in bud.
 * shape: head (rose, daisy, mum, button, carnation …), heads (count), reach (side stems over the head), flat (1: all at one height).
 */
export const spray: Plan = (c) => {
  if (c.input.piece === 'lateral') {
    lateral(c)
    return
  }
  const { input, shape, line, random, head, full, above, layout } = c
  const n = Math.max(
    2,
    Math.min(14, Math.round(num(shape, 'heads', Math.min(9, Math.max(4, input.plant.bloomsPerStem.value))))),
  )
  const room = Math.min(above * 0.85, full * lerp(2.6, 4.2, Math.min(1, n / 12)) * num(shape, 'reach', 1))
  // A bud of lily shape is far narrower than its flower, others about half as wide.
  const pea = word(shape, 'head', '') === 'pea'
  const lily = headNamed(word(shape, 'head', 'rosette')) === 'trumpet'
  const budWidth = lily ? 0.22 : 0.5
  const wide = lily ? Math.min(head, full * lerp(budWidth, 1, input.openness ** 0.7)) : head
  for (let i = 0; i < n - 1; i++) {
    const k = n > 2 ? i / (n - 2) : 0.5
    const s = line.total - room * lerp(1, 0.16, k)
    const long = room * lerp(0.62, 0.3, k) * about(random, 0.15)
    const { points, w } = sideStem(c, s, i * GOLDEN + 0.5 * random(), long, 0.8)
    layout.twigs.push({ points, r0: layout.stem.r1 * 0.55, r1: layout.stem.r1 * 0.45, tissue: 'stem' })
    const bud = random() < 0.22
    layout.heads.push(
      headAt(
        c,
        points[6]!,
        pea ? unit(along(w, [0, 0, 1], -dot(w, [0, 0, 1]) + 0.25), w) : w,
        (bud ? Math.min(wide, full * budWidth) : wide) * lerp(0.82, 1, random()),
        bud ? Math.min(0.12, input.openness) : input.openness * about(random, 0.08) * 0.95,
      ),
    )
  }
  layout.heads.push({ ...headAt(c, [0, 0, 0], c.f.w, wide * 1.04, input.openness), ...(pea ? {} : { f: c.f }) })
  const l = num(shape, 'leafLength', Math.min(60, Math.max(20, full * 0.9)))
  for (let i = 0; i < num(shape, 'leaves', 3); i++) {
    layout.leaves.push(
      leafOn(
        line,
        line.total - room * lerp(0.95, 0.35, i / 3),
        i * 2.2 + random(),
        l,
        l * num(shape, 'leafRatio', 0.42),
        { droop: 0.5 },
      ),
    )
  }
  layout.stem.r1 *= 0.7
}

/** Berries at the ends of short forks, pairs of leaves below them: hypericum. shape: berries, outline, ratio. */
export const berryBranch: Plan = (c) => {
  const { input, shape, line, random, head, above, long, layout } = c
  const n = Math.round(num(shape, 'berries', input.piece === 'lateral' ? 3 : 13))
  const room = Math.min(above * 0.8, input.plant.headLength_mm ? long : head * 6.5)
  for (let i = 0; i < n; i++) {
    const k = i / Math.max(1, n - 1)
    const tip = i === n - 1
    const s = line.total - room * lerp(0.55, 0.02, k)
    const { points, w } = sideStem(c, s, i * GOLDEN, room * lerp(0.42, 0.2, k) * about(random, 0.1), 0.62)
    if (!tip)
      layout.twigs.push({
        points: [points[0]!, points[3]!, points[6]!],
        r0: layout.stem.r1 * 0.4,
        r1: layout.stem.r1 * 0.35,
        tissue: 'stem',
      })
    layout.heads.push({
      ...headAt(c, tip ? [0, 0, 0] : points[6]!, tip ? c.f.w : w, head * lerp(0.88, 1.05, random()), input.openness),
      kind: 'berry',
    })
  }
  const l = num(shape, 'leafLength', Math.max(24, head * 3))
  for (let i = 0; i < num(shape, 'pairs', 3); i++) {
    for (const side of [0, Math.PI]) {
      layout.leaves.push(
        leafOn(
          line,
          line.total - room * lerp(1, 0.42, i / 3),
          side + (i % 2) * 1.57 + 0.3,
          l * about(random, 0.08),
          l * num(shape, 'ratio', 0.42),
          { spread: 0.9, stalk: 0.03 },
        ),
      )
    }
  }
  layout.stem.r1 *= 0.55
}

export { orchidSpray } from './orchids.ts'
export { trumpets } from './trumpets.ts'
