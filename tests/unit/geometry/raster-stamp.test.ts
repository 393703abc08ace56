import fc from 'fast-check'
import { expect, it } from 'vitest'
import { preparedParts } from '../../../src/geometry/parts.ts'
import { createLayer, type Grid, type Layer, splatParts, typedAxes } from '../../../src/geometry/raster.ts'
import { cutStamp, putStamp } from '../../../src/geometry/raster-stamp.ts'
import { viewAxes } from '../../../src/geometry/view.ts'

const grid: Grid = { width: 48, height: 48, mm: 2, zeroRow: 12 }
const n = (from: number, to: number) => fc.integer({ min: 0, max: 99 }).map((k) => from + ((to - from) * k) / 99)
const vector = (s: number) => fc.tuple(n(-s, s), n(-s, s), n(-s, s))
/** An ellipsoid of bloom or leaf, or a capsule of any kind; some of them reach beyond the picture. */
const ellipsoid = fc
  .tuple(fc.integer({ min: 0, max: 1 }), vector(50), vector(15), vector(15), vector(15))
  .map(([kind, c, p, q, r]) => [0, kind, ...c, ...p, ...q, ...r])
const capsule = fc
  .tuple(fc.integer({ min: 0, max: 2 }), vector(60), vector(60), n(1, 6))
  .map(([kind, a, b, radius]) => [1, kind, ...a, ...b, radius, 0, 0, 0, 0, 0])
const stem = fc
  .array(fc.oneof(ellipsoid, capsule), { minLength: 1, maxLength: 6 })
  .map((solids) => preparedParts(Float32Array.from(solids.flat()), [0, 0, 20]))

const same = (a: ArrayLike<number> | undefined | null, b: ArrayLike<number> | undefined | null): boolean => {
  for (let i = 0; i < (a?.length ?? 0); i++) if (!Object.is(a![i], b![i])) return false
  return a?.length === b?.length
}
const alike = (a: Layer, b: Layer): boolean =>
  same(a.owner, b.owner) &&
  same(a.depth, b.depth) &&
  same(a.mass, b.mass) &&
  same(a.back?.owner, b.back?.owner) &&
  same(a.back?.depth, b.back?.depth)

it('a picture put together of stamps is, to the bit, the one that is painted', () => {
  fc.assert(
    fc.property(
      fc.array(stem, { minLength: 1, maxLength: 5 }),
      n(0, 360),
      fc.constantFrom(0, 45, 90),
      fc.boolean(),
      (stems, turn, pitch, both) => {
        const axes = typedAxes(viewAxes({ turn, pitch }))
        const layer = () => createLayer(48 * 48, both, both)
        const [painted, put, bench] = [layer(), layer(), layer()]
        stems.forEach((parts, i) => void splatParts(painted, grid, axes, parts, i))
        const stamps = stems.map((parts) => cutStamp(bench, grid, axes, parts))
        // The order makes no difference.
        for (let i = stems.length - 1; i >= 0; i--) putStamp(put, 48, stamps[i]!, i)
        expect(alike(put, painted)).toBe(true)
        expect(alike(bench, layer())).toBe(true)
      },
    ),
    { numRuns: 150 },
  )
})
