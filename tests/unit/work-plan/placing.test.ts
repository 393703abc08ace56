import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Arrangement, newArrangement, type Stem } from '../../../src/arrangement/index.ts'
import { resolveArrangement } from '../../../src/geometry/index.ts'
import { placeDaysOf, placingOf, type Task } from '../../../src/work-plan/index.ts'

const stem = (
  id: string,
  plant: string,
  role: Stem['role'],
  tip: Stem['tip'],
  mouth: Stem['mouth'] = [0, 0],
): Stem => ({
  id,
  plant,
  role,
  colour: '#ffffff',
  openness: 0.8,
  mouth,
  tip,
  bend: 0,
  piece: 'whole',
})
const bowl = (...stems: Stem[]): Arrangement => ({ ...newArrangement(), stems })
const ids = (...stems: Stem[]): string[] => placingOf(resolveArrangement(bowl(...stems))).map((p) => p.id)

describe('the order of placing', () => {
  it('greens out first, then the line, then what leads, then what fills', () => {
    expect(
      ids(
        stem('filler', 'gypsophila', 'filler', [10, 0, 90]),
        stem('rose', 'rose', 'focal', [0, -20, 100]),
        stem('spike', 'veronica', 'line', [0, 10, 160]),
        stem('fern', 'leatherleaf', 'greens', [40, 0, 40]),
        stem('mass', 'carnation', 'mass', [-20, 0, 80]),
      ),
    ).toEqual(['fern', 'spike', 'rose', 'mass', 'filler'])
  })
  it('goes round the vessel from the front, to the left first as seen from the front', () => {
    const at = (id: string, x: number, y: number): Stem => stem(id, 'rose', 'focal', [x, y, 80])
    expect(ids(at('right', 50, 0), at('back', 0, 50), at('front', 0, -50), at('left', -50, 0))).toEqual([
      'front',
      'left',
      'back',
      'right',
    ])
  })
  it('what the plan places two days before is numbered before what goes in on the day itself, whatever its part', () => {
    const resolved = resolveArrangement(
      bowl(
        stem('spike', 'delphinium', 'line', [0, 10, 160]),
        stem('fern', 'leatherleaf', 'greens', [40, 0, 40]),
        stem('last', 'dahlia', 'focal', [0, -20, 100]),
        stem('early', 'craspedia', 'filler', [10, 0, 90]),
      ),
    )
    const place = (daysBefore: number, ...plants: string[]) =>
      ({ kind: 'place', daysBefore, plants }) as unknown as Task
    const days = placeDaysOf({
      tasks: [place(2, 'leatherleaf', 'craspedia'), place(1, 'delphinium'), place(0, 'dahlia')],
    })
    expect(placingOf(resolved, days).map((p) => p.id)).toEqual(['fern', 'early', 'spike', 'last'])
  })
  it('what nothing holds is made in one go, with the flower that goes in last, and is numbered by its parts alone', () => {
    const place = (daysBefore: number, ...plants: string[]) =>
      ({ kind: 'place', daysBefore, plants }) as unknown as Task
    const tasks = [place(2, 'leatherleaf', 'craspedia'), place(0, 'dahlia')]
    const tied = bowl(
      stem('early', 'craspedia', 'filler', [10, 0, 90]),
      stem('last', 'dahlia', 'focal', [0, -20, 100]),
      stem('fern', 'leatherleaf', 'greens', [40, 0, 40]),
    )
    const resolved = resolveArrangement({ ...tied, vessel: { ...tied.vessel, mechanics: 'none' } })
    const days = placeDaysOf({ tasks }, resolved)
    expect([...days.values()]).toEqual([0, 0, 0])
    expect(placingOf(resolved, days).map((p) => p.id)).toEqual(['fern', 'last', 'early'])
  })
  it('what goes in on the evening before has later numbers than what went in that morning', () => {
    const task = (key: string, plants: string[]) => ({ kind: 'place', key, daysBefore: 1, plants }) as unknown as Task
    const days = placeDaysOf({ tasks: [task('place-1', ['rose']), task('place-evening', ['dahlia'])] })
    const resolved = resolveArrangement(
      bowl(stem('evening', 'dahlia', 'focal', [0, -20, 100]), stem('morning', 'rose', 'mass', [0, 10, 100])),
    )
    expect(placingOf(resolved, days).map((p) => p.id)).toEqual(['morning', 'evening'])
  })
  it('keeps a plant and a colour together', () => {
    expect(
      ids(
        stem('r1', 'rose', 'mass', [0, -50, 80]),
        stem('c1', 'carnation', 'mass', [0, -50, 80]),
        stem('r2', 'rose', 'mass', [0, 50, 80]),
      ),
    ).toEqual(['r1', 'r2', 'c1'])
  })
  it('an upright stem is stripped as deep as the water stands over its cut end', () => {
    const document = bowl(stem('a', 'rose', 'focal', [0, 0, 100]))
    const resolved = resolveArrangement(document)
    const { vessel } = document
    const [placing] = placingOf(resolved)
    const end = resolved.stems[0]!.curve.points[2]!
    // The waterline: the inner height's share of waterFill over the base, which is as thick as the wall.
    const water = -vessel.height + vessel.wall + (vessel.height - vessel.wall) * vessel.waterFill
    expect(placing!.under_mm).toBeCloseTo(water - end, 3)
  })
  it('numbers every stem once, whatever the order in the document; none is stripped farther than it is long', () => {
    const some = fc.array(
      fc.record({
        plant: fc.constantFrom('rose', 'veronica', 'leatherleaf', 'ivy'),
        role: fc.constantFrom('focal' as const, 'line' as const, 'greens' as const),
        x: fc.integer({ min: -120, max: 120 }),
        y: fc.integer({ min: -120, max: 120 }),
        z: fc.integer({ min: 20, max: 250 }),
      }),
      { maxLength: 12 },
    )
    fc.assert(
      fc.property(some, (rows) => {
        const stems = rows.map(({ plant, role, x, y, z }, i) => stem(`s${i}`, plant, role, [x, y, z], [x / 10, y / 10]))
        const placings = placingOf(resolveArrangement(bowl(...stems)))
        expect(placings.map((p) => p.number)).toEqual(stems.map((_, i) => i + 1))
        expect(new Set(placings.map((p) => p.id)).size).toBe(stems.length)
        for (const p of placings) {
          expect(p.under_mm).toBeGreaterThanOrEqual(0)
          expect(p.under_mm).toBeLessThanOrEqual(p.cut_mm + 1e-6)
        }
      }),
      { numRuns: 60 },
    )
  })
})
