import { describe, expect, it } from 'vitest'
import { MATERIALS, MECHANICS, newArrangement, readArrangement, VESSEL_PLANS } from '../../../src/arrangement/index.ts'
import { findVessel, plantIds, TABLES, VESSELS } from '../../../src/catalogue/index.ts'

describe('the vessels', () => {
  it('are at least fourteen, of every plan and material, under ids of their own', () => {
    expect(VESSELS.length).toBeGreaterThanOrEqual(14)
    expect(new Set(VESSELS.map((v) => v.id)).size).toBe(VESSELS.length)
    expect(new Set(VESSELS.map((v) => v.plan))).toEqual(new Set(VESSEL_PLANS))
    expect(new Set(VESSELS.map((v) => v.material))).toEqual(new Set(MATERIALS))
    for (const v of VESSELS) expect(MECHANICS).toContain(v.mechanics)
    expect(findVessel('footed-bowl')?.name).toBe('Footed bowl')
    expect(findVessel('no-such-vessel')).toBeUndefined()
  })

  it('have profiles that rise from the table to the rim, curved ones drawn with six points or more', () => {
    for (const { id, profile } of VESSELS) {
      if (!profile) continue
      expect([id, profile.length === 2 || profile.length >= 6]).toEqual([id, true])
      expect([id, profile[0]![0], profile.at(-1)]).toEqual([id, 0, [1, 1]])
      for (let i = 1; i < profile.length; i++) expect(profile[i]![0]).toBeGreaterThan(profile[i - 1]![0])
      for (const [, half] of profile) expect(half).toBeGreaterThan(0)
    }
  })

  it('leave room inside: two walls are less than the narrowest place', () => {
    for (const v of VESSELS) {
      const narrow = Math.min(1, ...(v.profile ?? []).map(([, half]) => half))
      expect([v.id, 2 * v.wall < narrow * Math.min(v.width, v.depth)]).toEqual([v.id, true])
      expect(v.waterFill > 0 && v.waterFill < 1).toBe(true)
      if (v.plan === 'round') expect(v.width).toBe(v.depth)
    }
  })

  it('can each stand in a document that is read without a word', () => {
    for (const { id, name, source, ...vessel } of VESSELS) {
      expect(name.length * source.length).toBeGreaterThan(0)
      const text = JSON.stringify({ ...newArrangement(), vessel })
      expect([id, readArrangement(text, { plants: plantIds }).kind]).toEqual([id, 'ok'])
    }
  })
})

describe('the tables', () => {
  it('are those that are hired, an inch being 25.4 mm', () => {
    const of = (id: string) => TABLES.find((t) => t.id === id)?.table
    expect(of('round-60')).toEqual({ shape: 'round', diameter: 1524 })
    expect(of('long-8ft')).toEqual({ shape: 'rectangular', length: 2438, width: 762 })
    for (const t of TABLES) expect(t.seats.length * t.source.length).toBeGreaterThan(0)
  })
})
