import { differenceCiede2000 } from 'culori'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { deltaE2000, labOf, nearestColours, nearness } from '../../../src/colour/index.ts'

const hexNumber = fc.integer({ min: 0, max: 0xffffff }).map((n) => `#${n.toString(16).padStart(6, '0')}`)
const theirs = differenceCiede2000()

describe('the nearest colour that can be had', () => {
  it('for an old rose a pink carnation comes before a red one, and white is not near', () => {
    const offers = [
      { plant: 'white', hex: '#f6f3ea' },
      { plant: 'red', hex: '#b02a30' },
      { plant: 'pink', hex: '#dc90a4' },
    ]
    const found = nearestColours('#d98c93', offers)
    expect(found.map((o) => o.plant)).toEqual(['pink', 'red', 'white'])
    expect(nearness(found[0]!.apart)).toBe('as one across a table')
    expect(nearness(found[2]!.apart)).toBe('not near')
  })

  it('has a word for every difference, each beginning where it says', () => {
    expect([0, 1.99, 2, 4.99, 5, 9.99, 10, 14.99, 15, 100].map(nearness)).toEqual([
      'hardly to be told apart',
      'hardly to be told apart',
      'as one across a table',
      'as one across a table',
      'a shade off',
      'a shade off',
      'a neighbour',
      'a neighbour',
      'not near',
      'not near',
    ])
  })

  it('measures as another library does', () => {
    fc.assert(
      fc.property(hexNumber, hexNumber, (p, q) => {
        // The formula by itself: both are given the same Lab.
        const [a, b] = [labOf(p), labOf(q)]
        const lab = ([l, x, y]: typeof a) => ({ mode: 'lab65' as const, l, a: x, b: y })
        expect(Math.abs(deltaE2000(a, b) - theirs(lab(a), lab(b)))).toBeLessThan(0.02)
        expect(nearestColours(p, [{ hex: q }])[0]!.apart).toBe(deltaE2000(a, b))
      }),
    )
  })
})
