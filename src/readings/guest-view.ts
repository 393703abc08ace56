import type { Vessel } from '../arrangement/index.ts'
import { cosSin, outerSection, PART_STRIDE } from '../geometry/index.ts'
import type { Engine } from './engine.ts'
import { type Ready, turnOf, WAYS } from './extents.ts'
import {
  bitsIn,
  coverCapsule,
  coverEllipsoid,
  coverStretch,
  heightOfRow,
  type Look,
  lookFrom,
  ROWS,
} from './face-picture.ts'
import { EYES, FACE, GUESTS, seatDistance } from './guests.ts'

/** Twelve seats all round, each looking straight across, for three pairs of guests. View = way × GUESTS + guest. */
export const VIEWS = WAYS * GUESTS

/** What one stem hides: only the views in which it hides anything are kept. */
export interface Hides {
  views: Uint8Array
  /** ROWS words for each of these views. */
  rows: Int32Array
  /** Pixels hidden, all views. */
  pixels: number
  distance: number
  height: number
}

const TURNS = Array.from({ length: WAYS }, (_, way) => cosSin(turnOf(way)))
const looksOf = (distance: number, height: number): Look[] => EYES.map((eye) => lookFrom(distance, eye - height))

// Used by one stem at a time.
const scratch = new Int32Array(VIEWS * ROWS)
const moments = new Float64Array(9)
let balls = new Float64Array(4 * 256)

/** Whether a ball can lie before the face, seen from this seat: x, y, z of its centre in the way's frame, mm. */
const beforeFace = (l: Look, y: number, z: number, reach: number): boolean => {
  const far = (y + reach + l.distance) / (2 * l.distance)
  return z + reach >= l.eye - FACE.chin * far && z - reach <= l.eye + FACE.crown * far
}
const beside = (distance: number, x: number, y: number, reach: number): boolean =>
  Math.abs(x) - reach > (FACE.width / 2) * ((y + reach + distance) / (2 * distance))

/** A ball round each part, and one round all: centre and reach. */
const ballsOf = (parts: Float64Array): [x: number, y: number, z: number, reach: number] => {
  const count = parts.length / PART_STRIDE
  if (balls.length < 4 * count) balls = new Float64Array(8 * count)
  const least = [1e9, 1e9, 1e9]
  const most = [-1e9, -1e9, -1e9]
  for (let i = 0, o = 0; i < count; i++, o += PART_STRIDE) {
    const capsule = parts[o] === 1
    let long = 0
    for (let k = 0; k < 3; k++) {
      const from = parts[o + 2 + k]!
      const to = capsule ? parts[o + 5 + k]! : from
      balls[4 * i + k] = (from + to) / 2
      long += (to - from) ** 2
    }
    const reach = capsule
      ? Math.sqrt(long) / 2 + parts[o + 8]!
      : Math.sqrt(parts[o + 5]! + parts[o + 8]! + parts[o + 10]!)
    balls[4 * i + 3] = reach
    for (let k = 0; k < 3; k++) {
      least[k] = Math.min(least[k]!, balls[4 * i + k]! - reach)
      most[k] = Math.max(most[k]!, balls[4 * i + k]! + reach)
    }
  }
  const [x, y, z] = [0, 1, 2].map((k) => (least[k]! + most[k]!) / 2) as [number, number, number]
  return [x, y, z, Math.hypot(most[0]! - x, most[1]! - y, most[2]! - z)]
}

/** Turns one part into the way's frame, for painting. */
const turnPart = (p: Float64Array, o: number, c: number, s: number): void => {
  const m = moments
  m[0] = p[o + 2]! * c - p[o + 3]! * s
  m[1] = p[o + 2]! * s + p[o + 3]! * c
  m[2] = p[o + 4]!
  if (p[o] === 1) {
    m[3] = p[o + 5]! * c - p[o + 6]! * s
    m[4] = p[o + 5]! * s + p[o + 6]! * c
    m[5] = p[o + 7]!
    return
  }
  const xx = p[o + 5]!
  const xy = p[o + 6]!
  const yy = p[o + 8]!
  m[3] = c * c * xx - 2 * c * s * xy + s * s * yy
  m[4] = c * s * (xx - yy) + (c * c - s * s) * xy
  m[5] = c * p[o + 7]! - s * p[o + 9]!
  m[6] = s * s * xx + 2 * c * s * xy + c * c * yy
  m[7] = s * p[o + 7]! + c * p[o + 9]!
  m[8] = p[o + 10]!
}

