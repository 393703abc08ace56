import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Arrangement, applyEdit, FORMS } from '../../../src/arrangement/index.ts'
import {
  BAND_RANGES,
  BANDS,
  bandOf,
  bandScore,
  createEngine,
  type ReadingResult,
  readAll,
  tableBand,
} from '../../../src/readings/index.ts'
import { ballStandins, design, mound, resolve } from './made.ts'

const engine = createEngine(ballStandins)
const proportion = (d: Arrangement): ReadingResult =>
  readAll(resolve(d), { engine, advice: false }).find((r) => r.id === 'proportion')!
const heightHeld = (d: Arrangement) => proportion(d).because!.main
const wanting = (d: Arrangement, ends: [number | null, number | null] | null): Arrangement =>
  applyEdit(d, { do: 'set-band', name: 'proportion.heightRatio', ends })

describe('a person who wants something else than the table', () => {
  const dome = design(mound(18), { form: 'airy' })
  const ratio = proportion(dome).values.heightRatio as number

  it('is held against what they want, and told that it is theirs and what the table has', () => {
    const own = wanting(dome, [ratio - 0.1, ratio + 0.1])
    expect(heightHeld(own).band).toEqual([ratio - 0.1, ratio + 0.1])
    expect(heightHeld(own).wants).toEqual({
      name: 'proportion.heightRatio',
      ends: [ratio - 0.1, ratio + 0.1],
      own: true,
      range: [0, 100],
    })
    expect(heightHeld(own).source).toMatch(/^your own band; the table has 1.5–3 × \(/)
    expect(heightHeld(dome).wants?.own).toBe(false)
  })
  it('moves the score: the farther from what is wanted the lower, never higher', () => {
    const away = [0, 0.2, 0.4, 0.6, 0.8, 1, 2].map(
      (d) => proportion(wanting(dome, [ratio + d, ratio + d + 1])).score ?? Number.NaN,
    )
    expect(away).toEqual([...away].sort((a, b) => b - a))
    expect(away[0]!).toBeGreaterThan(away.at(-1)! + 20)
  })
  it('what lies a hair farther out costs a hair more: smooth, level at both ends, never rising', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...BANDS),
        fc.double({ min: 0, max: 1.5, noNaN: true }),
        fc.double({ min: 1e-9, max: 1e-3, noNaN: true }),
        fc.boolean(),
        ({ band, fall }, far, hair, over) => {
          const at = (d: number) =>
            bandScore(
              over ? Math.min(band[1], 1e5) + d * fall : band[0] - d * fall,
              [band[0], Math.min(band[1], 1e5)],
              fall,
            )
          expect(at(far + hair)).toBeLessThanOrEqual(at(far) + 1e-9)
          // (1 − d²)² is nowhere steeper than 1.54.
          expect(at(far) - at(far + hair)).toBeLessThanOrEqual(1.55 * hair + 1e-9)
          if (far < 1e-3) expect(at(far)).toBeGreaterThan(0.99999)
          if (far >= 1) expect(at(far)).toBe(0)
        },
      ),
    )
  })
  it('the advice is about what they want, and says whose it is', () => {
    const text = (d: Arrangement) =>
      readAll(resolve(d), { engine })
        .find((r) => r.id === 'proportion')!
        .advice.map((a) => a.text)[0]
    expect(text(wanting(dome, [ratio + 1, null]))).toMatch(/wanted at least \d+(\.\d+)? ×, your own\./)
    expect(text(wanting(dome, [null, ratio / 2]))).toMatch(/^High for the vessel: .*wanted at most .* ×, your own\./)
  })
  it('a share stays a share, however far what is wanted goes', () => {
    const own = applyEdit(dome, { do: 'set-band', name: 'proportion.vesselShare', ends: [0.9, 1] })
    const held = proportion(own).because!.others.find((h) => h.key === 'vesselShare')!
    expect(held.scale).toEqual([0, 1])
    expect(held.source).toMatch(/the table has 18–40 %/)
  })
  it('may leave an end open, and goes back to the table as it was', () => {
    const open = wanting(dome, [ratio - 0.1, null])
    expect(proportion(open).score).toBeGreaterThanOrEqual(proportion(dome).score!)
    expect(proportion(wanting(open, null))).toEqual(proportion(dome))
  })
  it('may want something where the table wants nothing of the form', () => {
    const low = design(mound(18), { form: 'low' })
    expect(tableBand('proportion', 'heightRatio', 'low')).toBeUndefined()
    expect(heightHeld(low).source).not.toMatch(/your own/)
    expect(heightHeld(wanting(low, [5, 6])).source).toMatch(/the table has none for a low design/)
    expect(proportion(wanting(low, [5, 6])).score!).toBeLessThan(proportion(low).score!)
  })
})

describe('every row of the table', () => {
  it.each(BANDS.map((b) => [`${b.reading}.${b.key}`, b.form, b] as const))(
    '%s, %s: full just inside, less just outside, by the smooth fall',
    (_name, _form, { band, fall, reading, key, form }) => {
      const hair = fall / 1000
      for (const [end, out] of [
        [0, -1],
        [1, 1],
      ] as const) {
        if (Math.abs(band[end]) >= 1e5) continue
        const inside = Math.min(band[1], Math.max(band[0], band[end] - out * hair))
        expect(bandScore(inside, band, fall)).toBe(1)
        expect(bandScore(band[end] + out * hair, band, fall)).toBeLessThan(1)
        expect(bandScore(band[end] + out * hair, band, fall)).toBeGreaterThan(0.999)
        expect(bandScore(band[end] + out * fall, band, fall)).toBeCloseTo(0, 12)
      }
      expect(bandOf(reading, key, { form })).toBe(tableBand(reading, key, form))
    },
  )
  it('has a name by which it can be set, of any form', () => {
    const names = [...new Set(BANDS.map(({ reading, key }) => `${reading}.${key}`))]
    expect(names.toSorted()).toEqual(Object.keys(BAND_RANGES).sort())
    for (const name of names)
      for (const form of FORMS) {
        const [reading, key] = name.split('.') as [ReadingResult['id'], string]
        expect(bandOf(reading, key, { form, bands: { [name]: [1, 2] } })?.band).toEqual([1, 2])
      }
  })
})
