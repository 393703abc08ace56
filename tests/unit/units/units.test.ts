import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatLength, fromUnit, MM_PER_INCH, parseLength, toUnit, type Units } from '../../../src/units/index.ts'

const UNITS: Units[] = ['mm', 'cm', 'in']
const HALF_STEP: Record<Units, number> = { mm: 0.5, cm: 0.5, in: 25.4 / 16 }

describe('a length on the screen', () => {
  it.each([
    [120, 'mm', '120 mm'],
    [119.6, 'mm', '120 mm'],
    [123.4, 'cm', '12.3 cm'],
    [120, 'cm', '12.0 cm'],
    [114.3, 'in', '4 1/2 in'],
    [25.4, 'in', '1 in'],
    [3.175, 'in', '1/8 in'],
    [1524, 'in', '60 in'],
    [-38.1, 'in', '−1 1/2 in'],
    [-0.2, 'mm', '0 mm'],
    [0.4, 'in', '0 in'],
    [-0.2, 'cm', '0.0 cm'],
    [Number.NaN, 'mm', '–'],
    [Number.POSITIVE_INFINITY, 'in', '–'],
  ] as [number, Units, string][])('%s mm in %s is %s', (mm, units, text) => {
    expect(formatLength(mm, units)).toBe(text)
  })
})

describe('a length as a number of units', () => {
  it('goes there and back', () => {
    expect([toUnit(114.3, 'in'), toUnit(125, 'cm'), toUnit(7, 'mm')]).toEqual([4.5, 12.5, 7])
    expect([fromUnit(4.5, 'in'), fromUnit(12.5, 'cm'), fromUnit(7, 'mm')]).toEqual([114.3, 125, 7])
    expect(fromUnit(1, 'in')).toBe(MM_PER_INCH)
  })
})

describe('a length as typed', () => {
  it.each([
    ['120', 'mm', 120],
    ['12.5', 'cm', 125],
    ['12,5 cm', 'mm', 125],
    ['4 1/2', 'in', 114.3],
    ['4-1/2"', 'mm', 114.3],
    ['4½', 'in', 114.3],
    ['½ in', 'mm', 12.7],
    ['1/3 in', 'mm', 25.4 / 3],
    ['  4 1/2 Inches ', 'cm', 114.3],
    ['1 inch', 'cm', 25.4],
    ['60″', 'cm', 1524],
    ['-3/8', 'in', -9.525],
    ['− 40 mm', 'in', -40],
    ['.5', 'in', 12.7],
    ['0', 'in', 0],
    ['-0', 'mm', 0],
    ['0.1 in', 'mm', 2.54],
    ['12.125 in', 'mm', 307.975],
    ['1200', 'mm', 1200],
  ] as [string, Units, number][])('%s (in %s) is %s mm', (text, units, mm) => {
    expect(parseLength(text, units)).toBe(mm)
  })

  it.each(['', ' ', 'tall', '4 1/0', '1,200', '4 5', '1/2/3', '12 ft', '1e3', '--4', '4 mm cm', '1.2.3', 'NaN', 'in'])(
    '"%s" is not understood',
    (text) => {
      for (const units of UNITS) expect(parseLength(text, units)).toBeNull()
    },
  )

  it('comes back from the screen within half of what the screen rounds to, and then stays', () => {
    fc.assert(
      fc.property(fc.double({ min: -5000, max: 5000, noNaN: true }), fc.constantFrom(...UNITS), (mm, units) => {
        const shown = formatLength(mm, units)
        const back = parseLength(shown, 'mm') as number
        expect(Math.abs(back - mm)).toBeLessThanOrEqual(HALF_STEP[units] + 1e-9)
        expect(formatLength(back, units)).toBe(shown)
      }),
    )
  })

  it('is exact for every eighth of an inch', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1600 }), (eighths) => {
        expect(parseLength(formatLength((eighths * 25.4) / 8, 'in'), 'in')).toBe((eighths * 254) / 80)
      }),
    )
  })
})
