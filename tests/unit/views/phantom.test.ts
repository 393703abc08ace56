import { describe, expect, it } from 'vitest'
import { resolveArrangement } from '../../../src/geometry/index.ts'
import { layOut, sizesOf } from '../../../src/ui/views/layout.ts'
import { outlinedOf, phantomOf, profileOutline } from '../../../src/ui/views/phantom.ts'
import { bowl, stem } from './fixture.ts'

const design = bowl(stem('a'), stem('b', { tip: [30, 0, 120] }))

describe('what advice would change', () => {
  it('a lower vessel is shown as its outline on the same table, and all in it stands lower', () => {
    const phantom = phantomOf(design, { do: 'set-vessel', set: { height: 40 } })
    expect(phantom.ids).toEqual(['a', 'b'])
    expect(phantom.raised).toBe(40 - 84)
    if (!phantom.vessel) throw new Error('no vessel is shown')
    const resolved = resolveArrangement(design)
    const layout = layOut(600, 900, 1, sizesOf(resolved.document), resolved.vessel)
    const outline = profileOutline(layout, 0, phantom.vessel, phantom.raised)
    const [ys, xs] = [outline.map(([, y]) => y), outline.map(([x]) => x)]
    expect(Math.max(...ys)).toBeCloseTo(layout.rimY + 84 * layout.scale, 6)
    expect(Math.min(...ys)).toBeCloseTo(layout.rimY + (84 - 40) * layout.scale, 6)
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(140 * layout.scale, 6)
  })
  it('a vessel of glass leaves what stands in it where it is', () => {
    const phantom = phantomOf(design, { do: 'set-vessel', set: { material: 'glass' } })
    expect(phantom.vessel?.material).toBe('glass')
    expect(phantom.raised).toBe(0)
    expect(phantom.ids).toEqual([])
  })
  it('of moved stems only those are drawn, and no vessel', () => {
    const phantom = phantomOf(design, { do: 'shift-stems', ids: ['b'], by: [5, 0, 0] })
    expect(phantom.ids).toEqual(['b'])
    expect(phantom.vessel).toBeNull()
  })
  it('of very many stems the outlines asked for are limited', () => {
    const many = bowl(...Array.from({ length: 200 }, (_, i) => stem(`s${i}`)))
    const ids = many.stems.map((s) => s.id)
    const phantom = phantomOf(many, { do: 'shift-stems', ids, by: [5, 0, 0] })
    expect(phantom.ids).toHaveLength(200)
    expect(outlinedOf(phantom).length).toBeLessThanOrEqual(60)
  })
})
