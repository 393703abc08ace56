import type { Point3 } from '../../arrangement/index.ts'
import {
  outerSection,
  PART_STRIDE,
  projectPoint,
  type Resolved,
  shownHalfWidth,
  viewAxes,
} from '../../geometry/index.ts'
import { partsOf } from '../parts.ts'
import type { ViewAngle } from '../types.ts'
import { mixed } from './tones.ts'
import type { Layer, Place, Polygon, Scene } from './types.ts'
import { convexOutline, ellipsePoints, type Looking } from './view.ts'

/** Points about one stand-in: a copy is small and pale. Ours. */
const AROUND = 12
/** So far its colours go toward what lies behind it. Ours. */
const PALE = 0.55
const GLASS = 0.8

const UNIT = Array.from(
  { length: AROUND },
  (_, i): Place => [Math.cos((2 * Math.PI * i) / AROUND), Math.sin((2 * Math.PI * i) / AROUND)],
)

/** The outline of one stand-in as seen, mm. An ellipsoid shows the ellipse of its moments; a capsule, a rod. */
export const partOutline = (parts: Float64Array, o: number, angle: ViewAngle): Place[] => {
  const [x, y] = projectPoint([parts[o + 2]!, parts[o + 3]!, parts[o + 4]!], angle)
  if (parts[o] === 1) {
    const [u, v] = projectPoint([parts[o + 5]!, parts[o + 6]!, parts[o + 7]!], angle)
    const r = parts[o + 8]!
    const far = Math.hypot(u - x, v - y) || 1
    const [nx, ny] = [(-(v - y) / far) * r, ((u - x) / far) * r]
    return [
      [x + nx, y + ny],
      [u + nx, v + ny],
      [u - nx, v - ny],
      [x - nx, y - ny],
    ]
  }
  const { right, up } = viewAxes(angle)
  const [xx, xy, xz, yy, yz, zz] = [5, 6, 7, 8, 9, 10].map((k) => parts[o + k]!) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ]
  const moment = (a: Point3, b: Point3): number =>
    a[0] * (xx * b[0] + xy * b[1] + xz * b[2]) +
    a[1] * (xy * b[0] + yy * b[1] + yz * b[2]) +
    a[2] * (xz * b[0] + yz * b[1] + zz * b[2])
  // Cholesky: the circle that becomes this ellipse.
  const a = Math.sqrt(Math.max(0, moment(right, right)))
  const b = a > 0 ? moment(right, up) / a : 0
  const c = Math.sqrt(Math.max(0, moment(up, up) - b * b))
  return UNIT.map(([cos, sin]) => [x + a * cos, y + b * cos + c * sin])
}

const SECTIONS = 32

/** The vessel's outline, at the middle of the table: its two sides between the near half of its foot and the far half of its mouth. */
const vesselOutline = ({ vessel }: Resolved, look: Looking): Place[] => {
  const { right } = viewAxes({ turn: look.angle.turn, pitch: 0 })
  const rings = Array.from({ length: SECTIONS + 1 }, (_, i) => {
    const section = outerSection(vessel, i / SECTIONS)
    return {
      centre: look.see(0, 0, (i / SECTIONS) * vessel.height),
      half: [
        shownHalfWidth(vessel, section, right[0], -right[1]),
        shownHalfWidth(vessel, section, -right[1], -right[0]) * look.level,
      ] as Place,
    }
  })
  // From far above its widest ring is all that is seen.
  if (look.upright < look.level) return convexOutline(rings.flatMap((ring) => ellipsePoints(ring, 0, 2 * Math.PI, 24)))
  const side = (sign: 1 | -1): Place[] =>
    rings.map(({ centre, half }): Place => [centre[0] + sign * half[0], centre[1]])
  return [
    ...ellipsePoints(rings[0]!, Math.PI, 2 * Math.PI, 48),
    ...side(1),
    ...ellipsePoints(rings[SECTIONS]!, 0, Math.PI, 48),
    ...side(-1).reverse(),
  ]
}

/** One copy as a wash: its parts in pale flat colours, the farthest first, for a foot at the middle of the table. */
const wash = (resolved: Resolved, look: Looking, ground: string): { points: Place[]; fill: string }[] => {
  const parts = resolved.stems.flatMap((stem) => {
    const own = partsOf(stem)
    return Array.from({ length: own.length / PART_STRIDE }, (_, i) => {
      const o = i * PART_STRIDE
      const depth = projectPoint([own[o + 2]!, own[o + 3]!, own[o + 4]!], look.angle)[2]
      const fill = mixed(own[o + 1] === 0 ? stem.colour : stem.plant.leafColour, ground, PALE)
      return { depth, fill, points: partOutline(own, o, look.angle) }
    })
  })
  parts.sort((a, b) => a.depth - b.depth)
  const { colour, material } = resolved.vessel
  const fill = mixed(colour, ground, material === 'glass' ? GLASS : PALE)
  return [{ points: vesselOutline(resolved, look), fill }, ...parts]
}

/** The same piece again where it stands on the table, pale; each with how far beyond the middle it is. */
export const copyMarks = (
  resolved: Resolved,
  { copies, linen }: Scene,
  look: Looking,
  wall: string,
): { beyond: number; of: (layer: Layer) => Polygon[] }[] => {
  if (copies.length === 0) return []
  const one = wash(resolved, look, mixed(linen, wall, 0.5))
  const origin = look.see(0, 0, 0)
  return copies.map((at) => {
    const [x, y] = look.see(at[0], at[1], 0)
    const [dx, dy] = [x - origin[0], y - origin[1]]
    return {
      beyond: look.beyond(at),
      of: (layer) =>
        one.map(({ points, fill }) => ({
          kind: 'polygon',
          layer,
          fill,
          points: points.map(([px, py]): Place => [px + dx, py + dy]),
        })),
    }
  })
}
