import { describe, expect, it } from 'vitest'
import { type Arrangement, applyEdit } from '../../../src/arrangement/index.ts'
import {
  createEngine,
  type Engine,
  READING_IDS,
  READING_NAMES,
  type ReadingResult,
  readAll,
} from '../../../src/readings/index.ts'
import { sketched } from './generated.ts'
import { ballStandins, design, mound, resolve, stem } from './made.ts'

const engine = createEngine(ballStandins)
const read = (d: Arrangement, advice = false): ReadingResult[] => readAll(resolve(d), { engine, advice })
const DESIGNS = Array.from({ length: 30 }, (_, i) => sketched(i + 1))

/** What `23 % of the mouth then shows` and the like promise, by the key of the value. */
const PROMISES: [RegExp, string, number, number][] = [
  [/(\d+) % of the mouth then shows/, 'mouthShowing', 100, 0],
  [/air goes from \d+ % to (\d+) %/, 'airFraction', 100, 0],
  [/the largest then measures (\d+) mm/, 'largestHole_mm', 1, 0],
  [/then it is ([\d.]+) ×/, 'ratio', 1, 2],
  [/harmony goes from -?[\d.]+ to (-?\d+\.\d+)/, 'harmonyFlowers', 1, 2],
  [/(\d+) % of the focal flowers then shows/, 'focalVisible', 100, 0],
  [/then hold (\d+) % of the eye/, 'focalShare', 100, 0],
  [/flower then ranks (\d+)/, 'focalRank', 1, 0],
  [/vessel then ranks (\d+)/, 'vesselRank', 1, 0],
]

describe('advice', () => {
  const seen = DESIGNS.map((d) => ({ d, before: JSON.stringify(d), readings: read(d, true) }))
  const edits = seen.flatMap(({ d, readings }) =>
    readings.flatMap((r) => r.advice.flatMap((a) => (a.edit ? [{ d, readings, r, a, edit: a.edit }] : []))),
  )
  it('is given often, at most three pieces to a reading, and names its stems', () => {
    expect(edits.length).toBeGreaterThan(30)
    for (const id of ['focal-prominence', 'negative-space', 'proportion'])
      expect(edits.filter((e) => e.r.id === id).length).toBeGreaterThan(3)
    for (const { d, readings } of seen)
      for (const r of readings) {
        expect(r.advice.length).toBeLessThanOrEqual(3)
        for (const a of r.advice) for (const id of a.stems) expect(d.stems.some((s) => s.id === id)).toBe(true)
      }
  })
  /** Each promise that is made of a reading is what was measured. How many there are. */
  const kept = (text: string, now: ReadingResult): number => {
    let promises = 0
    for (const [words, key, scale, digits] of PROMISES) {
      const said = words.exec(text)?.[1]
      if (said === undefined) continue
      promises += 1
      const name = key === 'ratio' ? (/Low|High/.test(text) ? 'heightRatio' : 'spreadRatio') : key
      expect(said, text).toBe(((now.values[name] as number) * scale).toFixed(digits))
    }
    return promises
  }
  it('lifts its own reading, costs no other more than two points or says what it costs, and keeps what it promises', () => {
    let promises = 0
    for (const { d, readings, r, a, edit } of edits) {
      const after = read(applyEdit(d, edit))
      // Of two steps as one the second speaks of the reading that the first alone would harm.
      const [first, ...more] = a.text.split(/ That alone would harm (?=“)/)
      const own = after.find((x) => x.id === r.id)!
      promises += kept(first!, own)
      for (const second of more) {
        const id = READING_IDS.find((x) => second.startsWith(`“${READING_NAMES[x]}”, so at once: `))!
        promises += kept(second, after.find((x) => x.id === id)!)
      }
      let lost = 0
      readings.forEach((was, i) => {
        const now = after[i]!
        const foreseen = a.after!.scores[was.id]
        if (foreseen !== undefined) expect(now.score, a.text).toBeCloseTo(foreseen, 6)
        if (was.id === r.id) {
          expect(a.after!.value).toBeCloseTo(now.because!.main.value, 6)
          expect(foreseen).toBeDefined()
          expect(now.score!, a.text).toBeGreaterThanOrEqual(was.score! + 0.5 - 1e-6)
        } else if (was.score !== null && was.id !== 'palette-harmony') {
          // Harmony has no good end: it is foretold, and held against nothing.
          const fall = was.score - now.score!
          if (fall <= 2 + 1e-6) return
          lost += fall
          expect(a.text).toContain(`“${READING_NAMES[was.id]}” ${fall.toFixed(0)} points`)
          expect(now.score!).toBeGreaterThanOrEqual(r.score!)
        }
      })
      const gain = own.score! - r.score!
      if (lost > 0) expect(gain, a.text).toBeGreaterThanOrEqual(Math.max(10, 3 * lost))
      expect(a.text.includes('It costs')).toBe(lost > 0)
    }
    expect(promises).toBeGreaterThan(20)
  })
  it('stands best first, edits before words alone', () => {
    for (const { d, readings } of seen)
      for (const r of readings) {
        const gains = r.advice.map((a) =>
          a.edit ? read(applyEdit(d, a.edit)).find((x) => x.id === r.id)!.score! - r.score! : 0,
        )
        expect(gains).toEqual(gains.toSorted((p, q) => q - p))
      }
  })
  it('is undone exactly: the document is as it was, and so are its readings', () => {
    for (const { d, before, readings } of seen) {
      expect(JSON.stringify(d)).toBe(before)
      expect(read(d, true)).toEqual(readings)
    }
  })
  it('moves by whole steps and writes lengths in the units asked for', () => {
    const ring = design(
      Array.from({ length: 20 }, (_, i) => {
        const a = (i * Math.PI) / 10
        return stem(`r${i}`, [110 * Math.cos(a), 0, 200 + 110 * Math.sin(a)], { head: 55 })
      }),
    )
    const text = (units?: 'in' | 'cm' | 'mm'): string =>
      readAll(resolve(ring), { engine, ...(units ? { units } : {}) })
        .flatMap((r) => r.advice.map((a) => a.text))
        .find((t) => t.includes('into the hole'))!
    expect(text()).toMatch(
      /move \d+, a ball, (\d*[05] mm (up|down|to the (left|right))( and )?)+ into the hole|into the hole seen from (the front|the left|the back|the right|\d+° round), \d*[05] mm over the rim and (in the middle|\d*[05] mm to the (left|right))/,
    )
    expect(text('mm')).toBe(text())
    expect(text('in')).toMatch(/\d in (up|down|to|over)/)
    expect(text('cm')).toMatch(/\d cm (up|down|to|over)/)
    expect(`${text('in')}${text('cm')}`).not.toContain(' mm')
  })
  it('tries no more than a few dozen ideas, however much is amiss', () => {
    const many = design(
      [
        stem('f', [0, 0, 30], { role: 'focal', head: 20, colour: '#f0d3cf' }),
        ...mound(59, (i) => ({ head: 20 + (i % 5) * 12, colour: i % 2 ? '#e8683f' : '#8d9cc4' })),
      ],
      { form: 'airy' },
    )
    let updates = 0
    const counting: Engine = Object.create(engine, {
      update: {
        value: (r: Engine['resolved']) => {
          updates += 1
          engine.update(r)
        },
      },
    })
    readAll(resolve(many), { engine: counting })
    // Twelve for each reading and one step back each.
    expect(updates).toBeLessThanOrEqual(1 + 13 * READING_IDS.length)
    expect(updates).toBeGreaterThan(4)
  })
})
