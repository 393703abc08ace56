import { describe, expect, it } from 'vitest'
import { EMPTY_DEPTH, giveBack, rasterise } from '../../../src/drawing/raster.ts'
import { buildMesh, type Mesh, projectPoint, solidInput, type ViewAngle } from '../../../src/geometry/index.ts'
import { disc, resolvedOf } from './fixture.ts'

/** Slow and plain: is the centre of this subpixel inside any triangle? */
const silhouette = (mesh: Mesh, angle: ViewAngle, k: number): Set<string> => {
  const seen = new Set<string>()
  const point = (i: number): [number, number] => {
    const [x, y] = projectPoint([mesh.positions[3 * i]!, mesh.positions[3 * i + 1]!, mesh.positions[3 * i + 2]!], angle)
    return [x * k, -y * k]
  }
  for (let t = 0; t < mesh.triangles.length; t += 3) {
    const [a, b, c] = [point(mesh.triangles[t]!), point(mesh.triangles[t + 1]!), point(mesh.triangles[t + 2]!)]
    const side = (p: number[], q: number[], x: number, y: number) =>
      (q[0]! - p[0]!) * (y - p[1]!) - (q[1]! - p[1]!) * (x - p[0]!)
    for (let y = Math.floor(Math.min(a[1], b[1], c[1])); y <= Math.max(a[1], b[1], c[1]); y++)
      for (let x = Math.floor(Math.min(a[0], b[0], c[0])); x <= Math.max(a[0], b[0], c[0]); x++) {
        const s = [side(a, b, x + 0.5, y + 0.5), side(b, c, x + 0.5, y + 0.5), side(c, a, x + 0.5, y + 0.5)]
        if (s.every((v) => v > 0) || s.every((v) => v < 0)) seen.add(`${x} ${y}`)
      }
  }
  return seen
}

describe('from triangles to a depth buffer', () => {
  it('a rose covers what its triangles cover, within 2 %, from every side', () => {
    const [stem] = resolvedOf([{ id: 'a', mouth: [10, -5], tip: [40, -30, 90] }]).stems
    const mesh = buildMesh(solidInput(stem!))
    for (const angle of [
      { turn: 0, pitch: 0 },
      { turn: 75, pitch: 20 },
      { turn: 200, pitch: 90 },
    ]) {
      const want = silhouette(mesh, angle, 2)
      const got = rasterise(mesh, angle, 2, 2, 2)
      let covered = 0
      let wrong = 0
      for (let i = 0; i < got.triangle.length; i++) {
        if (got.triangle[i]! < 0) continue
        covered++
        const x = (i % got.width) + got.left
        const y = Math.floor(i / got.width) + got.top
        if (!want.has(`${x} ${y}`)) wrong++
      }
      expect(want.size).toBeGreaterThan(2000)
      expect(Math.abs(covered - want.size) / want.size).toBeLessThan(0.02)
      expect(wrong / want.size).toBeLessThan(0.02)
    }
  })

  it('a disc turned by 60° from the eye covers half of itself', () => {
    const count = (tilt: number) => {
      const r = rasterise(disc(30, tilt, [0, 0, 0], 96), { turn: 0, pitch: 0 }, 4, 1, 1)
      return r.triangle.filter((t) => t >= 0).length
    }
    expect(count(0)).toBeGreaterThan(0.99 * Math.PI * 900 * 16)
    expect(count(0)).toBeLessThan(1.01 * Math.PI * 900 * 16)
    expect(count(Math.PI / 3) / count(0)).toBeCloseTo(0.5, 1)
  })

  it('the depth of a level disc seen from above is its height everywhere', () => {
    const r = rasterise(disc(20, Math.PI / 2, [3, 4, 17]), { turn: 40, pitch: 90 }, 2, 1, 1)
    for (let i = 0; i < r.depth.length; i++)
      if (r.triangle[i]! >= 0) expect(r.depth[i]).toBeCloseTo(17, 3)
      else expect(r.depth[i]).toBe(EMPTY_DEPTH)
  })

  it('nothing is drawn of a mesh without triangles', () => {
    const empty = { ...disc(1, 0), triangles: new Uint32Array(0) }
    const r = rasterise(empty, { turn: 0, pitch: 0 }, 2, 1, 1)
    expect(r.triangle.every((t) => t === -1)).toBe(true)
  })

  it('in memory that another stem has used nothing of that one is left', () => {
    const level = { turn: 0, pitch: 0 }
    const small = disc(12, 0.4, [30, 2, -40])
    const fresh = rasterise(small, level, 3, 2, 2)
    const used = rasterise(disc(60, 0.2, [0, 0, 5], 96), level, 3, 2, 2)
    const { buffer } = used.depth
    giveBack(used)
    const again = rasterise(small, level, 3, 2, 2)
    expect(again.depth.buffer).toBe(buffer)
    expect(again).toEqual(fresh)
  })
})
