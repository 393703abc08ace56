import type { Point3 } from '../../src/arrangement/index.ts'
import type { Plant } from '../../src/catalogue/index.ts'
import { type Builder, newBuilder } from '../../src/geometry/habits/builder.ts'
import { type Fitted, fromRow, PART, plantKey, type Row, SLAB, STAGES, UNIT } from '../../src/geometry/habits/fitted.ts'
import { addHead } from '../../src/geometry/habits/heads/place.ts'
import { lineOf } from '../../src/geometry/habits/line.ts'
import { ROPES } from '../../src/geometry/habits/lines/index.ts'
import { meshOf } from '../../src/geometry/habits/mesh.ts'
import type { Layout, SolidInput } from '../../src/geometry/habits/organs.ts'
import { layoutOf } from '../../src/geometry/habits/plans/index.ts'
import { packStandins } from '../../src/geometry/habits/standins.ts'
import { randomFrom, UPRIGHT } from '../../src/geometry/habits/vector.ts'
import { LEVEL, namedAlike, namedAs, turnOf } from './axes.ts'
import { boundsOf, type Seen, seenFrom } from './bounds.ts'
import { leastSquares } from './least-squares.ts'
import { cutShares, cutSlabs, shareOut } from './pieces.ts'
import { countsOf, coverMesh, coverStandins, type Eye, eyeAt, newRaster } from './silhouette.ts'

const ANGLES = [0, 30, 60, 90] as const
/** Seeds to measure by. The first is that of the examples (tests, plates): it weighs more. */
const SEEDS = [7, 23, 41, 5] as const
const RASTER = newRaster(140)
const SIZE = 60

const upright = (above: number, below: number) => {
  const n = 24
  const points = Float32Array.from({ length: 3 * (n + 1) }, (_, i) =>
    i % 3 === 2 ? -(above + below) * (1 - Math.floor(i / 3) / n) : 0,
  )
  const mouthIndex = Math.round((n * below) / (above + below))
  const middle: Point3 = [0, 0, -above / 2]
  return { points, mouthIndex, above_mm: above, below_mm: below, cut_mm: above + below, middle }
}

/** An upright stem of a plant, as long as its flowering part asks. */
export const stemOf = (plant: Plant, openness: number, seed: number, piece: SolidInput['piece']): SolidInput => {
  const closed = plant.headClosed_mm?.value ?? plant.headOpen_mm.value
  const head_mm = closed + (plant.headOpen_mm.value - closed) * openness
  const above = Math.max(160, (plant.headLength_mm?.value ?? 0) * 1.15)
  return { plant, openness, head_mm, seed, axis: [0, 0, 1], curve: upright(above, above / 2), piece }
}

interface Case {
  stage: number
  angle: number
  layout: Layout
  eye: Eye
  bounds: Seen
  drawn: number
  counts: Uint16Array
  weight: number
  first: boolean
}

/** From where each seed is seen: facing and roll. 120° is 60° from behind; 180° shows the outline of 0°, mirrored. */
const looksOf = (s: number): [angle: number, roll: number][] => {
  const roll = 0.96 + 0.7 * s
  const quarter = Math.PI / 2
  return [
    [0, 0.4],
    [30, roll],
    [30, roll + quarter * 2.5],
    [60, roll],
    [60, roll + 2 * quarter],
    [60, roll + quarter],
    [90, roll],
    [90, roll + quarter],
  ]
}

const casesOf = (plant: Plant, stages: readonly number[]): Case[] =>
  stages.flatMap((open, stage) =>
    SEEDS.flatMap((seed, s) => {
      const layout = layoutOf(stemOf(plant, open, seed, 'whole'))
      const mesh = meshOf(layout)
      const laid = { ...mesh, vertices: mesh.positions.length / 3, faces: mesh.tissues.length }
      if (!boundsOf(laid)) return []
      return looksOf(s).map(([angle, roll]): Case => {
        const eye = eyeAt(angle, roll)
        const bounds = seenFrom(laid, eye)
        const drawn = coverMesh(RASTER, laid, eye, bounds.middle, bounds.half)
        return {
          stage,
          angle,
          layout,
          eye,
          bounds,
          drawn,
          counts: countsOf(RASTER),
          weight: (angle === 0 ? 1.4 : 1) * (s === 0 ? 1.6 : 1),
          first: s === 0,
        }
      })
    }),
  )

/** Whether the stand-ins of one stage have no part in the others: every head is as open as its stem. */
const isApart = (plant: Plant, stages: readonly number[]): boolean =>
  stages.every((open) =>
    SEEDS.every((seed) => {
      const { heads, ropes } = layoutOf(stemOf(plant, open, seed, 'whole'))
      return [...heads, ...ropes].every((x) => x.open === open)
    }),
  )

/** Flowers that open one after the other hardly show in the outline while they are buds: stages may go in turn. */
const mayTakeTurns = ({ heads }: Layout): boolean => heads[0]?.kind === 'orchid'

