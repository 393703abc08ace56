import { beforeAll, describe, expect, test } from 'vitest'
import { PLANTS } from '../../../src/catalogue/index.ts'
import { buildSolid } from '../../../src/geometry/habits/index.ts'
import { inputOf } from './fixtures.ts'
import { outlineAreas, viewAt } from './outline.ts'

/** Every fifth plant of the catalogue, so that each run looks at all habits that have more than a few. */
const SAMPLE = PLANTS.filter((_, i) => i % 5 === 1)
const apart = ({ drawn, light }: { drawn: number; light: number }): number => light / drawn - 1

describe('the light stand-ins', () => {
  let found: { at: string; head: number; stem: number }[] = []
  beforeAll(() => {
    found = SAMPLE.flatMap((plant) =>
      [0, 0.5, 1].flatMap((openness) => {
        const { mesh, standins } = buildSolid(inputOf(plant, openness))
        return [0, 30, 60, 90].map((facing) => {
          const view = viewAt(facing, 55)
          return {
            at: `${plant.id} ${openness} ${facing}°`,
            head: apart(outlineAreas(mesh, standins, view, 'head')),
            stem: facing < 60 ? 0 : apart(outlineAreas(mesh, standins, view, 'stem')),
          }
        })
      }),
    )
  }, 60_000)

  // The aim is 5 % everywhere; flowers that look different from each side (orchids, one-sided spikes) are not there yet.
  test('cover what is drawn within 5 % in at least three views out of four', () => {
    expect(found.filter((x) => Math.abs(x.head) <= 0.05).length / found.length).toBeGreaterThanOrEqual(0.75)
  })

  test('cover what is drawn within 3.5 % on the mean', () => {
    expect(found.reduce((sum, x) => sum + Math.abs(x.head), 0) / found.length).toBeLessThan(0.035)
  })

  test('are nowhere more than a quarter off', () => {
    expect(found.filter((x) => Math.abs(x.head) > 0.25)).toEqual([])
  })

  test('cover the bare stems within a tenth, seen from the side', () => {
    expect(found.filter((x) => Math.abs(x.stem) > 0.1)).toEqual([])
  })
})
