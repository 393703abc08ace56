import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyEdit, FORMS } from '../../../src/arrangement/index.ts'
import { innerSection, projectPoint, reachIn } from '../../../src/geometry/index.ts'
import { angleOf } from '../../../src/ui/views/layout.ts'
import { domeHeight, stemFor } from '../../../src/ui/views/placing.ts'
import { bowl } from './fixture.ts'

const rose = { plant: 'rose-garden', colour: '#d9a0a0' }

describe('placing a stem by touching a view', () => {
  it('in the elevation the head stands where the view was touched, in front of the axis', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 359 }),
        fc.integer({ min: -200, max: 200 }),
        fc.integer({ min: 0, max: 250 }),
        (turn, right, up) => {
          const stem = stemFor(bowl(), rose, 'elevation', turn, [right, up])
          const seen = projectPoint(stem?.tip ?? [NaN, NaN, NaN], angleOf('elevation', turn))
          expect(Math.abs(seen[0] - right)).toBeLessThan(1)
          expect(seen[1]).toBe(up)
          expect(seen[2]).toBeGreaterThanOrEqual(-1)
        },
      ),
    )
  })

  it('in the plan the head stands where it was touched, on the dome of the form', () => {
    const stem = stemFor(bowl(), rose, 'plan', 0, [40, -25])
    expect(stem?.tip.slice(0, 2)).toEqual([40, -25])
    expect(stem?.tip[2]).toBe(domeHeight(bowl(), Math.hypot(40, 25)))
  })

  it('stems placed at one point of the elevation do not stand in each other', () => {
    let document = bowl()
    for (let i = 0; i < 4; i++) {
      const stem = stemFor(document, rose, 'elevation', 0, [20, 120])
      if (stem) document = applyEdit(document, { do: 'add-stems', stems: [stem] })
    }
    const depths = document.stems.map((s) => s.tip[1]).sort((a, b) => a - b)
    expect(depths).toHaveLength(4)
    for (let i = 1; i < depths.length; i++) expect((depths[i] ?? 0) - (depths[i - 1] ?? 0)).toBeGreaterThan(2)
  })

  it('its crossing lies inside the mouth, its id is new, its role is the plant’s', () => {
    const document = bowl()
    const stem = stemFor(document, rose, 'plan', 0, [300, 300])
    expect(stem).not.toBeNull()
    if (!stem) return
    expect(reachIn(document.vessel, innerSection(document.vessel, 1), ...stem.mouth)).toBeLessThan(1)
    expect(stem.role).toBe('focal')
  })

  it('a plant that is not listed is not placed', () => {
    expect(stemFor(bowl(), { plant: 'no-such-plant', colour: '#ffffff' }, 'plan', 0, [0, 0])).toBeNull()
  })

  it('the dome of every form falls from the middle outward and stays over the rim', () => {
    for (const form of FORMS) {
      const heights = [0, 30, 60, 90, 120, 400].map((r) => domeHeight({ ...bowl(), form }, r))
      for (let i = 1; i < heights.length; i++) expect(heights[i]).toBeLessThanOrEqual(heights[i - 1] ?? 0)
      expect(heights.at(-1)).toBeGreaterThan(0)
    }
  })
})
