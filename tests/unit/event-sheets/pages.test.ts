import { describe, expect, it } from 'vitest'
import { cautionsOf, findPlant, PLANTS } from '../../../src/catalogue/index.ts'
import { newEvent } from '../../../src/event/index.ts'
import { resolveArrangement } from '../../../src/geometry/index.ts'
import { benchRows, cutPlan } from '../../../src/stem-list/index.ts'
import { spreadOut } from '../../../src/ui/event/sheets/numbers.ts'
import { eventPages, type SheetChoices } from '../../../src/ui/event/sheets/pages.ts'
import { pageContent, pointsOf } from '../../../src/ui/picture/pdf/page.ts'
import type { Item, Laid } from '../../../src/ui/picture/types.ts'
import { type WorkedEvent, workOut } from '../../../src/work-plan/index.ts'
import { design as documentOf, measure, overlaps, stems } from '../picture/made.ts'

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
  return workOut(event, designs, { currency: 'EUR', perBunch: {} })
}
const ALL: SheetChoices = {
  size: 'a4',
  bench: true,
  cutting: true,
  order: true,
  days: true,
  care: true,
  withCost: true,
}
const NONE: Partial<SheetChoices> = { bench: false, cutting: false, order: false, days: false, care: false }
const pagesOf = (count: number, over: Partial<SheetChoices> = {}, units: 'cm' | 'in' = 'cm') =>
  eventPages(worked(count), { ...ALL, ...over }, { units, generalName: () => 'pink' }, measure)
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
      const [metric] = pagesOf(20, { ...NONE, bench: true, size })
      expect(Math.min(...levelLines(metric!.laid).map((pt) => Math.abs(pt - (100 / 25.4) * 72)))).toBeLessThan(0.02)
      const [inches] = pagesOf(20, { ...NONE, bench: true, size }, 'in')
      expect(Math.min(...levelLines(inches!.laid).map((pt) => Math.abs(pt - 288)))).toBeLessThan(0.02)
    }
    expect(pointsOf(pagesOf(20)[0]!.laid)[0]).toBeCloseTo(595.28, 1)
    expect(pointsOf(pagesOf(20, { size: 'letter' })[0]!.laid)).toEqual([612, 792])
  })

  it('the gauge up the right edge is true from the lowest line of the frame on', () => {
    for (const [size, inches, reach, step_mm] of [
      ['a4', false, 28, 10],
      ['a4', true, 11, 25.4],
      ['letter', false, 26, 10],
      ['letter', true, 10, 25.4],
    ] as const) {
      const { laid } = pagesOf(20, { ...NONE, bench: true, size }, inches ? 'in' : 'cm')[0]!
      const { sheet } = laid
      const right = sheet.width - sheet.inset
      const foot = sheet.height - sheet.inset
      const ticks = laid.items.flatMap((i) =>
        i.kind === 'line' && i.from[0] === right && i.to[0] === right - 34 ? [foot - i.from[1]] : [],
      )
      expect(ticks).toHaveLength(reach + 1)
      const mm = (px: number): number => (px / sheet.width) * sheet.paper_mm![0]
      for (const [i, px] of [...ticks].sort((a, b) => a - b).entries()) expect(mm(px)).toBeCloseTo(i * step_mm, 9)
      expect(textsOf(laid).join(' ')).toContain(`up to ${reach} ${inches ? 'in' : 'cm'}`)
    }
  })

  it('the cut sheet gives every piece of every design once, to its length with the allowance', () => {
    const event = worked(60)
    const pages = pagesOf(60, { ...NONE, cutting: true }).map((p) => textsOf(p.laid))
    for (const line of event.order.lines) {
      const all = benchRows(cutPlan(line.places, line.given), line.places, (mm) => mm.toFixed(0))
      for (const { stems, pieces } of all) {
        expect(pages.flat()).toContain(String(stems))
        for (const { length_mm } of pieces)
          expect(pages.flat().some((t) => t.includes((length_mm / 10).toFixed(1)))).toBe(true)
      }
    }
    expect(pages.flat().join(' ')).toMatch(/2\.0 cm longer than the bench sheet says/)
  })

  it('the cut sheet says which pieces no stem is long enough for', () => {
    const event = worked(5)
    const [line] = event.order.lines
    const short = { ...event.event, stems: { [line!.plant]: { stem_mm: 60 } } }
    const cut = workOut(short, event.designs, { currency: 'EUR', perBunch: {} })
    const pages = eventPages(
      cut,
      { ...ALL, ...NONE, cutting: true },
      { units: 'cm', generalName: () => 'pink' },
      measure,
    )
    const said = pages.flatMap((p) => textsOf(p.laid)).join(' ')
    expect(said).toMatch(/Too long for any such stem \(3\.5 cm\): \d+ pieces?\. Ask for longer ones/)
  })

  it('the cut sheet says which stems are spare and stay uncut', () => {
    const { order } = worked(20)
    const said = pagesOf(20, { ...NONE, cutting: true }).flatMap((p) => textsOf(p.laid))
    for (const { pieces, stems, spareStems } of order.lines)
      expect(said).toContain(`${pieces} pieces from ${stems} stems; ${spareStems} spare: uncut`)
  })

  it('what nothing holds is cut level once it is bound', () => {
    const level = 'Where it is bound in the hand: leave the stems longer, bind, then cut all level.'
    const heldBy = (mechanics: 'none' | 'netting'): string[] => {
      const { event, designs } = worked(8)
      const made = designs.map((d) => {
        const document = { ...d.document, vessel: { ...d.document.vessel, mechanics } }
        return { ...d, document, resolved: resolveArrangement(document) }
      })
      const all = workOut(event, made, { currency: 'EUR', perBunch: {} })
      const words = { units: 'cm' as const, generalName: () => 'pink' }
      return eventPages(all, { ...ALL, ...NONE, bench: true }, words, measure).flatMap((p) => textsOf(p.laid))
    }
    expect(heldBy('none')).toContain(level)
    expect(heldBy('netting')).not.toContain(level)
  })

  it('take care names every plant of the event, what is said of it and by whom, and what nobody has checked', () => {
    const event = worked(20)
    const said = pagesOf(20, { ...NONE, care: true })
      .flatMap(({ laid }) => textsOf(laid))
      .join(' ')
    for (const { plant } of event.order.lines)
      for (const caution of cautionsOf(plant)) {
        expect(said).toContain(findPlant(plant)!.botanical)
        expect(said).toContain(caution.text.split(' ').slice(0, 5).join(' '))
        expect(said).toContain(`Source: ${caution.source.split(' ')[0]}`)
      }
    expect(said).toMatch(/venue’s and the local rules come before/)
    expect(said).toMatch(/does not mean harmless/)
  })

  it('a bench sheet shows every stem once, with its number and its length, and where it goes', () => {
    for (const count of [1, 39, 60, 120]) {
      const bench = pagesOf(count, { ...NONE, bench: true })
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

  it('no words lie over others, whatever the names', () => {
    const long = 'Wedding of Ana Maria and Rui, Quinta do Rio, in the barn if it rains and in the garden if it does not'
    const document = documentOf({ title: long, stems: stems(26, 20, 300, 300, 200) })
    const part = { design: 'd', copies: 120, place: 'guest tables in the barn, and two beside the door' }
    const designs = [{ ...part, title: long, document, resolved: resolveArrangement(document) }]
    const event = {
      ...newEvent('America/Argentina/ComodRivadavia'),
      title: long,
      date: '2027-06-12T15:00',
      parts: [part],
    }
    const busy = workOut(event, designs, { currency: 'EUR', perBunch: {} })
    for (const size of ['a4', 'letter'] as const)
      for (const { laid, label } of eventPages(
        busy,
        { ...ALL, size },
        { units: 'in', generalName: () => 'moderate reddish orange' },
        measure,
      )) {
        const said = laid.items.filter((i) => i.kind === 'text' && !/^\d+$/.test(i.text))
        expect({ label, over: overlaps(said) }).toEqual({ label, over: [] })
      }
  })

  it('no plant’s name is cut, even under one stem of many', () => {
    const [one] = stems(1, 1, 300, 300, 200)
    const each = PLANTS.map(({ id }, i) => ({ ...one!, id: `s${i}`, plant: id }))
    const document = documentOf({ stems: each })
    const part = { design: 'd', copies: 1, place: '' }
    const designs = [{ ...part, title: 'Bowl', document, resolved: resolveArrangement(document) }]
    const all = workOut({ ...newEvent('Europe/Lisbon'), parts: [part] }, designs, { currency: 'EUR', perBunch: {} })
    const pages = eventPages(all, { ...ALL, ...NONE, bench: true }, { units: 'cm', generalName: () => 'pink' }, measure)
    const said = pages.flatMap(({ laid }) => textsOf(laid))
    expect(said.filter((t) => t.endsWith('…'))).toEqual([])
    expect(said.filter((t) => t === 'chrysanthe-').length).toBeGreaterThan(0)
  })

  it('what to buy says the whole order, and that example prices are invented', () => {
    const page = pagesOf(20, { ...NONE, order: true })
    const texts = page.flatMap(({ laid }) => textsOf(laid))
    const { order } = worked(20)
    for (const line of order.lines) expect(texts).toContain(String(line.stems))
    expect(texts.some((t) => /invented/.test(t))).toBe(true)
    expect(
      pagesOf(20, { ...NONE, order: true, withCost: false })
        .flatMap(({ laid }) => textsOf(laid))
        .join(),
    ).not.toMatch(/€/)
  })

  it('day by day has every task, its hour, and whose rules come first', () => {
    const texts = pagesOf(20, { ...NONE, days: true }).flatMap(({ laid }) => textsOf(laid))
    for (const { title } of worked(20).plan.tasks) expect(texts.some((t) => t.startsWith(title))).toBe(true)
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
