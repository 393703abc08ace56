import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { deltaE2000, labAsSeenBy, labOf, VISIONS } from '../../../src/colour/index.ts'
import { throughOtherEyes } from '../../../src/readings/other-eyes.ts'

const leaf = [{ hex: '#5c6b2e', area: 10 }]
const hexes = fc.integer({ min: 0, max: 0xffffff }).map((n) => `#${n.toString(16).padStart(6, '0')}`)
const patches = fc.uniqueArray(fc.record({ hex: hexes, area: fc.double({ min: 1, max: 1e4, noNaN: true }) }), {
  minLength: 1,
  maxLength: 6,
  selector: (p) => p.hex,
})

describe('an arrangement as other eyes see it', () => {
  it('red roses sink into their greens for guests without green cones; white ones do not', () => {
    const red = throughOtherEyes([{ hex: '#a83a32', area: 5 }], leaf)
    expect(red.againstGreens!).toBeGreaterThan(35)
    expect(red.againstGreensLeast!).toBeLessThan(red.againstGreens! / 2)
    expect(['protan', 'deutan']).toContain(red.leastFor)
    const white = throughOtherEyes([{ hex: '#f7f3ea', area: 5 }], leaf)
    expect(white.againstGreensLeast!).toBeGreaterThan(0.8 * white.againstGreens!)
  })

  it('a blue and a mauve that differ by their red alone run together for some', () => {
    const { alike } = throughOtherEyes(
      [
        { hex: '#7f9ec8', area: 5 },
        { hex: '#b58fc6', area: 9 },
      ],
      [],
    )
    expect(alike).toHaveLength(1)
    expect(alike[0]!.first).toBe('#b58fc6')
    expect(alike[0]!.left).toBeLessThan(7)
  })

  it('with no greens, or no flowers, there is no ground to stand on', () => {
    expect(throughOtherEyes([{ hex: '#a83a32', area: 5 }], []).againstGreens).toBeNull()
    expect(throughOtherEyes([], leaf)).toEqual({
      againstGreens: null,
      againstGreensLeast: null,
      leastFor: null,
      alike: [],
    })
  })

  it('is the mean over all pairs, worked out the long way, in any order and at any scale', () => {
    fc.assert(
      fc.property(patches, patches, fc.double({ min: 0.1, max: 10, noNaN: true }), (flowers, greens, k) => {
        const got = throughOtherEyes(flowers, greens)
        const total = (list: typeof flowers) => list.reduce((s, p) => s + p.area, 0)
        const mean = (lab: typeof labOf) =>
          flowers.reduce(
            (s, f) => s + greens.reduce((t, g) => t + f.area * g.area * deltaE2000(lab(f.hex), lab(g.hex)), 0),
            0,
          ) /
          (total(flowers) * total(greens))
        expect(got.againstGreens!).toBeCloseTo(mean(labOf), 6)
        const each = VISIONS.map((v) => mean((hex) => labAsSeenBy(hex, v)))
        expect(got.againstGreensLeast!).toBeCloseTo(Math.min(...each), 6)
        const other = throughOtherEyes(
          flowers.toReversed().map((f) => ({ ...f, area: f.area * k })),
          greens.toReversed(),
        )
        expect(other.againstGreens!).toBeCloseTo(got.againstGreens!, 6)
        expect(other.alike.length).toBe(got.alike.length)
      }),
    )
  })
})
