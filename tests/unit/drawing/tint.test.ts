import { describe, expect, it } from 'vitest'
import { createCache, stemSprite } from '../../../src/drawing/index.ts'
import { TABLE_BYTES } from '../../../src/drawing/tint.ts'
import { tintsOf } from '../../../src/drawing/tints.ts'
import { TISSUES } from '../../../src/geometry/index.ts'
import { resolvedOf } from './fixture.ts'

describe('tables of colours', () => {
  it('a tissue that a flower does not have takes no room, and none takes more than is reckoned', () => {
    const stem = resolvedOf([{ id: 'a', mouth: [0, 0], tip: [0, 0, 120] }]).stems[0]!
    const tints = tintsOf(stem.plant, stem.colour, stem.seed)
    const taken = () => tints.map((tint) => tint.table.byteLength)
    expect(new Set(taken())).toEqual(new Set([0]))
    stemSprite(stem, { turn: 0, pitch: 0 }, 1, 'draft', createCache())
    expect(tintsOf(stem.plant, stem.colour, stem.seed)).toBe(tints)
    expect(tints[TISSUES.indexOf('petal')]!.table.byteLength).toBe(TABLE_BYTES)
    expect(tints[TISSUES.indexOf('bark')]!.table.byteLength).toBe(0)
    for (const bytes of taken()) expect(bytes).toBeLessThanOrEqual(TABLE_BYTES)
  })
})
