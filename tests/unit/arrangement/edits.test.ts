import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type Arrangement,
  applyEdit,
  describeEdit,
  type Edit,
  newArrangement,
  newStemId,
  newStemIds,
  type Role,
  readArrangement,
  type Stem,
  writeArrangement,
} from '../../../src/arrangement/index.ts'
import { migrate } from '../../../src/arrangement/migrate.ts'
import { arrangements, bowl, edits, known, setters } from './helpers.ts'

const stemOf = (document: Arrangement, id: string): Stem => document.stems.find((s) => s.id === id) as Stem
const made = (...list: Edit[]): Arrangement => list.reduce(applyEdit, bowl())

describe('one edit', () => {
  it('moves the heads that are named and leaves every other stem the very same object', () => {
    const before = bowl()
    const now = applyEdit(before, { do: 'shift-stems', ids: ['s1'], by: [5, 0, -10] })
    expect(stemOf(now, 's1')).toMatchObject({ tip: [40, -60, 85], mouth: [4, -10] })
    expect(now.stems[1]).toBe(before.stems[1])
    expect(now.vessel).toBe(before.vessel)
    expect(stemOf(before, 's1').tip).toEqual([35, -60, 95])
  })

  it('moves the crossing at the mouth along when the whole stem moves', () => {
    expect(stemOf(made({ do: 'shift-stems', ids: ['s1'], by: [5, 1, 3], whole: true }), 's1')).toMatchObject({
      tip: [40, -59, 98],
      mouth: [9, -9],
    })
  })

  it.each<Edit>([
    { do: 'shift-stems', ids: ['s1'], by: [0, 0, 0] },
    { do: 'shift-stems', ids: ['nobody'], by: [9, 9, 9] },
    { do: 'remove-stems', ids: ['nobody'] },
    { do: 'set-stems', ids: ['s1'], set: { openness: 0.8, tip: [35, -60, 95], colour: { slot: 0 } } },
    { do: 'set-stems', ids: ['s3'], set: { head: null, bend: Number.NaN, colour: { slot: 8 } } },
    { do: 'lengthen-stems', ids: ['s1'], factor: 1 },
    { do: 'lengthen-stems', ids: ['s1'], factor: 0 },
    { do: 'turn-arrangement', degrees: 360 },
    { do: 'set-vessel', set: { width: 140, profile: [[0, 0.55], [0.5, 0.9], [1, 1]] } },
    { do: 'set-vessel', set: { profile: [[0, 1], [0, 2]] } },
    { do: 'set-palette', palette: bowl().palette },
    { do: 'set-slot', index: 7, slot: { colour: '#000000', part: 'mass' } },
    { do: 'set-title', title: 'Window-sill bowl' },
    { do: 'set-form', form: 'airy' },
    { do: 'set-setting', set: { copies: 12, date: '2027-02-30' } },
    { do: 'add-stems', stems: [] },
    { do: 'many', label: 'there and back', edits: [{ do: 'shift-stems', ids: ['s1'], by: [8, 0, 0] }, { do: 'shift-stems', ids: ['s1'], by: [-8, 0, 0] }] },
  ])('that changes nothing gives the same document back: %j', (edit) => {
    const before = bowl()
    expect(applyEdit(before, edit)).toBe(before)
  }) // biome-ignore format: a table

  it('pulls values out of range to the limit', () => {
    expect(
      stemOf(
        made({ do: 'set-stems', ids: ['s1'], set: { openness: 3, bend: -2, head: -4, tip: [9e9, 0, Number.NaN] } }),
        's1',
      ),
    ).toMatchObject({
      openness: 1,
      bend: -1,
      head: 1,
      tip: [5000, 0, 95],
    })
  })

  it('lengthens a stem along its own line, and no further than the limit', () => {
    expect(stemOf(made({ do: 'lengthen-stems', ids: ['s1'], factor: 2 }), 's1').tip).toEqual([66, -110, 190])
    const [x, y, z] = stemOf(made({ do: 'lengthen-stems', ids: ['s1'], factor: 1e9 }), 's1').tip
    expect(z).toBeCloseTo(5000, 6)
    expect((x - 4) / z).toBeCloseTo(31 / 95, 9)
    expect((y + 10) / z).toBeCloseTo(-50 / 95, 9)
  })

  it('gives copies new ids where the ones asked for are taken', () => {
    const now = made({ do: 'duplicate-stems', ids: ['s1', 'nobody', 's2'], newIds: ['s9', 'x', 's3'], by: [10, 0, 0] })
    expect(now.stems.map((s) => s.id)).toEqual(['s1', 's2', 's3', 's9', 's10'])
    expect(now.stems[3]).toEqual({ ...stemOf(now, 's1'), id: 's9', mouth: [14, -10], tip: [45, -60, 95] })
    expect(now.stems[4]).toHaveProperty('tied', { to: 's1' })
  })

  it('never has more than 2,000 stems', () => {
    const full = applyEdit(newArrangement(), {
      do: 'add-stems',
      stems: Array.from({ length: 2100 }, () => ({ ...stemOf(bowl(), 's3'), id: 's1' })),
    })
    expect(full.stems).toHaveLength(2000)
    expect(new Set(full.stems.map((s) => s.id)).size).toBe(2000)
    expect(applyEdit(full, { do: 'add-stems', stems: [stemOf(bowl(), 's1')] })).toBe(full)
  })

  it('mirrors as seen at the turn given', () => {
    expect(stemOf(made({ do: 'mirror-stems', ids: ['s2'], turn: 0 }), 's2')).toMatchObject({
      mouth: [12, 8],
      tip: [90, 30, 70],
      bend: -0.12,
    })
    expect(stemOf(made({ do: 'mirror-stems', ids: ['s2'], turn: 90 }), 's2')).toMatchObject({
      mouth: [-12, -8],
      tip: [-90, -30, 70],
    })
  })

  it('a quarter turn takes what is on the right to the back', () => {
    const now = made({ do: 'turn-arrangement', degrees: 90 })
    expect(stemOf(now, 's1').tip).toEqual([60, 35, 95])
  })

  it('a round vessel stays as deep as it is wide', () => {
    expect(made({ do: 'set-vessel', set: { width: 100 } }).vessel).toMatchObject({ width: 100, depth: 100 })
    expect(made({ do: 'set-vessel', set: { depth: 90 } }).vessel).toMatchObject({ width: 90, depth: 90 })
    const oval = made({ do: 'set-vessel', set: { plan: 'oval', depth: 90 } })
    expect(oval.vessel).toMatchObject({ width: 140, depth: 90 })
    expect(applyEdit(oval, { do: 'set-vessel', set: { plan: 'round' } }).vessel.depth).toBe(140)
  })

  it('thins a wall that no longer fits', () => {
    const { vessel } = made({ do: 'set-vessel', set: { width: 10 } })
    expect(vessel.wall).toBeLessThan(2)
    expect(vessel.wall).toBeGreaterThan(0.5)
  })
})

