import type { Point3 } from '../../../arrangement/index.ts'
import { frameAt } from '../line.ts'
import { num } from '../organs.ts'
import { about, along, at, bow, clamp, frameOf, GOLDEN, lerp, type Random, turned, unit } from '../vector.ts'
import type { Plan } from './index.ts'

/** A stem this long to the cloud (mm) bears all its knots, a shorter one fewer. Ours. */
const FULL = 300
const FEWEST = 5

/** How far below its middle a knot is held, share of its width; see heads/knot.ts. */
const HELD = 0.33

/**
 * A cloud: fine branches that fork once, a knot of little flowers at each end and one at the tip.
 * shape: knots (count), knot (its width over a flower's), breadth (half the cloud's, mm), and those of heads/knot.ts.
 */
export const cloud: Plan = ({ input, shape, line, f, random, head, above, long, layout }) => {
  const whole = input.piece === 'whole'
  const room = Math.min(input.plant.headLength_mm ? long : head * 18, above * 0.85) * (whole ? 1 : 0.6)
  const width = head * num(shape, 'knot', 5)
  const most = num(shape, 'knots', 15) * (whole ? 1 : 0.4)
  const n = Math.round(lerp(Math.min(FEWEST, most), most, clamp(room / FULL, 0, 1)))
  const wide = Math.min(num(shape, 'breadth', room * 0.42), Math.max(room * 0.55, width))
  const own = { ...shape, floret: 1 / num(shape, 'knot', 5) }
  const put = (o: Point3, w: Point3, roll: Random): void => {
    layout.heads.push({
      f: frameOf(o, w, f.u, roll() * 6.28),
      kind: 'knot',
      size: width * about(random, 0.08),
      open: input.openness,
      seed: input.seed + 31 * layout.heads.length,
      shape: own,
      small: true,
    })
  }
  put([0, 0, 0], f.w, random)
  const branches = Math.ceil((n - 1) / 2)
  for (let i = 0; i < branches; i++) {
    const k = (i + 0.5) / branches
    const low = frameAt(line, line.total - room * lerp(1, 0.3, k))
    const turn = i * GOLDEN + 0.12 * random()
    const rise = room * lerp(0.52, 0.22, k) * about(random, 0.06)
    const r = wide * lerp(1, 0.6, k) * about(random, 0.05)
    const branch = (azimuth: number, out: number, up: number, from: Point3, r0: number): Point3[] => {
      const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)]
      const o = at(low, c * out, s * out, up)
      const w = unit(turned(low, c * 0.45, s * 0.45, 1))
      put(o, w, random)
      const end = along(o, w, -width * HELD)
      const points = bow(from, along(end, w, -0.35 * Math.hypot(out, up)), end, 6)
      layout.twigs.push({ points, r0, r1: 0.35, tissue: layout.stem.tissue })
      return points
    }
    const main = branch(turn, r, rise, low.o, 0.7)
    if (2 * i + 2 < n) {
      const side = turn + (i % 2 ? 0.85 : -0.85) * about(random, 0.1)
      branch(side, r * 0.55, rise + room * 0.12, main[2]!, 0.5)
    }
  }
  layout.stem.until = Math.max(line.total * 0.5, line.total - width * HELD)
  layout.stem.r1 *= 0.3
}
