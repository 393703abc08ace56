import type { Point3 } from '../arrangement/index.ts'
import type { Mesh } from '../geometry/index.ts'

/** A mesh of a vessel that is being put together. */
export interface Growing {
  positions: number[]
  normals: number[]
  uvs: number[]
  triangles: number[]
  parts: number[]
  tissues: number[]
  part: number
}

export const growing = (): Growing => ({
  positions: [],
  normals: [],
  uvs: [],
  triangles: [],
  parts: [],
  tissues: [],
  part: 0,
})

/** A surface over u and v (0 … 1) of `rows` × `columns` cells; u goes into the mesh as its u. One part, one material. */
export const addGrid = (
  g: Growing,
  rows: number,
  columns: number,
  material: number,
  at: (u: number, v: number) => Point3,
): void => {
  const first = g.positions.length / 3
  const wide = columns + 1
  g.part += 1
  const points: Point3[] = []
  for (let i = 0; i <= rows; i++) for (let j = 0; j <= columns; j++) points.push(at(i / rows, j / columns))
  for (let i = 0; i <= rows; i++)
    for (let j = 0; j <= columns; j++) {
      const a = points[Math.max(0, i - 1) * wide + j]!
      const b = points[Math.min(rows, i + 1) * wide + j]!
      // The first and last column of a closed surface are one place; the neighbour is found across the seam.
      const p = points[i * wide]!
      const q = points[i * wide + columns]!
      const closed = columns > 2 && Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]) < 1e-6
      const before = j > 0 ? j - 1 : closed ? columns - 1 : 0
      const after = j < columns ? j + 1 : closed ? 1 : columns
      const c = points[i * wide + before]!
      const d = points[i * wide + after]!
      const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]]
      const [vx, vy, vz] = [d[0] - c[0], d[1] - c[1], d[2] - c[2]]
      const n: Point3 = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx]
      const size = Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2])
      const here = points[i * wide + j]!
      g.positions.push(...here)
      if (size > 1e-9) g.normals.push(n[0] / size, n[1] / size, n[2] / size)
      else g.normals.push(0, 0, 1)
      g.uvs.push(i / rows, j / columns)
    }
  for (let i = 0; i < rows; i++)
    for (let j = 0; j < columns; j++) {
      const a = first + i * wide + j
      g.triangles.push(a, a + 1, a + wide, a + 1, a + wide + 1, a + wide)
      g.parts.push(g.part, g.part)
      g.tissues.push(material, material)
    }
}

/** A flat strip from p to q, half of it lying level and half upright, so that it shows from the side and from above. */
export const addWire = (g: Growing, p: Point3, q: Point3, width: number, material: number): void => {
  const [dx, dy] = [q[0] - p[0], q[1] - p[1]]
  const long = Math.hypot(dx, dy) || 1
  const [sx, sy] = [(-dy / long) * (width / 2), (dx / long) * (width / 2)]
  addGrid(g, 1, 1, material, (u, v) => {
    const w = 2 * v - 1
    return [p[0] + dx * u + sx * w, p[1] + dy * u + sy * w, p[2] + (q[2] - p[2]) * u]
  })
  addGrid(g, 1, 1, material, (u, v) => [p[0] + dx * u, p[1] + dy * u, p[2] + (q[2] - p[2]) * u + (v - 0.5) * width])
}

export const meshOf = (g: Growing): Mesh => ({
  positions: new Float32Array(g.positions),
  normals: new Float32Array(g.normals),
  uvs: new Float32Array(g.uvs),
  triangles: new Uint32Array(g.triangles),
  parts: new Uint16Array(g.parts),
  tissues: new Uint8Array(g.tissues),
})
