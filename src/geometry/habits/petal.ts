import type { Point3 } from '../../arrangement/index.ts'
import type { Tissue } from '../types.ts'
import { addFace, addGrid, addVertex, type Builder, makeRoom, nextPart, type Surface, steps } from './builder.ts'
import { along, clamp, cross, DEG, type Frame, smooth, unit } from './vector.ts'

const past = (t: number, from: number, power: number): number =>
  Math.max(0, 1 - Math.max(0, (t - from) / (1 - from)) ** power)

/** Place along and half-width of the points and bays of an ivy leaf, in twelfths of its length. Ours, after plates. */
const IVY = [
  [0, 0.5],
  [1, 0.74],
  [2, 0.8],
  [3, 0.62],
  [4, 0.84],
  [5, 1],
  [6, 0.66],
  [7, 0.44],
  [12, 0],
] as const
/** Height at t of a line of straight pieces through [x in twelfths, height]. */
const broken = (through: readonly (readonly [number, number])[], t: number): number => {
  const x = 12 * clamp(t, 0, 1)
  const i = Math.max(
    1,
    through.findIndex(([at]) => at >= x - 1e-9),
  )
  const [from, low] = through[i - 1]!
  const [to, high] = through[i]!
  return low + ((high - low) * (x - from)) / (to - from)
}

/** Half-width along a petal or leaf (0 base … 1 tip) as a share of the widest. Ours, after plates. */
export const OUTLINES = {
  round: (t: number) => (0.34 + 0.66 * smooth(0, 0.58, t)) * Math.sqrt(past(t, 0.58, 2.3)),
  rolled: (t: number) => (0.4 + 0.6 * smooth(0, 0.5, t)) * past(t, 0.5, 1.7) ** 0.58,
  ray: (t: number) => (0.42 + 0.58 * smooth(0, 0.5, t)) * Math.sqrt(past(t, 0.72, 2.2)),
  strap: (t: number) => (0.7 + 0.3 * smooth(0, 0.3, t)) * Math.sqrt(past(t, 0.82, 2.4)),
  point: (t: number) => (0.5 + 0.5 * smooth(0, 0.45, t)) * past(t, 0.4, 1.9) ** 0.85,
  egg: (t: number) => (0.55 + 0.45 * smooth(0, 0.4, t)) * past(t, 0.4, 2.1) ** 0.62,
  fan: (t: number) => (0.16 + 0.84 * smooth(0, 0.85, t)) * Math.sqrt(past(t, 0.86, 2.6)),
  leaf: (t: number) => Math.sin(Math.PI * clamp(t, 0, 1) ** 0.82) ** 0.85 * 0.98 + 0.02 * (1 - t),
  disc: (t: number) => Math.sqrt(Math.max(0, 1 - (2 * t - 1) ** 2)) * 0.98 + 0.02 * (1 - t),
  lance: (t: number) => Math.sin(Math.PI * clamp(t, 0, 1) ** 0.7) ** 1.1,
  sword: (t: number) => (0.6 + 0.4 * smooth(0, 0.3, t)) * past(t, 0.3, 1.6),
  ovate: (t: number) => Math.sqrt(past(1 - t, 0.62, 2)) * past(t, 0.36, 1.7) ** 0.85,
  spoon: (t: number) => (0.1 + 0.9 * smooth(0, 0.68, t)) * Math.sqrt(past(t, 0.6, 2.2)),
  // Two lobes a side and a pointed one at the tip, of straight lines from point to bay.
  ivy: (t: number) => broken(IVY, t),
  heart: (t: number) => Math.sqrt(past(1 - Math.min(1, t * 1.02 + 0.02), 0.62, 2)) * past(t, 0.1, 1.25) ** 0.8,
} satisfies Record<string, (t: number) => number>
export type Outline = keyof typeof OUTLINES

/** One petal in the frame of its head; lengths in mm, angles in degrees from the head's axis. */
export interface PetalForm {
  /** Azimuth in the head, radians. */
  turn: number
  length: number
  width: number
  /** Angle of the midline at the base and at the tip: 0 along the axis, 90 flat, more is reflexed. */
  base: number
  tip: number
  /** How late the midline bends: 1 evenly. */
  late?: number
  /** Where it stands: distance from the axis, height. */
  out?: number
  up?: number
  /** Radius of its hollow across; 0 flat. Negative: rounded away from the axis. */
  hollow?: number
  /** Hollow at the tip over hollow at the base. */
  opening?: number
  ruffle?: number
  waves?: number
  phase?: number
  /** How far the margin rolls back. */
  curl?: number
  /** V-fold across, height per half width. */
  fold?: number
  /** Sideways sweep of the tip. */
  sweep?: number
  /** Depth of the notch in the tip, share of the length. */
  notch?: number
  /** Teeth in the tip, share of the length. */
  fringe?: number
  /** How far the whole lies over its place, on the inner side: for what is painted on another petal. */
  over?: number
  outline?: Outline
  nu?: number
  nv?: number
}

const S = 16
const R = new Float64Array(S + 1)
const Z = new Float64Array(S + 1)
const A = new Float64Array(S + 1)

