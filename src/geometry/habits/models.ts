import type { Point3 } from '../../arrangement/index.ts'
import { newBuilder } from './builder.ts'
import { fitSlabs } from './fit.ts'
import { addHead } from './heads/place.ts'
import { lineOf } from './line.ts'
import { ROPES } from './lines/index.ts'
import type { HeadOrgan, RopeOrgan, Shape } from './organs.ts'
import type { Slab } from './silhouette.ts'
import { mix, randomFrom, scale, UPRIGHT } from './vector.ts'

/** The stand-in of a head of size 1, upright at the origin, and the bare rays inside it (a, b, radius). */
export interface Model {
  slabs: Slab[]
  rays: { a: Point3; b: Point3; r: number }[]
}

/** Stages of opening at which models are measured; between them they are mixed. */
const KNOTS = [0, 0.25, 0.5, 0.75, 1] as const
/** Size at which models are built, mm, and how finely; ours. */
const SIZE = 60
const COARSE = 0.75
const SEED = 11

// Measured at first use: a plant's shape is one object for as long as the catalogue lives.
const known = new WeakMap<Shape, Map<string, unknown>>()
/** What was made before for this shape under this key, or now. */
export const remembered = <T>(shape: Shape, key: string, make: () => T): T => {
  let made = known.get(shape)
  if (!made) {
    made = new Map()
    known.set(shape, made)
  }
  let one = made.get(key) as T | undefined
  if (one === undefined) {
    one = make()
    made.set(key, one)
  }
  return one
}

const headModel = ({ kind, shape, small, twin }: HeadOrgan, open: number): Model =>
  remembered(shape, `${kind} ${small} ${open} ${twin ? 1 : 2}`, () => {
    const b = newBuilder(COARSE)
    b.bare = []
    const grown = addHead(b, { f: UPRIGHT, kind, size: SIZE, open, seed: SEED, shape, small })
    const k = 1 / SIZE
    const slabs = fitSlabs(b, small ? (twin ? 1 : kind === 'orchid' ? 3 : 2) : 5, {
      parts: twin ? 0 : kind === 'orchid' ? 9 : small ? 5 : 11,
    })
    return {
      slabs: slabs.map((s) => ({ o: scale(s.o, k), a: scale(s.a, k), b: scale(s.b, k), c: scale(s.c, k) })),
      rays: small
        ? []
        : b.bare.map((ray) => ({ a: scale(ray.a, grown * k), b: scale(ray.b, grown * k), r: ray.r * grown * k })),
    }
  })

/** Ropes: z runs 0 … 1 along the length, widths are shares of the width. `ratio`: length over width. */
const ropeModel = ({ kind, shape }: RopeOrgan, open: number, ratio: number): Model =>
  remembered(shape, `${kind} ${open} ${ratio}`, () => {
    const b = newBuilder(COARSE)
    const long = SIZE * ratio
    const points = Float32Array.from({ length: 27 }, (_, i) => (i % 3 === 2 ? (long * Math.floor(i / 3)) / 8 : 0))
    const straight = {
      points,
      mouthIndex: 0,
      above_mm: long,
      below_mm: 0,
      cut_mm: long,
      middle: [0, 0, long / 2] as Point3,
    }
    const make = ROPES[kind] ?? ROPES.spike!
    make(b, lineOf(straight, [1, 0, 0]), 0, long, SIZE, { open, shape, small: false, random: randomFrom(SEED) })
    const part = (p: Point3): Point3 => [p[0] / SIZE, p[1] / SIZE, p[2] / long]
    return {
      slabs: fitSlabs(b, 7, { long: true }).map((s) => ({ o: part(s.o), a: part(s.a), b: part(s.b), c: part(s.c) })),
      rays: [],
    }
  })

const mixed = (low: Model, high: Model, t: number): Model => {
  if (low.slabs.length !== high.slabs.length) return t < 0.5 ? low : high
  const slabs = low.slabs.map((s, i) => {
    const o = high.slabs[i]!
    return { o: mix(s.o, o.o, t), a: mix(s.a, o.a, t), b: mix(s.b, o.b, t), c: mix(s.c, o.c, t) }
  })
  return { slabs, rays: t < 0.5 ? low.rays : high.rays }
}

const between = (open: number, at: (knot: number) => Model): Model => {
  const x = Math.max(0, Math.min(1, open)) * (KNOTS.length - 1)
  const i = Math.min(KNOTS.length - 2, Math.floor(x))
  const t = x - i
  if (t < 1e-9) return at(KNOTS[i]!)
  if (t > 1 - 1e-9) return at(KNOTS[i + 1]!)
  return mixed(at(KNOTS[i]!), at(KNOTS[i + 1]!), t)
}

/** The stand-in of a head at its openness, size 1. */
export const modelOfHead = (head: HeadOrgan): Model => between(head.open, (knot) => headModel(head, knot))

/** The stand-in of a flowering length at its openness. */
export const modelOfRope = (rope: RopeOrgan): Model => {
  // Proportions are taken in steps of a quarter octave.
  const ratio = 2 ** (Math.round(4 * Math.log2(Math.max(0.5, (rope.to - rope.from) / Math.max(1, rope.width)))) / 4)
  return between(rope.open, (knot) => ropeModel(rope, knot, ratio))
}
