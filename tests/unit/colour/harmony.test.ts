import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { harmonyScale, type Lab, twoColourHarmony } from '../../../src/colour/index.ts'
import published from '../../fixtures/colour/ou-luo-cases.json' with { type: 'json' }

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const lab = fc.tuple(number(0, 100), number(-100, 100), number(-100, 100)) as fc.Arbitrary<Lab>
const polar = (L: number, C: number, h: number): Lab => [
  L,
  C * Math.cos((h * Math.PI) / 180),
  C * Math.sin((h * Math.PI) / 180),
]
const grey = (L: number): Lab => [L, 0, 0]

describe('harmony of two colours', () => {
  it('gives every part of the twelve worked pairs', () => {
    expect(published.cases).toHaveLength(12)
    for (const c of published.cases) {
      const h = twoColourHarmony(c.lab1 as Lab, c.lab2 as Lab)
      for (const [got, want] of [
        [h.chroma, c.HC],
        [h.lightness, c.HL],
        [h.hue, c.HH],
        [h.harmony, c.CH],
      ] as const)
        expect(Math.abs(got - want)).toBeLessThan(1e-5)
    }
  })

  it('is the sum of its parts, the same both ways round, and always a number', () => {
    fc.assert(
      fc.property(lab, lab, (p, q) => {
        const [pq, qp] = [twoColourHarmony(p, q), twoColourHarmony(q, p)]
        expect(pq.harmony).toBeCloseTo(qp.harmony, 12)
        expect(pq.harmony).toBeCloseTo(pq.chroma + pq.lightness + pq.hue, 12)
        for (const v of Object.values(pq)) expect(Number.isFinite(v)).toBe(true)
      }),
    )
  })

  it('has its best chroma part where chroma and hue are the same, and falls as they part', () => {
    fc.assert(
      fc.property(number(1, 90), number(0, 360), number(0, 59), number(1, 60), (C, h, near, more) => {
        const at = (d: number): number => twoColourHarmony(polar(50, C, h), polar(60, C, h + d)).chroma
        expect(at(0)).toBeCloseTo(0.391939, 6)
        expect(at(near)).toBeLessThanOrEqual(at(0))
        expect(at(near + more)).toBeLessThan(at(near))
      }),
    )
  })

  it('counts a yellow for it above L 58.18 and against it below', () => {
    const at = (L: number): number => twoColourHarmony(polar(L, 40, 90), grey(50)).hue
    const middle = at(12.8 / 0.22)
    expect(at(58.3)).toBeGreaterThan(middle)
    expect(at(58)).toBeLessThan(middle)
  })

  it('has the middle of its lightness steps at a difference of 10 and at a sum of 133.79', () => {
    const at = (one: number, two: number): number => twoColourHarmony(grey(one), grey(two)).lightness
    const half = 3.88 / 0.029 / 2
    expect(at(half + 5, half - 5)).toBeCloseTo(0.28 + 0.14, 12)
  })

  it('lets a grey say almost nothing of hue, and has no step where the hue circle closes', () => {
    expect(Math.abs(twoColourHarmony(grey(30), grey(80)).hue)).toBeLessThan(0.02)
    const at = (h: number): number => twoColourHarmony(polar(60, 50, h), grey(50)).harmony
    expect(at(359.9999)).toBeCloseTo(at(0.0001), 4)
  })
})

// Faults seen in copies of the model. Each must miss a worked pair, or the pairs above prove nothing.
const rad = Math.PI / 180
const turn = (a: number, b: number): number => (Math.atan2(b, a) / rad + 360) % 360
interface Fault {
  hueInDegrees?: boolean
  sinOfDegrees?: boolean
  product?: boolean
  secondFromFirst?: boolean
  noYellow?: boolean
  patentRounding?: boolean
}
const faulty = (fault: Fault, p: Lab, q: Lab): number => {
  const [C1, C2] = [Math.hypot(p[1], p[2]), fault.secondFromFirst ? Math.hypot(p[1], p[2]) : Math.hypot(q[1], q[2])]
  const apart = Math.abs(turn(p[1], p[2]) - turn(q[1], q[2]))
  const dh = Math.min(apart, 360 - apart)
  const dH = fault.hueInDegrees ? dh : 2 * Math.sqrt(C1 * C2) * Math.sin((dh / 2) * rad)
  const HC = 0.04 + 0.53 * Math.tanh(0.8 - 0.045 * Math.hypot(dH, (C1 - C2) / 1.46))
  const [k, w, z] = fault.patentRounding ? [0.3, 0.5, -4] : [0.28, 0.54, -3.88]
  const t = Math.tanh(z + 0.029 * (p[0] + q[0]))
  const HL = (fault.product ? k * w * t : k + w * t) + 0.14 + 0.15 * Math.tanh(-2 + 0.2 * Math.abs(p[0] - q[0]))
  const own = ([L]: Lab, C: number, h: number): number => {
    const s = (d: number): number => Math.sin(fault.sinOfDegrees ? d : d * rad)
    const x = (90 - h) / 10
    const EY = fault.noYellow ? 0 : ((0.22 * L - 12.8) / 10) * Math.exp(x - Math.exp(x))
    return (0.5 + 0.5 * Math.tanh(-2 + 0.5 * C)) * (-0.08 - 0.14 * s(h + 50) - 0.07 * s(2 * h + 90) + EY)
  }
  return HC + HL + own(p, C1, turn(p[1], p[2])) + own(q, C2, turn(q[1], q[2]))
}
const worstMiss = (fault: Fault): number =>
  Math.max(...published.cases.map((c) => Math.abs(faulty(fault, c.lab1 as Lab, c.lab2 as Lab) - c.CH)))

describe('the worked pairs', () => {
  it('are met by a second writing of the model', () => {
    expect(worstMiss({})).toBeLessThan(1e-5)
  })

  it.each([
    ['hue difference in degrees', { hueInDegrees: true }],
    ['degrees taken for radians', { sinOfDegrees: true }],
    ['a product in place of a sum of lightness', { product: true }],
    ['the second chroma taken from the first colour', { secondFromFirst: true }],
    ['the term for yellow left out', { noYellow: true }],
    ['the earlier rounding of the constants', { patentRounding: true }],
  ] as [string, Fault][])('tell the fault "%s" from the model', (_, fault) => {
    expect(worstMiss(fault)).toBeGreaterThan(1e-3)
  })
})

describe('the scale of harmony', () => {
  it('gives the published percentiles themselves', () => {
    expect(harmonyScale(-0.037, 2)).toBeCloseTo(50, 9)
    expect(harmonyScale(-0.609, 3)).toBeLessThan(5)
    expect(harmonyScale(0.268, 4)).toBeCloseTo(75, 9)
    expect(harmonyScale(0.649, 5)).toBeCloseTo(95, 9)
    expect(harmonyScale(-0.417, 12)).toBeCloseTo(10, 9)
  })

  it('never falls as harmony rises, and stays within 0 and 100', () => {
    fc.assert(
      fc.property(number(-2, 2), number(0, 1), fc.integer({ min: 1, max: 40 }), (ch, more, n) => {
        const [low, high] = [harmonyScale(ch, n), harmonyScale(ch + more, n)]
        expect(high).toBeGreaterThanOrEqual(low)
        expect(low).toBeGreaterThanOrEqual(0)
        expect(high).toBeLessThanOrEqual(100)
      }),
    )
  })
})
