import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Arrangement, type Light, newArrangement } from '../../../src/arrangement/index.ts'
import { labOf, underLight } from '../../../src/colour/index.ts'
import { resolveArrangement } from '../../../src/geometry/index.ts'
import { purchase } from '../../../src/stem-list/index.ts'
import { layoutPicture, type Wanted } from '../../../src/ui/picture/layout.ts'
import { type Item, type Laid, SHEETS } from '../../../src/ui/picture/types.ts'
import { design, expectInFrame, HARD, measure, OPTIONS, stems, texts } from './made.ts'

const laid = (document: Arrangement, wanted: Wanted, light: Light = 'daylight'): Laid =>
  layoutPicture(document, { ...OPTIONS, light }, wanted, measure)
const A4: Wanted = { size: 'a4', composition: 'standing' }
const LETTER: Wanted = { size: 'letter', composition: 'standing' }
const PHONE: Wanted = { size: 'phone', composition: 'standing' }
const views = (items: readonly Item[]) => items.filter((i) => i.kind === 'view')
const area = ({ w, h }: { w: number; h: number }): number => w * h

const setting = newArrangement().setting
const supper = design({
  title: 'Supper in the orchard',
  stems: stems(36, 9, 430, 400, 190),
  setting: { ...setting, copies: 14, date: '2027-10-09T17:00' },
})

