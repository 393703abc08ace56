import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { asSeenBy, deltaE2000, labAsSeenBy, labOf, VISIONS } from '../../../src/colour/index.ts'
import vectors from '../../fixtures/colour/vision.json' with { type: 'json' }

describe('colours for guests who see fewer of them', () => {
  it('a red rose and its leaves come close for one without red cones, and stay apart for others', () => {
    const [rose, leaf] = ['#a83a32', '#5c6b2e'] as const
    expect(deltaE2000(labOf(rose), labOf(leaf))).toBeGreaterThan(35)
    expect(deltaE2000(labAsSeenBy(rose, 'deutan'), labAsSeenBy(leaf, 'deutan'))).toBeLessThan(15)
    expect(deltaE2000(labAsSeenBy(rose, 'tritan'), labAsSeenBy(leaf, 'tritan'))).toBeGreaterThan(30)
  })

  it('gives all 36 worked examples', () => {
    expect(vectors.seen).toHaveLength(12)
    for (const example of vectors.seen)
      for (const vision of VISIONS) expect(asSeenBy(example.hex, vision)).toBe(example[vision].hex)
  })

  it('greys stay grey, to a step of the screen', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 255 }), fc.constantFrom(...VISIONS), (v, vision) => {
        const byte = v.toString(16).padStart(2, '0')
        const seen = asSeenBy(`#${byte}${byte}${byte}`, vision)
        for (const at of [1, 3, 5]) expect(Math.abs(Number.parseInt(seen.slice(at, at + 2), 16) - v)).toBeLessThan(2)
      }),
    )
  })
})
