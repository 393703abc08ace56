import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { LIMITS, type TableShape } from '../../../../src/arrangement/index.ts'
import { TABLES } from '../../../../src/catalogue/index.ts'
import { clearOf, footprintOf } from '../../../../src/drawing/room/footprint.ts'
import { type Scene, SOLIDS, sceneOf, seatsOf, type Thing } from '../../../../src/drawing/room/index.ts'
import { setWith } from './made.ts'

const of = (scene: Scene, kind: Thing['kind']): Thing[] => scene.things.filter((t) => t.kind === kind)
const apart = (a: Thing, b: Thing): number => Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1])

const tables: fc.Arbitrary<TableShape> = fc.oneof(
  fc.record({ shape: fc.constant('round' as const), diameter: fc.double({ min: 1, max: LIMITS.mm, noNaN: true }) }),
  fc.record({
    shape: fc.constant('rectangular' as const),
    length: fc.double({ min: 1, max: LIMITS.mm, noNaN: true }),
    width: fc.double({ min: 1, max: LIMITS.mm, noNaN: true }),
  }),
)

describe('what stands on the table', () => {
  it('a round table of 60 in has seven guests with two feet of edge each, and all of them a plate and two glasses', () => {
    const scene = sceneOf(setWith({}))
    expect(scene.manner).toBe('round')
    expect(scene.seats).toBe(7)
    for (const kind of ['dinner-plate', 'wine-glass', 'water-glass', 'side-plate'] as const)
      expect(of(scene, kind)).toHaveLength(7)
    expect(scene.under).toEqual({})
    expect(scene.noRoom).toEqual([])
  })

  it('a glass stands at the right of its guest, and the side plate at the left', () => {
    const scene = sceneOf(setWith({}))
    const right = ({ at, inward }: Thing, of: Thing): number =>
      (at[0] - of.at[0]) * inward[1] - (at[1] - of.at[1]) * inward[0]
    of(scene, 'dinner-plate').forEach((plate, i) => {
      expect(right(of(scene, 'wine-glass')[i]!, plate)).toBeGreaterThan(0)
      expect(right(of(scene, 'side-plate')[i]!, plate)).toBeLessThan(0)
    })
  })

  it('a café table has two cups and two small plates, and no dinner plate', () => {
    const scene = sceneOf(setWith({ table: { shape: 'round', diameter: 762 } }))
    expect(scene.manner).toBe('café')
    expect(of(scene, 'cup')).toHaveLength(2)
    expect(of(scene, 'side-plate')).toHaveLength(2)
    expect(of(scene, 'dinner-plate')).toHaveLength(0)
    expect(of(scene, 'cup').map((c) => c.at)).toEqual(of(scene, 'saucer').map((s) => s.at))
  })

  it('no plate lies under the flowers on a café table; says so', () => {
    const wide = [-1, 1].map((side) => ({
      id: `s${side}`,
      mouth: [side * 40, 0] as [number, number],
      tip: [side * 330, 0, 40] as [number, number, number],
    }))
    const scene = sceneOf(setWith({ table: { shape: 'round', diameter: 762 } }, wide))
    expect(of(scene, 'side-plate')).toHaveLength(0)
    expect(of(scene, 'cup')).toHaveLength(0)
    expect(scene.under['side-plate']).toBe(2)
    expect(scene.under.saucer).toBe(2)
  })

  it('where the flowers leave no room for a cup on a café table, a glass stands at each place', () => {
    const bowl = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => {
      const a = (i * Math.PI) / 4
      return {
        id: `s${i}`,
        mouth: [20 * Math.cos(a), 20 * Math.sin(a)] as [number, number],
        tip: [135 * Math.cos(a), 135 * Math.sin(a), 60] as [number, number, number],
      }
    })
    const scene = sceneOf(setWith({ table: { shape: 'round', diameter: 610 } }, bowl))
    expect(of(scene, 'cup')).toHaveLength(0)
    expect(of(scene, 'water-glass')).toHaveLength(2)
  })

  it('a table of 24 in has no room for a plate beside a cup; says so', () => {
    const scene = sceneOf(setWith({ table: { shape: 'round', diameter: 300 } }))
    expect(scene.noRoom.length).toBeGreaterThan(0)
    expect(scene.things).toEqual([])
  })

  it('the flowers reach as far over the table as they are wide, whichever way it is measured', () => {
    // A head of 60 mm, 150 mm to the right: a glass clear of it stands 180 mm and its own radius away, none nearer.
    const reach = clearOf(
      footprintOf(setWith({}, [{ id: 'g', habit: 'globe', head: 60, mouth: [0, 0], tip: [150, 0, 60] }])),
      [400, 0],
    )
    expect(Math.abs(400 - reach - 180)).toBeLessThan(6)
  })

  it('a row down a long table is odd, evenly spaced, and never more than are made', () => {
    const long = { shape: 'rectangular', length: 2438, width: 914 } as const
    const xs = sceneOf(setWith({ table: long })).copies.map(([x]) => x)
    expect(xs.map((x) => Math.round(x)).sort((a, b) => a - b)).toEqual([-813, 813])
    expect(sceneOf(setWith({ table: long, copies: 2 })).copies).toEqual([])
    expect(sceneOf(setWith({ table: long, copies: 1 })).copies).toEqual([])
    expect(sceneOf(setWith({})).copies).toEqual([])
  })

  it('bottles of single stems stand close down a long table, wide pieces a guest apart', () => {
    const table = { shape: 'rectangular', length: 1829, width: 762 } as const
    const slim = [{ id: 'a', mouth: [0, 0] as [number, number], tip: [0, 0, 120] as [number, number, number] }]
    const [bottles, bowls] = [sceneOf(setWith({ table, copies: 30 }, slim)), sceneOf(setWith({ table, copies: 30 }))]
    expect(bottles.copies.length).toBeGreaterThan(bowls.copies.length)
  })

  it('a plate under a copy in the row is left out as one under the piece itself', () => {
    const scene = sceneOf(setWith({ table: { shape: 'rectangular', length: 2438, width: 600 } }))
    const pieces = [[0, 0], ...scene.copies]
    for (const thing of scene.things)
      for (const [x, y] of pieces)
        expect(Math.hypot(thing.at[0] - x!, thing.at[1] - y!)).toBeGreaterThan(SOLIDS[thing.kind].radius + 70)
  })

  it('candles stand there by candlelight only', () => {
    for (const light of ['daylight', 'overcast', 'warm-lamp'] as const)
      expect(of(sceneOf(setWith({ light })), 'candle')).toHaveLength(0)
    expect(of(sceneOf(setWith({ light: 'candle' })), 'candle')).toHaveLength(2)
    expect(of(sceneOf(setWith({ light: 'candle', table: { shape: 'round', diameter: 762 } })), 'candle')).toHaveLength(
      1,
    )
  })

  it('every table as hired has plates for its guests, at most one more than it is said to seat', () => {
    for (const { table, seats } of TABLES) {
      const most = Math.max(...seats.match(/\d+/g)!.map(Number))
      const { length } = seatsOf(table)
      expect(length, seats).toBeGreaterThan(1)
      expect(length, seats).toBeLessThanOrEqual(most + 1)
    }
  })

  it('whatever the table: nothing over its edge, nothing in another thing, nothing that is not a number', () => {
    fc.assert(
      fc.property(tables, fc.constantFrom('daylight', 'candle'), (table, light) => {
        const { things, copies } = sceneOf(setWith({ table, light: light as 'daylight' | 'candle' }))
        for (const [i, thing] of things.entries()) {
          const [x, y] = thing.at
          const r = SOLIDS[thing.kind].radius
          expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true)
          if (table.shape === 'round') expect(Math.hypot(x, y) + r).toBeLessThanOrEqual(table.diameter / 2 + 1e-6)
          else {
            expect(Math.abs(x) + r).toBeLessThanOrEqual(table.length / 2 + 1e-6)
            expect(Math.abs(y) + r).toBeLessThanOrEqual(table.width / 2 + 1e-6)
          }
          for (const other of things.slice(0, i))
            if (!(thing.kind === 'cup' && other.kind === 'saucer'))
              expect(apart(thing, other)).toBeGreaterThan(
                SOLIDS[other.kind].radius + r - (other.kind === 'cup' || thing.kind === 'cup' ? r : 0),
              )
        }
        expect(copies.flat().every(Number.isFinite)).toBe(true)
      }),
      { numRuns: 60 },
    )
  })
})
