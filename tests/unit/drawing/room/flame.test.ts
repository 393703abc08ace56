import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { PLANTS } from '../../../../src/catalogue/index.ts'
import { dries, FLAME_LEAST_mm, nearFlames, type Scene, SOLIDS, sceneOf } from '../../../../src/drawing/room/index.ts'
import { setWith } from './made.ts'

const withCandle = (scene: Scene, x: number, y: number): Scene => ({
  ...scene,
  copies: [],
  things: [{ kind: 'candle', at: [x, y], inward: [0, 1] }],
})
const flameAt = SOLIDS.candle.height + 8 + 13 - 80

describe('flames near the flowers', () => {
  it('what is sold to dry is known to dry, a rose and an olive branch are not', () => {
    const dry = PLANTS.filter(dries).map((p) => p.id)
    for (const id of ['statice', 'craspedia', 'eryngium', 'larkspur', 'gypsophila', 'amaranthus'])
      expect(dry).toContain(id)
    for (const id of ['rose', 'olive', 'salal', 'chrys-disbud', 'tulip']) expect(dry).not.toContain(id)
  })

  it('on a wide table a low posy keeps the least distance that is advised', () => {
    const resolved = setWith({ light: 'candle' })
    const near = nearFlames(resolved, sceneOf(resolved))
    expect(near[0]!.distance_mm).toBeGreaterThanOrEqual(FLAME_LEAST_mm)
  })

  it('on a café table it cannot be kept, and the plants are named, the nearest first', () => {
    const resolved = setWith({ light: 'candle', table: { shape: 'round', diameter: 610 } })
    const near = nearFlames(resolved, sceneOf(resolved))
    expect(near.length).toBeGreaterThan(0)
    expect(near[0]!.distance_mm).toBeLessThan(FLAME_LEAST_mm)
  })

  it('a trailing stem near a flame hangs', () => {
    const resolved = setWith({ light: 'candle' }, [
      { id: 't', habit: 'trailing', mouth: [60, 0], tip: [150, 0, -40] },
      { id: 'r', mouth: [0, 0], tip: [0, 0, 80] },
    ])
    const near = nearFlames(resolved, withCandle(sceneOf(resolved), 250, 0))
    expect(near.find((n) => n.plant.habit === 'trailing')!.hangs).toBe(true)
    expect(near.find((n) => n.plant.habit === 'rosette')!.hangs).toBe(false)
    expect(near[0]!.plant.habit).toBe('trailing')
  })

  it('without candles nothing is near one', () => {
    const resolved = setWith({})
    expect(nearFlames(resolved, sceneOf(resolved))).toEqual([])
  })

  it('the distance to a round head is that to its middle less its half width, within a few mm', () => {
    fc.assert(
      fc.property(fc.double({ min: 120, max: 500, noNaN: true }), (x) => {
        const resolved = setWith({ light: 'candle' }, [
          { id: 'g', habit: 'globe', head: 60, mouth: [0, 0], tip: [0, 0, flameAt] },
        ])
        const [near] = nearFlames(resolved, withCandle(sceneOf(resolved), x, 0))
        expect(Math.abs(near!.distance_mm - (x - 30))).toBeLessThan(5)
      }),
      { numRuns: 20 },
    )
  })
})
