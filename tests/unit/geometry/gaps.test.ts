import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { createGapSpace, measureAir } from '../../../src/geometry/gaps.ts'

const paint = (size: number, inside: (x: number, y: number) => boolean): Uint8Array =>
  Uint8Array.from({ length: size * size }, (_, i) => Number(inside((i % size) + 0.5, Math.floor(i / size) + 0.5)))

/** Enclosed pixels and greatest squared distance to mass, the slow and plain way. */
const slowly = (mask: Uint8Array, size: number): { enclosed: number; best: number } => {
  const open = new Set<number>()
  const go = (x: number, y: number): void => {
    const stack = [[x, y]]
    while (stack.length > 0) {
      const [a, b] = stack.pop() as [number, number]
      const i = b * size + a
      if (a < 0 || b < 0 || a >= size || b >= size || mask[i] || open.has(i)) continue
      open.add(i)
      stack.push([a + 1, b], [a - 1, b], [a, b + 1], [a, b - 1])
    }
  }
  for (let k = 0; k < size; k++)
    for (const e of [0, size - 1]) {
      go(k, e)
      go(e, k)
    }
  let [enclosed, best] = [0, 0]
  for (let i = 0; i < size * size; i++) {
    if (mask[i] || open.has(i)) continue
    enclosed += 1
    let d = Number.POSITIVE_INFINITY
    for (let j = 0; j < size * size; j++)
      if (mask[j]) d = Math.min(d, ((i % size) - (j % size)) ** 2 + (Math.floor(i / size) - Math.floor(j / size)) ** 2)
    best = Math.max(best, d)
  }
  return { enclosed, best }
}

describe('air and holes', () => {
  it('finds the same enclosed pixels and the same distances as looking at each pair of pixels', () => {
    const space = createGapSpace(24 * 24)
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 576, maxLength: 576 }),
        fc.integer({ min: 3, max: 8 }),
        (list, k) => {
          const mask = Uint8Array.from(list, (v) => Number(v < k))
          const found = measureAir(mask, 24, 24, 0, space)
          const { enclosed, best } = slowly(mask, 24)
          expect(found.enclosed).toBe(enclosed)
          expect(found.radius).toBeCloseTo(best > 0 ? Math.sqrt(best) : 0, 9)
        },
      ),
      { numRuns: 60 },
    )
  })
  it.each([8, 15.3, 30, 44.5])('a ring with a hole of radius %d pixels has that hole, in its middle', (r) => {
    const size = 192
    const mask = paint(size, (x, y) => {
      const d = Math.hypot(x - 96, y - 100)
      return d > r && d < r + 20
    })
    const air = measureAir(mask, size, size, 0, createGapSpace(size * size))
    expect(Math.abs(air.radius - r)).toBeLessThan(0.75)
    expect(Math.hypot(air.column + 0.5 - 96, air.row + 0.5 - 100)).toBeLessThan(1.5)
    const void_ = 1 - air.massPixels / air.hullPixels
    expect(void_).toBeCloseTo((r / (r + 20)) ** 2, 1)
  })
  it('a disc has no air at all', () => {
    const size = 192
    const air = measureAir(
      paint(size, (x, y) => Math.hypot(x - 90, y - 95) < 60),
      size,
      size,
      0,
      createGapSpace(size * size),
    )
    expect(air.hullPixels).toBe(air.massPixels)
    expect(air.radius).toBe(0)
  })
  it('a gap that is open to the outside is air, not a hole', () => {
    const size = 96
    const ring = (x: number, y: number): boolean => {
      const d = Math.hypot(x - 48, y - 48)
      return d > 15 && d < 30
    }
    const air = measureAir(
      paint(size, (x, y) => ring(x, y) && !(Math.abs(x - 48) < 3 && y > 48)),
      size,
      size,
      0,
      createGapSpace(size * size),
    )
    expect(air.enclosed).toBe(0)
  })
  it('rows under the rim are not looked at', () => {
    const size = 96
    const mask = paint(size, (x, y) => Math.hypot(x - 48, y - 48) < 30)
    const air = measureAir(mask, size, size, 48, createGapSpace(size * size))
    expect(air.massPixels / mask.reduce((a, b) => a + b, 0)).toBeCloseTo(0.5, 2)
  })
  it('nothing gives nothing', () => {
    expect(measureAir(new Uint8Array(64), 8, 8, 0, createGapSpace(64))).toMatchObject({
      massPixels: 0,
      hullPixels: 0,
      radius: 0,
    })
  })
})
