import { KINDS, type Mesh, STANDIN_STRIDE, TISSUES } from '../../../src/geometry/types.ts'

/** The head with its leaves, the blooms alone, or the bare stems. */
type Part = 'head' | 'bloom' | 'stem'
const LEAF = TISSUES.indexOf('leaf')
const BARE = [TISSUES.indexOf('stem'), TISSUES.indexOf('bark')]

/** A raster of points over a view; its own, so that what is tested does not test itself. */
interface View {
  x: (p: ArrayLike<number>, i: number) => number
  y: (p: ArrayLike<number>, i: number) => number
}

/** Seen with `facing` degrees between the z axis and the eye, from azimuth `roll` (degrees). */
export const viewAt = (facing: number, roll: number): View => {
  const a = (facing * Math.PI) / 180
  const r = (roll * Math.PI) / 180
  // The picture is turned a little, so that no upright blade falls between two columns of points.
  const [c, t] = [Math.cos(0.3), Math.sin(0.3)]
  const across = [-Math.sin(r), Math.cos(r), 0]
  const along = [-Math.cos(a) * Math.cos(r), -Math.cos(a) * Math.sin(r), Math.sin(a)]
  const right = across.map((x, i) => x * c + along[i]! * t)
  const up = along.map((x, i) => x * c - across[i]! * t)
  const project = (axis: number[]) => (p: ArrayLike<number>, i: number) =>
    p[i]! * axis[0]! + p[i + 1]! * axis[1]! + p[i + 2]! * axis[2]!
  return { x: project(right), y: project(up) }
}

interface Cover {
  mask: Uint8Array
  put: (x: number, y: number) => void
}
const cover = (size: number): Cover => {
  const mask = new Uint8Array(size * size)
  return {
    mask,
    put: (x, y) => {
      if (x >= 0 && y >= 0 && x < size && y < size) mask[y * size + x] = 1
    },
  }
}

export interface Areas {
  drawn: number
  light: number
  /** Where both lie. */
  both: number
}
/** How alike two outlines are in place: what both cover of what either covers, 0 … 1. */
export const agreement = ({ drawn, light, both }: Areas): number => both / (drawn + light - both)

/** So few points say little about an area: then a finer raster is taken. */
const FEW = 4000
const FINE = 1100

