import { readFileSync } from 'node:fs'
import { differenceCiede2000, lab65 } from 'culori'
import { describe, expect, it } from 'vitest'
import { type Arrangement, applyEdit } from '../../../src/arrangement/index.ts'
import { findPlant, PLANTS } from '../../../src/catalogue/index.ts'
import { NOT_NEAR } from '../../../src/colour/index.ts'
import { resolveArrangement } from '../../../src/geometry/index.ts'
import { coloursSeen, createEngine } from '../../../src/readings/index.ts'
import { listed } from '../../../src/telling/index.ts'
import { areasOf } from '../../../src/ui/palettes/areas.ts'
import { nearestOf, notToBeHad, offersFor, wornColours } from '../../../src/ui/palettes/matches.ts'
import { rowsFor } from '../../../src/ui/palettes/rows.ts'
import { freeName, percent, timesWords } from '../../../src/ui/palettes/words.ts'

const sample = (name: string): Arrangement =>
  JSON.parse(readFileSync(new URL(`../../../public/samples/${name}.json`, import.meta.url), 'utf8')) as Arrangement
const supper = sample('orchard-supper')
const theirs = differenceCiede2000()

describe('plants that come in the colours', () => {
  it('a dahlia is to be had in burgundy and not in blue', () => {
    const dahlia = findPlant('dahlia')!
    expect(nearestOf(dahlia, '#6d1428')).toMatchObject({ colour: 'burgundy' })
    expect(nearestOf(dahlia, '#6d1428')!.apart).toBeLessThan(5)
    expect(nearestOf(dahlia, '#4a63b8')!.apart).toBeGreaterThan(NOT_NEAR)
  })

  it('the supper in blue: the plants that do not come in it are named, once each', () => {
    const blue = applyEdit(supper, {
      do: 'set-palette',
      palette: { name: 'Blue', slots: [{ colour: '#3f58b0', part: 'focal' }] },
    })
    expect(notToBeHad(wornColours(resolveArrangement(supper)))).toEqual([])
    const missing = notToBeHad(wornColours(resolveArrangement(blue)))
    expect(missing).toContain('dahlia')
    expect(missing).toContain('garden rose')
    expect(missing).toContain("queen anne's lace")
    expect(new Set(missing).size).toBe(missing.length)
  })

  it('counts every stem once, and measures as another library does', () => {
    const worn = wornColours(resolveArrangement(supper))
    expect(worn.reduce((sum, w) => sum + w.stems, 0)).toBe(supper.stems.length)
    for (const w of worn)
      for (const c of w.plant.colours) {
        const apart = theirs(lab65(w.wanted)!, lab65(c.hex)!)
        expect(apart).toBeGreaterThan(w.apart - 0.05)
        if (c.hex === w.hex) expect(Math.abs(apart - w.apart)).toBeLessThan(0.05)
      }
  })

  it('offers plants for the part, nearest first, none of them far', () => {
    const offers = offersFor({ colour: '#b02a30', part: 'line' }, new Set(['gladiolus']))
    expect(offers.length).toBeGreaterThan(0)
    expect(offers.length).toBeLessThanOrEqual(3)
    for (const [i, o] of offers.entries()) {
      expect(o.plant.role).toBe('line')
      expect(o.plant.id).not.toBe('gladiolus')
      expect(o.apart).toBeLessThan(NOT_NEAR)
      if (i > 0) expect(o.apart).toBeGreaterThanOrEqual(offers[i - 1]!.apart)
    }
    expect(offersFor({ colour: '#00ffff', part: 'filler' }, new Set())).toEqual([])
    const everyone = new Set(PLANTS.map((p) => p.id))
    expect(offersFor({ colour: '#b02a30', part: 'focal' }, everyone)).toEqual([])
  })
})

describe('how much of each colour is seen', () => {
  it('of the supper: most of a flower is of the colour that leads, the greens stand at the end, and all makes one', () => {
    const engine = createEngine()
    engine.update(resolveArrangement(supper))
    const areas = areasOf(coloursSeen(engine), supper.palette.slots)
    expect(areas[0]).toMatchObject({ slot: 0, leaf: false })
    expect(areas.reduce((sum, a) => sum + a.share, 0)).toBeCloseTo(1, 9)
    const firstLeaf = areas.findIndex((a) => a.leaf)
    expect(areas.slice(firstLeaf).every((a) => a.leaf)).toBe(true)
    const flowers = areas.slice(0, firstLeaf)
    for (const [i, a] of flowers.entries()) if (i > 0) expect(a.share).toBeLessThanOrEqual(flowers[i - 1]!.share)
    expect(flowers.map((a) => a.slot).sort()).toEqual([0, 1, 2, 3, 4, 5, 6, 7])
  })

  it('leaves that look alike are one, a colour of its own is told from the palette’s', () => {
    const areas = areasOf(
      {
        blooms: [
          { hex: '#C9717B', area: 60 },
          { hex: '#ffffff', area: 20 },
        ],
        leaves: [
          { hex: '#557040', area: 10 },
          { hex: '#56713f', area: 10 },
        ],
      },
      [{ colour: '#c9717b', part: 'focal' }],
    )
    expect(areas.map(({ share, slot, leaf }) => [share, slot, leaf])).toEqual([
      [0.6, 0, false],
      [0.2, -1, false],
      [0.2, -1, true],
    ])
    expect(areasOf({ blooms: [], leaves: [] }, [])).toEqual([])
  })
})

describe('the rows and their words', () => {
  it('by daylight there is no second strip of the light', () => {
    expect(rowsFor('daylight', 1).map((r) => r.id)).not.toContain('light')
    expect(rowsFor('candle', 14).map((r) => r.id)).toEqual([
      'name',
      'view',
      'day',
      'light',
      'deutan',
      'harmony',
      'cost',
      'words',
      'plants',
    ])
    expect(rowsFor('candle', 14).find((r) => r.id === 'cost')?.words).toBe('14 in all')
  })

  it('say what they count', () => {
    expect([1, 2, 4, 6, 9].map(timesWords)).toEqual(['once', 'twice', 'four times', 'six times', '9 times'])
    expect([0, 0.004, 0.005, 0.214, 1].map(percent)).toEqual(['0 %', 'under 1 %', '1 %', '21 %', '100 %'])
    expect(listed(['a'])).toBe('a')
    expect(listed(['a', 'b', 'c'])).toBe('a, b and c')
    expect(freeName('Of a photo', ['Of a photo', 'Of a photo 2'])).toBe('Of a photo 3')
  })
})