const paintStem = (parts: Float64Array, distance: number, looks: readonly Look[]): void => {
  const [bx, by, bz, all] = ballsOf(parts)
  for (let way = 0; way < WAYS; way++) {
    const [c, s] = TURNS[way]!
    const y0 = bx * s + by * c
    if (beside(distance, bx * c - by * s, y0, all) || !looks.some((l) => beforeFace(l, y0, bz, all))) continue
    for (let i = 0, o = 0; o < parts.length; i++, o += PART_STRIDE) {
      const x = balls[4 * i]!
      const y = balls[4 * i + 1]!
      const z = balls[4 * i + 2]!
      const reach = balls[4 * i + 3]!
      const away = x * s + y * c
      if (beside(distance, x * c - y * s, away, reach)) continue
      let turned = false
      for (let g = 0; g < GUESTS; g++) {
        const look = looks[g]!
        if (!beforeFace(look, away, z, reach)) continue
        if (!turned) turnPart(parts, o, c, s)
        turned = true
        const at = (way * GUESTS + g) * ROWS
        if (parts[o] === 1) coverCapsule(scratch, at, look, moments, parts[o + 8]!)
        else coverEllipsoid(scratch, at, look, moments)
      }
    }
  }
}

/** Takes what was painted out of `scratch`, and wipes it. */
const collect = (distance: number, height: number): Hides => {
  const views: number[] = []
  for (let v = 0; v < VIEWS; v++) {
    let any = 0
    for (let r = v * ROWS; r < (v + 1) * ROWS; r++) any |= scratch[r]!
    if (any !== 0) views.push(v)
  }
  const rows = new Int32Array(views.length * ROWS)
  views.forEach((v, i) => {
    rows.set(scratch.subarray(v * ROWS, (v + 1) * ROWS), i * ROWS)
  })
  if (views.length > 0) scratch.fill(0)
  return { views: Uint8Array.from(views), rows, pixels: bitsIn(rows, 0, rows.length), distance, height }
}

const known = new WeakMap<Ready | Vessel, Hides>()
const remembered = (key: Ready | Vessel, distance: number, height: number, paint: () => void): Hides => {
  const before = known.get(key)
  if (before && before.distance === distance && before.height === height) return before
  paint()
  const hides = collect(distance, height)
  known.set(key, hides)
  return hides
}

/** Levels at which the vessel is cut upright, across the line of sight. Ours. */
const CUTS = 24

/** From–to in x of a section at y, both in the frame of the way round; null where it does not reach. */
const acrossAt = (vessel: Vessel, a: number, b: number, y: number, c: number, s: number): [number, number] | null => {
  if (vessel.plan === 'rectangular') {
    let [low, high] = [-1e6, 1e6]
    // The vessel's own x = X c + y s within ±a, its y = −X s + y c within ±b.
    for (const [from, step, edge] of [
      [y * s, c, a],
      [y * c, -s, b],
    ] as const) {
      if (Math.abs(step) < 1e-9) {
        if (Math.abs(from) > edge) return null
        continue
      }
      const [p, q] = [(-edge - from) / step, (edge - from) / step]
      low = Math.max(low, Math.min(p, q))
      high = Math.min(high, Math.max(p, q))
    }
    return low <= high ? [low, high] : null
  }
  if (a <= 0 || b <= 0) return null
  // (X c + y s)² / a² + (y c − X s)² / b² = 1, solved for X.
  const p = (c / a) ** 2 + (s / b) ** 2
  const q = y * c * s * (1 / a ** 2 - 1 / b ** 2)
  const root = q * q - p * ((y * s) ** 2 / a ** 2 + (y * c) ** 2 / b ** 2 - 1)
  if (root < 0) return null
  return [(-q - Math.sqrt(root)) / p, (-q + Math.sqrt(root)) / p]
}

