import { describe, expect, it } from 'vitest'
import type { Lab } from '../../../src/colour/index.ts'
import {
  CELL_COUNT,
  CELLS,
  contrastField,
  distancesOf,
  placeFactor,
  type Region,
  regionContrast,
  SCALES,
} from '../../../src/readings/contrast.ts'
import cases from './region-contrast.json' with { type: 'json' }

const distance = (p: Lab, q: Lab): number => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2])

describe('how much a colour stands out', () => {
  it.each(cases.cases)('$name: region contrast as worked out elsewhere', ({ regions, RC, centrePrior }) => {
    regionContrast(regions as Region[]).forEach((s, i) => {
      expect(s).toBeCloseTo(RC[i]!, 5)
    })
    regions.forEach((r, i) => {
      expect(placeFactor(r.x, r.y)).toBeCloseTo(centrePrior[i]!, 5)
    })
  })
  it('the quick way over cells gives what region contrast gives cell by cell', () => {
    const labs: Lab[] = [
      [95, 0, 2],
      [40, 50, 20],
      [50, -20, 30],
    ]
    const area = new Float64Array(3 * CELL_COUNT)
    for (let i = 0; i < CELL_COUNT; i++) {
      area[CELL_COUNT + i] = ((i * 7) % 10) / 20
      area[2 * CELL_COUNT + i] = ((i * 3) % 10) / 20
    }
    const field = new Float64Array(area.length).fill(7)
    // The second colour is half figure: it stands off the ground by half.
    const figure = [1, 1, 0.5]
    contrastField(distancesOf(labs), area, Float64Array.from(figure), field)
    const at = (i: number) => ({ x: ((i % CELLS) + 0.5) / CELLS, y: (Math.floor(i / CELLS) + 0.5) / CELLS })
    const patches = (colour: number): Region[] =>
      Array.from({ length: CELL_COUNT }, (_, i) => {
        const rest = 1 - area[CELL_COUNT + i]! - area[2 * CELL_COUNT + i]!
        return { ...at(i), area: colour === 0 ? rest : area[colour * CELL_COUNT + i]!, lab: labs[colour]! }
      })
    const all = [0, 1, 2].flatMap(patches)
    for (let cell = 0; cell < CELL_COUNT; cell += 11)
      for (const colour of [1, 2]) {
        if (area[colour * CELL_COUNT + cell] === 0) {
          expect(field[colour * CELL_COUNT + cell]).toBe(0)
          continue
        }
        let [ground, rest] = [0, 0]
        const probe: Region = { ...at(cell), area: 0, lab: labs[colour]! }
        for (const scale of SCALES) {
          // The published sum over all but the ground, and the ground's share of the weights.
          const sum = regionContrast([probe, ...all.slice(CELL_COUNT)], scale)[0]!
          const weights = all.reduce(
            (w, r) => w + r.area * Math.exp(-((r.x - probe.x) ** 2 + (r.y - probe.y) ** 2) / scale),
            0,
          )
          const cloth =
            regionContrast([probe, ...all.slice(0, CELL_COUNT)], scale)[0]! / distance(labs[colour]!, labs[0]!)
          rest += sum / weights / SCALES.length
          ground += cloth / weights / SCALES.length
        }
        const two = [distance(labs[colour]!, labs[0]!), rest / (1 - ground)] as const
        expect(field[colour * CELL_COUNT + cell]).toBeCloseTo(
          (ground * figure[colour]! * Math.sqrt(two[0]) + (1 - ground) * Math.sqrt(two[1])) ** 2,
          6,
        )
      }
  })
})
