import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Point3 } from '../../../src/arrangement/index.ts'
import { preparedParts } from '../../../src/geometry/parts.ts'
import { createLayer, EMPTY_DEPTH, type Grid, ownerCode, splatParts } from '../../../src/geometry/raster.ts'
import { projectPoint, unprojectElevation, unprojectPlan, viewAxes } from '../../../src/geometry/view.ts'

const grid: Grid = { width: 48, height: 48, mm: 2, zeroRow: 12 }
/** Spread evenly (a plain fc.double favours numbers next to nothing, and so flat solids). */
const n = (from: number, to: number) => fc.integer({ min: 0, max: 9999 }).map((k) => from + ((to - from) * k) / 9999)
const vector = (s: number) => fc.tuple(n(-s, s), n(-s, s), n(-s, s))

/** Casts a ray through a pixel: nearest and farthest distance toward the eye, by solving the quadric itself. */
const cast = (
  c: Point3,
  m: Point3[],
  axes: ReturnType<typeof viewAxes>,
  X: number,
  U: number,
): [number, number] | null => {
  // Solve |M⁻¹(p − c)| = 1 for p = X·right + U·up + t·toward.
  const [a, b, d] = m as [Point3, Point3, Point3]
  const cross = (p: Point3, q: Point3): Point3 => [
    p[1] * q[2] - p[2] * q[1],
    p[2] * q[0] - p[0] * q[2],
    p[0] * q[1] - p[1] * q[0],
  ]
  const dot = (p: Point3, q: Point3): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2]
  const det = dot(a, cross(b, d))
  if (Math.abs(det) < 1) return null
  const rows = [cross(b, d), cross(d, a), cross(a, b)]
  const inverse = (v: Point3): Point3 => rows.map((r) => dot(r, v) / det) as Point3
  const o = inverse([0, 1, 2].map((k) => X * axes.right[k]! + U * axes.up[k]! - c[k]!) as Point3)
  const g = inverse(axes.toward)
  const [A, B, C] = [dot(g, g), 2 * dot(o, g), dot(o, o) - 1]
  const disc = B * B - 4 * A * C
  if (disc < 0) return null
  return [(-B + Math.sqrt(disc)) / (2 * A), (-B - Math.sqrt(disc)) / (2 * A)]
}