/** The vessel's body, glass too: in front of a face there is water and stems. */
const paintVessel = (vessel: Vessel, distance: number, looks: readonly Look[]): void => {
  const deep = Math.hypot(vessel.width, vessel.depth)
  let wide = 0
  for (let k = 0; k <= CUTS; k++) wide = Math.max(wide, outerSection(vessel, k / CUTS).a / vessel.width)
  const reach = Math.min(0.9 * distance, deep * wide)
  for (let way = 0; way < WAYS; way++) {
    const [c, s] = TURNS[way]!
    looks.forEach((l, g) => {
      for (let r = 0; r < ROWS; r++) {
        const rise = heightOfRow(r)
        // Where the line of sight passes over the rim all the way, nothing is cut.
        const lowest = l.eye + rise * ((distance + (rise < 0 ? reach : -reach)) / (2 * distance))
        if (lowest > 0) continue
        for (let k = 0; k <= CUTS; k++) {
          const y = reach * ((2 * k) / CUTS - 1)
          const far = (y + distance) / (2 * distance)
          const f = (l.eye + rise * far) / vessel.height + 1
          if (f < 0 || f > 1) continue
          const { a, b } = outerSection(vessel, f)
          const span = acrossAt(vessel, a, b, y, c, s)
          if (span) coverStretch(scratch, (way * GUESTS + g) * ROWS, r, span[0] / far, span[1] / far)
        }
      }
    })
  }
}

export interface GuestView {
  /** What stands before the face opposite, all together: ROWS words a view. */
  rows: Int32Array
  /** Covered by two stems or more (or by a stem and the vessel), where that was asked for. */
  twice: Int32Array
  stems: Hides[]
  vessel: Hides
}

const once = new Int32Array(VIEWS * ROWS)
const twice = new Int32Array(VIEWS * ROWS)

const lay = ({ views, rows }: Hides, overlaps: boolean): void => {
  for (let i = 0; i < views.length; i++) {
    const to = views[i]! * ROWS
    const from = i * ROWS
    if (overlaps) for (let r = 0; r < ROWS; r++) twice[to + r]! |= once[to + r]! & rows[from + r]!
    for (let r = 0; r < ROWS; r++) once[to + r]! |= rows[from + r]!
  }
}

/**
 * What guests see of the guest opposite, from twelve seats round the table. What a stem hides is remembered as long as it
 * keeps its shape and the table its size. The pictures are lent: the next call paints over them.
 * @param overlaps whether `twice` is wanted as well
 */
export const guestView = (engine: Engine, overlaps = false): GuestView => {
  const { vessel, document } = engine.resolved
  const distance = seatDistance(document.setting.table)
  const { height } = vessel
  const looks = looksOf(distance, height)
  const body = remembered(vessel, distance, height, () => paintVessel(vessel, distance, looks))
  const stems = engine.ready.map((r) => remembered(r, distance, height, () => paintStem(r.parts, distance, looks)))
  once.fill(0)
  if (overlaps) twice.fill(0)
  lay(body, overlaps)
  for (const s of stems) lay(s, overlaps)
  return { rows: once, twice, stems, vessel: body }
}

/** Pixels that this stem alone hides, all views. */
export const hiddenByOneAlone = ({ views, rows }: Hides, view: GuestView): number => {
  let sum = 0
  const alone = new Int32Array(ROWS)
  for (let i = 0; i < views.length; i++) {
    for (let r = 0; r < ROWS; r++) alone[r] = rows[i * ROWS + r]! & ~view.twice[views[i]! * ROWS + r]!
    sum += bitsIn(alone, 0, ROWS)
  }
  return sum
}
