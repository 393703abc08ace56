import fc from 'fast-check'
import { expect, test } from 'vitest'
import { preparedParts } from '../../../src/geometry/parts.ts'
import { createLayer, type Grid, splatParts } from '../../../src/geometry/raster.ts'
import { bareCount, coverParts, createCover, isCovered } from '../../../src/geometry/raster-cover.ts'
import { STANDIN_STRIDE } from '../../../src/geometry/types.ts'
import { viewAxes } from '../../../src/geometry/view.ts'

const grid: Grid = { width: 64, height: 64, mm: 2, zeroRow: 32 }
const shape = fc.tuple(
  fc.constantFrom(0, 1),
  fc.array(fc.double({ min: -40, max: 40, noNaN: true }), { minLength: 12, maxLength: 12 }),
)

test('the quick way covers the pixels that the long way covers', () => {
  fc.assert(
    fc.property(fc.array(shape, { maxLength: 6 }), fc.integer({ min: 0, max: 11 }), (shapes, way) => {
      const standins = new Float32Array(shapes.length * STANDIN_STRIDE)
      shapes.forEach(([kind, numbers], i) => {
        standins[i * STANDIN_STRIDE] = kind
        standins.set(numbers, i * STANDIN_STRIDE + 2)
        if (kind === 1) standins[i * STANDIN_STRIDE + 8] = Math.abs(numbers[6]!)
      })
      const parts = preparedParts(standins, [0, 0, 20])
      const axes = viewAxes({ turn: way * 30, pitch: 45 })
      const layer = createLayer(64 * 64, false, false)
      for (let r = 0; r < 64; r++) layer.depth.fill(-(r + 0.5 - 32) * 2, r * 64, (r + 1) * 64)
      splatParts(layer, grid, axes, parts, 3)
      const cover = createCover(64)
      coverParts(cover, grid, axes, parts, true)
      coverParts(cover, grid, axes, parts, false)
      const quick = Array.from(layer.owner, (_, i) => Number(isCovered(cover, i % 64, i >> 6)))
      expect(quick).toEqual(Array.from(layer.owner, (o) => Math.min(1, o)))
      expect(bareCount(cover)).toBe(quick.filter((x) => x === 0).length)
    }),
    { numRuns: 300 },
  )
})
