import type { Point3 } from '../../src/arrangement/index.ts'
import type { Plant } from '../../src/catalogue/index.ts'
import { type Builder, newBuilder } from '../../src/geometry/habits/builder.ts'
import { type Fitted, fromRow, PART, plantKey, type Row, STAGES, UNIT } from '../../src/geometry/habits/fitted.ts'
import { addHead } from '../../src/geometry/habits/heads/place.ts'
import { lineOf } from '../../src/geometry/habits/line.ts'
import { ROPES } from '../../src/geometry/habits/lines/index.ts'
import { meshOf } from '../../src/geometry/habits/mesh.ts'
import type { Layout, SolidInput } from '../../src/geometry/habits/organs.ts'
import { layoutOf } from '../../src/geometry/habits/plans/index.ts'
import { packStandins } from '../../src/geometry/habits/standins.ts'
import { clamp, randomFrom, UPRIGHT } from '../../src/geometry/habits/vector.ts'
import { type Bounds, boundsOf } from './bounds.ts'
import { leastSquares } from './least-squares.ts'
import { cutParts, cutSlabs } from './pieces.ts'
import { countsOf, coverMesh, coverStandins, type Eye, eyeAt, newRaster, type Slab } from './silhouette.ts'

const ANGLES = [0, 30, 60, 90] as const
const SEEDS = [5, 23, 41, 7] as const
const RASTER = newRaster(360)
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
  bounds: Bounds
  drawn: number
  counts: Uint16Array
  weight: number
}

const casesOf = (plant: Plant, stages: readonly number[]): Case[] =>
  stages.flatMap((open, stage) =>
    SEEDS.flatMap((seed, s) => {
      const layout = layoutOf(stemOf(plant, open, seed, 'whole'))
      const mesh = meshOf(layout)
      const laid = { ...mesh, vertices: mesh.positions.length / 3, faces: mesh.tissues.length }
      const bounds = boundsOf(laid)
      if (!bounds) return []
      return ANGLES.flatMap((angle) => {
        const rolls = angle === 0 ? [0.4] : [0.96 + 0.7 * (s % 3), 0.96 + 0.7 * (s % 3) + Math.PI / 2]
        return rolls.map((roll): Case => {
          const eye = eyeAt(angle, roll)
          const drawn = coverMesh(RASTER, laid, eye, bounds.middle, bounds.half)
          return { stage, angle, layout, eye, bounds, drawn, counts: countsOf(RASTER), weight: angle === 0 ? 1.4 : 1 }
        })
      })
    }),
  )

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

/** The rotation vector of three axes (columns of a rotation once each has length 1). */
const turnOf = ({ a, b, c }: Slab): number[] => {
  const u = [a, b, c].map((v) => v.map((x) => x / (Math.hypot(...v) || 1)))
  const det =
    u[0]![0]! * (u[1]![1]! * u[2]![2]! - u[1]![2]! * u[2]![1]!) -
    u[0]![1]! * (u[1]![0]! * u[2]![2]! - u[1]![2]! * u[2]![0]!) +
    u[0]![2]! * (u[1]![0]! * u[2]![1]! - u[1]![1]! * u[2]![0]!)
  if (det < 0) u[2] = u[2]!.map((x) => -x)
  const angle = Math.acos(clamp((u[0]![0]! + u[1]![1]! + u[2]![2]! - 1) / 2, -1, 1))
  const v = [u[1]![2]! - u[2]![1]!, u[2]![0]! - u[0]![2]!, u[0]![1]! - u[1]![0]!]
  const l = Math.hypot(...v)
  if (l > 1e-6) return v.map((x) => (x / l) * angle)
  const d = [0, 1, 2].map((i) => Math.sqrt(Math.max(0, (u[i]![i]! + 1) / 2)))
  return angle < 1 ? [0, 0, 0] : d.map((x) => x * angle)
}

export interface Way {
  per: 0 | 3 | 6 | 9
  count: number
}

