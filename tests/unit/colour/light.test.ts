import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  castMatrix,
  degreeOfAdaptation,
  hexOfLinear,
  type LightName,
  labOf,
  labUnderLight,
  lightMatrix,
  linearOf,
  linearUnderLight,
  type Matrix3,
  underLight,
} from '../../../src/colour/index.ts'
import vectors from '../../fixtures/colour/light.json' with { type: 'json' }

const LIGHTS: LightName[] = ['daylight', 'overcast', 'warm-lamp', 'candle']
const hexNumber = fc.integer({ min: 0, max: 0xffffff }).map((n) => `#${n.toString(16).padStart(6, '0')}`)
const times = (m: Matrix3, v: number[]): [number, number, number] =>
  [0, 3, 6].map((r) => [0, 1, 2].reduce((s, c) => s + (m[r + c] as number) * (v[c] as number), 0)) as [
    number,
    number,
    number,
  ]

describe('a colour under a light', () => {
  it('gives all 63 worked previews', () => {
    expect(vectors.previews).toHaveLength(63)
    for (const t of vectors.previews) {
      const xy = vectors.whites[t.light as keyof typeof vectors.whites] as [number, number]
      const linear = times(castMatrix(xy, t.D), linearOf(t.hex))
      linear.forEach((v, i) => {
        expect(Math.abs(v - (t.linearRGB[i] as number))).toBeLessThan(1e-5)
      })
      expect(hexOfLinear(linear)).toBe(t.clippedHex)
    }
  })

  it('adapts the eye by the published degrees', () => {
    for (const [luminance, degree] of [
      [1, 0.8259],
      [4, 0.8315],
      [20, 0.8584],
      [64, 0.9122],
      [200, 0.98],
    ] as const)
      expect(degreeOfAdaptation(luminance)).toBeCloseTo(degree, 4)
  })

  it('is unchanged by daylight, and by any light that the eye has wholly adapted to', () => {
    fc.assert(
      fc.property(hexNumber, (hex) => {
        expect(underLight(hex, 'daylight')).toBe(hex)
        expect(linearUnderLight(linearOf(hex), 'daylight')).toEqual(linearOf(hex))
        times(castMatrix([0.45, 0.41], 1), linearOf(hex)).forEach((v, i) => {
          expect(v).toBeCloseTo(linearOf(hex)[i] as number, 10)
        })
      }),
    )
  })

  it('keeps black black and lets white reach the top of the screen', () => {
    for (const light of LIGHTS) {
      expect(underLight('#000000', light)).toBe('#000000')
      expect(Math.max(...linearUnderLight([1, 1, 1], light))).toBeCloseTo(1, 12)
      expect(Math.min(...linearUnderLight([1, 1, 1], light))).toBeGreaterThan(0.4)
      expect(times(lightMatrix(light), [1, 1, 1])).toEqual(linearUnderLight([1, 1, 1], light))
    }
  })

  it('turns white yellower from overcast to lamp to candle', () => {
    const b = LIGHTS.map((light) => labUnderLight('#ffffff', light)[2])
    expect(b[1]).toBeLessThan(0)
    expect(b[2]).toBeGreaterThan(3)
    expect(b[3]).toBeGreaterThan((b[2] as number) + 1)
  })

  it('measures what it shows', () => {
    for (const light of LIGHTS)
      labUnderLight('#b08090', light).forEach((v, i) => {
        expect(Math.abs(v - (labOf(underLight('#b08090', light))[i] as number))).toBeLessThan(0.5)
      })
  })
})
