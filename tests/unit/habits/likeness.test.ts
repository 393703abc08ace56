import { describe, expect, test } from 'vitest'
import type { Point3 } from '../../../src/arrangement/index.ts'
import { PLANTS } from '../../../src/catalogue/index.ts'
import { buildSolid } from '../../../src/geometry/habits/index.ts'
import { layoutOf } from '../../../src/geometry/habits/plans/index.ts'
import { TISSUES, type Tissue } from '../../../src/geometry/types.ts'
import { headOf, inputOf } from './fixtures.ts'

type P = readonly [x: number, y: number, z: number]

const plantOf = (id: string) => PLANTS.find((plant) => plant.id === id)!

/** Corners of all triangles of some tissues, over the head's width; on an upright stem unless it is to lean. */
const points = (id: string, tissues: readonly Tissue[], openness = 0.9, axis: Point3 = [0, 0, 1]): P[] => {
  const plant = plantOf(id)
  const D = headOf(plant, openness)
  const { mesh } = buildSolid(inputOf(plant, openness, { axis }))
  const wanted = tissues.map((tissue) => TISSUES.indexOf(tissue))
  return Array.from(mesh.triangles).flatMap((v, i): P[] => {
    if (!wanted.includes(mesh.tissues[Math.floor(i / 3)]!)) return []
    return [[mesh.positions[3 * v]! / D, mesh.positions[3 * v + 1]! / D, mesh.positions[3 * v + 2]! / D]]
  })
}
const far = ([x, y]: P): number => Math.hypot(x, y)
const top = (some: readonly P[]): number => some.reduce((most, p) => Math.max(most, p[2]), Number.NEGATIVE_INFINITY)
const low = (some: readonly P[]): number => some.reduce((least, p) => Math.min(least, p[2]), Number.POSITIVE_INFINITY)
const across = (some: readonly P[]): number => 2 * some.reduce((most, p) => Math.max(most, far(p)), 0)
const mean = (some: readonly P[], i: 0 | 1 | 2): number => some.reduce((sum, p) => sum + p[i], 0) / some.length

/** How much higher the heart of a head stands than its rim, on the mean of their corners. */
const heart = (id: string): number => {
  const petals = points(id, ['petal'])
  return (
    top(petals.filter((p) => far(p) < 0.12)) -
    mean(
      petals.filter((p) => far(p) > 0.36),
      2,
    )
  )
}

