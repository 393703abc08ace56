import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Arrangement, applyEdit, type Stem } from '../../../src/arrangement/index.ts'
import { innerSection, projectPoint, reachIn } from '../../../src/geometry/index.ts'
import { editOf, insideMouth, type Move } from '../../../src/ui/views/drag.ts'
import { angleOf } from '../../../src/ui/views/layout.ts'
import { bowl, stem } from './fixture.ts'

const done = (document: Arrangement, move: Move, turn: number, right: number, up: number, whole = false): Stem => {
  const edit = editOf(document, move, turn, right, up, whole)
  if (!edit) throw new Error('no edit')
  return applyEdit(document, edit).stems[0] as Stem
}
const move = (kind: 'tip' | 'mouth' | 'bend', view: 'elevation' | 'plan'): Move =>
  kind === 'tip' ? { kind: 'body', view, ids: ['a'] } : { kind, view, id: 'a' }

describe('what a drag does', () => {
  const document = bowl(stem('a', { tip: [30, -20, 110], mouth: [5, 5] }), stem('b', { tip: [-60, 0, 80] }))

  it('a head dragged in the elevation goes across and up, and stays as far away', () => {
    expect(done(document, move('tip', 'elevation'), 0, 12, 34).tip).toEqual([42, -20, 144])
  })

  it('a head dragged in the plan goes across and away, and stays as high', () => {
    expect(done(document, move('tip', 'plan'), 0, 12, -7).tip).toEqual([42, -27, 110])
  })

  it('at any turn the head follows the hand in the view, and keeps its third measure', () => {
    const mm = fc.integer({ min: -80, max: 80 })
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 359 }),
        mm,
        mm,
        fc.constantFrom('elevation' as const, 'plan' as const),
        (turn, right, up, view) => {
          const before = projectPoint([30, -20, 110], angleOf(view, turn))
          const after = projectPoint(done(document, move('tip', view), turn, right, up).tip, angleOf(view, turn))
          expect(after[0] - before[0]).toBeCloseTo(right, 0)
          expect(after[1] - before[1]).toBeCloseTo(up, 0)
          expect(Math.abs(after[2] - before[2])).toBeLessThan(0.2)
        },
      ),
    )
  })

  it('a head is not dragged through the table', () => {
    expect(done(document, move('tip', 'elevation'), 0, 0, -900).tip[2]).toBeCloseTo(-84)
  })

  it('the crossing stays inside the mouth, whatever its shape', () => {
    const far = fc.double({ min: -500, max: 500, noNaN: true })
    for (const plan of ['round', 'oval', 'rectangular'] as const)
      fc.assert(
        fc.property(far, far, (x, y) => {
          const vessel = { ...document.vessel, plan, depth: 90 }
          const p = insideMouth(vessel, [x, y])
          expect(reachIn(vessel, innerSection(vessel, 1), p[0], p[1])).toBeLessThan(1)
        }),
      )
  })

  it('a crossing dragged in the elevation goes across only', () => {
    expect(done(document, move('mouth', 'elevation'), 0, 10, 50).mouth).toEqual([15, 5])
  })

  it('the lozenge bows the stem toward the hand, and back', () => {
    // Seen from the side of its lean the stem bows left and right.
    const leaning = bowl(stem('a', { tip: [0, -80, 120], mouth: [0, 0] }))
    const bowed = done(leaning, move('bend', 'elevation'), 0, 20, 0)
    expect(bowed.bend).not.toBe(0)
    const back = done(
      applyEdit(leaning, { do: 'set-stems', ids: ['a'], set: { bend: bowed.bend } }),
      move('bend', 'elevation'),
      0,
      -20,
      0,
    )
    expect(Math.abs(back.bend)).toBeLessThan(0.02)
  })

  it('a bow that points at the eye is left alone', () => {
    const leaning = bowl(stem('a', { tip: [80, 0, 120], mouth: [0, 0] }))
    expect(done(leaning, move('bend', 'elevation'), 0, 20, 0).bend).toBe(0)
  })

  it('several stems go together, with their crossings when asked', () => {
    const body: Move = { kind: 'body', view: 'plan', ids: ['a', 'b'] }
    const edit = editOf(document, body, 0, 10, 0, true)
    const { stems } = applyEdit(document, edit as NonNullable<typeof edit>)
    expect(stems.map((s) => s.tip[0])).toEqual([40, -50])
    expect(stems.map((s) => s.mouth[0])).toEqual([15, 10])
  })

  it('a drag that comes back to where it began leaves the very same document', () => {
    const edit = editOf(document, { kind: 'body', view: 'elevation', ids: ['a'] }, 37, 0, 0, false)
    expect(applyEdit(document, edit as NonNullable<typeof edit>)).toBe(document)
  })

  it('a stem that is gone is not dragged', () => {
    expect(editOf(bowl(), move('tip', 'plan'), 0, 5, 5, false)).toBeNull()
  })
})
