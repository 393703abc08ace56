import { describe, expect, it } from 'vitest'
import { type Mechanics, newArrangement } from '../../../src/arrangement/index.ts'
import { mechanicsInto } from '../../../src/drawing/mechanics-mesh.ts'
import { growing } from '../../../src/drawing/surface.ts'

describe('what holds the stems', () => {
  it('lies in the vessel: netting, foam and pins stay under the rim, in a small vessel and in a large one', () => {
    for (const mechanics of ['netting', 'foam', 'pin-holder'] as Mechanics[])
      for (const size of [80, 150, 400]) {
        const { vessel } = newArrangement()
        const g = growing()
        mechanicsInto(g, { ...vessel, width: size, depth: size, height: size * 0.75, mechanics }, 0)
        const heights = g.positions.filter((_, i) => i % 3 === 2)
        expect(heights.length).toBeGreaterThan(0)
        expect([mechanics, size, Math.max(...heights) < 0]).toEqual([mechanics, size, true])
      }
  })
})