/** The midline by angle, integrated: r and z along it in R and Z, its angle (radians) in A. */
const midline = ({ base, tip, late = 1, length }: PetalForm): void => {
  let r = 0
  let z = 0
  R[0] = Z[0] = 0
  A[0] = base * DEG
  for (let i = 1; i <= S; i++) {
    const a = (base + (tip - base) * ((i - 0.5) / S) ** late) * DEG
    r += (Math.sin(a) * length) / S
    z += (Math.cos(a) * length) / S
    R[i] = r
    Z[i] = z
    A[i] = (base + (tip - base) * (i / S) ** late) * DEG
  }
}

/** The surface of a petal: u along it, v across. Good until the next is asked for. */
const petalSurface = (f: Frame, form: PetalForm): Surface => {
  midline(form)
  const outline = OUTLINES[form.outline ?? 'round']
  const { out = 0, up = 0, hollow = 0, opening = 1, ruffle = 0, waves = 4, phase = 0, curl = 0, fold = 0 } = form
  const { sweep = 0, notch = 0, fringe = 0, over = 0, width } = form
  const ct = Math.cos(form.turn)
  const st = Math.sin(form.turn)
  const { o, u: fu, v: fv, w: fw } = f
  const toward = hollow < 0 ? -1 : 1
  return (pu, pv, to) => {
    const v = 2 * pv - 1
    // Rows close up toward the tip, so that it comes out round.
    let t = Math.sin((pu * Math.PI) / 2)
    if (notch !== 0) t *= 1 - notch * Math.cos((v * Math.PI) / 2) ** 3 * t * t
    if (fringe !== 0) t *= 1 - fringe * (0.5 + 0.5 * Math.cos(v * 17 + phase)) * t * t * t
    const x = clamp(t, 0, 1) * S
    const i = Math.min(S - 1, Math.floor(x))
    const k = x - i
    const a = A[i]! + (A[i + 1]! - A[i]!) * k
    const s = v * (width / 2) * outline(t)
    let across = s
    let lift = over
    if (hollow !== 0) {
      const c = Math.abs(hollow) * (1 + (opening - 1) * t)
      across = c * Math.sin(s / c)
      lift += toward * c * (1 - Math.cos(s / c))
    }
    if (ruffle !== 0) lift += ruffle * Math.sin(v * waves + phase) * t * t
    if (curl !== 0) lift -= curl * Math.abs(v) ** 3 * smooth(0.35, 1, t)
    if (fold !== 0) lift += fold * Math.abs(s)
    const r = out + R[i]! + (R[i + 1]! - R[i]!) * k - Math.cos(a) * lift
    const z = up + Z[i]! + (Z[i + 1]! - Z[i]!) * k + Math.sin(a) * lift
    across += sweep * t * t
    const px = ct * r - st * across
    const py = st * r + ct * across
    to[0] = o[0] + fu[0] * px + fv[0] * py + fw[0] * z
    to[1] = o[1] + fu[1] * px + fv[1] * py + fw[1] * z
    to[2] = o[2] + fu[2] * px + fv[2] * py + fw[2] * z
  }
}

/** Lay one petal. */
export const addPetal = (b: Builder, f: Frame, form: PetalForm, tissue: Tissue): void =>
  addGrid(b, steps(b, form.nu ?? 8), steps(b, form.nv ?? 6), petalSurface(f, form), tissue)

const [here, ahead, beside] = [new Float64Array(3), new Float64Array(3), new Float64Array(3)]
/** How far a spot lies over its petal, share of the length: more than a facet of the petal bulges. Ours. */
const OVER = 0.007

/** Lay spots on the inner face of a petal: places along and across it (0 … 1), their length and width in mm. */
export const addSpots = (
  b: Builder,
  f: Frame,
  form: PetalForm,
  places: readonly (readonly [u: number, v: number])[],
  long: number,
  wide: number,
  tissue: Tissue,
): void => {
  const surface = petalSurface(f, form)
  const part = nextPart(b)
  makeRoom(b, 4 * places.length, 2 * places.length)
  for (const [u, v] of places) {
    surface(u, v, here)
    surface(u + 0.02, v, ahead)
    surface(u, v + 0.02, beside)
    const o: Point3 = [here[0]!, here[1]!, here[2]!]
    const d = unit([ahead[0]! - o[0], ahead[1]! - o[1], ahead[2]! - o[2]])
    const s = unit([beside[0]! - o[0], beside[1]! - o[1], beside[2]! - o[2]])
    const n = unit(cross(d, s))
    const on = along(o, n, OVER * form.length)
    const corners = [along(on, d, long / 2), along(on, s, wide / 2), along(on, d, -long / 2), along(on, s, -wide / 2)]
    const [i, j, k, l] = corners.map((p) => addVertex(b, p, n, 0.5, 0.5)) as [number, number, number, number]
    addFace(b, i, j, k, part, tissue)
    addFace(b, i, k, l, part, tissue)
  }
}

export const isOutline = (name: string): name is Outline => name in OUTLINES