describe('putting a palette on a design', () => {
  const slots = (...parts: Role[]) => parts.map((part, i) => ({ colour: `#0000${i}${i}`, part }))
  const colours = (document: Arrangement) => document.stems.map((s) => s.colour)
  const put = (...parts: Role[]) =>
    colours(made({ do: 'set-palette', palette: { name: 'new', slots: slots(...parts) } }))

  it('the slot with the same number and part is followed', () => {
    expect(put('focal', 'greens', 'mass')).toEqual([{ slot: 0 }, { slot: 1 }, '#f3e3d3'])
  })
  it('else the slot of the same part, wherever it is', () => {
    expect(put('mass', 'filler', 'greens', 'focal')).toEqual([{ slot: 3 }, { slot: 2 }, '#f3e3d3'])
  })
  it('else the nearest part: greens take the filler, never the focal', () => {
    expect(put('mass', 'filler')).toEqual([{ slot: 0 }, { slot: 1 }, '#f3e3d3'])
  })
  it('with one slot everything follows it', () => {
    expect(put('line')).toEqual([{ slot: 0 }, { slot: 0 }, '#f3e3d3'])
  })
  it('with none, stems keep the colour that they had', () => {
    expect(put()).toEqual(['#c9717b', '#8fa07a', '#f3e3d3'])
  })
  it('two slots of one part go to two slots of that part while there are two', () => {
    const two: Arrangement = {
      ...bowl(),
      palette: { name: '', slots: slots('mass', 'mass') },
      stems: bowl()
        .stems.slice(0, 2)
        .map((s, i) => ({ ...s, colour: { slot: i } })),
    }
    const palette = { name: 'n', slots: slots('focal', 'mass', 'greens', 'mass') }
    expect(colours(applyEdit(two, { do: 'set-palette', palette }))).toEqual([{ slot: 3 }, { slot: 1 }])
  })
  it('a colour of its own that is one of the old palette follows it; another stays', () => {
    const own = made({ do: 'set-stems', ids: ['s1'], set: { colour: '#C9717B' } })
    expect(
      colours(applyEdit(own, { do: 'set-palette', palette: { name: 'n', slots: slots('greens', 'focal') } })),
    ).toEqual([{ slot: 1 }, { slot: 0 }, '#f3e3d3'])
  })
})

