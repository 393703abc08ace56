import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Held, ReadingId, ReadingResult } from '../../../src/readings/index.ts'
import { formatNumber, parseNumber } from '../../../src/ui/parts/format.ts'
import { alongScale, placeInBand } from '../../../src/ui/parts/gauge-scale.ts'
import {
  figureOf,
  foreseenWords,
  heldWords,
  quietness,
  scoreWords,
  sentence,
  tellSides,
  unitOfSides,
  wantedWords,
} from '../../../src/ui/readings/words.ts'

const held = (part: Partial<Held>): Held => ({
  key: 'x',
  name: 'X',
  value: 0.34,
  unit: '',
  scale: [0, 1],
  band: [0.25, 0.6],
  rule: '',
  source: '',
  ...part,
})

describe('numbers for the screen', () => {
  it('a minus is a true minus, and nothing is minus nought', () => {
    expect(formatNumber(-12.3, 1)).toBe('−12.3')
    expect(formatNumber(-0.004, 1)).toBe('0')
    expect(formatNumber(10, 1)).toBe('10')
    expect(formatNumber(100)).toBe('100')
    expect(formatNumber(Number.NaN)).toBe('–')
  })
  it('what is shown can be typed again', () => {
    fc.assert(
      fc.property(fc.integer({ min: -50_000, max: 50_000 }), fc.integer({ min: 0, max: 3 }), (n, digits) => {
        const value = Number((n / 10 ** digits).toFixed(digits))
        expect(parseNumber(formatNumber(value, digits))).toBeCloseTo(value, 9)
      }),
    )
  })
  it('a word is no number', () => {
    for (const text of ['', 'high', '1.2.3', '--4', '1e9', 'Infinity']) expect(parseNumber(text)).toBeNull()
    expect(parseNumber(' −3,5 ')).toBe(-3.5)
  })
})

describe('a gauge', () => {
  it('the limits count as inside', () => {
    expect(placeInBand(0.25, [0.25, 0.6])).toBe('inside')
    expect(placeInBand(0.6, [0.25, 0.6])).toBe('inside')
    expect(placeInBand(0.61, [0.25, 0.6])).toBe('over')
    expect(placeInBand(0.2, [0.25, 0.6])).toBe('under')
    expect(placeInBand(0.2, null)).toBe('')
  })
  it('the needle never leaves the scale, whichever way it runs', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true }), fc.integer(), fc.integer(), (v, a, b) => {
        const k = alongScale(v, [a, b])
        return k >= 0 && k <= 1
      }),
    )
    expect(alongScale(75, [100, 0])).toBe(0.25)
  })
})

describe('words of a reading', () => {
  it('a share is said in hundredths, a length in the unit of the person', () => {
    expect(heldWords(held({}))).toBe('34 %, inside')
    expect(figureOf(held({ unit: '×', scale: [0, 3] }), 1.3977)).toEqual({ figure: '1.40', unit: '×' })
    expect(heldWords(held({ unit: 'mm', value: 51, scale: [0, 200], band: [0, 40] }), 'mm')).toBe('51 mm, over')
  })
  it('a band that reaches an end is said from one side', () => {
    expect(wantedWords(held({}))).toBe('wanted: 25 to 60 %')
    expect(wantedWords(held({ band: [0, 0.6] }))).toBe('wanted: at most 60 %')
    expect(wantedWords(held({ band: [0.2, 1] }))).toBe('wanted: at least 20 %')
    expect(wantedWords(held({ band: null }))).toBe('')
  })
  it('colours together are never judged', () => {
    expect(scoreWords({ id: 'palette-harmony', score: 12 })).toBe('12 of 100 toward quiet')
    expect([5, 50, 95].map(quietness)).toEqual(['vivid', 'middling', 'quiet'])
    expect(scoreWords({ id: 'proportion', score: 72.4 })).toBe('72 of 100, nearly there')
    expect(scoreWords({ id: 'proportion', score: null })).toBe('')
    expect(scoreWords({ id: 'proportion', score: 99.7 })).toBe('99 of 100, as wanted')
  })
  it('a source reads as a sentence', () => {
    expect(sentence('ours: no published number was found')).toBe('Ours: no published number was found.')
  })
})

describe('what advice would do', () => {
  const reading = (id: ReadingId, score: number): ReadingResult => ({
    id,
    score,
    notApplicable: '',
    values: {},
    because: null,
    advice: [],
    marks: [],
  })
  const now = [reading('negative-space', 61.2), reading('palette-harmony', 82), reading('proportion', 99.6)]
  const tried = (scores: Partial<Record<ReadingId, number>>) => ({
    text: '',
    stems: [],
    after: { value: 0.3, scores },
  })

  it('is said in whole points, its own reading first, then those that move', () => {
    expect(
      foreseenWords(
        tried({ 'negative-space': 74.4, 'palette-harmony': 80.1, proportion: 99.9 }),
        'negative-space',
        now,
      ),
    ).toBe('Would be 74 of 100, now 61. Colours together 80, now 82.')
  })
  it('says so where no other reading moves', () => {
    expect(foreseenWords(tried({ 'negative-space': 100, 'palette-harmony': 82.2 }), 'negative-space', now)).toBe(
      'Would be 100 of 100, now 61. No other reading moves by a point.',
    )
  })
  it('judges no harmony: it says toward which end', () => {
    expect(foreseenWords(tried({ 'palette-harmony': 90 }), 'palette-harmony', now)).toMatch(
      /^Would be 90 of 100 toward quiet, now 82\./,
    )
  })
  it('says nothing of advice that was not tried', () => {
    expect(foreseenWords({ text: '', stems: [] }, 'proportion', now)).toBe('')
  })
})

describe('values from every side', () => {
  const hole = { name: 'largest hole', unit: 'mm', scale: [0, 5000] as [number, number], worst: 'most' as const }
  it('are told in the person’s units, the worst ones named', () => {
    const told = tellSides({ ...hole, values: [15, 8, 15, null] }, 'cm')
    expect(told.map((t) => t?.words ?? null)).toEqual([
      'largest hole 1.5 cm, the most',
      'largest hole 0.8 cm',
      'largest hole 1.5 cm, the most',
      null,
    ])
    expect(told[1]!.figure).toBe('0.8')
    expect(tellSides({ ...hole, values: [25.4] }, 'in')[0]!.words).toBe('largest hole 1 in')
    expect(unitOfSides({ ...hole, values: [] }, 'in')).toBe(', in')
  })
  it('where all are the same none is the worst', () => {
    expect(tellSides({ ...hole, values: [9, 9, 9] }, 'mm').some((t) => t?.worst)).toBe(false)
  })
  it('shares are told in hundredths, the least as the worst', () => {
    const share = {
      name: 'focal flowers unhidden',
      unit: '',
      scale: [0, 1] as [number, number],
      worst: 'least' as const,
    }
    expect(tellSides({ ...share, values: [0.5, 1] }, 'mm').map((t) => t?.words)).toEqual([
      'focal flowers unhidden 50 %, the least',
      'focal flowers unhidden 100 %',
    ])
  })
})