describe('painting light solids', () => {
  it('an ellipsoid covers the pixels, at the depths, that a ray through each pixel finds', () => {
    fc.assert(
      fc.property(vector(20), vector(18), vector(18), vector(18), n(0, 360), n(0, 90), (c, p, q, r, turn, pitch) => {
        // A solid with no thickness has no inside for a ray to meet.
        const volume = Math.abs(
          p[0] * (q[1] * r[2] - q[2] * r[1]) - p[1] * (q[0] * r[2] - q[2] * r[0]) + p[2] * (q[0] * r[1] - q[1] * r[0]),
        )
        fc.pre(volume > 50)
        const axes = viewAxes({ turn, pitch })
        const layer = createLayer(48 * 48, true, true)
        const at: Point3 = [c[0], c[1], c[2] + 20]
        const parts = preparedParts(Float32Array.from([0, 0, ...at, ...p, ...q, ...r]), [0, 0, 0])
        splatParts(layer, grid, axes, parts, 3)
        let [differ, wrong] = [0, 0]
        for (let i = 0; i < 48 * 48; i++) {
          const hit = cast(at, [p, q, r], axes, ((i % 48) + 0.5 - 24) * 2, (Math.floor(i / 48) + 0.5 - 12) * 2)
          if ((hit !== null) !== (layer.owner[i] !== 0)) differ += 1
          else if (!hit) wrong += Number(layer.depth[i] !== Math.fround(EMPTY_DEPTH))
          else {
            if (layer.owner[i] !== ownerCode(3, 0) || layer.mass![i] !== 1) wrong += 1
            // At the very edge both surfaces meet and rounding is coarse.
            if (hit[0] - hit[1] < 1) continue
            if (Math.abs(layer.depth[i]! - hit[0]) > 0.05 || Math.abs(layer.back!.depth[i]! + hit[1]) > 0.05) wrong += 1
          }
        }
        expect(wrong).toBe(0)
        // Thin slivers and edge pixels may fall either way by rounding.
        expect(differ).toBeLessThan(4)
      }),
      { numRuns: 60 },
    )
  })
  it('a capsule covers the pixels nearer to its line than its radius, and does not count as mass', () => {
    fc.assert(
      fc.property(vector(30), vector(30), n(1, 6), n(0, 360), (a, b, radius, turn) => {
        const axes = viewAxes({ turn, pitch: 0 })
        const layer = createLayer(48 * 48, false, true)
        splatParts(
          layer,
          grid,
          axes,
          preparedParts(Float32Array.from([1, 2, ...a, ...b, radius, 0, 0, 0, 0, 0]), [0, 0, 20]),
          0,
        )
        const [p, q] = [a, b].map((v) => projectPoint([v[0], v[1], v[2] + 20], { turn, pitch: 0 })) as [Point3, Point3]
        const [vx, vu] = [q[0] - p[0], q[1] - p[1]]
        let wrong = 0
        for (let i = 0; i < 48 * 48; i++) {
          const [x, u] = [((i % 48) + 0.5 - 24) * 2 - p[0], (Math.floor(i / 48) + 0.5 - 12) * 2 - p[1]]
          const t = Math.min(1, Math.max(0, (x * vx + u * vu) / (vx * vx + vu * vu || 1)))
          const d = Math.hypot(x - t * vx, u - t * vu)
          if (Math.abs(d - radius) > 1e-3 && (layer.owner[i] !== 0) !== d < radius) wrong += 1
        }
        expect(wrong).toBe(0)
        expect(layer.mass!.some((m) => m !== 0)).toBe(false)
      }),
      { numRuns: 60 },
    )
  })
  it('the order of painting makes no difference', () => {
    const ball = (x: number, y: number): Float64Array =>
      preparedParts(Float32Array.from([0, 0, x, y, 20, 12, 0, 0, 0, 12, 0, 0, 0, 12]), [0, 0, 0])
    const all = [ball(0, 0), ball(8, 5), ball(-6, 3), ball(0, 0)]
    const axes = viewAxes({ turn: 30, pitch: 0 })
    const [one, two] = [createLayer(48 * 48, true, true), createLayer(48 * 48, true, true)]
    for (const i of [0, 1, 2, 3]) splatParts(one, grid, axes, all[i]!, i)
    for (const i of [3, 1, 0, 2]) splatParts(two, grid, axes, all[i]!, i)
    expect(two.owner.every((o, i) => o === one.owner[i])).toBe(true)
    expect(two.back!.owner.every((o, i) => o === one.back!.owner[i])).toBe(true)
    expect(two.depth.every((d, i) => d === one.depth[i])).toBe(true)
  })
})

describe('views', () => {
  it('a point moved in the elevation keeps its distance from the eye and lands where it was put', () => {
    fc.assert(
      fc.property(vector(300), n(0, 360), n(-200, 200), n(-200, 200), (p, turn, X, z) => {
        const moved = projectPoint(unprojectElevation(p, turn, [X, z]), { turn, pitch: 0 })
        expect(moved[0]).toBeCloseTo(X, 6)
        expect(moved[1]).toBeCloseTo(z, 6)
        expect(moved[2]).toBeCloseTo(projectPoint(p, { turn, pitch: 0 })[2], 6)
        const above = unprojectPlan(p, turn, [X, z])
        expect(above[2]).toBe(p[2])
        expect(projectPoint(above, { turn, pitch: 90 })[0]).toBeCloseTo(X, 6)
        expect(projectPoint(above, { turn, pitch: 90 })[1]).toBeCloseTo(z, 6)
      }),
    )
  })
  it('the front edge is at the bottom of the plan, and what is in front is nearer the eye', () => {
    expect(projectPoint([0, -50, 10], { turn: 0, pitch: 90 })).toEqual([0, -50, 10])
    expect(projectPoint([0, -50, 10], { turn: 0, pitch: 0 })).toEqual([0, 10, 50])
  })
})
