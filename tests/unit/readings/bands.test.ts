import { describe, expect, it } from 'vitest'
import { FORMS, type Form } from '../../../src/arrangement/index.ts'
import type { Resolved } from '../../../src/geometry/index.ts'
import { NO_END } from '../../../src/readings/bands.ts'
import { readProminence } from '../../../src/readings/focal-prominence.ts'
import {
  BAND_RANGES,
  BANDS,
  createEngine,
  type Engine,
  type ReadingId,
  type ReadingResult,
  tableBand,
} from '../../../src/readings/index.ts'
import { readMechanics } from '../../../src/readings/mechanics.ts'
import { readSpace } from '../../../src/readings/negative-space.ts'
import { readProportion } from '../../../src/readings/proportion.ts'
import { readSight } from '../../../src/readings/sight-line.ts'
import { readStability } from '../../../src/readings/stability.ts'
import { readBalance } from '../../../src/readings/visual-balance.ts'
import { FAMILIES, type Family } from './band-designs.ts'
import { ballStandins, design, resolve } from './made.ts'

const engine = createEngine(ballStandins)
const STEPS = 24
const READ: Partial<Record<ReadingId, (on: Engine) => ReadingResult>> = {
  'focal-prominence': readProminence,
  'negative-space': readSpace,
  proportion: readProportion,
  'visual-balance': readBalance,
  stability: readStability,
  mechanics: readMechanics,
  'sight-line': readSight,
}
/** A value of a reading that gives names instead of a share is found among what it was held against. */
const heldAt = ({ values, because }: ReadingResult, key: string): number =>
  (values[key] ?? [because!.main, ...because!.others].find((h) => h.key === key)!.value) as number

interface Look {
  value: number
  score: number
}
/** Value and score of each design of a family, held against each form. What the form does not change is painted once. */
const lookAt = (id: ReadingId, key: string, make: Family[2]): Map<Form, Look[]> => {
  const all = new Map(FORMS.map((form): [Form, Look[]] => [form, []]))
  for (let i = 0; i <= STEPS; i++) {
    const resolved = new Map<string, Resolved>()
    for (const form of FORMS) {
      const made = make(i / STEPS, form)
      const text = JSON.stringify(made)
      const base = resolved.get(text) ?? resolve(design([], made))
      resolved.set(text, base)
      engine.update({ ...base, document: { ...base.document, form } })
      const r = READ[id]!(engine)
      if (r.score !== null) all.get(form)!.push({ value: heldAt(r, key), score: r.score })
    }
  }
  return all
}

describe('bands', () => {
  it('every row has a source, rising ends and a fall, and lies in the range of its value', () => {
    for (const row of BANDS) {
      const range = BAND_RANGES[`${row.reading}.${row.key}`]!
      expect(row.source.length).toBeGreaterThan(3)
      expect(row.band[1]).toBeGreaterThanOrEqual(row.band[0])
      expect(row.band[0]).toBeGreaterThanOrEqual(range[0])
      if (row.band[1] < NO_END) expect(row.band[1]).toBeLessThanOrEqual(range[1])
      expect(row.fall).toBeGreaterThan(0)
    }
  })
  it('every row has designs below', () => {
    const shown = new Set(FAMILIES.map(([id, key]) => `${id}.${key}`))
    expect([...new Set(BANDS.map((b) => `${b.reading}.${b.key}`))].filter((name) => !shown.has(name))).toEqual([])
  })
  it.each(FAMILIES)(
    '%s: a design just outside its band of %s scores less than one just inside, each form and end',
    (id, key, make) => {
      const range = BAND_RANGES[`${id}.${key}`]!
      const all = lookAt(id, key, make)
      for (const form of FORMS) {
        const row = tableBand(id, key, form)
        if (!row) continue
        const seen = all.get(form)!
        const inside = seen.filter((x) => x.value >= row.band[0] && x.value <= row.band[1])
        for (const end of [0, 1] as const) {
          // Beyond the end of a range, and where there is no end, nothing can lie outside.
          if (row.band[end] === range[end] || Math.abs(row.band[end]) >= NO_END) continue
          const beyond = (x: { value: number }): number => (end === 0 ? row.band[0] - x.value : x.value - row.band[1])
          const out = seen.filter((x) => beyond(x) > 0.15 * row.fall).sort((a, b) => beyond(a) - beyond(b))[0]
          const near = inside.toSorted((a, b) => beyond(b) - beyond(a))[0]
          const where = `${form} ${key} ${near?.value} → ${out?.value}`
          expect([near, out], where).not.toContain(undefined)
          expect(out!.score, where).toBeLessThan(near!.score - 0.5)
        }
      }
    },
  )
})
