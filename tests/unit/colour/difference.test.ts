import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { leastDifference } from '../../../src/colour/difference.ts'
import { deltaE2000, type Lab } from '../../../src/colour/index.ts'
import published from '../../fixtures/colour/ciede2000.json' with { type: 'json' }

const lab = fc.tuple(
  fc.double({ min: 0, max: 100, noNaN: true }),
  fc.double({ min: -128, max: 128, noNaN: true }),
  fc.double({ min: -128, max: 128, noNaN: true }),
) as fc.Arbitrary<Lab>

describe('colour difference', () => {
  it('gives the value of all 34 published pairs, either way round', () => {
    expect(published.pairs).toHaveLength(34)
    for (const p of published.pairs) {
      const [one, two]: [Lab, Lab] = [
        [p.L1, p.a1, p.b1],
        [p.L2, p.a2, p.b2],
      ]
      expect(Math.abs(deltaE2000(one, two) - p.dE)).toBeLessThan(5.01e-5)
      expect(deltaE2000(two, one)).toBe(deltaE2000(one, two))
    }
  })

  it('is the same both ways, nothing for a colour and itself, and always a number', () => {
    fc.assert(
      fc.property(lab, lab, (one, two) => {
        const d = deltaE2000(one, two)
        expect(Number.isFinite(d)).toBe(true)
        expect(d).toBeGreaterThanOrEqual(0)
        expect(deltaE2000(two, one)).toBe(d)
        expect(deltaE2000(one, one)).toBe(0)
      }),
    )
  })

  it('is never less than what the quick way says, and far colours are told apart by it alone', () => {
    const near = fc.tuple(lab, fc.double({ min: 0, max: 20, noNaN: true }), lab).map(([p, k, q]): [Lab, Lab] => {
      const step = (i: 0 | 1 | 2): number => p[i] + (k * (q[i] - p[i])) / 100
      return [p, [step(0), step(1), step(2)]]
    })
    const blue = fc.tuple(lab, lab).map(([p, q]): [Lab, Lab] => [
      [p[0], p[1] / 8, -Math.abs(p[2])],
      [q[0], q[1] / 8, -Math.abs(q[2])],
    ])
    const check = ([one, two]: [Lab, Lab]): void => {
      expect(leastDifference(one, two)).toBeLessThanOrEqual(deltaE2000(one, two))
      expect(leastDifference(two, one)).toBe(leastDifference(one, two))
    }
    for (const pairs of [fc.tuple(lab, lab), near, blue]) fc.assert(fc.property(pairs, check), { numRuns: 2000 })
    for (const p of published.pairs)
      check([
        [p.L1, p.a1, p.b1],
        [p.L2, p.a2, p.b2],
      ])
    expect(leastDifference([50, 60, 40], [50, -60, 40])).toBeGreaterThan(5)
  })

  it('goes over 100 when colours outside the screen ask for it', () => {
    expect(deltaE2000([0, 0, 0], [100, 0, 0])).toBeCloseTo(100, 6)
    expect(deltaE2000([10, 128, -128], [100, -128, 128])).toBeGreaterThan(100)
  })
})
