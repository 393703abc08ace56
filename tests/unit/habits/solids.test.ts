import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point3 } from '../../../src/arrangement/index.ts'
import { HABITS, type Habit } from '../../../src/catalogue/types.ts'
import { buildSolid, buildStandins, cutStem } from '../../../src/geometry/habits/index.ts'
import { KINDS, type Mesh, STANDIN_STRIDE, TISSUES } from '../../../src/geometry/types.ts'
import { curveOf, FLOWERING, inputOf, LEAFY, plantOf, SINGLE, turnZ } from './fixtures.ts'

const PLANTS = new Map(HABITS.map((habit) => [habit, plantOf(habit)]))
const of = (habit: Habit, openness = 1) => inputOf(PLANTS.get(habit)!, openness)

const faults = (mesh: Mesh): string[] => {
  const found: string[] = []
  const n = mesh.positions.length / 3
  if (mesh.triangles.some((i) => i >= n)) found.push('a triangle points past the vertices')
  if (mesh.positions.some((x) => !Number.isFinite(x))) found.push('a position is no number')
  if (mesh.uvs.some((x) => !(x >= 0 && x <= 1))) found.push('a uv is outside 0 … 1')
  if (mesh.normals.length !== 3 * n || mesh.uvs.length !== 2 * n) found.push('arrays of different length')
  if (mesh.parts.length !== mesh.triangles.length / 3 || mesh.tissues.length !== mesh.parts.length)
    found.push('faces without tissue')
  if (mesh.tissues.some((t) => t >= TISSUES.length)) found.push('an unknown tissue')
  for (let i = 0; i < n; i++) {
    const l = Math.hypot(mesh.normals[3 * i]!, mesh.normals[3 * i + 1]!, mesh.normals[3 * i + 2]!)
    if (!(Math.abs(l - 1) < 1e-4)) {
      found.push(`normal ${i} is ${l} long`)
      break
    }
  }
  return found
}

const BARE = [TISSUES.indexOf('stem'), TISSUES.indexOf('bark'), TISSUES.indexOf('leaf')]
/** Mean width and height of the flower, mm: what is neither stem nor leaf, for an upright stem. */
const flowerSize = (mesh: Mesh): { across: number; tall: number } => {
  const turns = Array.from({ length: 24 }, (_, i) => (i * Math.PI) / 24)
  const least = turns.map(() => Infinity)
  const most = turns.map(() => -Infinity)
  let [low, high] = [Infinity, -Infinity]
  for (let t = 0; t < mesh.triangles.length; t++) {
    if (BARE.includes(mesh.tissues[Math.floor(t / 3)]!)) continue
    const i = 3 * mesh.triangles[t]!
    low = Math.min(low, mesh.positions[i + 2]!)
    high = Math.max(high, mesh.positions[i + 2]!)
    turns.forEach((a, k) => {
      const s = mesh.positions[i]! * Math.cos(a) + mesh.positions[i + 1]! * Math.sin(a)
      least[k] = Math.min(least[k]!, s)
      most[k] = Math.max(most[k]!, s)
    })
  }
  return { across: most.reduce((s, m, k) => s + m - least[k]!, 0) / turns.length, tall: high - low }
}

