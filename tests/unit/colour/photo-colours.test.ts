import { oklab as oklabByCulori } from 'culori'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  clusterColours,
  countColours,
  deltaE2000,
  FINE_CLUSTERS,
  hexOfLinear,
  labOf,
  linearOf,
  linearOfOklab,
  oklabOfLinear,
  type PhotoColours,
  photoColours,
} from '../../../src/colour/index.ts'

type Rgb = [number, number, number]
const rgbOf = (hex: string): Rgb => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)) as Rgb

/** A picture painted by a rule of its pixels. */
const painted = (width: number, height: number, colour: (x: number, y: number) => Rgb | null) => {
  const rgba = new Uint8ClampedArray(width * height * 4)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const rgb = colour(x, y)
      rgba.set(rgb ? [...rgb, 255] : [0, 0, 0, 0], (y * width + x) * 4)
    }
  return { rgba, width, height }
}
type Painted = ReturnType<typeof painted>

const coloursOf = ({ rgba, width, height }: Painted, most = 6, withGround = false): PhotoColours =>
  photoColours(clusterColours(countColours(rgba, width, height), FINE_CLUSTERS), most, withGround)

/** Noise of ± `by` a channel, the same every time. */
const grain = (by: number) => {
  let n = 7
  return (rgb: Rgb): Rgb =>
    rgb.map((v) => {
      n = (n * 1103515245 + 12345) % 2147483648
      return v + Math.round((n / 2147483648 - 0.5) * 2 * by)
    }) as Rgb
}

const [ROSE, LEAF, PLUM] = ['#d98c93', '#55713f', '#5b2f4e'] as const
/** Half rose, a third leaf, a sixth plum. */
const threeFlat = painted(60, 40, (x) => rgbOf(x < 30 ? ROSE : x < 50 ? LEAF : PLUM))

describe('the colours of a photo', () => {
  it('a photo of three flat colours gives these three, by area', () => {
    const { colours, ground } = coloursOf(threeFlat)
    expect(colours.map((c) => c.hex)).toEqual([ROSE, LEAF, PLUM])
    expect(colours.map((c) => c.share)).toEqual([1 / 2, 1 / 3, 1 / 6])
    expect(ground).toEqual([])
  })

  it('with the grain of a camera they are still three, and hardly different ones', () => {
    const noisy = grain(9)
    const { colours } = coloursOf(painted(120, 80, (x) => noisy(rgbOf(x < 60 ? ROSE : x < 100 ? LEAF : PLUM))))
    expect(colours).toHaveLength(3)
    for (const [i, hex] of [ROSE, LEAF, PLUM].entries())
      expect(deltaE2000(labOf(colours[i]!.hex), labOf(hex))).toBeLessThan(1.5)
    expect(colours[0]!.share).toBeCloseTo(0.5, 1)
  })

  it('a bunch before a white wall: the wall is left out and named, unless one wants it', () => {
    const bunch = painted(100, 100, (x, y) => {
      const from = Math.hypot(x - 50, y - 50)
      return from < 20 ? rgbOf(ROSE) : from < 30 ? rgbOf(LEAF) : [250, 250, 248]
    })
    const without = coloursOf(bunch)
    expect(without.colours.map((c) => c.hex)).toEqual([LEAF, ROSE])
    expect(without.ground).toMatchObject([{ kind: 'near white', hex: '#fafaf8', edgeShare: 1 }])
    expect(without.ground[0]!.share + without.colours[0]!.share + without.colours[1]!.share).toBeCloseTo(1, 10)
    expect(coloursOf(bunch, 6, true).colours.map((c) => c.hex)).toEqual(['#fafaf8', LEAF, ROSE])
  })

  it('a white rose among leaves is no wall, and white alone is not left out', () => {
    const rose = painted(50, 50, (x, y) => (Math.hypot(x - 25, y - 25) < 15 ? [250, 249, 246] : rgbOf(LEAF)))
    expect(coloursOf(rose).colours.map((c) => c.hex)).toEqual([LEAF, '#faf9f6'])
    expect(coloursOf(rose).ground).toEqual([])
    expect(coloursOf(painted(9, 9, () => [255, 255, 255])).colours).toEqual([{ hex: '#ffffff', share: 1 }])
  })

  it('a small flower that stands out is kept before a second shade of the leaf', () => {
    const shades: Rgb[] = [0, 1, 2, 3, 4, 5, 6].map((i) => [60 + i * 14, 90 + i * 16, 45 + i * 10])
    const photo = painted(100, 100, (x, y) => (x < 15 && y < 15 ? [220, 40, 60] : shades[Math.floor(x / 15)]!))
    const hexes = coloursOf(photo, 4).colours.map((c) => c.hex)
    expect(hexes).toHaveLength(4)
    expect(hexes).toContain('#dc283c')
  })

  it('what shows nothing gives nothing', () => {
    expect(coloursOf(painted(8, 8, () => null)).colours).toEqual([])
    expect(() => countColours(new Uint8ClampedArray(12), 2, 2)).toThrow(RangeError)
  })
})

