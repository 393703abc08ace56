import { describe, expect, it } from 'vitest'
import { type Mechanics, newArrangement, type Vessel } from '../../../src/arrangement/index.ts'
import { mechanicsInto } from '../../../src/drawing/mechanics-mesh.ts'
import { growing } from '../../../src/drawing/surface.ts'
import { innerSection } from '../../../src/geometry/index.ts'

describe('what holds the stems', () => {
  const heightsOf = (mechanics: Mechanics, size: number): number[] => {
    const { vessel } = newArrangement()
    const g = growing()
    mechanicsInto(g, { ...vessel, width: size, depth: size, height: size * 0.75, mechanics }, 0, 1)
    return g.positions.filter((_, i) => i % 3 === 2)
  }

  it('lies in the vessel: foam and pins stay under the rim, in a small vessel and in a large one', () => {
    for (const mechanics of ['foam', 'pin-holder'] as Mechanics[])
      for (const size of [80, 150, 400]) {
        const heights = heightsOf(mechanics, size)
        expect(heights.length).toBeGreaterThan(0)
        expect([mechanics, size, Math.max(...heights) < 0]).toEqual([mechanics, size, true])
      }
  })

  it('netting is domed a little over the rim, and nowhere leaves the mouth', () => {
    for (const size of [80, 150, 400]) {
      const { vessel } = newArrangement()
      const bowl: Vessel = { ...vessel, plan: 'round', width: size, depth: size, height: size, mechanics: 'netting' }
      const g = growing()
      mechanicsInto(g, bowl, 0, 1)
      const inner = innerSection(bowl, 1).a
      let crest = -Infinity
      for (let k = 0; k < g.positions.length; k += 3) {
        expect(Math.hypot(g.positions[k]!, g.positions[k + 1]!)).toBeLessThan(inner + 1)
        crest = Math.max(crest, g.positions[k + 2]!)
      }
      expect(crest).toBeGreaterThan(0)
      expect(crest).toBeLessThan(16)
    }
  })
})
