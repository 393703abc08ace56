import { describe, expect, it } from 'vitest'
import { resolveArrangement, seedOf } from '../../../src/geometry/index.ts'
import { design, findMade, resolve, stem } from '../readings/made.ts'

describe('a document looked up', () => {
  it('moving one stem works out only that one', () => {
    const before = design([stem('a', [0, 0, 100]), stem('b', [50, 0, 90])])
    const a = resolve(before)
    const moved = { ...before, stems: [before.stems[0]!, stem('b', [60, 0, 90])] }
    const b = resolve(moved)
    expect(b.stems[0]).toBe(a.stems[0])
    expect(b.stems[1]).not.toBe(a.stems[1])
  })
  it('a new palette leaves the curve alone', () => {
    const before = design([stem('a', [0, 0, 100], { colour: { slot: 0 } })], {
      palette: { name: 'p', slots: [{ colour: '#112233', part: 'mass' }] },
    })
    const a = resolve(before)
    const b = resolve({ ...before, palette: { name: 'q', slots: [{ colour: '#445566', part: 'mass' }] } })
    expect([a.stems[0]!.colour, b.stems[0]!.colour]).toEqual(['#112233', '#445566'])
    expect(b.stems[0]!.curve).toBe(a.stems[0]!.curve)
  })
  it('a new vessel gives new curves', () => {
    const before = design([stem('a', [0, 0, 100])])
    const taller = resolve({ ...before, vessel: { ...before.vessel, height: 150 } })
    expect(taller.stems[0]!.curve.cut_mm).toBeCloseTo(resolve(before).stems[0]!.curve.cut_mm + 60, 3)
  })
  it('the same id gives the same flower, another another', () => {
    expect(seedOf('s1')).toBe(seedOf('s1'))
    expect(seedOf('s1')).not.toBe(seedOf('s2'))
    // Published FNV-1a 32 bit: the empty text and "a".
    expect([seedOf(''), seedOf('a')]).toEqual([0x811c9dc5, 0xe40c292c])
  })
  it('leaves out a stem whose plant nobody knows, and keeps the place of the others', () => {
    const r = resolveArrangement(design([stem('a', [0, 0, 100], { plant: 'nobody' }), stem('b', [0, 0, 90])]), findMade)
    expect(r.stems.map((s) => [s.id, s.index])).toEqual([['b', 1]])
  })
  it('heads face outward and up, more outward the farther they stand', () => {
    const r = resolve(design([stem('a', [0, 0, 150]), stem('b', [120, 0, 60])]))
    expect(r.stems[0]!.axis[2]).toBeCloseTo(1)
    expect(r.stems[1]!.axis[0]).toBeGreaterThan(0.3)
    for (const s of r.stems) expect(Math.hypot(...s.axis)).toBeCloseTo(1)
  })
})
