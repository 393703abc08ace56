import type { Point3 } from '../../arrangement/index.ts'
import { type Mesh, TISSUES, type Tissue } from '../types.ts'
import { cross, type Frame, frameIn, TAU, turned, unit } from './vector.ts'

/** A mesh that is being built: typed arrays with room to spare, and how much of them is used. */
export interface Builder {
  positions: Float32Array
  normals: Float32Array
  uvs: Float32Array
  triangles: Uint32Array
  parts: Uint16Array
  tissues: Uint8Array
  vertices: number
  faces: number
  part: number
  /** Steps across a surface, times this: 0.5 coarse … 1.5 fine. */
  detail: number
}

export const TISSUE_NUMBER = Object.fromEntries(TISSUES.map((tissue, i) => [tissue, i])) as Record<Tissue, number>

export const newBuilder = (detail = 1, room = 4096): Builder => ({
  positions: new Float32Array(3 * room),
  normals: new Float32Array(3 * room),
  uvs: new Float32Array(2 * room),
  triangles: new Uint32Array(6 * room),
  parts: new Uint16Array(2 * room),
  tissues: new Uint8Array(2 * room),
  vertices: 0,
  faces: 0,
  part: 0,
  detail,
})

const wider = <A extends Float32Array | Uint32Array | Uint16Array | Uint8Array>(old: A): A => {
  const next = new (old.constructor as new (n: number) => A)(2 * old.length)
  next.set(old)
  return next
}

/** Make sure that so many more vertices and faces fit. */
export const makeRoom = (b: Builder, vertices: number, faces: number): void => {
  while (3 * (b.vertices + vertices) > b.positions.length) {
    b.positions = wider(b.positions)
    b.normals = wider(b.normals)
    b.uvs = wider(b.uvs)
  }
  while (b.faces + faces > b.tissues.length) {
    b.triangles = wider(b.triangles)
    b.parts = wider(b.parts)
    b.tissues = wider(b.tissues)
  }
}

/** A new number for the next petal, leaf or floret; wraps before it leaves 16 bits. */
export const nextPart = (b: Builder): number => {
  b.part = (b.part % 65535) + 1
  return b.part
}

export const addVertex = (b: Builder, p: Point3, n: Point3, u: number, v: number): number => {
  const i = b.vertices++
  const k = 3 * i
  b.positions[k] = p[0]
  b.positions[k + 1] = p[1]
  b.positions[k + 2] = p[2]
  b.normals[k] = n[0]
  b.normals[k + 1] = n[1]
  b.normals[k + 2] = n[2]
  b.uvs[2 * i] = u
  b.uvs[2 * i + 1] = v
  return i
}

export const addFace = (b: Builder, i: number, j: number, k: number, part: number, tissue: Tissue): void => {
  const f = b.faces++
  b.triangles[3 * f] = i
  b.triangles[3 * f + 1] = j
  b.triangles[3 * f + 2] = k
  b.parts[f] = part
  b.tissues[f] = TISSUE_NUMBER[tissue]
}

const scratch = new Float64Array(3)
/** Writes a point of a surface into `out`; u and v run 0 … 1. */
export type Surface = (u: number, v: number, out: Float64Array) => void

/** Normals of a grid of points from its neighbours; where a row shrinks to a point the next row tells. */
const gridNormals = (b: Builder, first: number, nu: number, nv: number, closed: boolean): void => {
  const P = b.positions
  const N = b.normals
  const W = nv + 1
  for (let i = 0; i <= nu; i++) {
    for (let j = 0; j <= nv; j++) {
      const a = 3 * (first + Math.max(0, i - 1) * W + j)
      const c = 3 * (first + Math.min(nu, i + 1) * W + j)
      const left = closed && j === 0 ? nv - 1 : Math.max(0, j - 1)
      const right = closed && j === nv ? 1 : Math.min(nv, j + 1)
      const ax = P[c]! - P[a]!
      const ay = P[c + 1]! - P[a + 1]!
      const az = P[c + 2]! - P[a + 2]!
      let [nx, ny, nz, l] = [0, 0, 0, 0]
      for (let attempt = 0; attempt < 2 && l < 1e-12; attempt++) {
        const row = attempt === 0 ? i : i === 0 ? 1 : i - 1
        const d = 3 * (first + row * W + left)
        const e = 3 * (first + row * W + right)
        const bx = P[e]! - P[d]!
        const by = P[e + 1]! - P[d + 1]!
        const bz = P[e + 2]! - P[d + 2]!
        nx = ay * bz - az * by
        ny = az * bx - ax * bz
        nz = ax * by - ay * bx
        l = nx * nx + ny * ny + nz * nz
      }
      const k = 3 * (first + i * W + j)
      if (l > 1e-18) {
        const s = 1 / Math.sqrt(l)
        N[k] = nx * s
        N[k + 1] = ny * s
        N[k + 2] = nz * s
      } else N[k + 2] = 1
    }
  }
}

/** Lay a grid of nu × nv squares over a surface. `closed`: its last column meets its first. Steps are as given. */
export const addGrid = (
  b: Builder,
  nu: number,
  nv: number,
  surface: Surface,
  tissue: Tissue,
  options: { closed?: boolean; uv?: readonly [number, number]; part?: number } = {},
): void => {
  const part = options.part ?? nextPart(b)
  const W = nv + 1
  makeRoom(b, (nu + 1) * W, 2 * nu * nv)
  const first = b.vertices
  for (let i = 0; i <= nu; i++) {
    for (let j = 0; j <= nv; j++) {
      surface(i / nu, j / nv, scratch)
      const k = b.vertices++
      b.positions[3 * k] = scratch[0]!
      b.positions[3 * k + 1] = scratch[1]!
      b.positions[3 * k + 2] = scratch[2]!
      b.uvs[2 * k] = options.uv ? options.uv[0] : i / nu
      b.uvs[2 * k + 1] = options.uv ? options.uv[1] : j / nv
    }
  }
  gridNormals(b, first, nu, nv, options.closed ?? false)
  for (let i = 0; i < nu; i++) {
    for (let j = 0; j < nv; j++) {
      const k = first + i * W + j
      addFace(b, k, k + 1, k + W, part, tissue)
      addFace(b, k + 1, k + W + 1, k + W, part, tissue)
    }
  }
}