/** The mesh of one head, or of a flowering length, alone. */
const alone = (layout: Layout, open: number): { b: Builder; long: number } | null => {
  const b = newBuilder(1)
  const head = layout.heads[0]
  if (head) {
    addHead(b, { ...head, f: UPRIGHT, size: SIZE, open, seed: 11 })
    return { b, long: SIZE }
  }
  const rope = layout.ropes[0]
  if (!rope) return null
  const long = (SIZE * (rope.to - rope.from)) / rope.width
  const c = upright(long, 0)
  const points = c.points.map((x, i) => (i % 3 === 2 ? x + long : x))
  const { kind, shape } = rope
  const make = ROPES[kind] ?? ROPES.spike!
  make(b, lineOf({ ...c, points }, [1, 0, 0]), 0, long, SIZE, { open, shape, small: false, random: randomFrom(11) })
  return { b, long }
}

/** How far the drawn tip of a flowering length lies along it at every stage, over its length; none for heads. */
const tipsOf = (layout: Layout): number[] =>
  layout.ropes.length === 0
    ? []
    : STAGES.map((open) => {
        const one = alone(layout, open)
        if (!one) return 1
        const { positions, vertices } = one.b
        return (
          Array.from({ length: vertices }, (_, i) => positions[3 * i + 2]!).reduce((a, z) => Math.max(a, z)) / one.long
        )
      })
/** The same of its ellipsoids. */
const tipOf = (slabs: Float64Array): number => {
  let most = Number.NEGATIVE_INFINITY
  for (let i = 0; i < slabs.length; i += SLAB)
    most = Math.max(most, slabs[i + 2]! + Math.hypot(slabs[i + 5]!, slabs[i + 8]!, slabs[i + 11]!))
  return most
}

export interface Way {
  per: 0 | 3 | 6 | 9
  count: number
}

/** Numbers of each stage's ellipsoids to begin with. */
const beginning = (layout: Layout, { per, count }: Way): number[] | null => {
  const out: number[] = []
  // The same triangles make the same ellipsoid at every stage, so that what lies between is sound.
  const faces = (open: number): number => alone(layout, open)?.b.faces ?? 0
  const model = per === 9 && STAGES.every((open) => faces(open) === faces(0.5)) ? alone(layout, 0.5) : null
  const own = model ? shareOut(model.b, count) : null
  const models = model && own ? cutShares(model.b, own, count).map((s) => namedAs(s, LEVEL)) : []
  for (const open of STAGES) {
    const one = alone(layout, open)
    if (!one) return []
    const bounds = boundsOf(one.b)
    if (!bounds) return null
    const slabs = own
      ? cutShares(one.b, own, count).map((s, i) => namedAs(s, models[i]!))
      : cutSlabs(newRaster(200), one.b, count, bounds)
    if (slabs.length !== count) return null
    const [w, z] = [1 / SIZE, 1 / one.long]
    for (const s of slabs) {
      const r = [Math.hypot(...s.a) * w, Math.hypot(...s.b) * w, Math.hypot(...s.c) * z]
      if (per === 3) out.push(s.o[2] * z, (r[0]! + r[1]!) / 2, r[2]!)
      else out.push(s.o[0] * w, s.o[1] * w, s.o[2] * z, ...r)
      if (per === 9) out.push(...(own ? turnOf(s) : [0, 0, 0]))
    }
  }
  return out
}

const isRadius = (i: number, per: number): boolean => (per === 3 ? i % 3 > 0 : i % per > 2 && i % per < 6)
const isTurn = (i: number, per: number): boolean => per === 9 && i % 9 > 5

export interface Measured {
  row: Row
  /** Greatest relative difference of area: stage × angle. */
  worst: number[]
  /** Greatest difference by the first seed. */
  first: number
  /** Root mean square over every look. */
  rms: number
}

