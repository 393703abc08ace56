import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../../src/arrangement/index.ts'
import { createEngine, type ReadingResult, readAll } from '../../../src/readings/index.ts'
import { sketched } from './generated.ts'
import { ballStandins, design, resolve, stem } from './made.ts'

const engine = createEngine(ballStandins)
const read = (d: ReturnType<typeof design>): Map<string, ReadingResult> =>
  new Map(readAll(resolve(d), { engine }).map((r) => [r.id, r]))
const ways = (d: ReturnType<typeof design>, id: string) => read(d).get(id)!.ways!

describe('the values all the way round', () => {
  it('a rose behind a large bloom is hidden from the front and free from the back', () => {
    const d = design([
      stem('rose', [0, 60, 90], { role: 'focal', head: 60, colour: '#d08080' }),
      stem('large', [0, -60, 90], { role: 'mass', head: 130, colour: '#e0e0d0' }),
    ])
    const { values, worst } = ways(d, 'focal-prominence')
    expect(values[0]).toBeLessThan(0.1)
    expect(values[6]).toBe(1)
    expect(worst).toBe('least')
  })

  it('the largest hole and the widest spread are those that the readings tell', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const all = read(sketched(seed))
      for (const [id, key] of [
        ['negative-space', 'largestHole_mm'],
        ['proportion', 'spread_mm'],
      ] as const) {
        const r = all.get(id)!
        if (r.score === null) expect(r.ways).toBeUndefined()
        else expect(Math.max(...r.ways!.values.map((v) => v ?? 0))).toBeCloseTo(r.values[key] as number, 3)
      }
    }
  })

  it('opposite outlines are mirror images: the same hole and spread', () => {
    for (const id of ['negative-space', 'proportion']) {
      const { values } = ways(sketched(3), id)
      expect(values.slice(6)).toEqual(values.slice(0, 6))
    }
  })

  it('a quarter turn of the arrangement moves every value on by three of twelve', () => {
    for (const seed of [2, 5, 9]) {
      const d = sketched(seed)
      const [before, after] = [read(d), read(applyEdit(d, { do: 'turn-arrangement', degrees: 90 }))]
      for (const [id, r] of before) {
        if (!r.ways) continue
        const now = after.get(id)!.ways!.values
        // Turned by 90° and seen from 0° is what was seen from 90°.
        const wanted = r.ways.values.map((_, i, all) => all[(i + 3) % 12]!)
        const unit = r.ways.unit === 'mm' ? 100 : 1
        const off = Math.max(...now.map((v, i) => Math.abs((v ?? 0) - (wanted[i] ?? 0)) / unit))
        expect(off, `${id} of ${seed}`).toBeLessThan(id === 'palette-harmony' ? 3 : 0.08)
      }
    }
  })

  it('are left out while something moves', () => {
    expect(readAll(resolve(sketched(1)), { engine, advice: false }).every((r) => r.ways === undefined)).toBe(true)
  })
})