describe('the arrangement as it stands', () => {
  it('is seen large from a little above, and small from the other sides and from above', () => {
    const [large, ...small] = views(laid(supper, A4).items)
    expect(large?.angle).toEqual({ turn: 0, pitch: 14 })
    expect(small.map((v) => [v.angle.turn, v.angle.pitch])).toEqual([
      [90, 0],
      [180, 0],
      [270, 0],
      [0, 90],
    ])
    for (const view of small) expect(area(large!.box)).toBeGreaterThan(5 * area(view.box))
    expect(new Set(small.map((v) => v.frame.scale)).size).toBe(1)
    for (const said of ['from the left', 'from behind', 'from the right', 'from above'])
      expect(texts(laid(supper, A4).items)).toContain(said)
  })

  it('stands on the linen of its table, whose edge is where the table ends, and throws a shadow on it', () => {
    const { items } = laid(supper, A4)
    const cloth = items.flatMap((i) => (i.kind === 'shape' && i.fill === setting.linen ? [i] : []))[0]
    expect(cloth).toBeDefined()
    const [view] = views(items)
    const { frame, box } = view!
    // 762 mm behind the middle, seen from 14° above: 762 sin 14° over the foot, which is 84 mm below the rim.
    const up = 762 * Math.sin((14 * Math.PI) / 180) - 84 * Math.cos((14 * Math.PI) / 180)
    const top = Math.min(...(cloth?.points ?? []).map((p) => p[1]))
    expect(setting.table).toEqual({ shape: 'round', diameter: 1524 })
    expect(top).toBeCloseTo(box.y + (frame.top - up) * frame.scale, 0)
    const hatching = items.filter((i) => i.kind === 'line' && i.weight < 2 && i.from[1] === i.to[1])
    expect(hatching.length).toBeGreaterThan(20)
  })

  it('no glass is cut off in the air: what stands on the table is seen whole in height, or not at all', () => {
    const { items } = laid(supper, A4)
    const [view] = views(items)
    const title = Math.max(...items.flatMap((i) => (i.kind === 'text' && i.y < view!.box.y ? [i.y] : [])))
    const drawn = items.flatMap((i) => (i.kind === 'path' ? i.points : []))
    expect(drawn.length).toBeGreaterThan(100)
    expect(Math.min(...drawn.map(([, y]) => y))).toBeGreaterThan(title + 41)
  })

  it('a table too small to fill the picture ends inside it', () => {
    const cafe = design({
      stems: stems(12, 4, 900, 300, 190),
      setting: { ...setting, table: { shape: 'round', diameter: 500 } },
    })
    const { items } = laid(cafe, A4)
    const edge = items.filter((i) => i.kind === 'path')
    const across = edge.flatMap((e) => e.points.map((p) => p[0]))
    const [view] = views(items)
    expect(Math.max(...across) - Math.min(...across)).toBeCloseTo(500 * view!.frame.scale, -1)
  })

  it('the foot of each upright small view stands on its line', () => {
    const { items } = laid(supper, A4)
    for (const view of views(items).slice(1, 4)) {
      const foot = view.box.y + (view.frame.top + supper.vessel.height) * view.frame.scale
      const line = items.find(
        (i) => i.kind === 'line' && i.weight === 2.4 && i.from[0] < view.box.x + 20 && i.to[0] > view.box.x,
      )
      expect(line?.kind === 'line' && Math.abs(line.from[1] - foot)).toBeLessThan(2)
    }
  })

  it('says title, subtitle, each plant with its colour, the list for all tables, sizes, date and light', () => {
    const words = texts(laid(supper, A4).items)
    const all = words.join(' ')
    for (const said of ['Supper in the orchard', '9 October 2027', '14 tables', 'daylight', 'high, from the cloth'])
      expect(words).toContain(said)
    expect(all).toMatch(/To buy for all 14 tables, \d+ (together|with spare): \d+ /)
    expect(all).toContain('apricot blush')
    expect(all).not.toMatch(/undefined|NaN|focal|filler|slot/)
  })

  it('what is to be bought is what the list says is to be bought: needed stems and spare', () => {
    const { lines } = purchase(resolveArrangement(supper), supper.setting.copies, OPTIONS.prices)
    const total = lines.reduce((sum, line) => sum + line.stems + line.spareStems, 0)
    expect(total).toBeGreaterThan(lines.reduce((sum, line) => sum + line.stems, 0))
    expect(texts(laid(supper, A4).items).join(' ')).toContain(`To buy for all 14 tables, ${total} with spare: `)
    expect(texts(laid(supper, PHONE).items).join(' ')).toContain(`${total} stems, spare with them`)
  })

  it('the list is broken between kinds only', () => {
    const words = texts(laid(supper, A4).items)
    const from = words.findIndex((t) => t.startsWith('To buy'))
    expect(words[from + 1]).toMatch(/^\d+ [A-Z]/)
  })

  it('a wide low piece leaves its plants more room, and a small table is seen to its end', () => {
    const high = (document: Arrangement): number =>
      Math.max(...laid(document, A4).items.flatMap((i) => (i.kind === 'plate' ? [i.box.h] : [])))
    expect(high(design({ stems: stems(12, 4, 900, 120, 60) }))).toBeGreaterThan(high(supper) + 50)
    const cafe = design({
      stems: stems(8, 3, 260, 260, 300),
      setting: { ...setting, table: { shape: 'round', diameter: 762 } },
    })
    const { items, sheet } = laid(cafe, A4)
    const cloth = items.flatMap((i) => (i.kind === 'shape' && i.fill === setting.linen ? [i.points] : []))[0]!
    const [from, to] = [Math.min(...cloth.map(([x]) => x)), Math.max(...cloth.map(([x]) => x))]
    expect(from).toBeGreaterThan(sheet.inset + 50)
    expect(to).toBeLessThan(sheet.width - sheet.inset - 50)
    const end = Math.max(...cloth.map(([, y]) => y))
    const hanging = Math.max(
      ...items.flatMap((i) => (i.kind === 'shape' && i.points.length > 3 ? i.points.map(([, y]) => y) : [])),
    )
    expect(hanging).toBeGreaterThan(end + 40)
  })

  it('the cost stands there only if it was asked for', () => {
    expect(texts(laid(supper, A4).items).join(' ')).toContain('prices: example')
    const without = layoutPicture(supper, { ...OPTIONS, withCost: false }, A4, measure)
    expect(texts(without.items).join(' ')).not.toMatch(/prices|€/)
  })
})

describe('for a phone', () => {
  it('there is one large view, title, colours with words, a short list, sizes, date and light', () => {
    const { sheet, items } = laid(supper, PHONE)
    expect([sheet.width, sheet.height]).toEqual([1080, 1920])
    expect(views(items).map((v) => v.angle.pitch)).toEqual([14])
    const all = texts(items).join(' ')
    for (const said of [
      'Supper in the orchard',
      'To buy for all 14 tables',
      '9 October 2027',
      'Colours shown in daylight',
    ])
      expect(all).toContain(said)
    expect(items.filter((i) => i.kind === 'box' && i.fill).length).toBe(supper.palette.slots.length)
  })

  it('no word is smaller than a ninth of an inch would be on a screen of four inches', () => {
    for (const item of laid(supper, PHONE).items)
      if (item.kind === 'text') expect(item.font.size).toBeGreaterThanOrEqual(25)
  })
})

