import { polygonArea as d3Area, polygonHull } from 'd3-polygon'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { convexHull, latticePoints, polygonArea } from '../../../src/geometry/hull.ts'

const points = fc.array(fc.tuple(fc.integer({ min: -40, max: 40 }), fc.integer({ min: -40, max: 40 })), {
  minLength: 3,
  maxLength: 60,
})

it('the hull has the area that d3-polygon finds', () => {
  fc.assert(
    fc.property(points, (list) => {
      const flat = list.flat()
      const hull = convexHull(flat).flatMap((i) => [flat[2 * i]!, flat[2 * i + 1]!])
      const theirs = polygonHull(list)
      expect(Math.abs(polygonArea(hull))).toBeCloseTo(theirs ? Math.abs(d3Area(theirs)) : 0, 9)
    }),
  )
})

it('counts the whole-number points in a hull as counting one by one does', () => {
  fc.assert(
    fc.property(points, (list) => {
      const flat = list.flat()
      const hull = convexHull(flat).flatMap((i) => [flat[2 * i]!, flat[2 * i + 1]!])
      let inside = 0
      for (let x = -40; x <= 40; x++)
        for (let y = -40; y <= 40; y++) {
          let ok = true
          for (let i = 0; i < hull.length; i += 2) {
            const j = (i + 2) % hull.length
            const [ax, ay, bx, by] = [hull[i]!, hull[i + 1]!, hull[j]!, hull[j + 1]!]
            const side = (bx - ax) * (y - ay) - (by - ay) * (x - ax)
            if (side < 0) ok = false
            if (
              side === 0 &&
              (x < Math.min(ax, bx) || x > Math.max(ax, bx) || y < Math.min(ay, by) || y > Math.max(ay, by))
            )
              ok = false
          }
          if (ok) inside += 1
        }
      expect(latticePoints(hull)).toBeCloseTo(inside, 9)
    }),
    { numRuns: 40 },
  )
})

it('one pixel is one pixel, a line is its pixels', () => {
  expect(latticePoints([3, 3, 3, 3])).toBe(1)
  expect(latticePoints([0, 0, 4, 0])).toBe(5)
  expect(latticePoints([])).toBe(0)
})
