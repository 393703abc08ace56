import { describe, expect, it } from 'vitest'
import { createCache, type Sprite, stemSprite } from '../../../src/drawing/index.ts'
import { inksFor } from '../../../src/drawing/shade.ts'
import { detailFor } from '../../../src/drawing/sprite.ts'
import { samplesOf } from '../../../src/drawing/steps.ts'
import { BOWL, resolvedOf } from './fixture.ts'

/** Small in a list, on the sheet, on a dense screen, in print: pixels per mm. */
const ZOOMS = [0.3, 0.6, 1.1, 2.2, 4.4, 8]

describe('near and far', () => {
  it('lines get heavier with the size on screen, from a quarter of a pixel to two and a half; petals have the finer ones', () => {
    const weights = ZOOMS.map((scale) => {
      const samples = samplesOf('fine', scale)
      const inks = inksFor(scale * samples)
      expect(inks.petal).toBeLessThanOrEqual(inks.outline)
      expect(inks.petalStrength).toBeLessThanOrEqual(inks.outlineStrength)
      return { width: inks.outline / samples, strength: inks.outlineStrength }
    })
    weights.forEach(({ width, strength }, i) => {
      expect(width).toBeGreaterThanOrEqual(0.25)
      expect(width).toBeLessThanOrEqual(2.5)
      if (i > 0) expect(width * strength).toBeGreaterThanOrEqual(weights[i - 1]!.width * weights[i - 1]!.strength)
    })
  })

  it('what is seen from nearer is built of smaller pieces', () => {
    const details = ZOOMS.map(detailFor)
    expect(details).toEqual([...details].sort((a, b) => a - b))
    expect(new Set(details).size).toBeGreaterThan(2)
  })

  it('a stem is thinner under its flower than at its cut end, wherever a pixel is fine enough to tell', () => {
    const stem = resolvedOf([{ id: 'a', mouth: [0, 0], tip: [0, 0, 260], head: 40 }], BOWL).stems[0]!
    /** Least width of all rows between two heights over the rim, mm: rows with leaves are wider. Part of a pixel counts in part. */
    const widthBetween = (sprite: Sprite, scale: number, low: number, high: number): number => {
      let least = Infinity
      for (let y = 0; y < sprite.height; y++) {
        const z = 260 - (y + sprite.top + 0.5) / scale
        if (z < low || z > high) continue
        let cover = 0
        for (let x = 0; x < sprite.width; x++) cover += sprite.rgba[4 * (y * sprite.width + x) + 3]! / 255
        least = Math.min(least, cover / scale)
      }
      return least
    }
    for (const scale of [3, 4.4, 8]) {
      const sprite = stemSprite(stem, { turn: 0, pitch: 0 }, scale, 'fine', createCache())
      const [low, high] = [widthBetween(sprite, scale, -60, -30), widthBetween(sprite, scale, 120, 200)]
      expect(low).toBeGreaterThan(1)
      expect(high).toBeLessThan(low)
    }
  })
})
