import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FORMS } from '../../../src/arrangement/index.ts'
import { resolveArrangement, viewAxes } from '../../../src/geometry/index.ts'
import { BANDS, isOutside } from '../../../src/readings/bands.ts'
import { readAll } from '../../../src/readings/index.ts'
import { hold, named, numbersWords, sideWords } from '../../../src/readings/words.ts'
import { heldWords, unjudgedWords, wantedWords } from '../../../src/ui/readings/words.ts'
import { bowl, stem } from '../views/fixture.ts'

describe('a value beside what is wanted of it', () => {
  it('a vase that spills only at 70°, beyond the end of the gauge, is as steady as wanted', () => {
    const { held, part } = hold(
      'stability',
      { form: 'vertical' },
      { key: 'spillAngle_deg', name: 'Spills', value: 70, unit: '°', scale: [0, 60], rule: '' },
    )
    expect(heldWords(held)).toBe('70 °, inside')
    expect(wantedWords(held)).toBe('wanted: at least 8 °')
    expect(part).toBe(1)
  })
  it('is said to be inside exactly where it costs nothing, wherever the gauge ends', () => {
    const any = { min: -1, max: 120, noNaN: true }
    fc.assert(
      fc.property(fc.constantFrom(...BANDS), fc.double(any), fc.double(any), fc.double(any), (row, value, a, b) => {
        const scale: [number, number] = [Math.min(a, b), Math.max(a, b) + 0.1]
        const { held } = hold(
          row.reading,
          { form: row.form },
          { key: row.key, name: '', value, unit: '°', scale, rule: '' },
        )
        expect(isOutside(value, held.band!)).toBe(isOutside(value, row.band))
      }),
      { numRuns: 400 },
    )
    expect(new Set(BANDS.map((b) => b.form)).size).toBe(FORMS.length)
  })
})

describe('a single colour', () => {
  it('makes no pair to judge, but how light it is and how it stands off the cloth is said', () => {
    const white = bowl(stem('a', { colour: '#f8f4ea' }), stem('b', { colour: '#f8f4ea', tip: [40, 0, 90] }))
    const reading = readAll(resolveArrangement(white), { advice: false }).find((r) => r.id === 'palette-harmony')
    expect(reading?.score).toBeNull()
    if (!reading?.because) throw new Error('nothing is said')
    const linen = Math.round(reading.values.groundContrast as number)
    expect(unjudgedWords(reading.because, 'cm')).toBe(`From dark to light 0 L*; against the linen ${linen} ΔE00`)
  })
})

describe('stems by their names', () => {
  const flowers = (...plants: string[]) =>
    resolveArrangement(bowl(...plants.map((plant, i) => stem(`s${i}`, { plant })))).stems
  const lilies = (n: number): string[] => Array.from({ length: n }, () => 'lily-oriental')
  it('three lilies are lilies, not a lily and a lily and a lily', () => {
    expect(named(flowers(...lilies(3)))).toBe('1–3, oriental lilies')
    expect(named(flowers(...lilies(1)))).toBe('1, an oriental lily')
    const five = flowers(...lilies(5))
    expect(named([five[4]!, five[0]!, five[1]!])).toBe('1, 2 and 5, oriental lilies')
  })
  it('each plant once, greens as stems, three of them and the rest counted', () => {
    const all = flowers('rose-garden', 'ivy', 'rose-garden', 'ivy', 'salal', 'gladiolus', 'tulip')
    expect(named(all)).toBe('1 and 3, garden roses; 2 and 4, stems of ivy; 5, a salal and 2 more')
    expect(named(flowers('gladiolus', 'gladiolus'))).toBe('1 and 2, stems of gladiolus')
  })
  it('runs are drawn together, and not more said than one reads', () => {
    expect(numbersWords([1, 2, 3, 7, 8, 9])).toBe('1–3 and 7–9')
    expect(numbersWords([4])).toBe('4')
    expect(numbersWords([1, 6, 11, 16, 21, 26])).toBe('1, 6, 11 and 3 more')
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 60 }), { minLength: 1 }), (some) => {
        // As many stems as are given are told, by number, in a run, or counted.
        const said = numbersWords(some.toSorted((a, b) => a - b)).split(/, | and /)
        const count = said.map((w) => {
          const more = /^(\d+) more$/.exec(w)
          const [from, to] = w.split('–').map(Number)
          return more ? Number(more[1]) : to === undefined ? 1 : to - from! + 1
        })
        expect(count.reduce((a, b) => a + b, 0)).toBe(some.length)
        expect(said.length).toBeLessThanOrEqual(4)
      }),
    )
  })
  it('the sides have their names where they have one', () => {
    expect([0, 90, 180, 270, 30].map(sideWords)).toEqual([
      'the front',
      'the left',
      'the back',
      'the right',
      '30° round',
    ])
    // At a quarter turn the eye lies where the left was.
    expect(viewAxes({ turn: 90, pitch: 0 }).toward).toEqual([-1, -0, 0])
  })
  it('a rank is a whole number', () => {
    const m = { key: 'focalRank', name: '', value: 13, unit: '', scale: [1, 20] as [number, number], rule: '' }
    expect(heldWords(hold('focal-prominence', { form: 'airy' }, { ...m, whole: true }).held)).toBe('13, over')
  })
})
