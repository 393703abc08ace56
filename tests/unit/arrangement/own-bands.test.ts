import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type Arrangement,
  applyEdit,
  describeEdit,
  newArrangement,
  problemLine,
  readArrangement,
  writeArrangement,
} from '../../../src/arrangement/index.ts'

const BANDS = new Map([
  ['proportion.heightRatio', [0, 100]],
  ['stability.tippingAngle_deg', [0, 90]],
] as const)
const withBands = (bands: unknown) =>
  readArrangement(JSON.stringify({ ...newArrangement(), bands }), { plants: new Set(), bands: BANDS })
const lines = (bands: unknown): string[] => {
  const result = withBands(bands)
  return result.kind === 'ok' ? [] : result.problems.map(problemLine)
}
const set = (document: Arrangement, name: string, ends: [number | null, number | null] | null): Arrangement =>
  applyEdit(document, { do: 'set-band', name, ends })

describe('a person’s own bands in a design file', () => {
  it('are read and written again as they were, and absent where none are set', () => {
    const bands = { 'proportion.heightRatio': [1, 1.5], 'stability.tippingAngle_deg': [20, null] }
    const read = withBands(bands)
    if (read.kind !== 'ok') throw new Error('refused')
    expect(read.document.bands).toEqual(bands)
    expect(JSON.parse(writeArrangement(read.document)).bands).toEqual(bands)
    expect('bands' in newArrangement()).toBe(false)
    expect(writeArrangement(newArrangement())).not.toContain('bands')
  })
  it('that are wrong are refused with their place, what was there and what is allowed', () => {
    expect(lines({ 'proportion.heightRatio': [2, 1] })).toEqual([
      'bands["proportion.heightRatio"]: expected a band [least, most], each a number from 0 to 100 or one of them null, the least first, got [2, 1]',
    ])
    expect(lines({ 'proportion.heightRatio': 'tall' })[0]).toMatch(/^bands\["proportion.heightRatio"\]: .*got "tall"$/)
    for (const bad of [[1], [null, null], [1, 2, 3], [1, '2'], [0, 91], [-1, 5], {}, null])
      expect(lines({ 'stability.tippingAngle_deg': bad }).length, JSON.stringify(bad)).toBe(1)
    expect(lines({ 'proportion.girth': [1, 2] })).toEqual([
      'bands["proportion.girth"]: expected one of proportion.heightRatio, stability.tippingAngle_deg, got "proportion.girth"',
    ])
    expect(lines([1, 2])[0]).toMatch(/^bands: expected an object of bands by name/)
  })
  it('what is right of them can be opened: the wrong one alone is left out', () => {
    const read = withBands({ 'proportion.heightRatio': [1, 1.5], 'stability.tippingAngle_deg': [9, 1] })
    if (read.kind !== 'partly') throw new Error(read.kind)
    expect(read.good.bands).toEqual({ 'proportion.heightRatio': [1, 1.5] })
  })
})

describe('setting a band', () => {
  const plain = newArrangement()
  it('is one change with a name, and taking it back leaves the document as it was', () => {
    const own = set(plain, 'proportion.heightRatio', [1, 1.2])
    expect(own.bands).toEqual({ 'proportion.heightRatio': [1, 1.2] })
    expect(set(own, 'proportion.heightRatio', null)).toEqual(plain)
    expect('bands' in set(own, 'proportion.heightRatio', null)).toBe(false)
    const edit = { do: 'set-band', name: 'proportion.heightRatio', ends: [1, 1.2] } as const
    expect(describeEdit(plain, { ...edit, ends: [1, 1.2] }, String)).toBe('own band set')
  })
  it('that changes nothing, or can’t be, gives the same document', () => {
    const own = set(plain, 'proportion.heightRatio', [1, 1.2])
    expect(set(own, 'proportion.heightRatio', [1, 1.2])).toBe(own)
    expect(set(plain, 'proportion.heightRatio', null)).toBe(plain)
    for (const bad of [
      [2, 1],
      [Number.NaN, 1],
      [Number.POSITIVE_INFINITY, null],
      [null, null],
    ] as const)
      expect(set(plain, 'proportion.heightRatio', [...bad] as [number | null, number | null])).toBe(plain)
  })
  it('never makes a document that can’t be read', () => {
    const end = fc.option(fc.double({ noNaN: false }), { nil: null })
    fc.assert(
      fc.property(end, end, (least, most) => {
        const text = writeArrangement(set(plain, 'proportion.heightRatio', [least, most]))
        expect(readArrangement(text, { plants: new Set() }).kind).toBe('ok')
      }),
      { numRuns: 300 },
    )
  })
})