/** Steps at the builder's detail, never fewer than `least`. */
export const steps = (b: Builder, n: number, least = 2): number => Math.max(least, Math.round(n * b.detail))

/** A round tube along points, its radius from r0 to r1 (mm), at least three sided. */
export const addTube = (
  b: Builder,
  points: readonly Point3[],
  r0: number,
  r1: number,
  tissue: Tissue,
  sides = 5,
): void => {
  const n = points.length - 1
  if (n < 1) return
  const nv = steps(b, sides, 3)
  const us: Point3[] = []
  const vs: Point3[] = []
  let side: Point3 = [0, 0, 0]
  let last: Point3 = [0, 0, 1]
  for (let i = 0; i <= n; i++) {
    const p = points[Math.max(0, i - 1)]!
    const q = points[Math.min(n, i + 1)]!
    const t = unit([q[0] - p[0], q[1] - p[1], q[2] - p[2]], last)
    last = t
    if (i === 0) side = Math.abs(t[2]) < 0.99 ? cross([0, 0, 1], t) : [1, 0, 0]
    const k = side[0] * t[0] + side[1] * t[1] + side[2] * t[2]
    const u = unit([side[0] - k * t[0], side[1] - k * t[1], side[2] - k * t[2]], [1, 0, 0])
    us.push(u)
    vs.push(cross(t, u))
    side = u
  }
  // Few-sided tubes are a little stouter, so that they look as wide as round ones on the mean.
  const stout = Math.PI / nv / Math.sin(Math.PI / nv)
  addGrid(
    b,
    n,
    nv,
    (s, v, out) => {
      const i = Math.round(s * n)
      const r = (r0 + (r1 - r0) * s) * stout
      const c = r * Math.cos(v * TAU)
      const d = r * Math.sin(v * TAU)
      for (let k = 0; k < 3; k++) out[k] = points[i]![k]! + us[i]![k]! * c + vs[i]![k]! * d
    },
    tissue,
    { closed: true },
  )
}

/** A small dome: a floret, a bud, a seed. In frame f at a local place, rounded toward a local direction. */
export const addDome = (
  b: Builder,
  f: Frame,
  place: Point3,
  direction: Point3,
  radius: number,
  tissue: Tissue,
  tall = 0.95,
): void => {
  const g = frameIn(f, place, direction)
  const sides = steps(b, 6, 4)
  const part = nextPart(b)
  makeRoom(b, 2 * sides + 1, 3 * sides)
  const p = (r: number, h: number, i: number): Point3 => {
    const a = (i / sides) * TAU
    const [x, y] = [r * Math.cos(a), r * Math.sin(a)]
    return [
      g.o[0] + g.u[0] * x + g.v[0] * y + g.w[0] * h,
      g.o[1] + g.u[1] * x + g.v[1] * y + g.w[1] * h,
      g.o[2] + g.u[2] * x + g.v[2] * y + g.w[2] * h,
    ]
  }
  const n = (k: number, i: number): Point3 => {
    const a = (i / sides) * TAU
    return unit(turned(g, Math.cos(a), Math.sin(a), k))
  }
  const top = addVertex(b, p(0, radius * tall, 0), g.w, 0.95, 0.5)
  const upper = b.vertices
  for (let i = 0; i < sides; i++) addVertex(b, p(radius * 0.76, radius * tall * 0.66, i), n(0.95, i), 0.6, 0.5)
  for (let i = 0; i < sides; i++) addVertex(b, p(radius, 0, i), n(0.1, i), 0.2, 0.5)
  for (let i = 0; i < sides; i++) {
    const j = (i + 1) % sides
    addFace(b, top, upper + i, upper + j, part, tissue)
    addFace(b, upper + i, upper + sides + i, upper + j, part, tissue)
    addFace(b, upper + j, upper + sides + i, upper + sides + j, part, tissue)
  }
}

/** A round or oval ball in a frame: half width r, half height h, centre at local height z. */
export const addBall = (
  b: Builder,
  f: Frame,
  r: number,
  h: number,
  z: number,
  tissue: Tissue,
  nu = 6,
  nv = 9,
): void => {
  addGrid(
    b,
    steps(b, nu, 3),
    steps(b, nv, 5),
    (u, v, out) => {
      const s = r * Math.sin(u * Math.PI)
      const [x, y, up] = [s * Math.cos(v * TAU), s * Math.sin(v * TAU), z - h * Math.cos(u * Math.PI)]
      for (let k = 0; k < 3; k++) out[k] = f.o[k]! + f.u[k]! * x + f.v[k]! * y + f.w[k]! * up
    },
    tissue,
    { closed: true },
  )
}

/** The mesh, cut to what is used. */
export const finish = (b: Builder): Mesh => ({
  positions: b.positions.slice(0, 3 * b.vertices),
  normals: b.normals.slice(0, 3 * b.vertices),
  uvs: b.uvs.slice(0, 2 * b.vertices),
  triangles: b.triangles.slice(0, 3 * b.faces),
  parts: b.parts.slice(0, b.faces),
  tissues: b.tissues.slice(0, b.faces),
})
