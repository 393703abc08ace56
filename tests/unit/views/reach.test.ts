import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { reachOf } from '../../../src/drawing/index.ts'
import { resolveArrangement } from '../../../src/geometry/index.ts'
import { readAll } from '../../../src/readings/index.ts'
import { factsOf } from '../../../src/ui/picture/facts.ts'
import { bowl, stem } from './fixture.ts'

const design = bowl(
  stem('a', { tip: [60, 20, 150] }),
  stem('b', { plant: 'delphinium', role: 'line', tip: [-20, -30, 320] }),
  stem('c', { plant: 'ruscus-italian', role: 'greens', tip: [-110, 40, 60] }),
)
const proportion = (of: typeof design) =>
  readAll(resolveArrangement(of), { advice: false }).find((r) => r.id === 'proportion')

describe('height and width on the sheet', () => {
  it('the height that is drawn is the height that is read', () => {
    expect(reachOf(resolveArrangement(design), 0)?.top).toBe(proportion(design)?.values.height_mm)
  })
  it('the width that is drawn from the widest side is the spread that is read, where nothing hangs below the rim', () => {
    const reading = proportion(design)
    const span = reading?.marks.find((m) => m.kind === 'span')
    if (span?.kind !== 'span' || span.view !== 'elevation') throw new Error('no span is marked')
    const reach = reachOf(resolveArrangement(design), span.turn)
    expect((reach?.right ?? 0) - (reach?.left ?? 0)).toBeCloseTo(reading?.values.spread_mm as number, 6)
  })
  it('the picture says the same', () => {
    const reach = reachOf(resolveArrangement(design), 0)
    const facts = factsOf(design, {
      units: 'mm',
      language: 'en',
      colourNames: new Map(),
      generalName: (hex) => hex,
      prices: { currency: 'EUR', perBunch: {} },
      withCost: false,
    })
    expect(facts.wide).toBe(`${Math.round((reach?.right ?? 0) - (reach?.left ?? 0))} mm`)
    expect(facts.high).toBe(`${Math.round((reach?.top ?? 0) + design.vessel.height)} mm`)
  })
  it('an empty vessel has none', () => {
    expect(reachOf(resolveArrangement(bowl()), 0)).toBeNull()
  })
  it('from opposite sides it is the same, mirrored, however it is turned', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 360, noNaN: true }), (turn) => {
        const resolved = resolveArrangement(design)
        const [a, b] = [reachOf(resolved, turn), reachOf(resolved, turn + 180)]
        expect(a?.left).toBeCloseTo(-(b?.right ?? 0), 6)
        expect(a?.top).toBeCloseTo(b?.top ?? 0, 6)
      }),
    )
  })
})
