import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  halfYearLater,
  monthsText,
  PLANTS,
  plantIds,
  seasonIn,
  seasonSource,
  seasonsOf,
  seasonText,
  seasonWords,
} from '../../../src/catalogue/index.ts'
import rows from '../../../src/catalogue/seasons.json' with { type: 'json' }
import published from '../../fixtures/catalogue/seasons.json' with { type: 'json' }

const north = (month: number) => ({ month, half: 'north' as const })
const south = (month: number) => ({ month, half: 'south' as const })
const YEAR = Array.from({ length: 12 }, (_, i) => i + 1)

describe('what is to be had in which month', () => {
  it('peonies for a wedding in June are in season, in October they are not to be had', () => {
    expect(seasonIn('peony', north(6))).toBe('in season')
    expect(seasonWords('peony', north(6))).toBe('in season in June')
    expect(seasonIn('peony', north(10))).toBe('out')
    expect(seasonWords('peony', north(10))).toBe(
      'out of season in October; to be had November–August, most of it April–June',
    )
    expect(seasonWords('peony', north(3))).toBe('to be had in March; most of it April–June')
  })
  it('in Melbourne peonies have their season in November, and are missing in March and April', () => {
    expect(seasonWords('peony', south(11))).toBe('in season in November')
    expect(seasonWords('peony', south(4))).toBe(
      'out of season in April; to be had May–February, most of it October–December',
    )
    expect(seasonSource('peony', 'south')).toContain('half a year')
    expect(seasonSource('rose', 'south')).toBe(seasonSource('rose', 'north'))
  })
  it('roses are there all year; a ranunculus in August is not usual, for its months are from memory', () => {
    expect(YEAR.map((m) => seasonIn('rose', north(m)))).toEqual(YEAR.map(() => 'to be had'))
    expect(seasonWords('rose', north(8))).toBe('all year in the trade')
    expect(seasonIn('ranunculus', north(8))).toBe('unusual')
    expect(seasonWords('ranunculus', north(8))).toBe(
      'not usual in August; to be had October–June, most of it January–May',
    )
  })
  it('what is not known is neither in nor out', () => {
    expect(seasonIn('dusty-miller', north(6))).toBe('not known')
    expect(seasonWords('dusty-miller', north(6))).toBe('not known')
    expect(seasonText('dusty-miller', 'north')).toBeNull()
    expect(seasonIn('peony', null)).toBe('not known')
    expect(seasonsOf('constructor', 'north')).toBeNull()
  })
  it('months are said over the end of the year, alone and in several runs', () => {
    expect(monthsText([1, 2, 11, 12])).toBe('November–February')
    expect(monthsText([5])).toBe('May')
    expect(monthsText([3, 4, 8])).toBe('March–April, August')
    expect(monthsText(YEAR)).toBe('all year')
  })
})

describe('the rows', () => {
  it('has no month in which a published page gives a flower and the row lacks it', () => {
    expect(published.rows.length).toBeGreaterThan(50)
    for (const { plant, page, months } of published.rows) {
      const trade = seasonsOf(plant, 'north')!.trade.months
      expect([plant, page, months.filter((m) => !trade.includes(m))]).toEqual([plant, page, []])
    }
  })
  it('gives as most of it what pages call the peak, and nothing that none of them gives', () => {
    for (const { plant, page, peak = [] } of published.rows) {
      const most = seasonsOf(plant, 'north')!.peak
      expect([plant, page, peak.filter((m) => !most?.months.includes(m))]).toEqual([plant, page, []])
    }
    for (const { id } of PLANTS) {
      const most = seasonsOf(id, 'north')?.peak
      if (most?.standing !== 'source') continue
      const given = published.rows.filter((r) => r.plant === id).flatMap((r) => r.months)
      expect([id, most.months.filter((m) => !given.includes(m))]).toEqual([id, []])
    }
  })
  it('knows each plant that it names, and leaves few out', () => {
    expect(Object.keys(rows).filter((id) => !plantIds.has(id))).toEqual([])
    expect(PLANTS.filter((p) => !seasonsOf(p.id, 'north')).map((p) => p.id)).toEqual(['dusty-miller'])
  })
  it('has months of the year in their order, at least one, the peak among those of the trade, each with a source', () => {
    for (const id of Object.keys(rows))
      for (const half of ['north', 'south'] as const) {
        const { trade, peak } = seasonsOf(id, half)!
        for (const { months, source } of peak ? [trade, peak] : [trade]) {
          expect([id, months.length > 0]).toEqual([id, true])
          expect([id, months]).toEqual([id, YEAR.filter((m) => months.includes(m))])
          expect([id, source.length > 0]).toEqual([id, true])
        }
        expect([id, peak?.months.filter((m) => !trade.months.includes(m)) ?? []]).toEqual([id, []])
      }
  })
  it('never names a page of the trade where it says common practice or from memory', () => {
    const sources = PLANTS.map((p) => seasonSource(p.id, 'north'))
    expect(sources.filter((s) => /https?:|www\.|\.com|\.co\b|\.org|blog/.test(s))).toEqual([])
  })
  it('says out only where a source or common practice gives the months', () => {
    for (const { id } of PLANTS)
      for (const month of YEAR)
        if (seasonIn(id, north(month)) === 'out')
          expect(['source', 'common practice']).toContain(seasonsOf(id, 'north')!.trade.standing)
  })
})

describe('half a year', () => {
  const months = fc.uniqueArray(fc.integer({ min: 1, max: 12 }), { minLength: 1 }).map((m) => m.sort((a, b) => a - b))
  it('twice is a whole one', () => {
    fc.assert(
      fc.property(months, (m) => {
        const later = halfYearLater(m)
        expect(later.every((x) => Number.isInteger(x) && x >= 1 && x <= 12)).toBe(true)
        expect(halfYearLater(later)).toEqual(m)
      }),
    )
  })
  it('from the north is the south: a plant stands in a month here as half a year later there', () => {
    fc.assert(
      fc.property(fc.constantFrom(...PLANTS), fc.integer({ min: 1, max: 12 }), ({ id }, month) => {
        expect(seasonIn(id, south(halfYearLater([month])[0]!))).toBe(seasonIn(id, north(month)))
      }),
    )
  })
  it('words of months name each of them once, whatever they are', () => {
    fc.assert(
      fc.property(months, (m) => {
        const runs = monthsText(m).split(', ')
        const starts = m.filter((x) => !m.includes(((x + 10) % 12) + 1)).length
        expect(runs.length).toBe(m.length === 12 ? 1 : starts)
      }),
    )
  })
})
