import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { LIMITS } from '../../../../src/arrangement/index.ts'
import { composedScene } from '../../../../src/drawing/room/composed.ts'
import {
  ellipsePoints,
  type Mark,
  type Place,
  roomBox,
  roomMarks,
  type Scene,
  SOLIDS,
  sceneOf,
} from '../../../../src/drawing/room/index.ts'
import { setWith } from './made.ts'

const STEP = { step_mm: 4 }
const pointsOf = (mark: Mark): Place[] => (mark.kind === 'ellipse' ? ellipsePoints(mark) : mark.points)
const rims = (marks: Mark[], radius: number) =>
  marks.filter((m) => m.kind === 'ellipse').filter((m) => Math.abs(m.half[0] - radius) < 1e-9)
const bounds = (points: readonly Place[]) => ({
  left: Math.min(...points.map(([x]) => x)),
  right: Math.max(...points.map(([x]) => x)),
  bottom: Math.min(...points.map(([, y]) => y)),
  top: Math.max(...points.map(([, y]) => y)),
})
/** The same with nothing but one thing on the table. */
const only = (scene: Scene, kind: Scene['things'][number]['kind']): Scene => ({
  ...scene,
  things: scene.things.filter((t) => t.kind === kind).slice(0, 1),
})

describe('the room as seen', () => {
  it('a plate is as wide as it is beside a 140 mm bowl', () => {
    const resolved = setWith({})
    for (const pitch of [0, 14, 90]) {
      const marks = roomMarks(resolved, sceneOf(resolved), { turn: 0, pitch }, STEP)
      const [plate] = rims(marks, 135)
      expect(plate).toBeDefined()
      const { left, right } = bounds(pointsOf(plate!))
      expect((right - left) / resolved.vessel.width).toBeCloseTo(270 / 140, 9)
    }
  })

  it('a level circle is an ellipse as deep as the sine of the pitch', () => {
    const resolved = setWith({})
    const scene = sceneOf(resolved)
    for (const pitch of [0, 14, 30, 45, 90])
      for (const mark of roomMarks(resolved, scene, { turn: 0, pitch }, STEP))
        if (mark.kind === 'ellipse')
          expect(mark.half[1] / mark.half[0]).toBeCloseTo(Math.sin((pitch * Math.PI) / 180), 9)
  })

  it('a wine glass seen level is 210 high and 80 wide; from 14° its sides still lie inside its ellipses', () => {
    const resolved = setWith({})
    const scene = only(sceneOf(resolved), 'wine-glass')
    const glass = (pitch: number) => {
      const bare = roomMarks(resolved, { ...scene, things: [] }, { turn: 0, pitch }, STEP).filter(
        (m) => m.kind !== 'line',
      )
      const own = roomMarks(resolved, scene, { turn: 0, pitch }, STEP).slice(bare.length)
      // Its sides have more points than hatching and folds, and fewer than the table's edge.
      return bounds(
        own.filter((m) => m.kind === 'ellipse' || (m.points.length > 20 && m.points.length < 150)).flatMap(pointsOf),
      )
    }
    const level = glass(0)
    expect(level.top - level.bottom).toBeCloseTo(210, 0)
    expect(Math.abs(level.right - level.left - 80)).toBeLessThan(0.6)
    const [c, s] = [Math.cos(14 * (Math.PI / 180)), Math.sin(14 * (Math.PI / 180))]
    const above = glass(14)
    expect(above.top - above.bottom).toBeCloseTo(210 * c + (33.5 + 35) * s, 0)
  })

  it('the side of a tumbler is straight, and steeper from above: the envelope of its circles, worked out for a cone', () => {
    const resolved = setWith({})
    const { profile } = SOLIDS['water-glass']
    const [[r0, h0], [r1, h1]] = [profile[1]!, profile[2]!]
    const k = (r1 - r0) / (h1 - h0)
    for (const pitch of [0, 10, 20]) {
      const marks = roomMarks(resolved, only(sceneOf(resolved), 'water-glass'), { turn: 0, pitch }, STEP)
      const theta = (pitch * Math.PI) / 180
      const sides = marks.filter((m) => m.kind === 'line' && m.points.length > 20 && m.points.length < 100)
      expect(sides).toHaveLength(2)
      const [mid] = sides.map((m) => pointsOf(m)[30]!)
      const next = pointsOf(sides[0]!)[40]!
      const slope = (next[0] - mid![0]) / (next[1] - mid![1])
      const sine = -k * Math.tan(theta)
      const expected = (k * Math.sqrt(1 - sine * sine)) / (Math.cos(theta) + k * sine * Math.sin(theta))
      expect(slope).toBeCloseTo(expected, 3)
    }
  })

  it('what lies nearer than the vessel is drawn over it, a flat plate seen from above is not', () => {
    const resolved = setWith({})
    const scene = sceneOf(resolved)
    const near = (kind: 'dinner-plate' | 'wine-glass', pitch: number) => {
      const thing = scene.things.filter((t) => t.kind === kind).sort((a, b) => a.at[1] - b.at[1])[0]!
      const marks = roomMarks(resolved, { ...scene, things: [thing] }, { turn: 0, pitch }, STEP)
      return new Set(rims(marks, SOLIDS[kind].rings.at(-1)![0]).map((m) => m.layer))
    }
    expect(near('wine-glass', 0)).toEqual(new Set(['before']))
    expect(near('wine-glass', 14)).toEqual(new Set(['before']))
    expect(near('wine-glass', 90)).toEqual(new Set(['behind']))
    expect(near('dinner-plate', 0)).toEqual(new Set(['before']))
    expect(near('dinner-plate', 14)).toEqual(new Set(['behind']))
    // Beyond the vessel all is behind.
    const far = scene.things.filter((t) => t.at[1] > 0)
    const marks = roomMarks(resolved, { ...scene, things: far }, { turn: 0, pitch: 0 }, STEP)
    expect(marks.every((m) => m.layer === 'behind')).toBe(true)
  })

  it('a composed picture has nothing before the vessel nor its shadow, and no glass that its border cuts', () => {
    const resolved = setWith({})
    const scene = sceneOf(resolved)
    const all = roomMarks(resolved, scene, { turn: 0, pitch: 14 }, STEP)
    const open = roomMarks(
      resolved,
      scene,
      { turn: 0, pitch: 14 },
      {
        ...STEP,
        composed: { left: -300, right: 300, bottom: -250, top: 300 },
      },
    )
    expect(all.some((m) => m.layer === 'before')).toBe(true)
    for (const mark of open.filter((m) => m.layer === 'before')) {
      const { left, right } = bounds(pointsOf(mark))
      expect(Math.max(left, -right)).toBeGreaterThan(70)
    }
    expect(open.length).toBeLessThan(all.length)
    // Of the glasses nearest to the viewer, 372 mm before the middle, the foot lies 90 mm under the vessel's.
    const tight = { left: -300, right: 300, bottom: -78 - 60, top: 300 }
    const cut = roomMarks(resolved, scene, { turn: 0, pitch: 14 }, { ...STEP, composed: tight })
    const shown = cut.filter((m) => m.layer === 'before' && pointsOf(m).some(([x]) => Math.abs(x) < 300))
    expect(shown).toEqual([])
  })

  it('a composed picture has no glass across another, and by candlelight a candle is seen beside low flowers', () => {
    const resolved = setWith({ light: 'candle' })
    const scene = sceneOf(resolved)
    const pane = { left: -380, right: 380, bottom: -230, top: 420 }
    const { things } = composedScene(resolved, scene, { turn: 0, pitch: 14 }, pane)
    expect(things.some(({ kind }) => kind === 'candle')).toBe(true)
    expect(things.length).toBeLessThan(scene.things.length)
    const clear = things.filter(({ kind }) => SOLIDS[kind].clear)
    for (const [i, one] of clear.entries())
      for (const other of clear.slice(0, i)) {
        const across = SOLIDS[one.kind].radius + SOLIDS[other.kind].radius - Math.abs(one.at[0] - other.at[0])
        expect(across).toBeLessThan(2 * SOLIDS[one.kind].radius * 0.7)
      }
  })

  it('a round table turned by one seat looks the same', () => {
    const resolved = setWith({})
    const scene = sceneOf(resolved)
    const at = (turn: number) =>
      roomMarks(resolved, scene, { turn, pitch: 14 }, STEP)
        .filter((m) => m.kind === 'ellipse')
        .map((m) => [...m.centre, ...m.half].map((v) => Math.round(v * 100) / 100 + 0).join(' '))
        .sort()
    expect(at(360 / scene.seats)).toEqual(at(0))
    expect(at(360)).toEqual(at(0))
    expect(at(90)).not.toEqual(at(0))
  })

  it('a long table seen from behind is the same table', () => {
    const resolved = setWith({ table: { shape: 'rectangular', length: 1829, width: 762 } })
    const scene = sceneOf(resolved)
    for (const pitch of [0, 14, 90])
      expect(roomBox(scene, { turn: 180, pitch }, 80)).toEqual(roomBox(scene, { turn: 0, pitch }, 80))
    const side = roomBox(scene, { turn: 90, pitch: 0 }, 80)
    expect(side.right - side.left).toBeCloseTo(762, 9)
  })

  it('the table’s box holds the table, whichever way it is turned', () => {
    fc.assert(
      fc.property(fc.double({ min: -360, max: 360, noNaN: true }), fc.integer({ min: 0, max: 90 }), (turn, pitch) => {
        const resolved = setWith({ table: { shape: 'rectangular', length: 1829, width: 762 } })
        const scene = { ...sceneOf(resolved), things: [], copies: [] }
        const top = roomMarks(resolved, scene, { turn, pitch }, STEP).find(
          (m) => m.kind === 'line' && m.points.length === 5,
        )
        const [seen, box] = [bounds(pointsOf(top!)), roomBox(scene, { turn, pitch }, 80)]
        for (const k of ['left', 'right', 'bottom', 'top'] as const) expect(seen[k]).toBeCloseTo(box[k], 6)
      }),
      { numRuns: 30 },
    )
  })

  it('a copy is as large as the piece itself and stands where the row has it', () => {
    const resolved = setWith({ table: { shape: 'rectangular', length: 2438, width: 914 } })
    const scene = sceneOf(resolved)
    const [at] = scene.copies
    const marks = roomMarks(resolved, { ...scene, copies: [at!], things: [] }, { turn: 0, pitch: 0 }, STEP)
    const none = roomMarks(resolved, { ...scene, copies: [], things: [] }, { turn: 0, pitch: 0 }, STEP)
    const copy = marks.slice(none.length).flatMap(pointsOf)
    const { left, right, bottom } = bounds(copy)
    expect(bottom).toBeCloseTo(-resolved.vessel.height, 6)
    expect((left + right) / 2).toBeGreaterThan(at![0] - 40)
    expect((left + right) / 2).toBeLessThan(at![0] + 40)
    expect(right - left).toBeGreaterThan(115)
    expect(right - left).toBeLessThan(220)
  })

  it('nothing is drawn that is not a number, for any table at the limits and any view', () => {
    const sizes = [1, 600, LIMITS.mm]
    for (const length of sizes)
      for (const width of sizes)
        for (const pitch of [0, 14, 90]) {
          const resolved = setWith({ table: { shape: 'rectangular', length, width }, light: 'candle', copies: 10000 })
          const round = setWith({ table: { shape: 'round', diameter: width }, light: 'candle' }, [])
          for (const r of [resolved, round])
            for (const mark of roomMarks(r, sceneOf(r), { turn: 33, pitch }, { step_mm: 20 })) {
              expect(pointsOf(mark).flat().every(Number.isFinite)).toBe(true)
              expect(mark.kind === 'polygon' ? mark.fill : mark.colour).toMatch(/^#[0-9a-f]{6}$/)
            }
        }
  })
})