/** Numbers of each stage's ellipsoids to begin with. */
const beginning = (layout: Layout, { per, count }: Way): number[] | null => {
  const out: number[] = []
  for (const open of STAGES) {
    const one = alone(layout, open)
    if (!one) return []
    const bounds = boundsOf(one.b)
    if (!bounds) return null
    const slabs = per === 9 ? cutParts(one.b, 40, count) : cutSlabs(newRaster(200), one.b, count, bounds)
    if (slabs.length !== count) return null
    const [w, z] = [1 / SIZE, 1 / one.long]
    for (const s of slabs) {
      const r = [Math.hypot(...s.a) * w, Math.hypot(...s.b) * w, Math.hypot(...s.c) * z]
      if (per === 3) out.push(s.o[2] * z, (r[0]! + r[1]!) / 2, r[2]!)
      else out.push(s.o[0] * w, s.o[1] * w, s.o[2] * z, ...r)
      if (per === 9) out.push(...turnOf(s))
    }
  }
  return out
}

const isRadius = (i: number, per: number): boolean => (per === 3 ? i % 3 > 0 : i % per > 2 && i % per < 6)
const isTurn = (i: number, per: number): boolean => per === 9 && i % 9 > 5

export interface Measured {
  row: Row
  /** Mean relative difference of area: stage × angle. */
  apart: number[]
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
  const apartOf = (fitted: Fitted): [logs: number[], beside: number[]] => {
    let layout: Layout | null = null
    let packed: Float32Array = new Float32Array()
    const beside: number[] = []
    const logs = cases.map((c) => {
      if (c.layout !== layout) packed = packStandins(c.layout, fitted, stages[c.stage]!)
      layout = c.layout
      const { eye, bounds, counts, drawn } = c
      const [area, over] = coverStandins(RASTER.size, packed, eye, bounds.middle, bounds.half, counts)
      beside.push(over / drawn)
      return Math.log(Math.max(1, area) / drawn)
    })
    return [logs, beside]
  }
  const SIGMA = 0.015
  const residuals = (p: number[]): number[] => {
    const [logs, beside] = apartOf(fromRow(whole(p)))
    return [
      ...beside.map((x) => x / 0.12),
      ...logs.map((x, i) => (x * cases[i]!.weight) / SIGMA),
      ...p.map((x, i) => {
        if (i >= own.length) return x / 1.2
        return (
          (x - start[i]!) /
          (isRadius(i, per) ? (probe.heads[0]?.twin ? 2 : 0.7) : isTurn(i, per) ? 0.05 : per === 3 ? 0.1 : 0.04)
        )
      }),
    ]
  }
  const best = leastSquares(start, residuals)
  const row = whole(best).map((x) => Math.round(x))
  const [logs] = apartOf(fromRow(row))
  const apart = stages.flatMap((_, s) =>
    ANGLES.map((angle) => {
      const these = logs.filter((_, i) => cases[i]!.stage === s && cases[i]!.angle === angle)
      return these.reduce((sum, x) => sum + Math.exp(x) - 1, 0) / Math.max(1, these.length)
    }),
  )
  return { row, apart, rms: Math.sqrt(logs.reduce((s, x) => s + x * x, 0) / logs.length) }
}

/** Compositions to try for a plant, plainest first. */
export const waysFor = (plant: Plant): Way[] => {
  const layout = layoutOf(stemOf(plant, 1, 5, 'whole'))
  const head = layout.heads[0]
  if (layout.ropes.length > 0)
    return [
      { per: 3, count: 4 },
      { per: 3, count: 5 },
      { per: 6, count: 5 },
      { per: 6, count: 6 },
    ]
  if (!head) return [{ per: 0, count: 0 }]
  if (head.twin)
    return [
      { per: 3, count: 1 },
      { per: 6, count: 1 },
    ]
  if (layout.heads.length > 9)
    return [
      { per: 3, count: 1 },
      { per: 6, count: 1 },
    ]
  if (layout.heads.length > 1)
    return [
      { per: 3, count: 2 },
      { per: 6, count: 2 },
      { per: 3, count: 3 },
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