describe('in the light of the room', () => {
  it('linen, letters and swatches are as the eye sees them by candle, on cream paper, and the foot says so', () => {
    const day = laid(supper, A4)
    const night = laid(supper, A4, 'candle')
    expect(night.light).toBe('candle')
    // Cream and no pink: yellower than grey, and nearer to white than what the light makes of white paper.
    const [, a, b] = labOf(night.paper)
    expect(b).toBeGreaterThan(2 * a)
    expect(Math.hypot(a, b)).toBeLessThan(Math.hypot(...labOf(underLight(day.paper, 'candle')).slice(1)))
    expect(night.items.flatMap((i) => (i.kind === 'shape' ? [i.fill] : []))).toContain(
      underLight(setting.linen, 'candle'),
    )
    expect(texts(night.items)).toContain('candlelight')
    const swatches = (items: readonly Item[]) => items.flatMap((i) => (i.kind === 'box' && i.fill ? [i.fill] : []))
    expect(swatches(night.items)).toEqual(swatches(day.items).map((hex) => underLight(hex, 'candle')))
  })

  it('letters stay legible in every light', () => {
    for (const light of ['daylight', 'overcast', 'warm-lamp', 'candle'] as const) {
      const { paper, items } = laid(supper, A4, light)
      for (const item of items) if (item.kind === 'text') expect(contrast(item.colour, paper)).toBeGreaterThan(4.5)
    }
  })
})

const luminance = (hex: string): number =>
  [0.2126, 0.7152, 0.0722].reduce((sum, share, k) => {
    const c = Number.parseInt(hex.slice(1 + 2 * k, 3 + 2 * k), 16) / 255
    return sum + share * (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)
  }, 0)
/** WCAG 2.2, relative luminance and contrast ratio. */
const contrast = (a: string, b: string): number => {
  const [x, y] = [luminance(a), luminance(b)].sort((p, q) => q - p) as [number, number]
  return (x + 0.05) / (y + 0.05)
}

const CASES: Record<string, Arrangement> = {
  'an empty design': design({}),
  'one stem': design({ stems: stems(1, 1, 60, 60, 90) }),
  'thirty kinds': design({ stems: stems(100, 30, 460, 400, 260) }),
  'sixty kinds': design({ stems: stems(120, 60, 460, 400, 260) }),
  'a very tall one': HARD.tall,
  'a very wide one on a long table': {
    ...HARD.wide,
    setting: { ...setting, table: { shape: 'rectangular', length: 1830, width: 762 } },
  },
  'a long title': HARD.longTitle,
  'sixty four colours with a long name': HARD.manyColours,
}
const WANTED: Record<string, Wanted> = {
  A4,
  Letter: LETTER,
  'a phone': PHONE,
  'Letter, from above': { ...LETTER, composition: 'drawn' },
}

describe('nothing overlaps and nothing leaves the sheet', () => {
  for (const [where, wanted] of Object.entries(WANTED))
    for (const [name, document] of Object.entries(CASES))
      it(`${where}: ${name}`, () => {
        const { sheet, items } = laid(document, wanted)
        expectInFrame(items, sheet)
        const [large] = views(items)
        expect(Math.max(large!.box.w, large!.box.h)).toBeGreaterThan(sheet.width * 0.15)
      })

  it('with any number of plants from one to sixty, any size, title and light', () => {
    const any = fc.record({
      wanted: fc.constantFrom(...Object.values(WANTED)),
      kinds: fc.integer({ min: 1, max: 60 }),
      more: fc.integer({ min: 0, max: 20 }),
      wide: fc.integer({ min: 40, max: 2000 }),
      deep: fc.integer({ min: 40, max: 2000 }),
      high: fc.integer({ min: 30, max: 2000 }),
      title: fc.string({ maxLength: 200 }),
      slots: fc.integer({ min: 0, max: 30 }),
      copies: fc.integer({ min: 1, max: 10_000 }),
      table: fc.integer({ min: 200, max: 3000 }),
      light: fc.constantFrom<Light>('daylight', 'overcast', 'warm-lamp', 'candle'),
    })
    fc.assert(
      fc.property(any, (a) => {
        const slots = Array.from({ length: a.slots }, () => ({ colour: '#c9717b', part: 'mass' as const }))
        const document = design({
          title: a.title,
          palette: { name: 'Dusk', slots },
          setting: { ...setting, copies: a.copies, table: { shape: 'round', diameter: a.table } },
          stems: stems(a.kinds + a.more, a.kinds, a.wide, a.deep, a.high),
        })
        const { sheet, items } = laid(document, a.wanted, a.light)
        expect(sheet).toBe(SHEETS[a.wanted.size])
        expectInFrame(items, sheet)
      }),
      { numRuns: 30, seed: 12 },
    )
  })
})
