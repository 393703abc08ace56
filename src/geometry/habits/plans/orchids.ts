import type { Point3 } from '../../../arrangement/index.ts'
import { frameAt, stretch } from '../line.ts'
import { num, word } from '../organs.ts'
import { about, add, along, bow, frameOf, lerp, mix, scale, sub, unit } from '../vector.ts'
import type { Plan, PlanCase } from './index.ts'
import { headAt } from './sprays.ts'

/** The flowering length as points: a phalaenopsis arches over to the side, the others stay on their stem. */
const rachis = ({ line, f, layout }: PlanCase, room: number, arching: boolean): Point3[] => {
  if (!arching) return stretch(line, line.total - room, line.total, 12)
  const from = frameAt(line, line.total - room)
  layout.stem.until = line.total - room
  const peak = along(along(from.o, from.w, room * 1.06), f.u, -room * 0.1)
  const end = along(along(from.o, from.w, room * 0.5), from.u, room * 0.62)
  const points = bow(from.o, peak, end, 12)
  layout.stem.neck = points.slice(1)
  return points
}

/**
 * Faces along a stem, in two ranks, all turned to the front; buds toward the tip.
 * shape: heads, buds (beyond them), kind (see heads/orchid.ts).
 */
export const orchidSpray: Plan = (c) => {
  const { input, shape, random, head, above, long, layout } = c
  const n =
    input.piece === 'lateral'
      ? 1
      : Math.max(
          1,
          Math.min(12, Math.round(num(shape, 'heads', Math.min(9, Math.max(1, input.plant.bloomsPerStem.value))))),
        )
  if (n === 1) {
    layout.heads.push({
      ...headAt(c, [0, 0, 0], c.f.w, head, input.openness),
      f: frameOf([0, 0, 0], c.f.w, [0, 0, 1]),
      kind: 'orchid',
      small: false,
    })
    return
  }
  const buds = Math.round(num(shape, 'buds', 0))
  const all = n + buds
  const room = Math.min(above * 0.85, input.plant.headLength_mm ? long : head * 0.5 * n)
  const points = rachis(c, room, word(shape, 'kind', '') === 'moth')
  const last = points.length - 1
  const side = frameAt(c.line, c.line.total).u
  for (let i = 0; i < all; i++) {
    const k = i / (all - 1)
    const q = Math.min(last - 1, Math.floor(k * last))
    const on = mix(points[q]!, points[q + 1]!, k * last - q)
    const grows = unit(sub(points[q + 1]!, points[q]!))
    const f = frameOf(on, grows, side)
    const way = i % 2 ? 1 : -1
    const w = unit(
      add(add(scale(f.u, way * 0.35), scale(f.w, 0.1)), add(scale(f.v, -0.7), scale(input.axis, 0.3))),
      f.v,
    )
    const bud = i >= n || k > 0.4 + 0.5 * input.openness
    const o = along(along(on, f.u, way * head * 0.3 * lerp(1, bud ? 0.25 : 0.5, k)), w, head * 0.12)
    layout.twigs.push({ points: [on, along(o, w, -head * 0.06)], r0: 0.9, r1: 0.8, tissue: 'stem' })
    const open = bud ? 0.02 : input.openness
    const grown = bud ? lerp(0.36, 0.14, k) : lerp(0.34, lerp(1, 0.8, k), open ** 0.7)
    layout.heads.push({
      ...headAt(c, o, bud ? unit(along(w, grows, 0.8)) : w, head * grown * about(random, 0.04), open),
      // The lip hangs down, however the stem arches.
      f: frameOf(o, bud ? unit(along(w, grows, 0.8)) : w, [0, 0, 1]),
      kind: 'orchid',
      small: true,
    })
  }
  layout.stem.r1 *= 0.5
}
