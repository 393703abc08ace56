import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clipLine, clipShape, type Place } from '../../../../src/drawing/room/index.ts'

const PANE = { left: -10, right: 30, bottom: -20, top: 5 }
const point = fc.tuple(fc.double({ min: -99, max: 99, noNaN: true }), fc.double({ min: -99, max: 99, noNaN: true }))
const isIn = ([x, y]: Place): boolean => x >= -10 && x <= 30 && y >= -20 && y <= 5
const lengthOf = (points: readonly Place[]): number =>
  points.slice(1).reduce((sum, p, i) => sum + Math.hypot(p[0] - points[i]![0], p[1] - points[i]![1]), 0)

describe('what a window shows', () => {
  it('a level line across it ends at both borders; one beside it is not there', () => {
    expect(
      clipLine(
        [
          [-50, 0],
          [50, 0],
        ],
        PANE,
      ),
    ).toEqual([
      [
        [-10, 0],
        [30, 0],
      ],
    ])
    expect(
      clipLine(
        [
          [-50, 9],
          [50, 9],
        ],
        PANE,
      ),
    ).toEqual([])
    expect(
      clipLine(
        [
          [0, 0],
          [5, 0],
        ],
        PANE,
      ),
    ).toEqual([
      [
        [0, 0],
        [5, 0],
      ],
    ])
  })

  it('a line that leaves and comes back is two', () => {
    expect(
      clipLine(
        [
          [0, 0],
          [0, 50],
          [10, 50],
          [10, 0],
        ],
        PANE,
      ),
    ).toEqual([
      [
        [0, 0],
        [0, 5],
      ],
      [
        [10, 5],
        [10, 0],
      ],
    ])
  })

  it('a shape that holds the window becomes the window', () => {
    const whole = clipShape(
      [
        [-90, -90],
        [90, -90],
        [90, 90],
        [-90, 90],
      ],
      PANE,
    )
    expect(new Set(whole.map(String))).toEqual(new Set(['-10,-20', '30,-20', '30,5', '-10,5']))
    expect(
      clipShape(
        [
          [40, 0],
          [50, 0],
          [50, 4],
        ],
        PANE,
      ),
    ).toEqual([])
  })

  it('nothing ends outside, and a line has the length that a fine walk along it finds inside', () => {
    fc.assert(
      fc.property(point, point, (a, b) => {
        const runs = clipLine([a, b], PANE)
        expect(runs.flat().every(isIn)).toBe(true)
        const n = 4000
        let inside = 0
        for (let i = 0; i < n; i++) {
          const t = (i + 0.5) / n
          if (isIn([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])])) inside += lengthOf([a, b]) / n
        }
        expect(Math.abs(runs.reduce((sum, run) => sum + lengthOf(run), 0) - inside)).toBeLessThan(0.3)
      }),
      { numRuns: 100 },
    )
  })
})
