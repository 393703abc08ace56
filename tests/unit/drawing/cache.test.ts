import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { createCache, keep, recall, remembered } from '../../../src/drawing/cache.ts'

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

  it('kept and recalled in whatever order: never over its bound, and what was used last is what is left', () => {
    const LIMIT = 1000
    const act = fc.record({ key: fc.integer({ min: 0, max: 12 }), size: fc.option(fc.integer({ min: 0, max: 1400 })) })
    fc.assert(
      fc.property(fc.array(act, { maxLength: 120 }), (acts) => {
        const cache = createCache(LIMIT)
        // The same by hand: used last stands last.
        let model: { key: string; size: number }[] = []
        for (const { key: n, size } of acts) {
          const key = `k${n}`
          const known = model.find((one) => one.key === key)
          if (size === null) {
            expect(recall(cache, key)).toBe(known?.size)
            if (known) model = [...model.filter((one) => one !== known), known]
          } else {
            keep(cache, key, size, size)
            model = model.filter((one) => one !== known)
            if (size <= LIMIT) model.push({ key, size })
            while (model.reduce((sum, one) => sum + one.size, 0) > LIMIT) model.shift()
          }
          expect(cache.bytes).toBeLessThanOrEqual(LIMIT)
          expect([...cache.kept].map(([k, { bytes }]) => [k, bytes])).toEqual(model.map((one) => [one.key, one.size]))
          expect(cache.bytes).toBe(model.reduce((sum, one) => sum + one.size, 0))
        }
      }),
      { numRuns: 300 },
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
