import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FORMS } from '../../../src/arrangement/index.ts'
import { resolveArrangement } from '../../../src/geometry/index.ts'
import { BANDS, isOutside } from '../../../src/readings/bands.ts'
import { readAll } from '../../../src/readings/index.ts'
import { hold } from '../../../src/readings/words.ts'
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
