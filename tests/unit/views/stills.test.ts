import { describe, expect, it } from 'vitest'
import type { PaintOptions } from '../../../src/drawing/index.ts'
import type { Painter } from '../../../src/state/index.ts'
import { layOut } from '../../../src/ui/views/layout.ts'
import { createStills } from '../../../src/ui/views/stills.ts'
import { bowl, stem } from './fixture.ts'

const layout = layOut(578, 866, 1, { top_mm: 200, reach_mm: 220 }, { height: 92 })
const many = bowl(...Array.from({ length: 20 }, (_, i) => stem(`s${i}`)))
const levelOf = ({ sketch, quality }: PaintOptions): string => (sketch ? 'sketch' : quality)

/** A painter that is never done, and what was asked of it for the elevation. */
const slowPainter = () => {
  const asked: string[] = []
  const paint: Painter['paint'] = (lane, document, _angle, _frame, options) => {
    if (lane === 'elevation') asked.push(`${levelOf(options)} of ${document.stems.length}`)
    return new Promise(() => {})
  }
  return { asked, painter: { paint } as Painter }
}
const want = { turn: 0, layout, without: [] }

describe('pictures of the views', () => {
  it('a design that is opened while the empty vessel is still being drawn is blocked in at once', () => {
    const { asked, painter } = slowPainter()
    const stills = createStills(
      painter,
      () => {},
      () => {},
    )
    stills.want({ ...want, document: bowl() })
    stills.want({ ...want, document: many })
    expect(asked).toEqual(['draft of 0', 'sketch of 20'])
    stills.stop()
  })

  it('a sketch that is on its way is not begun anew when the design changes again', () => {
    const { asked, painter } = slowPainter()
    const stills = createStills(
      painter,
      () => {},
      () => {},
    )
    stills.want({ ...want, document: many })
    stills.want({ ...want, document: bowl(...many.stems, stem('one more')) })
    expect(asked).toEqual(['sketch of 20'])
    stills.stop()
  })
})