const photo = fc
  .record({
    width: fc.integer({ min: 1, max: 24 }),
    height: fc.integer({ min: 1, max: 24 }),
    seed: fc.integer({ min: 1, max: 1e6 }),
    colours: fc.array(fc.tuple(...([0, 1, 2].map(() => fc.integer({ min: 0, max: 255 })) as [never, never, never])), {
      minLength: 1,
      maxLength: 20,
    }),
  })
  .map(({ width, height, seed, colours }) => {
    const noisy = grain(6)
    let n = seed
    return painted(width, height, () => {
      n = (n * 48271) % 2147483647
      return noisy(colours[n % colours.length] as Rgb)
    })
  })

/** The pixels in another order. */
const shuffled = ({ rgba, width, height }: Painted, step: number): Painted => {
  const n = width * height
  const order = Array.from({ length: n }, (_, i) => i).sort((p, q) => ((p * step) % 101) - ((q * step) % 101) || q - p)
  const mixed = new Uint8ClampedArray(rgba.length)
  for (const [to, from] of order.entries()) mixed.set(rgba.subarray(from * 4, from * 4 + 4), to * 4)
  return { rgba: mixed, width, height }
}

describe('clusters of a photo', () => {
  it('do not depend on the order of the pixels, and are the same every time', () => {
    fc.assert(
      fc.property(photo, fc.integer({ min: 2, max: 100 }), (picture, step) => {
        const of = (p: Painted) =>
          clusterColours(countColours(p.rgba, p.width, p.height), 8).map(({ oklab, share }) => ({ oklab, share }))
        const first = of(picture)
        expect(of(shuffled(picture, step))).toEqual(first)
        expect(of(picture)).toEqual(first)
      }),
      { numRuns: 25 },
    )
  })

  it('share out the whole photo, in no more colours than asked for, none of them like another', () => {
    fc.assert(
      fc.property(photo, fc.integer({ min: 1, max: 8 }), (picture, most) => {
        const { colours } = coloursOf(picture, most, true)
        expect(colours.length).toBeGreaterThan(0)
        expect(colours.length).toBeLessThanOrEqual(most)
        expect(colours.reduce((sum, c) => sum + c.share, 0)).toBeCloseTo(1, 9)
        for (const [i, p] of colours.entries())
          for (const q of colours.slice(i + 1)) {
            expect(p.share).toBeGreaterThanOrEqual(q.share)
            // Half a step of rounding to bytes.
            expect(deltaE2000(labOf(p.hex), labOf(q.hex))).toBeGreaterThan(4.4)
          }
      }),
      { numRuns: 40 },
    )
  })
})

describe('Oklab', () => {
  it('is what another library gives, and goes back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 0xffffff }), (n) => {
        const hex = `#${n.toString(16).padStart(6, '0')}`
        const lab = oklabOfLinear(linearOf(hex))
        const theirs = oklabByCulori(hex)!
        for (const [i, v] of [theirs.l, theirs.a, theirs.b].entries()) expect(Math.abs(lab[i]! - v)).toBeLessThan(1e-4)
        expect(hexOfLinear(linearOfOklab(lab))).toBe(hex)
      }),
    )
  })
})
