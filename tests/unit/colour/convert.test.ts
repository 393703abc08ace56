import Color from 'colorjs.io'
import { lab65, oklch } from 'culori'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  contrastRatio,
  hexOf,
  hexOfLinear,
  hexOfOklch,
  isHex,
  labOf,
  linearOf,
  linearToSrgb8,
  oklchOf,
  oklchToLinear,
} from '../../../src/colour/index.ts'
import vectors from '../../fixtures/colour/light.json' with { type: 'json' }

const two = (n: number): string => n.toString(16).padStart(2, '0')
const hexNumber = fc.integer({ min: 0, max: 0xffffff }).map((n) => `#${n.toString(16).padStart(6, '0')}`)
const GRID: string[] = []
for (let r = 0; r < 256; r += 51)
  for (let g = 0; g < 256; g += 51) for (let b = 0; b < 256; b += 51) GRID.push(`#${two(r)}${two(g)}${two(b)}`)

describe('conversions', () => {
  it('give the published Lab, for daylight, and OKLCH of twelve colours', () => {
    for (const c of vectors.conversions) {
      labOf(c.hex).forEach((v, i) => {
        expect(v).toBeCloseTo(c.Lab_D65[i] as number, 4)
      })
      const [l, chroma, h] = oklchOf(c.hex)
      expect(Math.abs(l - (c.Oklch[0] as number))).toBeLessThan(1e-4)
      expect(Math.abs(chroma - (c.Oklch[1] as number))).toBeLessThan(1e-4)
      if (chroma > 0.01) expect(Math.abs(h - (c.Oklch[2] as number))).toBeLessThan(0.1)
    }
  })

  it('agree with two other libraries over the whole of sRGB', () => {
    for (const hex of GRID) {
      const [L, a, b] = labOf(hex)
      const k = lab65(hex)
      const j = new Color(hex).to('lab-d65').coords.map((v) => v ?? 0)
      ;[k?.l, k?.a, k?.b].forEach((v, i) => {
        expect([L, a, b][i]).toBeCloseTo(v as number, 4)
      })
      j.forEach((v, i) => {
        expect([L, a, b][i]).toBeCloseTo(v as number, 4)
      })
      const [l, c, h] = oklchOf(hex)
      const q = oklch(hex)
      const o = new Color(hex).to('oklch').coords
      for (const [ol, oc, oh] of [
        [q?.l, q?.c, q?.h],
        [o[0], o[1], o[2]],
      ] as [number, number, number | undefined][]) {
        expect(Math.abs(l - ol)).toBeLessThan(1e-4)
        expect(Math.abs(c - oc)).toBeLessThan(1e-4)
        if (c > 0.01) expect(Math.abs(h - (oh ?? 0))).toBeLessThan(0.1)
      }
    }
  })

  it('come back to the same colour by every way round', () => {
    fc.assert(
      fc.property(hexNumber, (hex) => {
        expect(hexOf(labOf(hex))).toBe(hex)
        expect(hexOfOklch(...oklchOf(hex))).toBe(hex)
        expect(hexOfLinear(linearOf(hex))).toBe(hex)
        const out = new Float32Array(5)
        oklchToLinear(...oklchOf(hex), out, 1)
        expect(`#${[1, 2, 3].map((i) => two(linearToSrgb8(out[i] as number))).join('')}`).toBe(hex)
        expect([out[0], out[4]]).toEqual([0, 0])
      }),
    )
  })

  it('shade a pixel to the exact byte or its neighbour, whatever the light', () => {
    fc.assert(
      fc.property(fc.double({ min: -1, max: 2, noNaN: true }), (l) => {
        const exact = Number.parseInt(hexOfLinear([l, 0, 0]).slice(1, 3), 16)
        expect(Math.abs(linearToSrgb8(l) - exact)).toBeLessThanOrEqual(1)
      }),
    )
    expect([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY].map(linearToSrgb8)).toEqual([0, 255, 0])
  })

  it('give a grey the hue 0, never an undefined one', () => {
    for (let v = 0; v < 256; v += 1) expect(oklchOf(`#${two(v).repeat(3)}`).slice(1)).toEqual([0, 0])
    expect(hexOfOklch(0.5, 0, 0)).toBe('#636363')
  })

  it('know a colour from anything else', () => {
    expect(['#a1b2c3', '#A1B2C3'].every(isHex)).toBe(true)
    expect(['#abc', 'a1b2c3', '#a1b2c3ff', 'red', '#g00000', '', ' #a1b2c3', 7, null].some(isHex)).toBe(false)
    for (const f of [labOf, oklchOf, linearOf, (h: string) => contrastRatio(h, '#ffffff')])
      expect(() => f('red')).toThrow('expected a colour as #rrggbb, got "red"')
  })
})

describe('contrast', () => {
  it('gives the published ratios to six decimals, either way round', () => {
    for (const { a, b, ratio } of vectors.contrasts) {
      expect(contrastRatio(a, b)).toBeCloseTo(ratio, 6)
      expect(contrastRatio(b, a)).toBe(contrastRatio(a, b))
    }
  })
})
