import { describe, expect, it } from 'vitest'
import { newEvent } from '../../../src/event/index.ts'
import { resolveArrangement } from '../../../src/geometry/index.ts'
import { orderOf } from '../../../src/stem-list/index.ts'
import { spreadOut } from '../../../src/ui/event/sheets/numbers.ts'
import { eventPages, type SheetChoices } from '../../../src/ui/event/sheets/pages.ts'
import type { WorkedEvent } from '../../../src/ui/event/use-worked-event.ts'
import { pageContent, pointsOf } from '../../../src/ui/picture/pdf/page.ts'
import type { Item, Laid } from '../../../src/ui/picture/types.ts'
import { planOf } from '../../../src/work-plan/index.ts'
import { design as documentOf, measure, stems } from '../picture/made.ts'

const worked = (count: number): WorkedEvent => {
  const document = documentOf({ title: 'Bowl', stems: stems(count, 5, 300, 300, 200) })
  const designs = [
    { design: 'd', copies: 12, place: 'guest tables', title: 'Bowl', document, resolved: resolveArrangement(document) },
  ]
  const event = {
    ...newEvent('Europe/Lisbon'),
    title: 'June',
    date: '2027-06-12T15:00',
    parts: [{ design: 'd', copies: 12, place: 'guest tables' }],
  }
  const order = orderOf(designs, { prices: { currency: 'EUR', perBunch: {} } })
  return {
    event,
    designs,
    order,
    plan: planOf(
      event,
      order,
      (id) => id,
      () => 'netting',
    ),
  }
}
const ALL: SheetChoices = { size: 'a4', bench: true, order: true, days: true, withCost: true }
const pagesOf = (count: number, over: Partial<SheetChoices> = {}, units: 'cm' | 'in' = 'cm') =>
  eventPages(worked(count), { ...ALL, ...over }, { units, language: 'en-GB', generalName: () => 'pink' }, measure)
const textsOf = ({ items }: Laid): string[] => items.flatMap((item) => (item.kind === 'text' ? [item.text] : []))

/** Lengths of all level lines of a page as its PDF has them, pt. */
const levelLines = (laid: Laid): number[] => {
  const { content } = pageContent({ laid, images: new Map(), faces: [], measure, used: new Map() })
  const [scale] = content.split(' ').map(Number) as [number]
  return [...content.matchAll(/([\d.-]+) ([\d.-]+) m\n?\s*([\d.-]+) ([\d.-]+) l S/g)]
    .map((m) => m.slice(1).map(Number) as [number, number, number, number])
    .filter(([, y0, , y1]) => y0 === y1)
    .map(([x0, , x1]) => Math.abs(x1 - x0) * scale)
}

describe('sheets to work from', () => {
  it('the scale is true in the PDF: 100 mm are 283.46 pt, 4 in are 288 pt, on A4 and on Letter', () => {
    for (const size of ['a4', 'letter'] as const) {
      const [metric] = pagesOf(20, { size })
      expect(Math.min(...levelLines(metric!.laid).map((pt) => Math.abs(pt - (100 / 25.4) * 72)))).toBeLessThan(0.02)
      const [inches] = pagesOf(20, { size }, 'in')
      expect(Math.min(...levelLines(inches!.laid).map((pt) => Math.abs(pt - 288)))).toBeLessThan(0.02)
    }
    expect(pointsOf(pagesOf(20)[0]!.laid)[0]).toBeCloseTo(595.28, 1)
    expect(pointsOf(pagesOf(20, { size: 'letter' })[0]!.laid)).toEqual([612, 792])
  })

  it('a bench sheet shows every stem once, with its number and its length, and where it goes', () => {
    for (const count of [1, 39, 60, 120]) {
      const bench = pagesOf(count, { order: false, days: false })
      const plates = bench.flatMap(({ laid }) =>
        laid.items.filter((i): i is Extract<Item, { kind: 'plate' }> => i.kind === 'plate'),
      )
      expect(plates).toHaveLength(count)
      const texts = bench.flatMap(({ laid }) => textsOf(laid))
      // In the row, at the head and at the mouth.
      for (let n = 1; n <= count; n += 1) expect(texts.filter((t) => t === String(n)).length).toBeGreaterThanOrEqual(3)
    }
  })

  it('everything stands inside the frame', () => {
    for (const { laid } of pagesOf(60)) {
      const { inset, width, height } = laid.sheet
      for (const item of laid.items) {
        const box = item.kind === 'text' || item.kind === 'plate' || item.kind === 'view' ? item.box : null
        if (!box) continue
        expect(box.x).toBeGreaterThanOrEqual(inset)
        expect(box.x + box.w).toBeLessThanOrEqual(width - inset)
        expect(box.y).toBeGreaterThanOrEqual(inset)
        expect(box.y + box.h).toBeLessThanOrEqual(height - inset)
      }
    }
  })

  it('what to buy says the whole order, and that example prices are invented', () => {
    const page = pagesOf(20, { bench: false, days: false })
    const texts = page.flatMap(({ laid }) => textsOf(laid))
    const { order } = worked(20)
    for (const line of order.lines) expect(texts).toContain(String(line.stems))
    expect(texts.some((t) => /invented/.test(t))).toBe(true)
    expect(
      pagesOf(20, { bench: false, days: false, withCost: false })
        .flatMap(({ laid }) => textsOf(laid))
        .join(),
    ).not.toMatch(/€/)
  })

  it('day by day has every task, its hour, and whose rules come first', () => {
    const texts = pagesOf(20, { bench: false, order: false }).flatMap(({ laid }) => textsOf(laid))
    for (const task of worked(20).plan.tasks) expect(texts).toContain(task.title)
    expect(texts.join(' ')).toMatch(/venue’s and the local rules come before/)
  })
})

describe('numbers at their places', () => {
  it('no disc covers another, and the same design gives the same sheet', () => {
    const points = Array.from({ length: 40 }, (_, i): [number, number] => [
      500 + (i % 7) * 20,
      500 + Math.floor(i / 7) * 18,
    ])
    const spread = spreadOut(points, 20)
    for (let i = 0; i < spread.length; i += 1)
      for (let j = i + 1; j < spread.length; j += 1)
        expect(Math.hypot(spread[i]![0] - spread[j]![0], spread[i]![1] - spread[j]![1])).toBeGreaterThan(38)
    expect(spreadOut(points, 20)).toEqual(spread)
  })
})
