import { beforeAll, describe, expect, test } from 'vitest'
import { type Habit, PLANTS } from '../../../src/catalogue/index.ts'
import table from '../../../src/geometry/habits/fitted.json' with { type: 'json' }
import { fittedOf, fromRow, plantKey, STAGES } from '../../../src/geometry/habits/fitted.ts'
import { buildSolid, buildStandins } from '../../../src/geometry/habits/index.ts'
import { KINDS, STANDIN_STRIDE } from '../../../src/geometry/types.ts'
import { measurePlant, waysFor } from '../../calibrate/measure.ts'
import { inputOf, LEAFY, SINGLE } from './fixtures.ts'
import { type Areas, agreement, outlineAreas, viewAt } from './outline.ts'

const FACINGS = [0, 30, 60, 90, 120, 180] as const
const rows = table.plants as Record<string, readonly number[]>
const apart = ({ drawn, light }: Areas): number => light / drawn - 1

interface Look {
  at: string
  /** Difference of the heads' outline areas over the drawn one. */
  head: number
}

/** Every plant from a tight bud to fully open, from all sides that differ; leaves that never open once. */
const look = (
  seed: number,
  roll: number,
  facings: readonly number[],
  plants = PLANTS,
  stages: readonly number[] = STAGES,
): Look[] =>
  plants.flatMap((plant) =>
    (LEAFY.includes(plant.habit) ? [1] : stages).flatMap((openness) => {
      const { mesh, standins } = buildSolid(inputOf(plant, openness, { seed }))
      return facings.map((facing) => {
        const areas = outlineAreas(mesh, standins, viewAt(facing, roll), 'head')
        const at = `${plant.id} ${openness} ${facing}°`
        return { at, head: apart(areas) }
      })
    }),
  )
const beyond = (found: readonly Look[], most: number): string[] =>
  found.filter((x) => Math.abs(x.head) > most).map((x) => `${x.at}: ${(100 * x.head).toFixed(1)} %`)
const share = (found: readonly Look[], most: number): number => 1 - beyond(found, most).length / found.length

/** Not within 5 %, and within what they are: loose clouds hold more air than an ellipsoid a knot tells; a cluster of long buds. */
const APART: Record<string, number> = { gypsophila: 0.065, limonium: 0.065, waxflower: 0.065, 'lily-oriental': 0.056 }
const idOf = ({ at }: Look): string => at.split(' ')[0]!

/** Habits whose head is one body without air. */
const COMPACT: readonly Habit[] = ['rosette', 'quilled', 'ray', 'pincushion', 'globe', 'dome']
const mean = (some: readonly number[]): number => some.reduce((sum, x) => sum + x, 0) / some.length

/** How high the ellipsoid that is packed at i reaches, mm. */
const topOf = (packed: Float32Array, i: number): number =>
  packed[i + 4]! + Math.hypot(packed[i + 7]!, packed[i + 10]!, packed[i + 13]!)