/** Fit a plant's stand-ins to its mesh: their logarithms of size, their places, the factors of its leaves. */
export const measurePlant = (plant: Plant, way: Way): Measured | null => {
  const probe = layoutOf(stemOf(plant, 1, 5, 'whole'))
  const own = way.per > 0 ? beginning(probe, way) : []
  if (!own) return null
  const { per, count } = way
  const leafy = probe.leaves.length > 0 || probe.twigs.some((t) => t.tissue === 'leaf')
  const stages = per > 0 ? STAGES : [1]
  const leaves = leafy ? stages.length : 0
  const cases = casesOf(plant, stages)
  const tips = tipsOf(probe)
  const long_mm = plant.headLength_mm?.value ?? 0
  const start = [
    ...own.map((x, i) => (isRadius(i, per) ? Math.log(Math.max(x, 0.004)) : x)),
    ...Array.from({ length: 3 * leaves }, () => 0),
  ]
  const whole = (p: readonly number[]): Row => {
    const numbers = own.map((_, i) =>
      isRadius(i, per) ? Math.max(1, Math.exp(p[i]!) * UNIT) : p[i]! * (isTurn(i, per) ? PART : UNIT),
    )
    return [plantKey(plant), per, count, leaves, ...numbers, ...p.slice(own.length).map((x) => Math.exp(x) * PART)]
  }
  /** For each case the logarithm of the areas' ratio, and the share of the mesh's that lies beside it. */
  const apartOf = (fitted: Fitted, of: readonly Case[]): [logs: number[], beside: number[]] => {
    let layout: Layout | null = null
    let packed: Float32Array = new Float32Array()
    const beside: number[] = []
    const logs = of.map((c) => {
      if (c.layout !== layout) packed = packStandins(c.layout, fitted, stages[c.stage]!)
      layout = c.layout
      const { eye, bounds, counts, drawn } = c
      const [area, over] = coverStandins(RASTER.size, packed, eye, bounds.middle, bounds.half, counts)
      beside.push(over / drawn)
      return Math.log(Math.max(1, area) / drawn)
    })
    return [logs, beside]
  }
  const held = (i: number): number =>
    i >= own.length ? 1.2 : isRadius(i, per) ? 0.7 : isTurn(i, per) ? 0.3 : per === 3 ? 0.1 : 0.04
  /** The least squares of the numbers in `of`, the others as they are; seen in the cases of the stages in `at`. */
  const settle = (p: readonly number[], of: readonly number[], at: readonly number[]): number[] => {
    const seen = cases.filter((c) => at.includes(c.stage))
    const put = (some: readonly number[]): number[] => {
      const q = [...p]
      of.forEach((i, k) => {
        q[i] = some[k]!
      })
      return q
    }
    const residuals = (some: number[]): number[] => {
      const fitted = fromRow(whole(put(some)))
      const [logs, beside] = apartOf(fitted, seen)
      const past = tips.length > 0 ? at.map((k) => (tipOf(fitted.flower[k]!) - tips[k]!) * long_mm) : []
      return [
        ...past.map((mm) => mm / TIP),
        ...beside.map((x) => x / 0.12),
        ...logs.map((x, i) => strained(x) * seen[i]!.weight),
        ...some.map((x, k) => (x - start[of[k]!]!) / held(of[k]!)),
      ]
    }
    return put(
      leastSquares(
        of.map((i) => p[i]!),
        residuals,
        per === 9 ? 14 : 7,
      ),
    )
  }
  const numbersOf = (stage: number): number[] => {
    const n = per * count
    const flower = Array.from({ length: n }, (_, i) => stage * n + i)
    return leaves > 0 ? [...flower, ...[0, 1, 2].map((i) => own.length + 3 * Math.min(stage, leaves - 1) + i)] : flower
  }
  let best = start
  const everything = stages.map((_, k) => k)
  if (mayTakeTurns(probe) || isApart(plant, stages)) for (const k of everything) best = settle(best, numbersOf(k), [k])
  else
    best = settle(
      best,
      start.map((_, i) => i),
      everything,
    )
  if (per === 9) {
    const sized = own.map((_, i) => (isRadius(i, per) ? Math.exp(best[i]!) : best[i]!))
    const alike = namedAlike(sized, count).map((x, i) => (isRadius(i, per) ? Math.log(x) : x))
    best = [...alike, ...best.slice(own.length)]
  }
  const row = whole(best).map((x) => Math.round(x))
  const [logs] = apartOf(fromRow(row), cases)
  const worst = stages.flatMap((_, s) =>
    ANGLES.map((angle) => {
      const these = logs.filter((_, i) => cases[i]!.stage === s && cases[i]!.angle === angle)
      return these.reduce((most, x) => (Math.abs(Math.exp(x) - 1) > Math.abs(most) ? Math.exp(x) - 1 : most), 0)
    }),
  )
  const first = Math.max(...logs.map((x, i) => (cases[i]!.first ? Math.abs(Math.exp(x) - 1) : 0)))
  return { row, worst, first, rms: Math.sqrt(logs.reduce((s, x) => s + x * x, 0) / logs.length) }
}

const SIGMA = 0.015
/** So far (mm) past the drawn tip of a flowering length weighs as much as one SIGMA of area in one look. Ours. */
const TIP = 0.7
/** Beyond this a difference of area weighs more than its square: none may be great, few need be nil. Ours. */
const STRAIN = 0.03
const strained = (x: number): number => (x / SIGMA) * Math.sqrt(1 + (x / STRAIN) ** 2)

/** Compositions to try for a plant, plainest first. */
export const waysFor = (plant: Plant): Way[] => {
  const layout = layoutOf(stemOf(plant, 1, 5, 'whole'))
  const head = layout.heads[0]
  if (layout.ropes.length > 0)
    return [
      { per: 3, count: 4 },
      { per: 6, count: 5 },
      { per: 6, count: 6 },
      { per: 9, count: 6 },
    ]
  if (!head) return [{ per: 0, count: 0 }]
  if (head.kind === 'knot' || layout.heads.length > 9)
    return [
      { per: 3, count: 1 },
      { per: 6, count: 1 },
      { per: 9, count: 1 },
    ]
  if (layout.heads.length > 1)
    return [
      { per: 3, count: 2 },
      { per: 6, count: 2 },
      { per: 9, count: 2 },
      { per: 6, count: 3 },
    ]
  return [
    { per: 3, count: 3 },
    { per: 6, count: 3 },
    { per: 6, count: 4 },
    { per: 9, count: 4 },
    { per: 9, count: 6 },
  ]
}