describe('the solid of a stem', () => {
  test.each(HABITS)('of the habit %s is sound at every stage', (habit) => {
    for (const openness of [0, 0.5, 1]) {
      const { mesh, standins } = buildSolid(of(habit, openness))
      expect(faults(mesh)).toEqual([])
      expect(mesh.tissues.length).toBeGreaterThan(100)
      expect(mesh.tissues.length).toBeLessThan(12000)
      expect(standins.length % STANDIN_STRIDE).toBe(0)
      expect(standins.every(Number.isFinite)).toBe(true)
    }
  })

  test.each(HABITS)('of the habit %s is the same for the same seed, and another for another', (habit) => {
    const one = buildSolid(of(habit))
    const again = buildSolid(inputOf(plantOf(habit)))
    const other = buildSolid({ ...of(habit), seed: 8 })
    expect(again).toEqual(one)
    if (habit !== 'broad-leaf') expect(other.mesh.positions).not.toEqual(one.mesh.positions)
  })

  test.each(HABITS)('of the habit %s has a coarser and a finer form', (habit) => {
    const count = (detail: number): number => buildSolid({ ...of(habit), detail }).mesh.tissues.length
    expect(count(0.5)).toBeLessThan(count(1.5))
  })

  test('a piece cut from a spray has one head and fewer triangles than the whole stem', () => {
    const whole = buildSolid(of('spray'))
    const piece = buildSolid({ ...of('spray'), piece: 'lateral' })
    expect(piece.mesh.tissues.length).toBeLessThan(whole.mesh.tissues.length / 2)
    expect(piece.standins.length).toBeLessThan(whole.standins.length)
  })

  test.each(LEAFY)('of the habit %s bears leaves and no petals', (habit) => {
    const tissues = new Set(buildSolid(of(habit)).mesh.tissues)
    expect(tissues.has(TISSUES.indexOf('leaf'))).toBe(true)
    expect(tissues.has(TISSUES.indexOf('petal'))).toBe(false)
  })

  test.each(FLOWERING)('of the habit %s looks another in bud than open', (habit) => {
    const bud = flowerSize(buildSolid(of(habit, 0)).mesh)
    const open = flowerSize(buildSolid(of(habit, 1)).mesh)
    expect(Math.abs(bud.across / open.across - 1) + Math.abs(bud.tall / open.tall - 1)).toBeGreaterThan(0.1)
  })

  test.each(SINGLE)('a head of the habit %s measures what was asked, face on', (habit) => {
    for (const openness of [0, 0.5, 1]) {
      for (const head_mm of [24, 90]) {
        const { across } = flowerSize(buildSolid({ ...of(habit, openness), head_mm }).mesh)
        expect(Math.abs(across / head_mm - 1)).toBeLessThan(0.05)
      }
    }
  })

  test('opening a rose widens it for its height', () => {
    const spread = [0, 0.25, 0.5, 0.75, 1].map((openness) => {
      const { across, tall } = flowerSize(buildSolid(of('rosette', openness)).mesh)
      return across / tall
    })
    for (let i = 1; i < spread.length; i++) expect(spread[i]!).toBeGreaterThan(spread[i - 1]!)
  })

  test('a stem turned about z carries its flower with it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...HABITS),
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.double({ min: 0.05, max: 1.4, noNaN: true }),
        (habit, turn, tilt) => {
          const axis: Point3 = [Math.sin(tilt), 0, Math.cos(tilt)]
          const curve = curveOf(200, [60, 15])
          const points = Float32Array.from(curve.points)
          for (let i = 0; i < points.length; i += 3)
            points.set(turnZ([points[i]!, points[i + 1]!, points[i + 2]!], turn), i)
          const base = { ...of(habit, 0.7), detail: 0.5 }
          const one = buildSolid({ ...base, axis, curve }).mesh.positions
          const two = buildSolid({ ...base, axis: turnZ(axis, turn), curve: { ...curve, points } }).mesh.positions
          expect(two.length).toBe(one.length)
          for (let i = 0; i < one.length; i += 21) {
            const p = turnZ([one[i]!, one[i + 1]!, one[i + 2]!], turn)
            expect(Math.hypot(p[0] - two[i]!, p[1] - two[i + 1]!, p[2] - two[i + 2]!)).toBeLessThan(0.05)
          }
        },
      ),
      { numRuns: 60 },
    )
  })

  test('nothing breaks on a stem of no length, a curl, or a head that looks down', () => {
    const flat = { ...curveOf(100), points: new Float32Array(3 * 37) }
    for (const habit of HABITS) {
      for (const axis of [
        [0, 0, -1],
        [0, 1, 0],
      ] as Point3[]) {
        const solid = buildSolid({ ...of(habit, 0.4), axis, curve: flat })
        expect(faults(solid.mesh)).toEqual([])
        expect(solid.standins.every(Number.isFinite)).toBe(true)
      }
    }
  })
})

describe('the stand-ins', () => {
  test.each(HABITS)('of the habit %s are the same with and without the mesh, and few', (habit) => {
    const { standins } = buildSolid(of(habit, 0.6))
    expect(buildStandins(of(habit, 0.6))).toEqual(standins)
    expect(standins.length / STANDIN_STRIDE).toBeLessThanOrEqual(48)
    for (let i = 0; i < standins.length; i += STANDIN_STRIDE) {
      expect([0, 1]).toContain(standins[i])
      expect(KINDS[standins[i + 1]!]).toBeDefined()
    }
  })

  test('do not depend on which stem of a plant was asked for first', () => {
    const [one, two] = [plantOf('alternate-leaves'), plantOf('alternate-leaves')]
    buildStandins({ ...inputOf(one, 0), head_mm: 200, seed: 3 })
    expect(buildStandins(inputOf(one, 1))).toEqual(buildStandins(inputOf(two, 1)))
  })
})

describe('a stem cut for a plate', () => {
  test('shows its whole flowering part and some stem', () => {
    const { mesh } = buildSolid(cutStem(PLANTS.get('spike')!, 1, 40, 5))
    const lowest = Math.min(...mesh.positions.filter((_, i) => i % 3 === 2))
    expect(lowest).toBeLessThan(-200)
    expect(faults(mesh)).toEqual([])
  })
})
