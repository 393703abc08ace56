import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Arrangement, newArrangement } from '../../../src/arrangement/index.ts'
import { layoutPicture } from '../../../src/ui/picture/layout.ts'
import { type Item, SHEETS } from '../../../src/ui/picture/types.ts'
import { boxes, design, expectInFrame, HARD, measure, OPTIONS, overlaps, stems, texts } from './made.ts'

const laid = (document: Arrangement): Item[] =>
  layoutPicture(document, OPTIONS, { size: 'a4', composition: 'drawn' }, measure).items
const views = (items: readonly Item[]) => items.filter((i) => i.kind === 'view')

const expectSound = (items: readonly Item[]): void => {
  expectInFrame(items, SHEETS.a4)
  const [front, above] = views(items)
  expect(front?.frame.scale).toBe(above?.frame.scale)
  expect(front?.frame.left).toBe(above?.frame.left)
  expect([front?.box.x, front?.box.w]).toEqual([above?.box.x, above?.box.w])
  expect((front?.box.y ?? 0) + (front?.box.h ?? 0)).toBeLessThan(above?.box.y ?? 0)
  expect(front?.frame.scale).toBeGreaterThan(0)
}

const CASES: Record<string, Arrangement> = {
  'an empty design': design({}),
  'one stem': design({ stems: stems(1, 1, 60, 60, 90) }),
  'a bowl for fourteen tables': design({
    stems: stems(36, 9, 430, 400, 190),
    setting: { ...newArrangement().setting, copies: 14, date: '2027-10-09T17:00' },
  }),
  'seventy stems of sixteen kinds': design({ stems: stems(70, 16, 460, 400, 260) }),
  'a hundred stems of thirty kinds': design({ stems: stems(100, 30, 460, 400, 260) }),
  'a very tall one': HARD.tall,
  'a very wide one': HARD.wide,
  'a long title': HARD.longTitle,
  'sixty four colours with a long name': HARD.manyColours,
}

describe('the sheet holds everything inside its frame, no words over others, both views in line at one scale', () => {
  for (const [name, document] of Object.entries(CASES)) it(name, () => expectSound(laid(document)))

  it('whatever the design', () => {
    const any = fc.record({
      count: fc.integer({ min: 0, max: 30 }),
      kinds: fc.integer({ min: 1, max: 28 }),
      wide: fc.integer({ min: 40, max: 2000 }),
      deep: fc.integer({ min: 40, max: 2000 }),
      high: fc.integer({ min: 30, max: 2000 }),
      title: fc.string({ maxLength: 200 }),
      palette: fc.string({ maxLength: 60 }),
      slots: fc.integer({ min: 0, max: 30 }),
      copies: fc.integer({ min: 1, max: 10_000 }),
      date: fc.constantFrom(undefined, '2027-10-09', '2027-10-09T17:00+02:00'),
    })
    fc.assert(
      fc.property(any, (a) => {
        const { date, ...setting } = { ...newArrangement().setting, copies: a.copies, date: a.date }
        const slots = Array.from({ length: a.slots }, () => ({ colour: '#c9717b', part: 'mass' as const }))
        const shape = {
          title: a.title,
          palette: { name: a.palette, slots },
          setting: date ? { ...setting, date } : setting,
        }
        expectSound(laid(design({ ...shape, stems: stems(a.count, a.kinds, a.wide, a.deep, a.high) })))
      }),
      { numRuns: 80, seed: 11 },
    )
  })
})

describe('the sheet says it in plain words', () => {
  it('an empty design says so, and how large the vessel is', () => {
    const words = texts(laid(CASES['an empty design']!)).join(' ')
    expect(words).toContain('No flowers stand in it yet. The bowl is 14.0 cm wide and 8.4 cm high.')
    expect(laid(CASES['an empty design']!).some((i) => i.kind === 'plate')).toBe(false)
  })

  it('the views are called as a guest would call them, with three dimensions', () => {
    const words = texts(laid(CASES['a bowl for fourteen tables']!))
    for (const said of [
      'from the front',
      'from above',
      'wide',
      'high',
      '8.4 cm',
      'bowl',
      '14 tables',
      'daylight',
      '9 October 2027',
    ])
      expect(words).toContain(said)
    expect(words.join(' ')).not.toMatch(/elevation|plan\b|focal|filler|slot|undefined|NaN/i)
  })

  it('each plant stands once on its own stem, with how many there are; what finds no place is counted', () => {
    const items = laid(CASES['a hundred stems of thirty kinds']!)
    expect(items.filter((i) => i.kind === 'plate')).toHaveLength(16)
    const shown = texts(items).flatMap((t) => (/^\d+ stems?$/.test(t) ? [Number.parseInt(t, 10)] : []))
    const rest = texts(items).find((t) => t.startsWith('and ') && t.includes('more:'))
    const sum = shown.reduce((a, b) => a + b, 0) + Number.parseInt(rest?.slice(4) ?? '0', 10)
    expect(sum).toBe(100)
  })

  it('a long title becomes smaller and goes over more lines, and an endless one is cut', () => {
    const titles = laid(CASES['a long title']!).flatMap((i) =>
      i.kind === 'text' && i.font.face === 'capt' && i.font.weight === 500 && i.box.y < 500 ? [i] : [],
    )
    expect(titles.length).toBe(3)
    expect(titles.at(-1)?.text.endsWith('…')).toBe(true)
    expect(titles[0]?.font.size).toBeLessThan(80)
  })

  it('boxes that overlap would be found', () => {
    const items = laid(CASES['one stem']!)
    const text = items.find((i) => i.kind === 'text')
    expect(overlaps([...items, text!])).toHaveLength(1)
    expect(boxes(items).length).toBeGreaterThan(10)
  })
})
