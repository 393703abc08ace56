import type { Point3 } from '../../arrangement/index.ts'
import { STANDIN_STRIDE } from '../types.ts'
import { boundsOf, difference, looksAt, searchFactors } from './fit.ts'
import { meshOf } from './mesh.ts'
import { remembered } from './models.ts'
import type { Layout, SolidInput } from './organs.ts'
import { coverSlabs, newRaster, type Slab } from './silhouette.ts'
import { scale } from './vector.ts'

/**
 * Factors on the widths and thicknesses of a plant's stand-ins (blooms, then leaves), so that they agree as a whole:
 * parts that hide each other, bent leaves seen edge on. Measured once on an upright stem of the plant.
 */
export interface Tuning {
  bloom: readonly [wide: number, thick: number]
  leaf: readonly [wide: number, thick: number]
}
export const UNTUNED: Tuning = { bloom: [1, 1], leaf: [1, 1] }

const raster = newRaster(130)
const SEEDS = [5, 23]

/** An upright stem as long as its flowering or leafy part asks. */
const upright = (input: SolidInput, open: number, seed: number): SolidInput => {
  // Only the plant counts, not the stem that happens to ask first.
  const { headLength_mm, headOpen_mm, headClosed_mm } = input.plant
  const closed = headClosed_mm?.value ?? headOpen_mm.value
  const head_mm = closed + (headOpen_mm.value - closed) * open
  const above = Math.max(150, (headLength_mm?.value ?? 0) * 1.15, head_mm * 1.6)
  const points = Float32Array.from({ length: 27 }, (_, i) => (i % 3 === 2 ? -above * (1 - Math.floor(i / 3) / 8) : 0))
  const curve = {
    points,
    mouthIndex: 0,
    above_mm: above,
    below_mm: 0,
    cut_mm: above,
    middle: [0, 0, -above / 2] as Point3,
  }
  return { ...input, head_mm, openness: open, seed, axis: [0, 0, 1], curve, detail: 0.75 }
}

const measure = (
  input: SolidInput,
  open: number,
  layoutOf: (input: SolidInput) => Layout,
  standins: (layout: Layout, tuning: Tuning) => Float32Array,
): Tuning => {
  const cases = SEEDS.flatMap((seed) => {
    const layout = layoutOf(upright(input, open, seed))
    const mesh = meshOf(layout, 0.75)
    const laid = { ...mesh, vertices: mesh.positions.length / 3, faces: mesh.tissues.length }
    const bounds = boundsOf(laid)
    if (!bounds) return []
    const packed = standins(layout, UNTUNED)
    const slabs: (Slab & { leaf: boolean })[] = []
    for (let i = 0; i < packed.length; i += STANDIN_STRIDE) {
      if (packed[i] !== 0) continue
      const at = (k: number): Point3 => [packed[i + k]!, packed[i + k + 1]!, packed[i + k + 2]!]
      slabs.push({ o: at(2), a: at(5), b: at(8), c: at(11), leaf: packed[i + 1] === 1 })
    }
    return [{ slabs, bounds, looks: looksAt(raster, laid, bounds, [0.4, 0.4 + Math.PI / 2]) }]
  })
  const anyLeaf = cases.some((c) => c.slabs.some((s) => s.leaf))
  const anyBloom = cases.some((c) => c.slabs.some((s) => !s.leaf))
  const count = anyLeaf && anyBloom ? 4 : 2
  const tuning = (factors: readonly number[]): Tuning => {
    const [p = 1, q = 1, r = 1, s = 1] = factors
    if (count === 4) return { bloom: [p, q], leaf: [r, s] }
    return anyLeaf ? { bloom: [1, 1], leaf: [p, q] } : { bloom: [p, q], leaf: [1, 1] }
  }
  const factors = searchFactors(
    count,
    (tried) => {
      const { bloom, leaf } = tuning(tried)
      let sum = 0
      for (const { slabs, bounds, looks } of cases) {
        const made = slabs.map((s) => {
          const [wide, thick] = s.leaf ? leaf : bloom
          return { o: s.o, a: s.leaf ? s.a : scale(s.a, wide), b: scale(s.b, wide), c: scale(s.c, thick) }
        })
        sum += difference(looks, (look) => coverSlabs(raster.size, made, look.eye, bounds.middle, look.half))
      }
      return sum / Math.max(1, cases.length)
    },
    0.02,
  )
  return tuning(factors)
}

/** The tuning of a stem's plant at the nearest of three stages. Leaves alone do not open: one stage serves. */
export const tuningOf = (
  input: SolidInput,
  layout: Layout,
  layoutOf: (input: SolidInput) => Layout,
  standins: (layout: Layout, tuning: Tuning) => Float32Array,
): Tuning => {
  const blooms = layout.heads.length + layout.ropes.length
  if (blooms === 1 && layout.leaves.length === 0) return UNTUNED
  const stage = blooms === 0 ? 1 : Math.round(input.openness * 2) / 2
  return remembered(input.plant.shape, `whole ${input.piece} ${stage}`, () => measure(input, stage, layoutOf, standins))
}
