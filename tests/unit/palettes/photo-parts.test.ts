import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { partsOfPhoto } from '../../../src/state/photo-parts.ts'

const GREENS = { colour: '#8fa58c', part: 'greens' as const }
const partsOf = (...hexes: string[]) =>
  partsOfPhoto(
    hexes.map((hex, i) => ({ hex, share: 0.5 ** (i + 1) })),
    [{ colour: '#d98c93', part: 'focal' }, GREENS],
  ).map((p) => p.part)

describe('the parts that colours of a photo play', () => {
  it('in a bunch of roses with leaves the roses lead and the leaves are greens, though there is more of them', () => {
    expect(partsOf('#4f6b3a', '#d98c93', '#f3e7cc')).toEqual(['greens', 'focal', 'mass'])
  })

  it('of flowers alone the largest colour leads, and the greens stay those of the design', () => {
    const parts = partsOfPhoto([{ hex: '#b02a30', share: 0.7 }], [GREENS])
    expect(parts).toEqual([{ colour: '#b02a30', part: 'focal', share: 0.7 }, GREENS])
  })

  it('of a photo of leaves the largest green leads', () => {
    expect(partsOf('#4f6b3a', '#7d9a5c')).toEqual(['focal', 'greens'])
  })

  it('before a grey wall the flower leads all the same', () => {
    expect(partsOf('#8d8f8e', '#b02a30', '#4f6b3a')).toEqual(['filler', 'focal', 'greens'])
    expect(partsOf('#8d8f8e', '#5a5c5b')).toEqual(['focal', 'filler', 'greens'])
  })

  it('a lime flower and a blue one are no leaves', () => {
    expect(partsOf('#c6dc7a', '#5f78b8')).toEqual(['focal', 'mass', 'greens'])
  })

  it('always has something that leads, and every colour once', () => {
    const hex = fc.integer({ min: 0, max: 0xffffff }).map((n) => `#${n.toString(16).padStart(6, '0')}`)
    fc.assert(
      fc.property(fc.array(hex, { minLength: 1, maxLength: 8 }), (hexes) => {
        const parts = partsOf(...hexes)
        expect(parts.filter((p) => p === 'focal')).toHaveLength(1)
        expect(parts.length === hexes.length || parts.length === hexes.length + 1).toBe(true)
      }),
    )
  })
})
