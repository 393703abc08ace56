import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { createCache, remembered } from '../../../src/drawing/cache.ts'

describe('what is remembered', () => {
  it('never holds more than its limit, whatever is asked for', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 1500 })), { maxLength: 80 }),
        (asks) => {
          const cache = createCache(2000)
          for (const [key, size] of asks) {
            expect(
              remembered(
                cache,
                `k${key}`,
                () => ({ size }),
                (v) => v.size,
              ),
            ).toHaveProperty('size')
            let held = 0
            for (const { bytes } of cache.kept.values()) held += bytes
            expect(held).toBe(cache.bytes)
            expect(held).toBeLessThanOrEqual(2000)
          }
        },
      ),
    )
  })

  it('gives up first what was not asked for longest', () => {
    const cache = createCache(30)
    const ask = (key: string): void =>
      void remembered(
        cache,
        key,
        () => key,
        () => 10,
      )
    for (const key of ['a', 'b', 'c', 'a', 'd']) ask(key)
    expect([...cache.kept.keys()]).toEqual(['c', 'a', 'd'])
  })

  it('hands out what is too large to keep without keeping it', () => {
    const cache = createCache(5)
    expect(
      remembered(
        cache,
        'a',
        () => 7,
        () => 6,
      ),
    ).toBe(7)
    expect(cache.bytes).toBe(0)
  })
})
