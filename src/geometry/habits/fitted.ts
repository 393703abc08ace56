import { PLANTS, type Plant } from '../../catalogue/index.ts'
import table from './fitted.json' with { type: 'json' }

/** Numbers of an ellipsoid: centre xyz and three half-axis vectors, in a head's frame, for a head of size 1. */
export const SLAB = 12
/** Factors on a leaf's stand-in: width, thickness, length. */
export type LeafFactors = readonly [wide: number, thick: number, long: number]

/** How a plant's stand-ins are shaped at the measured stages; between them they are mixed. */
export interface Fitted {
  /** Ellipsoids of one head (or, with z in lengths, of a flowering length): stages of the same count. */
  flower: readonly Float64Array[]
  leaf: readonly LeafFactors[]
}
/** Openness at which they are measured. */
export const STAGES = [0, 0.25, 0.5, 0.75, 1] as const

/** The stage under an openness, and how far it is on the way to the next. */
export const stageAt = (openness: number): [stage: number, t: number] => {
  const x = Math.max(0, Math.min(1, openness)) * (STAGES.length - 1)
  const stage = Math.min(STAGES.length - 2, Math.floor(x))
  return [stage, x - stage]
}

/** As the file holds it: see `fromRow`. Whole numbers. */
export type Row = readonly number[]
/** Lengths in the file are in parts of the head's size, factors and turns (radians) in parts of one. Ours. */
export const UNIT = 400
export const PART = 100

/** Half axes turned by a rotation vector (Rodrigues' formula), written as three vectors from `to[at]`. */
const writeAxes = (to: Float64Array, at: number, r: readonly number[], turn: readonly number[]): void => {
  const angle = Math.hypot(...turn)
  const k = angle > 1e-9 ? turn.map((x) => x / angle) : [0, 0, 1]
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  for (let i = 0; i < 3; i++) {
    const e = [0, 0, 0].map((_, j) => (i === j ? 1 : 0))
    const [j, l] = [(i + 1) % 3, (i + 2) % 3]
    const cross = [0, 0, 0]
    cross[j] = k[l]!
    cross[l] = -k[j]!
    for (let n = 0; n < 3; n++) to[at + 3 * i + n] = r[i]! * (c * e[n]! + s * cross[n]! + (1 - c) * k[n]! * k[i]!)
  }
}

/** Ellipsoids from their own numbers: 3 (z, radius, half height), 6 (centre, half axes) or 9 (and a rotation vector). */
export const slabsFrom = (own: readonly number[], per: number): Float64Array => {
  const count = per > 0 ? own.length / per : 0
  const out = new Float64Array(count * SLAB)
  for (let i = 0; i < count; i++) {
    const p = own.slice(i * per, (i + 1) * per)
    const [o, r] =
      per === 3
        ? [
            [0, 0, p[0]!],
            [p[1]!, p[1]!, p[2]!],
          ]
        : [p.slice(0, 3), p.slice(3, 6)]
    out.set(o, i * SLAB)
    writeAxes(out, i * SLAB + 3, r, per === 9 ? p.slice(6, 9) : [0, 0, 0])
  }
  return out
}

/**
 * A row of the file: what it was measured on (`plantKey`), how many numbers an ellipsoid has of its own (0, 3, 6, 9),
 * how many ellipsoids, how many stages of leaves (0, 1, or all), then the numbers of each stage.
 */
export const fromRow = ([, per = 0, count = 0, leaves = 0, ...numbers]: Row): Fitted => {
  const own = numbers.map((n, i) => (per === 9 && i < 9 * STAGES.length * count && i % 9 > 5 ? n / PART : n / UNIT))
  const flower = STAGES.map((_, k) => slabsFrom(own.slice(k * per * count, (k + 1) * per * count), per))
  const rest = numbers.slice(STAGES.length * per * count)
  const leaf = STAGES.map((_, k): LeafFactors => {
    const i = 3 * Math.min(k, leaves - 1)
    return leaves > 0 ? [rest[i]! / PART, rest[i + 1]! / PART, rest[i + 2]! / PART] : [1, 1, 1]
  })
  return { flower, leaf }
}

/** Everything of a plant that its stand-ins depend on, as one number (FNV-1a). Not the code that lays its parts. */
export const plantKey = (plant: Plant): number => {
  const { habit, formClass, shape, headOpen_mm, headClosed_mm, headLength_mm, bloomsPerStem, stemDiameter_mm } = plant
  const sizes = [headOpen_mm, headClosed_mm, headLength_mm, bloomsPerStem, stemDiameter_mm].map((x) => x?.value ?? 0)
  const text = JSON.stringify([habit, formClass, shape, sizes])
  let h = 0x811c9dc5
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193)
  return h >>> 0
}

const rows = table.plants as Record<string, Row>

/** The measured plant of the same habit whose shape says most of the same. */
const nearest = (plant: Plant): Row => {
  let [best, most] = [rows.rose!, -1]
  for (const other of PLANTS) {
    const row = rows[other.id]
    if (!row || other.habit !== plant.habit) continue
    let same = 0
    for (const [key, value] of Object.entries(plant.shape)) if (other.shape[key] === value) same += 1
    if (same > most) [best, most] = [row, same]
  }
  return best
}

const known = new WeakMap<Plant, Fitted>()

/**
 * The stand-ins of a plant, measured on our own solids by tests/calibrate/standins.ts. A plant that is not in the file
 * (or has changed since) borrows those of its habit until it is measured.
 */
export const fittedOf = (plant: Plant): Fitted => {
  const before = known.get(plant)
  if (before) return before
  const row = rows[plant.id]
  const made = fromRow(row && row[0] === plantKey(plant) ? row : nearest(plant))
  known.set(plant, made)
  return made
}
