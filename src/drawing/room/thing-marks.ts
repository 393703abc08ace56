import { FLAME, radiusAt, SOLIDS, type ThingSolid } from './solids.ts'
import type { Tones } from './tones.ts'
import type { Ellipse, Layer, Mark, Place, Thing } from './types.ts'
import { circleSeen, convexOutline, ellipsePoints, type Looking } from './view.ts'

/** Heights at which an outline is taken. */
const STEPS = 64
/** A second line: what is drawn inside an outline. Ours. */
const FINE = 0.7

/** Runs of the outline of a turned solid at the right of its axis; the other side mirrors it. */
const outlineRuns = ({ profile, height, stands }: ThingSolid, { upright, level }: Looking): Place[][] => {
  const runs: Place[][] = []
  if (upright < 1e-6) return runs
  const tan = level / upright
  let run: Place[] = []
  for (let i = 0; i <= STEPS; i++) {
    const h = (i / STEPS) * height
    const { radius, growth } = radiusAt(profile, h)
    // The surface turns away where its normal is square to the eye: at the azimuth whose sine is this.
    const sine = -growth * tan
    if (Math.abs(sine) <= 1)
      run.push([radius * Math.sqrt(1 - sine * sine), (h + stands) * upright + radius * sine * level])
    else if (run.length > 0) {
      runs.push(run)
      run = []
    }
  }
  if (run.length > 0) runs.push(run)
  return runs.filter((r) => r.length > 1)
}

/** Runs of points that lie in an ellipse. */
const inside = (points: readonly Place[], { centre, half }: Pick<Ellipse, 'centre' | 'half'>): Place[][] => {
  const runs: Place[][] = [[]]
  for (const p of points) {
    const q = ((p[0] - centre[0]) / half[0]) ** 2 + ((p[1] - centre[1]) / Math.max(half[1], 1e-9)) ** 2
    if (q <= 1) runs.at(-1)!.push(p)
    else if (runs.at(-1)!.length > 0) runs.push([])
  }
  return runs.filter((run) => run.length > 1)
}

/** What the whole solid covers: all its circles and no more. */
const covered = ({ profile, stands }: ThingSolid, at: Place, look: Looking): Place[] =>
  convexOutline(profile.flatMap(([r, h]) => ellipsePoints(circleSeen(look, at, h + stands, r), 0, 2 * Math.PI, 48)))

/** A cup's handle, at the guest's right: an upright loop, mm. Ours. */
const HANDLE = { from: 39, out: 17, middle: 34, high: 17, points: 24 }

const handle = ({ at, inward: [fx, fy] }: Thing, look: Looking, stands: number): Place[] =>
  Array.from({ length: HANDLE.points + 1 }, (_, i) => {
    const a = -Math.PI / 2 + (Math.PI * i) / HANDLE.points
    const out = HANDLE.from + HANDLE.out * Math.cos(a)
    return look.see(at[0] + fy * out, at[1] - fx * out, stands + HANDLE.middle + HANDLE.high * Math.sin(a))
  })

const flame = (at: Place, height: number, look: Looking, layer: Layer, tones: Tones): Mark[] => {
  const [x, y] = look.see(at[0], at[1], height)
  const wick = look.see(at[0], at[1], height + FLAME.wick)
  // Round, seen from above; drawn out into a point, seen level.
  const drop = (share: number): Place[] =>
    Array.from({ length: 33 }, (_, i) => {
      const a = (2 * Math.PI * i) / 32
      const rise = (1 - Math.cos(a)) / 2
      const w = (FLAME.width / 2) * share * Math.sin(a) * Math.sqrt(1 - 0.75 * rise)
      const round = (FLAME.width / 2) * share
      return [
        wick[0] + look.upright * w + look.level * round * Math.sin(a),
        wick[1] - look.upright * 3 + look.upright * FLAME.height * rise * share - look.level * round * Math.cos(a),
      ]
    })
  return [
    { kind: 'line', layer, points: [[x, y], wick], colour: tones.onWax, weight: 1 },
    { kind: 'polygon', layer, points: drop(1), fill: tones.flame },
    { kind: 'polygon', layer, points: drop(0.55), fill: tones.flameHeart },
    { kind: 'line', layer, points: drop(1), colour: tones.onWax, weight: FINE },
  ]
}

/** The side away from the light, the upper left: so much of the half at the right. Ours. */
const SHADED = 0.42

const shadedSide = (run: readonly Place[], [x, y]: Place): Place[] => [
  ...run.map(([u, v]): Place => [x + u, y + v]),
  ...[...run].reverse().map(([u, v]): Place => [x + (1 - SHADED) * u, y + v]),
]

/** One thing in thin ink: its outline, its rims and what is in it; what one can't see through covers what is behind it. */
export const thingMarks = (thing: Thing, look: Looking, layer: Layer, tones: Tones): Mark[] => {
  const { kind, at } = thing
  const solid = SOLIDS[kind]
  const flat = kind === 'dinner-plate' || kind === 'side-plate' || kind === 'saucer'
  const colour = solid.clear ? tones.over : kind === 'candle' ? tones.onWax : tones.onChina
  const line = (points: Place[], weight: number): Mark => ({ kind: 'line', layer, points, colour, weight })
  const marks: Mark[] = []
  if (kind === 'cup') marks.push(line(handle(thing, look, solid.stands), 1))
  const fill = kind === 'candle' ? tones.wax : tones.china
  const shaded = kind === 'candle' ? tones.waxShade : tones.chinaShade
  if (!solid.clear) marks.push({ kind: 'polygon', layer, points: covered(solid, at, look), fill })
  const origin = look.see(at[0], at[1], 0)
  if (!solid.clear && !flat)
    for (const run of outlineRuns(solid, look))
      marks.push({ kind: 'polygon', layer, points: shadedSide(run, origin), fill: shaded })
  for (const run of outlineRuns(solid, look))
    for (const side of [1, -1])
      marks.push(
        line(
          run.map(([x, y]): Place => [origin[0] + side * x, origin[1] + y]),
          1,
        ),
      )
  const [rim, top] = solid.rings.at(-1)!
  const mouth = circleSeen(look, at, top + solid.stands, rim)
  if (!solid.clear) {
    // The near half of the foot, as far as the rim does not hide it.
    const foot = circleSeen(look, at, solid.stands, solid.profile[0]![0])
    if (look.upright > 1e-6) marks.push(line(ellipsePoints(foot, Math.PI, 2 * Math.PI), 1))
    marks.push({ kind: 'polygon', layer, points: ellipsePoints(mouth), fill })
  }
  for (const [r, h] of solid.rings) {
    const seen = circleSeen(look, at, h + solid.stands, r)
    const outer = r === rim || h === 0
    if (solid.clear || h === top) marks.push({ kind: 'ellipse', layer, ...seen, colour, weight: outer ? 1 : FINE })
    // Of what is in it only so much as shows over the near rim.
    else for (const run of inside(ellipsePoints(seen), mouth)) marks.push(line(run, FINE))
  }
  if (kind === 'candle') marks.push(...flame(at, solid.height, look, layer, tones))
  return marks
}