describe('any edit of any design', () => {
  it('never makes a document that is refused, and changes nothing of the old one', () => {
    fc.assert(
      fc.property(arrangements, fc.array(edits, { minLength: 1, maxLength: 6 }), (start, list) => {
        let document = start
        for (const edit of list) {
          const before = writeArrangement(document)
          const next = applyEdit(document, edit)
          expect(writeArrangement(document)).toBe(before)
          if (next !== document) expect(next).not.toEqual(document)
          const untouched = next.stems.filter((s) => document.stems.includes(s)).length
          const equal = next.stems.filter((s, i) => JSON.stringify(s) === JSON.stringify(document.stems[i])).length
          expect(untouched).toBeGreaterThanOrEqual(equal)
          expect(readArrangement(writeArrangement(next), known)).toEqual({ kind: 'ok', document: next })
          expect(describeEdit(document, edit, (p) => p)).not.toMatch(/undefined|NaN|\[object/)
          document = next
        }
      }),
      { numRuns: 300 },
    )
  })

  it('setting twice is setting once', () => {
    fc.assert(
      fc.property(arrangements, setters, (document, edit) => {
        const once = applyEdit(document, edit)
        expect(applyEdit(once, edit)).toBe(once)
      }),
      { numRuns: 300 },
    )
  })

  it('mirroring twice, and turning there and back, come home', () => {
    fc.assert(
      fc.property(arrangements, fc.double({ min: -720, max: 720, noNaN: true }), (document, degrees) => {
        const ids = document.stems.map((s) => s.id)
        const mirror: Edit = { do: 'mirror-stems', ids, turn: degrees }
        const twice = applyEdit(applyEdit(document, mirror), mirror)
        const home = applyEdit(applyEdit(document, { do: 'turn-arrangement', degrees }), {
          do: 'turn-arrangement',
          degrees: -degrees,
        })
        for (const now of [twice, home])
          now.stems.forEach((stem, i) => {
            const was = document.stems[i] as Stem
            ;[...stem.mouth, ...stem.tip].forEach((x, k) => {
              expect(Math.abs(x - ([...was.mouth, ...was.tip][k] as number))).toBeLessThan(1e-9)
            })
            expect(stem.bend).toBe(was.bend)
          })
      }),
    )
  })
})

describe('names and words', () => {
  it('new ids go on from the highest', () => {
    expect(newStemId(newArrangement())).toBe('s1')
    expect(newStemIds(made({ do: 'remove-stems', ids: ['s2'] }), 2)).toEqual(['s4', 's5'])
    expect(newStemId({ stems: [{ ...stemOf(bowl(), 's1'), id: 's9999999' }] })).toBe('s1')
  })

  it.each<[Edit, string]>([
    [{ do: 'shift-stems', ids: ['s1'], by: [1, 0, 0] }, 'rose moved'],
    [{ do: 'remove-stems', ids: ['s1', 's2', 's3'] }, '3 stems taken out'],
    [{ do: 'remove-stems', ids: ['gone'] }, 'nothing taken out'],
    [{ do: 'set-stems', ids: ['s1'], set: { openness: 0.2 } }, 'rose closed'],
    [{ do: 'set-stems', ids: ['s1'], set: { tip: [1, 2, 3], mouth: [0, 0] } }, 'rose moved'],
    [{ do: 'set-stems', ids: ['s2'], set: { plant: 'statice' } }, 'eucalyptus exchanged for statice'],
    [{ do: 'lengthen-stems', ids: ['s1', 's3'], factor: 0.9 }, '2 stems shortened'],
    [{ do: 'turn-arrangement', degrees: 45 }, 'arrangement turned by 45°'],
    [{ do: 'set-palette', palette: { name: 'Rose and sage', slots: [] } }, 'palette “Rose and sage” put on'],
    [{ do: 'set-vessel', set: { waterFill: 0.5 } }, 'vessel’s water changed'],
    [{ do: 'many', label: 'bowl filled', edits: [] }, 'bowl filled'],
  ])('%j is said as “%s”', (edit, words) => {
    expect(describeEdit(bowl(), edit, (p) => p.split('-')[0] as string)).toBe(words)
  })

  it('old versions walk up one step at a time, and a missing step is a mistake of ours', () => {
    const steps = {
      1: (d: Record<string, unknown>) => ({ ...d, version: 2, b: d.a }),
      2: (d: Record<string, unknown>) => ({ ...d, version: 3 }),
    }
    expect(migrate({ version: 1, a: 5, kept: true }, steps, 3)).toEqual({ version: 3, a: 5, b: 5, kept: true })
    expect(() => migrate({ version: 3 }, steps, 4)).toThrow(RangeError)
  })
})
