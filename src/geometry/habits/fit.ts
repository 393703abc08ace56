import type { Point3 } from '../../arrangement/index.ts'
import { type Builder, TISSUE_NUMBER } from './builder.ts'
import { cutParts, cutSlabs } from './pieces.ts'
import { coverMesh, coverSlabs, type Eye, eyeAt, newRaster, type Raster, type Slab } from './silhouette.ts'
import { scale } from './vector.ts'

const FACINGS = [0, 30, 60, 90] as const
const ROLLS = [0.4, 0.4 + (2 * Math.PI) / 3, 0.4 + (4 * Math.PI) / 3] as const

export interface Bounds {
  least: Point3
  most: Point3
  middle: Point3
  /** Half the diagonal. */
  half: number
}
type Laid = Pick<Builder, 'positions' | 'triangles' | 'tissues' | 'vertices' | 'faces'>

/** Bounds of what is not bare stem; null when there is nothing. */
export const boundsOf = (b: Laid): Bounds | null => {
  const least: Point3 = [Infinity, Infinity, Infinity]
  const most: Point3 = [-Infinity, -Infinity, -Infinity]
  for (let t = 0; t < b.faces; t++) {
    if (b.tissues[t] === TISSUE_NUMBER.stem || b.tissues[t] === TISSUE_NUMBER.bark) continue
    for (let j = 0; j < 3; j++) {
      const i = 3 * b.triangles[3 * t + j]!
      for (let c = 0; c < 3; c++) {
        const p = b.positions[i + c]!
        if (p < least[c]!) least[c] = p
        if (p > most[c]!) most[c] = p
      }
    }
  }
  if (!Number.isFinite(least[0])) return null
  const middle: Point3 = [(least[0] + most[0]) / 2, (least[1] + most[1]) / 2, (least[2] + most[2]) / 2]
  return {
    least,
    most,
    middle,
    half: (Math.hypot(most[0] - least[0], most[1] - least[1], most[2] - least[2]) / 2) * 1.04,
  }
}

/** A way of looking at a mesh, what it covers there, and which facing that is. */
export interface Look {
  eye: Eye
  facing: number
  half: number
  covered: number
}

/** Look at a mesh from 0°, 30°, 60° and 90° off its axis and from several sides. */
export const looksAt = (raster: Raster, b: Laid, bounds: Bounds, rolls: readonly number[] = ROLLS): Look[] => {
  const { least, most, middle, half } = bounds
  return FACINGS.flatMap((facing, i) =>
    (i === 0 ? rolls.slice(0, 1) : rolls).map((roll) => {
      const eye = eyeAt(facing, roll)
      // Face on the raster can come closer.
      const near = facing === 0 ? Math.hypot(most[0] - least[0], most[1] - least[1]) * 0.52 : half
      return { eye, facing: i, half: near, covered: coverMesh(raster, b, eye, middle, near) }
    }),
  )
}

/** Worst difference of covered area over the facings, as a share, with a little of the mean. */
export const difference = (looks: readonly Look[], covered: (look: Look) => number): number => {
  const want = [0, 0, 0, 0]
  const have = [0, 0, 0, 0]
  let each = 0
  for (const look of looks) {
    const n = covered(look)
    want[look.facing]! += look.covered
    have[look.facing]! += n
    each += Math.abs(n / Math.max(1, look.covered) - 1) / looks.length
  }
  const apart = want.map((w, i) => Math.abs(have[i]! / Math.max(1, w) - 1))
  return Math.max(...apart) + 0.25 * each
}

/** Pattern search: factors near 1 that make `value` least. */
export const searchFactors = (
  count: number,
  value: (factors: readonly number[]) => number,
  enough = 0.012,
  first = 0.2,
): number[] => {
  let best = Array.from({ length: count }, () => 1)
  let least = value(best)
  for (let step = first; step > 0.014 && least > enough; step *= 0.5) {
    for (let turn = 0; turn < 3; turn++) {
      const before = least
      for (let i = 0; i < count; i++) {
        for (const factor of [1 + step, 1 / (1 + step)]) {
          const tried = best.map((x, j) => (j === i ? x * factor : x))
          const v = value(tried)
          if (v < least - 1e-6) {
            least = v
            best = tried
            break
          }
        }
      }
      if (least === before) break
    }
  }
  return best
}

/** Widths times p, third axes times q; the narrower ones' widths times s, their places along the axis spread by r. */
const shaped = (slabs: readonly Slab[], middle: number, [p = 1, q = 1, s = 1, r = 1]: readonly number[]): Slab[] => {
  const wide = (k: Slab): number => Math.hypot(...k.a) * Math.hypot(...k.b)
  const widest = Math.max(...slabs.map(wide))
  return slabs.map((k) => {
    const w = p * (wide(k) > 0.86 * widest ? 1 : s)
    return { o: [k.o[0], k.o[1], middle + (k.o[2] - middle) * r], a: scale(k.a, w), b: scale(k.b, w), c: scale(k.c, q) }
  })
}

/** A difference with which a fit is left as it is: the seeds of a plant differ by as much. */
const GOOD = 0.03
const small = newRaster(72)
const great = newRaster(200)

/** Ellipsoids after a search of their common factors and then of each one's width. */
const fitted = (raster: Raster, cut: readonly Slab[], looks: readonly Look[], { middle }: Bounds): [Slab[], number] => {
  const value = (made: readonly Slab[]): number =>
    difference(looks, (look) => coverSlabs(raster.size, made, look.eye, middle, look.half))
  const rough = shaped(
    cut,
    middle[2],
    searchFactors(4, (factors) => value(shaped(cut, middle[2], factors)), 0.02),
  )
  const each = (factors: readonly number[]): Slab[] =>
    rough.map((k, i) => ({ ...k, a: scale(k.a, factors[i]!), b: scale(k.b, factors[i]!) }))
  const apart = value(rough)
  if (rough.length > 7 || apart < GOOD) return [rough, apart]
  const made = each(searchFactors(rough.length, (factors) => value(each(factors)), 0.012, 0.12))
  return [made, value(made)]
}

/**
 * Ellipsoids whose outline has the area of the mesh's, seen at 0°, 30°, 60° and 90° from its axis: cut by height into
 * `count` slabs or, where there are at most `parts` petals, one for each, whichever agrees better. `long` things need a finer raster. Ours.
 */
export const fitSlabs = (b: Builder, count: number, { parts = 0, long = false } = {}): Slab[] => {
  const bounds = boundsOf(b)
  if (!bounds) return []
  const raster = long ? great : small
  const looks = looksAt(raster, b, bounds, long ? ROLLS.slice(0, 2) : ROLLS)
  const [slabs, apart] = fitted(raster, cutSlabs(raster, b, count, bounds), looks, bounds)
  const byParts = parts > 0 && apart > GOOD ? cutParts(b, parts) : []
  if (byParts.length === 0) return slabs
  const [petals, other] = fitted(raster, byParts, looks, bounds)
  return other < apart ? petals : slabs
}
