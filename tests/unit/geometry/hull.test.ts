import { polygonArea as d3Area, polygonHull } from 'd3-polygon'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { hullOfRows, latticePoints, polygonArea } from '../../../src/geometry/hull.ts'

const points = fc.array(fc.tuple(fc.integer({ min: -40, max: 40 }), fc.integer({ min: -40, max: 40 })), {
  minLength: 3,
  maxLength: 60,
})

/** Corners of the hull of pixels, by the first and last one of each row; moved so that no row is under 0. */
const hullOf = (list: readonly (readonly [number, number])[]): number[] => {
  const first = new Int32Array(81).fill(81)
  const last = new Int32Array(81).fill(-1)
  for (const [x, y] of list) {
    first[y + 40] = Math.min(first[y + 40]!, x + 40)
    last[y + 40] = Math.max(last[y + 40]!, x + 40)
  }
  const rows = list.map(([, y]) => y + 40)
  return hullOfRows(first, last, Math.min(...rows), Math.max(...rows)).map((v) => v - 40)
}

it('the hull has the area that d3-polygon finds', () => {
  fc.assert(
    fc.property(points, (list) => {
      const hull = hullOf(list)
      const theirs = polygonHull(list)
      expect(polygonArea(hull)).toBeCloseTo(theirs ? Math.abs(d3Area(theirs)) : 0, 9)
      // As many corners: none of them lies on an edge.
      if (theirs) expect(hull).toHaveLength(2 * theirs.length)
    }),
  )
})

it('counts the whole-number points in a hull as counting one by one does', () => {
  fc.assert(
    fc.property(points, (list) => {
      const hull = hullOf(list)
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

it('the hull of one pixel, of a row and of a column', () => {
  expect(hullOf([[3, 3]])).toEqual([3, 3])
  expect(
    hullOf([
      [0, 3],
      [4, 3],
      [2, 3],
    ]),
  ).toEqual([4, 3, 0, 3])
  expect(
    hullOf([
      [2, 0],
      [2, 5],
      [2, 3],
    ]),
  ).toEqual([2, 0, 2, 5])
})
