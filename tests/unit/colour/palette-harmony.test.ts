import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  deltaE2000,
  type Lab,
  labOf,
  mergeColours,
  paletteHarmony,
  twoColourHarmony,
} from '../../../src/colour/index.ts'
import published from '../../fixtures/colour/ou-luo-palettes.json' with { type: 'json' }

const hexNumber = fc.integer({ min: 0, max: 0xffffff }).map((n) => `#${n.toString(16).padStart(6, '0')}`)
const item = fc.record({ lab: hexNumber.map(labOf), area: fc.double({ min: 0.01, max: 1000, noNaN: true }) })
const near = (a: number | undefined, b: number | undefined): void => {
  expect(Math.abs((a ?? 0) - (b ?? 0))).toBeLessThan(1e-9)
}

/** The mean over pairs written as plainly as can be, without merging. */
const plainMean = (items: { lab: Lab; area: number }[]): number => {
  let [sum, weights] = [0, 0]
  items.forEach((p, i) => {
    items.forEach((q, j) => {
      if (i === j) return
      sum += p.area * q.area * twoColourHarmony(p.lab, q.lab).harmony
      weights += p.area * q.area
    })
  })
  return sum / weights
}

describe('harmony of a palette', () => {
  it.each(published.palettes.map((p) => [p.name, p] as const))('%s', (name, p) => {
    const items = p.palette.map((s) => ({ lab: labOf(s.hex), area: s.area, id: s.hex }))
    const got = paletteHarmony(items)
    // The worked values do not merge: three near-whites are two colours to the eye, and are checked unmerged.
    if (name === 'all white tones') {
      expect(got.colours).toBeLessThan(3)
      expect(plainMean(items)).toBeCloseTo(p.meanCH, 5)
      return
    }
    expect(got.colours).toBe(items.length)
    for (const [v, want] of [
      [got.mean?.harmony, p.meanCH],
      [got.mean?.chroma, p.HC],
      [got.mean?.lightness, p.HL],
      [got.mean?.hue, p.HH],
      [got.worst?.harmony, p.worstPair[0] as number],
    ])
      expect(Math.abs((v as number) - (want as number))).toBeLessThan(2e-5)
    expect([got.worst?.first.ids[0], got.worst?.second.ids[0]].sort()).toEqual(p.worstPair.slice(1).sort())
  })

  it('has no pair to judge for one colour, or none', () => {
    const one = paletteHarmony([
      { lab: [80, 20, 5], area: 3 },
      { lab: [80.5, 20, 5], area: 4 },
    ])
    expect(one).toMatchObject({ colours: 1, mean: null, worst: null })
    expect(paletteHarmony([])).toEqual({ colours: 0, groups: [], mean: null, worst: null })
    expect(paletteHarmony([{ lab: [50, 0, 0], area: 0 }]).colours).toBe(0)
  })

  it('does not care about the order of the colours or the unit of area', () => {
    fc.assert(
      fc.property(
        fc.array(item, { minLength: 2, maxLength: 8 }),
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        (items, k) => {
          const got = paletteHarmony(items)
          const turned = paletteHarmony([...items].reverse().map((i) => ({ ...i, area: i.area * k })))
          expect(turned.colours).toBe(got.colours)
          near(turned.mean?.harmony, got.mean?.harmony)
          near(turned.worst?.harmony, got.worst?.harmony)
        },
      ),
    )
  })

  it('is unchanged when a colour is counted as several stems', () => {
    fc.assert(
      fc.property(fc.array(item, { minLength: 2, maxLength: 6 }), fc.integer({ min: 2, max: 9 }), (items, parts) => {
        const split = items.flatMap((i) => Array.from({ length: parts }, () => ({ ...i, area: i.area / parts })))
        near(paletteHarmony(split).mean?.harmony, paletteHarmony(items).mean?.harmony)
      }),
    )
  })

  it('is the plain mean of pairs weighted by area where no two colours are alike', () => {
    fc.assert(
      fc.property(fc.array(item, { minLength: 2, maxLength: 6 }), (items) => {
        fc.pre(items.every((p, i) => items.slice(i + 1).every((q) => deltaE2000(p.lab, q.lab) >= 5)))
        near(paletteHarmony(items).mean?.harmony, plainMean(items))
      }),
    )
  })
})

describe('merging colours', () => {
  it('leaves no two colours nearer than 5, keeps every id and the whole area', () => {
    const close = fc.record({
      lab: fc.tuple(fc.integer({ min: 60, max: 75 }), fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 })),
      area: fc.integer({ min: 1, max: 9 }),
    })
    fc.assert(
      fc.property(fc.array(close, { minLength: 1, maxLength: 30 }), (items) => {
        const groups = mergeColours(items.map((i, n) => ({ ...i, id: `s${n}` })))
        for (const p of groups)
          for (const q of groups) if (p !== q) expect(deltaE2000(p.lab, q.lab)).toBeGreaterThanOrEqual(5)
        expect(groups.flatMap((g) => g.ids).sort()).toEqual(items.map((_, n) => `s${n}`).sort())
        expect(groups.reduce((s, g) => s + g.share, 0)).toBeCloseTo(1, 9)
        expect(groups.map((g) => g.share)).toEqual(groups.map((g) => g.share).sort((a, b) => b - a))
      }),
    )
  })

  it('lets the larger of two pinks give the colour of both', () => {
    const [pink] = mergeColours([
      { lab: [80, 20, 5], area: 3 },
      { lab: [82, 20, 5], area: 1 },
    ])
    expect(pink?.lab).toEqual([80.5, 20, 5])
    expect(pink?.share).toBe(1)
  })
})
