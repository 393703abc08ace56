import type { Point3 } from '../../arrangement/index.ts'
import type { Plant } from '../../catalogue/index.ts'
import type { StemCurve, Tissue } from '../types.ts'
import type { Builder } from './builder.ts'
import type { LeafForm } from './leaf.ts'
import type { Line } from './line.ts'
import type { Frame, Random } from './vector.ts'

/** Everything that decides how one stem looks. */
export interface SolidInput {
  plant: Plant
  /** 0 tight bud … 1 fully open or reflexed. */
  openness: number
  /** Head diameter at this openness, mm. */
  head_mm: number
  seed: number
  /** Unit vector: where the head faces. */
  axis: Point3
  /** Relative to the tip. */
  curve: StemCurve
  piece: 'whole' | 'lateral'
  /** Steps across surfaces, times this: 0.5 coarse … 1.5 fine. */
  detail?: number
}

export type Shape = Plant['shape']
export const num = (shape: Shape, key: string, otherwise: number): number => {
  const x = shape[key]
  return typeof x === 'number' && Number.isFinite(x) ? x : otherwise
}
export const word = (shape: Shape, key: string, otherwise: string): string => {
  const x = shape[key]
  return typeof x === 'string' ? x : otherwise
}

/** What a maker of heads gets to know besides the frame and the size. */
export interface HeadCase {
  open: number
  shape: Shape
  random: Random
  /** One of many on a stem: fewer parts. */
  small: boolean
}
/** Lays a head of about diameter `size` (mm) with its centre at f.o, facing f.w. */
export type HeadMaker = (b: Builder, f: Frame, size: number, head: HeadCase) => void
/** Lays a flowering length on a line from s = from to s = to (mm from the cut end), `width` across. */
export type RopeMaker = (b: Builder, line: Line, from: number, to: number, width: number, head: HeadCase) => void

export interface HeadOrgan {
  f: Frame
  /** Name in HEADS. */
  kind: string
  size: number
  open: number
  seed: number
  shape: Shape
  small: boolean
  /** How far it is open at openness 0, where the plant is cut with its heads showing; 0 if left out. */
  least?: number
}
export interface RopeOrgan {
  /** Name in ROPES. */
  kind: string
  from: number
  to: number
  width: number
  open: number
  seed: number
  shape: Shape
}
export interface Twig {
  points: Point3[]
  r0: number
  r1: number
  tissue: Tissue
}
/** Seed cups or fruits round one place: their radius (mm), their length over that, the way that each points. */
export interface FruitCluster {
  o: Point3
  r: number
  long: number
  towards: Point3[]
}
/** One stem taken apart: read by the mesh and by the stand-ins alike. */
export interface Layout {
  line: Line
  heads: HeadOrgan[]
  ropes: RopeOrgan[]
  leaves: LeafForm[]
  twigs: Twig[]
  fruits: FruitCluster[]
  /** The bare stem: from the cut end to `until` (mm), radius at the cut end and there; beyond it its own `neck`. */
  stem: { until: number; r0: number; r1: number; tissue: Tissue; neck?: Point3[] }
}
