import { describe, expect, it } from 'vitest'
import { type Picture, VESSEL_OWNER } from '../../../src/drawing/index.ts'
import { writeVisible } from '../../../src/ui/views/composite.ts'
import { nearestHandle } from '../../../src/ui/views/handles.ts'
import { isCovered, stemIndexAt, stemIndicesIn } from '../../../src/ui/views/hit.ts'

/** Owners row by row; depth is the owner's number. */
const picture = (rows: number[][]): Picture => {
  const width = rows[0]?.length ?? 0
  const owner = Uint16Array.from(rows.flat())
  const depth = Float32Array.from(owner, (o) => (o === 0 ? -1e9 : o))
  return { width, height: rows.length, owner, depth, rgba: new Uint8ClampedArray(4 * owner.length) }
}

describe('what the hand touches', () => {
  const seen = picture([
    [0, 0, 0, 0, 0, 0],
    [0, 2, 2, 0, 0, 0],
    [0, 2, VESSEL_OWNER, 0, 0, 1],
  ])

  it('the stem that is seen there', () => {
    expect(stemIndexAt(seen, 1, 1, 0)).toBe(1)
  })
  it('the nearest stem when the hand slips a little', () => {
    expect(stemIndexAt(seen, 3, 2, 2)).toBe(1)
    expect(stemIndexAt(seen, 4, 2, 2)).toBe(0)
  })
  it('neither the vessel nor the paper', () => {
    expect(stemIndexAt(seen, 2, 2, 0)).toBe(-1)
    expect(stemIndexAt(seen, 4, 0, 1)).toBe(-1)
    expect(stemIndexAt(seen, -20, 90, 3)).toBe(-1)
  })
  it('a rectangle drawn on the ground takes every stem that is seen in it', () => {
    expect(stemIndicesIn(seen, 0, 0, 9, 9)).toEqual([0, 1])
    expect(stemIndicesIn(seen, 3, 0, 4, 2)).toEqual([])
  })
  it('words find no free paper where something is painted', () => {
    expect(isCovered(seen, 1, 1, 2, 2)).toBe(true)
    expect(isCovered(seen, 3, 0, 4, 2)).toBe(false)
  })
  it('of two handles within reach the nearer one', () => {
    const at = (kind: 'tip' | 'bend', x: number) => ({
      kind,
      id: 'a',
      view: 'plan' as const,
      at: [x, 0] as [number, number],
    })
    expect(nearestHandle([at('tip', 0), at('bend', 10)], 7, 0, 12)?.kind).toBe('bend')
    expect(nearestHandle([at('tip', 0), at('bend', 10)], 40, 0, 12)).toBeNull()
  })
})

describe('a stem in the hand', () => {
  const red = new Uint8ClampedArray([255, 0, 0, 255, 255, 0, 0, 255])
  const sprite = { left: 0, top: 0, width: 2, height: 1, rgba: red, depth: Float32Array.from([0, 0]) }
  const base = picture([[5, 1]])
  const visible = (z: number, hidden: number[] = []): boolean[] => {
    const out = new Uint32Array(2)
    writeVisible(base, sprite, 0, 0, z, out, 2, new Set(hidden))
    return [...out].map((pixel) => pixel !== 0)
  }
  it('is hidden by what is nearer, pixel by pixel', () => {
    expect(visible(3)).toEqual([false, true])
    expect(visible(9)).toEqual([true, true])
    expect(visible(0)).toEqual([false, false])
  })
  it('is not hidden by its own picture at the old place', () => {
    expect(visible(3, [5])).toEqual([true, true])
  })
  it('is whole outside the painted rectangle', () => {
    const out = new Uint32Array(2)
    writeVisible(base, sprite, -7, 4, 0, out, 2, new Set())
    expect([...out].every((pixel) => pixel !== 0)).toBe(true)
  })
})
