import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Arrangement, Stem } from '../../../src/arrangement/index.ts'
import { PLANTS } from '../../../src/catalogue/index.ts'
import { resolveArrangement } from '../../../src/geometry/index.ts'
import { createEngine, readAll } from '../../../src/readings/index.ts'
import { sketched } from './generated.ts'

/** A sketch of real plants, whose stand-ins are many small parts. */
const planted = (seed: number): Arrangement => {
  const design = sketched(seed)
  const stems = design.stems.map((s, i): Stem => ({ ...s, plant: PLANTS[(5 * i + seed) % PLANTS.length]!.id }))
  return { ...design, stems }
}

const KINDS = [
  'move',
  'turn',
  'drop',
  'copy',
  'colour',
  'vessel',
  'linen',
  'role',
  'form',
  'light',
  'table',
  'water',
] as const
type Change = { kind: (typeof KINDS)[number]; at: number; by: number }
const change = fc.record({
  kind: fc.constantFrom('move', 'move', 'move', ...KINDS),
  at: fc.nat(999),
  by: fc.integer({ min: -60, max: 60 }),
}) as fc.Arbitrary<Change>

const changed = (doc: Arrangement, { kind, at, by }: Change, n: number): Arrangement => {
  const k = doc.stems.length > 0 ? at % doc.stems.length : 0
  const each = (of: (s: Stem, i: number) => Stem): Arrangement => ({ ...doc, stems: doc.stems.map(of) })
  const moved = (s: Stem): Stem => ({ ...s, tip: [s.tip[0] + by, s.tip[1] - by / 2, s.tip[2] + by / 3] })
  if (kind === 'move') return each((s, i) => (i === k ? moved(s) : s))
  if (kind === 'turn') return each((s) => ({ ...s, tip: [-s.tip[1], s.tip[0], s.tip[2]] }))
  if (kind === 'drop') return { ...doc, stems: doc.stems.filter((_, i) => i !== k) }
  if (kind === 'colour') return each((s, i) => (i === k ? { ...s, colour: by < 0 ? '#8d9cc4' : '#f2b632' } : s))
  if (kind === 'linen') return { ...doc, setting: { ...doc.setting, linen: by < 0 ? '#333333' : '#fbfaf7' } }
  if (kind === 'vessel') return { ...doc, vessel: { ...doc.vessel, width: doc.vessel.width + Math.abs(by) + 1 } }
  if (kind === 'role') return each((s, i) => (i === k ? { ...s, role: by < 0 ? 'focal' : 'filler' } : s))
  if (kind === 'form') return { ...doc, form: by < 0 ? 'airy' : 'triangle' }
  if (kind === 'light') return { ...doc, setting: { ...doc.setting, light: by < 0 ? 'candle' : 'daylight' } }
  if (kind === 'table')
    return { ...doc, setting: { ...doc.setting, table: { shape: 'round', diameter: 900 + 5 * by } } }
  if (kind === 'water') return { ...doc, vessel: { ...doc.vessel, waterFill: Math.abs(by) / 60 } }
  const copy = doc.stems[k]
  return copy ? { ...doc, stems: [...doc.stems, { ...moved(copy), id: `${copy.id}-${n}` }] } : doc
}

test('whatever was changed before, an engine that paints what changed reads what a new one reads', () => {
  fc.assert(
    fc.property(fc.nat(500), fc.array(change, { minLength: 1, maxLength: 8 }), (seed, changes) => {
      const kept = createEngine()
      let doc = planted(seed)
      changes.forEach((c, n) => {
        doc = changed(doc, c, n)
        const resolved = resolveArrangement(doc)
        // Only now and then, so that several changes are read at once as well.
        if (c.at % 4 === 0 && n < changes.length - 1) return
        const quick = readAll(resolved, { engine: kept, advice: false })
        expect(quick).toEqual(readAll(resolved, { engine: createEngine(), advice: false }))
      })
    }),
    { numRuns: 12 },
  )
})

test('a stem dragged to and fro, other changes between, reads as a new engine reads each place', () => {
  fc.assert(
    fc.property(fc.nat(500), fc.nat(999), fc.array(change, { maxLength: 3 }), (seed, at, between) => {
      const kept = createEngine()
      let doc = planted(seed)
      const drag = (by: number): void => {
        doc = changed(doc, { kind: 'move', at, by }, 0)
        const resolved = resolveArrangement(doc)
        const quick = readAll(resolved, { engine: kept, advice: false })
        expect(quick).toEqual(readAll(resolved, { engine: createEngine(), advice: false }))
      }
      for (const by of [4, 1, -3]) drag(by)
      between.forEach((c, n) => {
        doc = changed(doc, c, n)
      })
      for (const by of [2, -4]) drag(by)
    }),
    { numRuns: 6 },
  )
})