/** Areas (mm²) that the mesh and its stand-ins cover in a view. */
export const outlineAreas = (mesh: Mesh, standins: Float32Array, view: View, part: Part, size = 260): Areas => {
  const wanted = (tissue: number): boolean =>
    BARE.includes(tissue) === (part === 'stem') && !(part === 'bloom' && tissue === LEAF)
  let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity]
  const corners: [number, number][][] = []
  for (let t = 0; t < mesh.tissues.length; t++) {
    if (!wanted(mesh.tissues[t]!)) continue
    const three = [0, 1, 2].map((k): [number, number] => {
      const i = 3 * mesh.triangles[3 * t + k]!
      const [x, y] = [view.x(mesh.positions, i), view.y(mesh.positions, i)]
      x0 = Math.min(x0, x)
      x1 = Math.max(x1, x)
      y0 = Math.min(y0, y)
      y1 = Math.max(y1, y)
      return [x, y]
    })
    corners.push(three)
  }
  // What stand-ins cover beside the drawing must be seen as well.
  for (let i = 0; i < standins.length; i += STANDIN_STRIDE) {
    const kind = KINDS[standins[i + 1]!]
    if ((kind === 'stem') !== (part === 'stem') || (part === 'bloom' && kind === 'leaf') || standins[i] !== 0) continue
    const half = (axis: View['x']): number =>
      Math.hypot(axis(standins, i + 5), axis(standins, i + 8), axis(standins, i + 11))
    const [x, y, w, h] = [view.x(standins, i + 2), view.y(standins, i + 2), half(view.x), half(view.y)]
    x0 = Math.min(x0, x - w)
    x1 = Math.max(x1, x + w)
    y0 = Math.min(y0, y - h)
    y1 = Math.max(y1, y + h)
  }
  const side = 1.05 * Math.max(x1 - x0, y1 - y0)
  const [left, low] = [(x0 + x1 - side) / 2, (y0 + y1 - side) / 2]
  const mm = side / size
  const drawn = cover(size)
  for (const three of corners) {
    const [[ax, ay], [bx, by], [cx, cy]] = three as [[number, number], [number, number], [number, number]]
    const twice = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay)
    if (Math.abs(twice) < 1e-12) continue
    const [r0, r1] = [
      Math.ceil((Math.min(ay, by, cy) - low) / mm - 0.5),
      Math.floor((Math.max(ay, by, cy) - low) / mm - 0.5),
    ]
    const [c0, c1] = [
      Math.ceil((Math.min(ax, bx, cx) - left) / mm - 0.5),
      Math.floor((Math.max(ax, bx, cx) - left) / mm - 0.5),
    ]
    for (let r = r0; r <= r1; r++) {
      for (let c = c0; c <= c1; c++) {
        const [x, y] = [left + (c + 0.5) * mm, low + (r + 0.5) * mm]
        const u = ((bx - x) * (cy - y) - (cx - x) * (by - y)) / twice
        const v = ((cx - x) * (ay - y) - (ax - x) * (cy - y)) / twice
        if (u >= 0 && v >= 0 && u + v <= 1) drawn.put(c, r)
      }
    }
  }
  const light = cover(size)
  for (let i = 0; i < standins.length; i += STANDIN_STRIDE) {
    const kind = KINDS[standins[i + 1]!]
    if ((kind === 'stem') !== (part === 'stem') || (part === 'bloom' && kind === 'leaf')) continue
    const [ox, oy] = [view.x(standins, i + 2), view.y(standins, i + 2)]
    let inside: (dx: number, dy: number) => boolean
    let [rx, ry] = [0, 0]
    if (standins[i] === 0) {
      const axes = [5, 8, 11].map((k) => [view.x(standins, i + k), view.y(standins, i + k)] as const)
      const xx = axes.reduce((s, [x]) => s + x * x, 0)
      const xy = axes.reduce((s, [x, y]) => s + x * y, 0)
      const yy = axes.reduce((s, [, y]) => s + y * y, 0)
      const det = xx * yy - xy * xy
      if (det < 1e-12) continue
      rx = Math.sqrt(xx)
      ry = Math.sqrt(yy)
      inside = (dx, dy) => (dx * dx * yy - 2 * dx * dy * xy + dy * dy * xx) / det <= 1
    } else {
      const [ex, ey] = [view.x(standins, i + 5) - ox, view.y(standins, i + 5) - oy]
      const r = standins[i + 8]!
      const l = Math.max(1e-9, ex * ex + ey * ey)
      rx = Math.abs(ex) + r
      ry = Math.abs(ey) + r
      inside = (dx, dy) => {
        const t = Math.min(1, Math.max(0, (dx * ex + dy * ey) / l))
        return Math.hypot(dx - t * ex, dy - t * ey) <= r
      }
    }
    for (let r = Math.floor((oy - ry - low) / mm); r <= (oy + ry - low) / mm; r++) {
      for (let c = Math.floor((ox - rx - left) / mm); c <= (ox + rx - left) / mm; c++) {
        if (inside(left + (c + 0.5) * mm - ox, low + (r + 0.5) * mm - oy)) light.put(c, r)
      }
    }
  }
  const areas: Areas = { drawn: 0, light: 0, both: 0 }
  for (let i = 0; i < size * size; i++) {
    const [a, b] = [drawn.mask[i]!, light.mask[i]!]
    areas.drawn += a
    areas.light += b
    areas.both += a & b
  }
  if (areas.drawn < FEW && size < FINE) return outlineAreas(mesh, standins, view, part, FINE)
  return { drawn: areas.drawn * mm * mm, light: areas.light * mm * mm, both: areas.both * mm * mm }
}