describe('flowers that a florist would not mix up, whatever their colour', () => {
  test('a hybrid tea rose is high in its heart, a garden rose, a ranunculus and a peony are lower', () => {
    expect(heart('rose')).toBeGreaterThan(0.25)
    for (const id of ['rose-garden', 'ranunculus', 'peony']) expect(heart(id)).toBeLessThan(0.21)
  })

  test('a ranunculus has a button in its midst, roses and peonies have none', () => {
    expect(points('ranunculus', ['disc']).length).toBeGreaterThan(0)
    for (const id of ['rose', 'rose-garden', 'rose-sweetheart', 'peony'])
      expect(points(id, ['disc', 'pollen'])).toEqual([])
  })

  test('a sweetheart rose opens less than a hybrid tea', () => {
    const flat = (id: string): number => {
      const petals = points(id, ['petal'])
      return (top(petals) - low(petals)) / across(petals)
    }
    expect(flat('rose-sweetheart')).toBeGreaterThan(flat('rose'))
  })

  test('an incurved chrysanthemum is a ball, a dahlia and a gerbera are broad', () => {
    const tall = (id: string): number => {
      const petals = points(id, ['petal'])
      return (top(petals) - low(petals)) / across(petals)
    }
    expect(tall('chrys-disbud')).toBeGreaterThan(0.6)
    expect(tall('dahlia')).toBeLessThan(0.5)
    expect(tall('gerbera')).toBeLessThan(0.25)
  })

  test('a gerbera has short florets round its disc, a mini gerbera a disc twice as broad', () => {
    expect(points('gerbera', ['petal-second']).length).toBeGreaterThan(0)
    expect(points('gerbera-mini', ['petal-second'])).toEqual([])
    expect(across(points('gerbera-mini', ['disc']))).toBeGreaterThan(1.5 * across(points('gerbera', ['disc'])))
  })

  test('the beak of a strelitzia lies level, its sepals stand on it, its tongue points forward', () => {
    const beak = points('strelitzia', ['green'])
    const sepals = points('strelitzia', ['petal'])
    const tongue = points('strelitzia', ['petal-second'])
    expect(across(beak)).toBeGreaterThan(2 * (top(beak) - low(beak)))
    expect(mean(sepals, 2)).toBeGreaterThan(top(beak))
    // The beak's point is what lies farthest from the stem.
    const point = beak.reduce((most, p) => (far(p) > far(most) ? p : most))
    const forward = (p: P): number => (p[0] * point[0] + p[1] * point[1]) / far(point)
    expect(forward([mean(tongue, 0), mean(tongue, 1), 0])).toBeGreaterThan(
      forward([mean(sepals, 0), mean(sepals, 1), 0]),
    )
  })

  test('gladioli and orchids look the way their stem leans', () => {
    const axis: Point3 = [0, -Math.sin(0.5), Math.cos(0.5)]
    for (const id of ['gladiolus', 'cymbidium', 'phalaenopsis', 'dendrobium'])
      expect(mean(points(id, ['petal'], 0.9, axis), 1)).toBeLessThan(0)
  })

  test('an oriental lily is spotted all over and looks out, an asiatic one has few spots and looks up', () => {
    expect(points('lily-oriental', ['disc']).length).toBeGreaterThan(3 * points('lily-asiatic', ['disc']).length)
    expect(points('lily-oriental', ['petal-second']).length).toBeGreaterThan(0)
    const upward = (id: string): number =>
      Math.max(
        ...layoutOf(inputOf(plantOf(id), 0.9))
          .heads.slice(1, 2)
          .map(({ f }) => f.w[2]),
      )
    expect(upward('lily-asiatic')).toBeGreaterThan(0.6)
    expect(upward('lily-oriental')).toBeLessThan(0.4)
  })

  test('a phalaenopsis arches over, a cymbidium and a dendrobium stand straight', () => {
    const axis: Point3 = [0, -Math.sin(0.5), Math.cos(0.5)]
    const drift = (id: string): number => {
      const petals = points(id, ['petal'], 0.9, axis)
      return Math.abs(
        mean(
          petals.filter((p) => p[2] > top(petals) - 1),
          0,
        ) -
          mean(
            petals.filter((p) => p[2] < low(petals) + 1),
            0,
          ),
      )
    }
    expect(drift('phalaenopsis')).toBeGreaterThan(1)
    for (const id of ['cymbidium', 'dendrobium']) expect(drift(id)).toBeLessThan(0.5)
  })

  test('an amaryllis has a green star in its throat, a lily none', () => {
    const throat = (id: string): number => points(id, ['green']).filter((p) => p[2] > 0.2).length
    expect(throat('amaryllis')).toBeGreaterThan(1.5 * throat('lily-asiatic'))
  })

  test('an anemone wears its collar on the stem, a gerbera has none', () => {
    expect(low(points('anemone', ['green']))).toBeLessThan(-0.2)
    expect(low(points('gerbera', ['green']))).toBeGreaterThan(-0.2)
  })

  test('a calla flares wider for its height than a mini calla', () => {
    const tall = (id: string): number => {
      const petals = points(id, ['petal'], 1)
      return (top(petals) - low(petals)) / across(petals)
    }
    expect(tall('calla-mini')).toBeGreaterThan(1.25 * tall('calla'))
  })

  test('the buds of a tuberose are flushed, those of a stock are not', () => {
    expect(points('tuberose', ['petal-second'], 0).length).toBeGreaterThan(0)
    expect(points('stock', ['petal-second'], 0)).toEqual([])
  })

  test('daffodil, iris and lily stand on the end of their stem, in bud too', () => {
    for (const id of ['daffodil', 'iris'])
      for (const openness of [0, 0.5, 1])
        expect(top(points(id, ['stem'], openness))).toBeLessThan(low(points(id, ['petal'], openness)) + 0.3)
  })

  test('the stem of an open tulip or calla ends at the foot of its cup, not inside', () => {
    for (const id of ['tulip', 'calla', 'calla-mini'])
      for (const openness of [0.8, 1])
        expect(top(points(id, ['stem'], openness))).toBeLessThan(low(points(id, ['petal'], openness)) + 0.25)
  })
})