describe('the light stand-ins', () => {
  let found: Look[] = []
  beforeAll(() => {
    found = look(7, 55, FACINGS)
  }, 180_000)

  test('cover within 5 % what is drawn, for every plant, openness and facing but three loose clouds and one cluster of buds', () => {
    expect(
      beyond(
        found.filter((x) => !(idOf(x) in APART)),
        0.05,
      ),
    ).toEqual([])
    const rougher = found.filter((x) => Math.abs(x.head) > (APART[idOf(x)] ?? 1))
    expect(rougher.map((x) => `${x.at}: ${(100 * x.head).toFixed(1)} %`)).toEqual([])
  })

  test('cover what is drawn within 2 % on the mean', () => {
    expect(found.reduce((sum, x) => sum + Math.abs(x.head), 0) / found.length).toBeLessThan(0.02)
  })

  test('lie where the drawn heads lie: both cover four fifths and more of what either covers', () => {
    const heads = PLANTS.filter((plant) => COMPACT.includes(plant.habit)).flatMap((plant) =>
      [0, 0.5, 1].map((openness) => {
        const { mesh, standins } = buildSolid(inputOf(plant, openness))
        return [0, 30, 60, 90].map((facing) => agreement(outlineAreas(mesh, standins, viewAt(facing, 55), 'bloom')))
      }),
    )
    expect(mean(heads.map(([face]) => face!))).toBeGreaterThan(0.85)
    expect(mean(heads.flatMap((head) => head.slice(1, 3)))).toBeGreaterThan(0.8)
    // Edge on, a flat flower is a ragged line.
    expect(mean(heads.map((head) => head[3]!))).toBeGreaterThan(0.7)
    expect(Math.min(...heads.flatMap((head) => head.slice(0, 3)))).toBeGreaterThan(0.4)
  }, 60_000)

  // Petals and side stems fall another way for each seed.
  test('do as well by a seed and from a side that were not measured, in more than nine views of ten', () => {
    const other = look(
      12,
      80,
      [0, 60, 90],
      PLANTS.filter((_, i) => i % 2 === 1),
    )
    expect(share(other, 0.05)).toBeGreaterThanOrEqual(0.93)
    expect(beyond(other, 0.16)).toEqual([])
  }, 60_000)

  // Petals do not open evenly; the stand-ins between two stages are mixed evenly.
  test('are rougher between the stages, but never lose a head', () => {
    const between = look(7, 55, [0, 60], PLANTS, [0.125, 0.625])
    expect(mean(between.map((x) => Math.abs(x.head)))).toBeLessThan(0.03)
    expect(share(between, 0.05)).toBeGreaterThan(0.85)
    // A bud that is drawn as a bud opens at once: between it and the first stage these are mixed worst.
    const buds = ['daffodil', 'iris', 'gladiolus']
    const others = between.filter((x) => !buds.includes(idOf(x)))
    expect(beyond(others, 0.2)).toEqual([])
    expect(beyond(between, 0.36)).toEqual([])
  }, 60_000)

  test('end where the drawn spike ends: its height is what one sees', () => {
    const bloom = KINDS.indexOf('bloom')
    const off = PLANTS.filter((plant) => ['spike', 'plume'].includes(plant.habit)).flatMap((plant) =>
      [0, 0.5, 1].map((openness) => {
        const { mesh, standins } = buildSolid(inputOf(plant, openness))
        let [drawn, light] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY]
        for (let i = 2; i < mesh.positions.length; i += 3) drawn = Math.max(drawn, mesh.positions[i]!)
        for (let i = 0; i < standins.length; i += STANDIN_STRIDE)
          if (standins[i + 1] === bloom) light = Math.max(light, topOf(standins, i))
        return { at: `${plant.id} ${openness}`, mm: light - drawn, long: plant.headLength_mm!.value }
      }),
    )
    expect(
      off.filter((x) => Math.abs(x.mm) > Math.max(4, 0.04 * x.long)).map((x) => `${x.at}: ${x.mm.toFixed(1)} mm`),
    ).toEqual([])
  })

  test('cover the bare stems within a tenth, the thinnest within a fifth, seen from the side', () => {
    const stems = PLANTS.filter((_, i) => i % 3 === 1).map((plant) => {
      const { mesh, standins } = buildSolid(inputOf(plant, 1))
      return { id: plant.id, stem: apart(outlineAreas(mesh, standins, viewAt(90, 55), 'stem', 1400)) }
    })
    expect(stems.filter((x) => Math.abs(x.stem) > 0.2)).toEqual([])
    expect(stems.filter((x) => Math.abs(x.stem) > 0.1).length).toBeLessThanOrEqual(1)
  })
})

describe('the file of stand-ins', () => {
  test('holds every plant of the catalogue as it is now (else run: npx tsx tests/calibrate/standins.ts)', () => {
    expect(PLANTS.filter((plant) => rows[plant.id]?.[0] !== plantKey(plant)).map((plant) => plant.id)).toEqual([])
    expect(Object.keys(rows).length).toBe(PLANTS.length)
  })

  test.each(['rose', 'tulip', 'stock', 'euc-silver', 'chrys-spray'])(
    'is what measuring %s gives now',
    (id) => {
      const plant = PLANTS.find((p) => p.id === id)!
      const [, per = 0, count = 0] = rows[id]!
      const way = waysFor(plant).find((one) => one.per === per && one.count === count)!
      const { row } = measurePlant(plant, way)!
      expect(row.length).toBe(rows[id]!.length)
      // A digit of rounding apart: sines differ in their last place from one processor to another.
      row.forEach((n, i) => {
        expect(Math.abs(n - rows[id]![i]!)).toBeLessThanOrEqual(4)
      })
    },
    30_000,
  )

  test('keeps heads to twelve and branches to forty stand-ins', () => {
    const counts = PLANTS.map((plant) => {
      const packed = buildStandins(inputOf(plant, 1))
      const kinds = Array.from({ length: packed.length / STANDIN_STRIDE }, (_, i) => packed[i * STANDIN_STRIDE + 1])
      return { id: plant.id, all: kinds.length, blooms: kinds.filter((k) => k === 0).length, habit: plant.habit }
    })
    expect(counts.filter((c) => c.all > 40)).toEqual([])
    expect(counts.filter((c) => SINGLE.includes(c.habit) && c.blooms > 12)).toEqual([])
  })

  test('lends a plant that is not in it the stand-ins of its like', () => {
    const rose = PLANTS.find((p) => p.id === 'rose-garden')!
    const stranger = { ...rose, id: 'another-rose' }
    expect(fittedOf(stranger)).toEqual(fromRow(rows['rose-garden']!))
  })
})
