import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  applyEdit,
  newArrangement,
  type ProfilePoint,
  readArrangement,
  writeArrangement,
} from '../../../src/arrangement/index.ts'
import {
  addHandle,
  dropHandle,
  frameOf,
  handlesOf,
  type Marks,
  measuredVessel,
  moveHandle,
  placeIn,
  pointAt,
} from '../../../src/geometry/index.ts'

const MARKS: Marks = { left: [100, 50], right: [300, 50], foot: [200, 170] }
const FRAME = frameOf(MARKS)!
const BOWL: ProfilePoint[] = [
  [0, 0.5],
  [0.5, 0.9],
  [1, 1],
]
const ROUND = { plan: 'round', depth: 77 } as const

describe('from an outline to a vessel', () => {
  it('who knows that the mouth is 15 cm across has the height by the photo', () => {
    const { width, depth, height, profile } = measuredVessel(FRAME, BOWL, { of: 'width', mm: 150 }, ROUND)
    expect([width, depth, height]).toEqual([150, 150, 90])
    expect(profile).toEqual(BOWL)
  })

  it('who knows the height has the width; of an oval vessel the depth is the person’s to say', () => {
    const vessel = measuredVessel(FRAME, BOWL, { of: 'height', mm: 60 }, { plan: 'oval', depth: 77 })
    expect([vessel.width, vessel.depth, vessel.height]).toEqual([100, 77, 60])
  })

  it('the base line may be tilted: width and height are taken square to the axis', () => {
    const a = (2 * Math.PI) / 180
    const turned = ([x, y]: readonly [number, number]): [number, number] => [
      x * Math.cos(a) - y * Math.sin(a),
      x * Math.sin(a) + y * Math.cos(a),
    ]
    const frame = frameOf({ left: turned(MARKS.left), right: turned(MARKS.right), foot: turned(MARKS.foot) })!
    expect(frame.half).toBeCloseTo(100, 9)
    expect(frame.height).toBeCloseTo(120, 9)
    expect(frame.tilt_deg).toBeCloseTo(2, 9)
  })

  it('marks on top of one another, or left and right changed, measure nothing', () => {
    expect(frameOf({ ...MARKS, foot: [200, 52] })).toBeNull()
    expect(frameOf({ ...MARKS, left: MARKS.right, right: MARKS.left })).toBeNull()
    expect(frameOf({ ...MARKS, left: [199, 50], right: [201, 50] })).toBeNull()
  })

  it('a place on the photo and its height and distance from the axis are one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 2, noNaN: true }),
        fc.double({ min: -90, max: 90, noNaN: true }),
        (h, d) => {
          const { at, aside } = placeIn(FRAME, pointAt(FRAME, h, d))
          expect(at).toBeCloseTo(h, 9)
          expect(aside).toBeCloseTo(d, 9)
        },
      ),
    )
  })

  it('both sides count alike: the handles hold their mean, few where it is straight', () => {
    const heights = Array.from({ length: 50 }, (_, i) => (i + 0.5) / 50)
    const left = heights.map(() => 90)
    const right = heights.map(() => 110)
    expect(handlesOf({ heights, left, right, clear: 1, lowest: 0 }, FRAME)).toEqual([
      [0, 1],
      [1, 1],
    ])
  })

  it('a handle stays between its neighbours; base and rim stay where they are, the rim at the mouth’s width', () => {
    expect(moveHandle(BOWL, 1, { at: 2 })[1]![0]).toBeCloseTo(0.99)
    expect(moveHandle(BOWL, 1, { at: -1, half: 99 })[1]).toEqual([0.01, 5])
    expect(moveHandle(BOWL, 0, { at: 0.3, half: 0.7 })[0]).toEqual([0, 0.7])
    expect(moveHandle(BOWL, 1, { at: Number.NaN, half: Number.NaN })).toEqual(BOWL)
    expect(moveHandle(BOWL, 2, { at: 0.7, half: 0.5 })).toEqual(BOWL)
    expect(dropHandle(BOWL, 0)).toEqual(BOWL)
    expect(dropHandle(BOWL, 1)).toHaveLength(2)
    expect(addHandle(BOWL, 0)).toHaveLength(4)
    expect(addHandle(BOWL, 2)).toEqual(BOWL)
  })

  it('what comes of it always passes the document’s limits, and its wall fits', () => {
    const document = newArrangement()
    const pixel = fc.double({ min: 0, max: 900, noNaN: true })
    const point = fc.tuple(pixel, pixel)
    const half = fc.double({ min: 1, max: 2000, noNaN: true })
    fc.assert(
      fc.property(
        fc.record({ left: point, right: point, foot: point }),
        fc.array(fc.tuple(half, half), { minLength: 24, maxLength: 60 }),
        fc.record({ of: fc.constantFrom('width' as const, 'height' as const), mm: fc.integer({ min: 10, max: 2000 }) }),
        fc.array(fc.tuple(fc.nat(12), fc.double({ min: -1, max: 2 }), fc.double({ min: -1, max: 9 }), fc.nat(2))),
        (marks, sides, known, edits) => {
          const frame = frameOf(marks)
          fc.pre(frame !== null)
          const heights = sides.map((_, i) => (i + 0.5) / sides.length)
          const outline = { heights, left: sides.map((s) => s[0]), right: sides.map((s) => s[1]), clear: 1, lowest: 0 }
          let handles = handlesOf(outline, frame)
          for (const [i, at, w, what] of edits)
            handles = [
              () => moveHandle(handles, i, { at, half: w }),
              () => addHandle(handles, i),
              () => dropHandle(handles, i),
            ][what]!()
          const set = measuredVessel(frame, handles, known, ROUND)
          const after = applyEdit(document, { do: 'set-vessel', set })
          expect(after.vessel.profile ?? null).toEqual(set.profile)
          expect(readArrangement(writeArrangement(after), { plants: new Set() })).toMatchObject({ kind: 'ok' })
        },
      ),
    )
  })
})
