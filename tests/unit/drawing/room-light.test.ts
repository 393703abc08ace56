import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { LIGHTS } from '../../../src/arrangement/index.ts'
import { underLight } from '../../../src/colour/index.ts'
import { createCache, emptyPicture, paintPicture, showInLight } from '../../../src/drawing/index.ts'
import { resolvedOf } from './fixture.ts'

const FRAME = { left: -80, right: 80, bottom: -90, top: 150, scale: 1 }
const bytes = (hex: string): number[] => [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16))

describe('a picture in the light of the room', () => {
  it('has each colour as the colour room has it, to a byte, and leaves what is empty alone', () => {
    fc.assert(
      fc.property(fc.constantFrom(...LIGHTS), fc.integer({ min: 0, max: 0xffffff }), (light, n) => {
        const hex = `#${n.toString(16).padStart(6, '0')}`
        const picture = emptyPicture({ left: 0, right: 2, bottom: 0, top: 1, scale: 1 })
        picture.rgba.set([...bytes(hex), 255, ...bytes(hex), 0])
        showInLight(picture, light)
        for (const [i, byte] of bytes(underLight(hex, light)).entries())
          expect(Math.abs(picture.rgba[i]! - byte)).toBeLessThanOrEqual(1)
        expect([...picture.rgba.subarray(4)]).toEqual([...bytes(hex), 0])
      }),
    )
  })
  it('by candle a blush rose is warmer than by day, and nothing of its shape or depth changes', () => {
    const resolved = resolvedOf([{ id: 'a', mouth: [0, 0], tip: [0, 0, 90], colour: '#e8c0c8' }])
    const paint = (light?: 'candle') =>
      paintPicture(
        resolved,
        { turn: 0, pitch: 0 },
        FRAME,
        { quality: 'draft', section: false, vessel: 'own', ...(light ? { light } : {}) },
        createCache(),
      )
    const [day, candle] = [paint(), paint('candle')]
    expect(candle.owner).toEqual(day.owner)
    expect(candle.depth).toEqual(day.depth)
    const mean = (p: typeof day, channel: number): number => {
      let [sum, n] = [0, 0]
      for (let i = 0; i < p.owner.length; i++) if (p.owner[i] === 1) [sum, n] = [sum + p.rgba[4 * i + channel]!, n + 1]
      return sum / n
    }
    expect(mean(candle, 2) / mean(candle, 0)).toBeLessThan(0.95 * (mean(day, 2) / mean(day, 0)))
  })
})
