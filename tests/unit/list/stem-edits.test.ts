import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyEdit, type Stem } from '../../../src/arrangement/index.ts'
import { resolveArrangement } from '../../../src/geometry/index.ts'
import { crossEdit, headEdit, lengthEdit, partEdit, shared, shiftEdit } from '../../../src/ui/list/stem-edits.ts'
import { toUnit } from '../../../src/units/index.ts'
import { bowl, stem } from '../views/fixture.ts'

/** Three stems whose means are no whole numbers of any unit. */
const document = bowl(
  stem('a', { tip: [10, -20, 101], mouth: [3, 1], openness: 0.4, bend: 0.1 }),
  stem('b', { tip: [-35, 7, 84], mouth: [-4, 6], openness: 0.8, bend: -0.05 }),
  stem('c', { tip: [61, 40, 133.3], mouth: [9, -2], openness: 1, bend: 0 }),
)
const { stems } = resolveArrangement(document)
const done = (edit: Parameters<typeof applyEdit>[1]): Stem[] => applyEdit(document, edit).stems

describe('number fields of several stems', () => {
  it('one step of half a centimetre lifts each of three heads by just 5 mm, whatever their mean is', () => {
    const shown = Number(
      toUnit(
        shared(stems, (s) => s.stem.tip[2]),
        'cm',
      ).toFixed(1),
    )
    const now = done(shiftEdit(stems, 2, { value: shown + 0.5, by: 0.5 }, 'cm'))
    for (const [i, s] of now.entries()) expect(s.tip[2]).toBeCloseTo(document.stems[i]!.tip[2] + 5, 9)
  })

  it('what is typed is where the mean then is', () => {
    const now = done(shiftEdit(stems, 0, { value: 2 }, 'in'))
    expect(now.reduce((sum, s) => sum + s.tip[0], 0) / 3).toBeCloseTo(50.8, 9)
    expect(now[0]!.tip[0] - now[1]!.tip[0]).toBeCloseTo(45, 9)
  })

  it('ten steps on and ten back leave every head where it was', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(0, 1, 2) as fc.Arbitrary<0 | 1 | 2>,
        fc.constantFrom(['mm', 5] as const, ['cm', 0.5] as const, ['in', 0.25] as const),
        (axis, [units, step]) => {
          let d = document
          for (const by of [...Array(10).fill(step), ...Array(10).fill(-step)])
            d = applyEdit(d, shiftEdit(resolveArrangement(d).stems, axis, { value: 0, by }, units))
          for (const [i, s] of d.stems.entries()) expect(s.tip[axis]).toBeCloseTo(document.stems[i]!.tip[axis], 6)
        },
      ),
    )
  })

  it('crossings step by as much as the step says', () => {
    const now = done(crossEdit(stems, 0, { value: 0, by: 0.5 }, 'cm'))
    for (const [i, s] of now.entries())
      expect(s.mouth).toEqual([document.stems[i]!.mouth[0] + 5, document.stems[i]!.mouth[1]])
  })

  it('a step opens, bows, sizes and lengthens each from what it is, inside the limits', () => {
    expect(done(partEdit(stems, 'openness', { value: 0, by: 5 })).map((s) => s.openness)).toEqual([0.45, 0.85, 1])
    expect(done(partEdit(stems, 'bend', { value: 0, by: -2 })).map((s) => s.bend)).toEqual([0.08, -0.07, -0.02])
    const heads = done(headEdit(stems, { value: 0, by: 5 }, 'mm')).map((s) => s.head)
    for (const [i, head] of heads.entries()) expect(head).toBeCloseTo(stems[i]!.head_mm + 5, 9)
    const longer = applyEdit(document, lengthEdit(stems, { value: 0, by: 10 }, 'mm'))
    for (const [i, s] of longer.stems.entries()) {
      const far = (x: Stem) => Math.hypot(x.tip[0] - x.mouth[0], x.tip[1] - x.mouth[1], x.tip[2])
      expect(far(s)).toBeGreaterThan(far(document.stems[i]!) + 5)
    }
  })

  it('what is typed for openness, bow and head is the same for all', () => {
    expect(done(partEdit(stems, 'openness', { value: 60 })).map((s) => s.openness)).toEqual([0.6, 0.6, 0.6])
    expect(done(headEdit(stems, { value: 4 }, 'cm')).map((s) => s.head)).toEqual([40, 40, 40])
  })
})
