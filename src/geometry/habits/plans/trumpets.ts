import type { Point3 } from '../../../arrangement/index.ts'
import { type HeadOrgan, num, word } from '../organs.ts'
import { along, dot, lerp, type Random, unit } from '../vector.ts'
import type { Plan, PlanCase } from './index.ts'
import { flowerLeaves } from './single.ts'
import { headAt, sideStem } from './sprays.ts'

type Make = (o: Point3, w: Point3, size: number, open: number) => HeadOrgan

/** How far a flower on its side stem looks up: an oriental lily looks out or nods, an asiatic one looks up. Ours. */
const UPWARD: Record<string, number> = { oriental: -0.12, lily: 1.6, amaryllis: 0.25 }

/** Freesia: the stem bends level under the first flower and carries the rest before it in a comb, ever younger. */
const comb = ({ input, f, head, layout }: PlanCase, n: number, make: Make): void => {
  const d = unit(along(f.u, f.w, 0.12))
  const rail: Point3[] = [[0, 0, 0]]
  for (let i = 1; i < n; i++) {
    const k = i / Math.max(1, n - 1)
    const p = along(along([0, 0, 0], d, head * 0.42 * i), f.w, -head * 0.16 * Math.sin(Math.PI * k))
    const open = Math.max(0, input.openness - 0.32 * i)
    rail.push(p)
    const size = head * lerp(1, 0.12, Math.min(1, i * 0.22 + (1 - open) * 0.4))
    layout.heads.push(make(p, unit(along(f.w, d, 0.25 + 0.3 * k)), size, open))
  }
  if (n > 1) layout.twigs.push({ points: rail, r0: 1.2, r1: 0.8, tissue: 'stem' })
}

/** Amaryllis: all flowers on short stalks from the end of the thick stem, looking outward. */
const crown = ({ input, f, full, head, layout }: PlanCase, n: number, make: Make, random: Random): void => {
  for (let i = 1; i < n; i++) {
    const turn = ((i - 0.5) / (n - 1)) * 4.2 - 2.1 + (random() - 0.5) * 0.3 + Math.PI
    const out = along(along([0, 0, 0], f.u, Math.cos(turn)), f.v, Math.sin(turn))
    const w = unit(along(out, f.w, lerp(1.4, 0.5, input.openness)))
    const end = along(along([0, 0, 0], out, full * 0.16), w, full * 0.1)
    const open = Math.max(0, input.openness - 0.07 * i)
    layout.twigs.push({ points: [[0, 0, 0], along([0, 0, 0], out, full * 0.13), end], r0: 4, r1: 3.4, tissue: 'stem' })
    layout.heads.push(make(end, w, Math.min(head, full * lerp(0.24, 1, open ** 0.7)), open))
  }
}

/** Lilies with one to five flowers, a comb of freesias, daffodils with one. shape: heads, flower, leaves. */
export const trumpets: Plan = (c) => {
  const { input, shape, line, random, head, full, above, layout } = c
  const flower = word(shape, 'flower', 'lily')
  const n =
    input.piece === 'lateral'
      ? 1
      : Math.max(1, Math.min(8, Math.round(num(shape, 'heads', Math.min(6, input.plant.bloomsPerStem.value)))))
  const make: Make = (o, w, size, open) => ({ ...headAt(c, o, w, size, open), kind: 'trumpet', small: n > 4 })
  layout.heads.push({ ...make([0, 0, 0], c.f.w, head, input.openness), f: c.f })
  if (flower === 'freesia') comb(c, n, make)
  else if (flower === 'amaryllis') crown(c, n, make, random)
  else
    for (let i = 1; i < n; i++) {
      const k = i / Math.max(1, n - 1)
      const from = line.total - Math.min(above * 0.5, full * lerp(0.5, 0.85, k))
      const side = sideStem(c, from, i * 2.2 + random(), full * lerp(0.42, 0.66, k), 0.95)
      // One flower opens after the other.
      const open = Math.max(0, input.openness - 0.28 * i)
      const w = unit(along(side.w, [0, 0, 1], lerp(0.8, UPWARD[flower] ?? 0, open) - dot(side.w, [0, 0, 1])), side.w)
      layout.twigs.push({ points: side.points, r0: layout.stem.r1 * 0.6, r1: layout.stem.r1 * 0.5, tissue: 'stem' })
      layout.heads.push(make(side.points[6]!, w, Math.min(head, full * lerp(0.22, 1, open ** 0.7)), open))
    }
  flowerLeaves(c)
  if (n === 1) layout.stem.r1 = Math.min(layout.stem.r1, full * 0.032)
}
