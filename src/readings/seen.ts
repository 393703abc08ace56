import {
  createLayer,
  type Layer,
  PART_STRIDE,
  type Resolved,
  reachAlong,
  type StemCurve,
  splatParts,
  VESSEL_PIXEL,
  viewAxes,
} from '../geometry/index.ts'
import { CELL_COUNT, CELLS, contrastField, distance, distancesOf, offGrounds, placeOfCell, ROOM } from './contrast.ts'
import type { Engine } from './engine.ts'
import { HALF_WAYS, SIDE, turnOf, WAYS } from './extents.ts'
import { codeOfVessel, type Tones, tonesOf } from './tones.ts'

/**
 * What is seen, by owner code (stem's place × 4 + kind + 1; the vessel's code is the last). Pixels are summed over the
 * twelve ways round and the plan; each view counts once.
 */
export interface Seen {
  pixels: Float64Array
  /** For each way round alone, way × code: pixels. */
  byWay: Float64Array[]
  /** Pixels × contrast with the surround (Lab distance). */
  contrastByWay: Float64Array[]
  /** Per owner: how unlike in colour it is to all else that is seen, 0–1. */
  unlike: Float64Array
  /** Pixels × contrast × unlikeness × place × unbrokenness: the length of each pixel's own stretch of its row within a cell, in cells. */
  pullByWay: Float64Array[]
  codes: number
  vesselCode: number
  tones: Tones
  /** What the twelve pictures are made of; good until the engine's next look. */
  runs: readonly Runs[]
}

/** Twelve columns or rows of cells laid over the pixels. */
const cellsAlong = (middle: number, side: number, zero: number, mm: number): Uint8Array =>
  Uint8Array.from({ length: SIDE }, (_, i) => {
    const at = ((i + 0.5 - zero) * mm - middle) / side + 0.5
    return Math.min(CELLS - 1, Math.max(0, Math.floor(at * CELLS)))
  })

/** Stretches of one picture's rows with one owner in one cell: owner, cell, row, first pixel, length. */
export interface Runs {
  count: number
  code: Uint16Array
  cell: Uint8Array
  row: Uint8Array
  from: Uint8Array
  length: Uint8Array
}
const newRuns = (): Runs => {
  const bytes = () => new Uint8Array(SIDE * SIDE)
  return { count: 0, code: new Uint16Array(SIDE * SIDE), cell: bytes(), row: bytes(), from: bytes(), length: bytes() }
}
/** One a way round for each engine, used again for every arrangement. */
const kept = new WeakMap<Engine, Runs[]>()
const runsFor = (engine: Engine): Runs[] => {
  const known = kept.get(engine) ?? Array.from({ length: WAYS }, newRuns)
  kept.set(engine, known)
  return known
}

/** Where the cells' columns begin; the last is the picture's end. */
const edgesOf = (columns: Uint8Array): number[] => {
  const edges = [0]
  for (let c = 1; c < SIDE; c++) if (columns[c] !== columns[c - 1]) edges.push(c)
  return [...edges, SIDE]
}

const findRuns = (owner: Uint16Array, columns: Uint8Array, rows: Uint8Array, vesselCode: number, found: Runs): void => {
  const edges = edgesOf(columns)
  // Two pixels at a time: most of a picture is empty.
  const pairs = new Int32Array(owner.buffer, owner.byteOffset, owner.length / 2)
  let runs = 0
  for (let r = 0; r < SIDE; r++) {
    let first = (r * SIDE) / 2
    let last = first + SIDE / 2 - 1
    while (first <= last && pairs[first] === 0) first += 1
    if (first > last) continue
    while (pairs[last] === 0) last -= 1
    const left = 2 * first - r * SIDE
    const right = 2 * last + 1 - r * SIDE
    for (let e = 1; e < edges.length; e++) {
      if (edges[e]! <= left || edges[e - 1]! > right) continue
      const end = r * SIDE + edges[e]!
      let i = r * SIDE + edges[e - 1]!
      const cell = rows[r]! * CELLS + columns[edges[e - 1]!]!
      while (i < end) {
        const o = owner[i]!
        const from = i
        do i += 1
        while (i < end && owner[i] === o)
        if (o === 0) continue
        found.code[runs] = o === VESSEL_PIXEL ? vesselCode : o
        found.cell[runs] = cell
        found.row[runs] = r
        found.from[runs] = from - r * SIDE
        found.length[runs] = i - from
        runs += 1
      }
    }
  }
  found.count = runs
}

/** What every way round needs anew: distances of the colours and how far each is figure; area and contrast, colour × cell. */
interface Scratch {
  apart: Float64Array
  figure: Float64Array
  area: Float64Array
  field: Float64Array
}

/** Counts one picture. */
const countPixels = (owner: Uint16Array, seen: Seen): Float64Array => {
  const own = new Float64Array(seen.codes)
  for (let i = 0; i < owner.length; i++) {
    const o = owner[i]!
    if (o !== 0) own[o === VESSEL_PIXEL ? seen.vesselCode : o]! += 1
  }
  return own
}

/**
 * Counts one way round and weighs its pixels; adds to `seen`. What is one patch counts whole, a scatter of florets or
 * leaflets by the length of its pieces: it reads as a texture (ours; that compact colours stand out is in Perazzi et al.,
 * Saliency Filters, CVPR 2012).
 */
const weigh = (
  { count, code: runCode, cell: runCell, length: runLength }: Runs,
  cellPixels: number,
  { apart, figure, area, field }: Scratch,
  seen: Seen,
): void => {
  area.fill(0)
  const own = new Float64Array(seen.codes)
  const contrast = new Float64Array(seen.codes)
  const pull = new Float64Array(seen.codes)
  const perCell = 1 / cellPixels
  const perWidth = 1 / Math.sqrt(cellPixels)
  const tone = seen.tones.ofCode
  for (let k = 0; k < count; k++) {
    own[runCode[k]!]! += runLength[k]!
    area[tone[runCode[k]!]! * CELL_COUNT + runCell[k]!]! += runLength[k]! * perCell
  }
  contrastField(apart, area, figure, field)
  for (let k = 0; k < count; k++) {
    const code = runCode[k]!
    const s = runLength[k]! * field[tone[code]! * CELL_COUNT + runCell[k]!]!
    contrast[code]! += s
    pull[code]! += s * placeOfCell(runCell[k]!) * runLength[k]! * perWidth
  }
  for (let code = 0; code < own.length; code++) seen.pixels[code]! += own[code]!
  seen.byWay.push(own)
  seen.contrastByWay.push(contrast)
  seen.pullByWay.push(pull)
}

/** Lab distance over which two colours no longer pass for one another in a glance. Ours. */
const ALIKE = 25
/** What passes for the ground stands off the ground by half, as ground draws half (draw.ts). Ours. */
const BY_HALF = 0.5
/**
 * What a bloom loses where all the rest passes for its colour: not the whole, for size still tells it apart. Ours; the
 * examples of tests/unit/readings/prominence.test.ts hold from 0.65 to 0.75.
 */
const LOST = 0.7
const alike = (distance: number): number => Math.exp(-((distance / ALIKE) ** 2))

/**
 * How far each colour is figure: a half for a leaf's, rising to 1 as a bloom's passes less for one. Greens are the ground on
 * which flowers are seen; so neither they nor a leaf-green bloom lead for standing off the cloth, ground off ground. Ours.
 */
const figureOf = ({ tones, vesselCode }: Seen, apart: Float64Array): Float64Array => {
  const n = tones.labs.length
  const figure = new Float64Array(n).fill(1)
  const leaves = new Set<number>()
  for (let code = 2; code < vesselCode; code += 4) leaves.add(tones.ofCode[code]!)
  for (const leaf of leaves)
    for (let p = 1; p < n; p++)
      if (p !== tones.ofCode[vesselCode]) figure[p] = Math.min(figure[p]!, 1 - BY_HALF * alike(apart[p * n + leaf]!))
  return figure
}

/**
 * Of a bloom: 1 less a part of the share of all other blooms, leaves and stems that are seen, by area, which passes for its
 * colour; several focal flowers are one group and do not count against each other. Of the vessel: how far it does not pass
 * for the cloth that it stands on. What is looked for is found the later, the more of the rest is like it: Duncan and
 * Humphreys, Visual search and stimulus similarity, Psychological Review 96(3), 1989. The numbers are ours.
 */
const unlikeness = (
  { pixels, tones, codes, vesselCode }: Seen,
  apart: Float64Array,
  { stems }: Resolved,
): Float64Array => {
  const n = tones.labs.length
  const isFocal = (code: number): boolean => (code - 1) % 4 === 0 && stems[(code - 1) >> 2]?.role === 'focal'
  // Areas by colour: of all, and of the focal blooms.
  const [areas, group] = [new Float64Array(n), new Float64Array(n)]
  let [all, focal] = [0, 0]
  for (let code = 1; code < vesselCode; code++) {
    const area = pixels[code]!
    areas[tones.ofCode[code]!]! += area
    all += area
    if (!isFocal(code)) continue
    group[tones.ofCode[code]!]! += area
    focal += area
  }
  const [like, likeGroup] = [new Float64Array(n), new Float64Array(n)]
  for (let p = 1; p < n; p++)
    for (let q = 1; q < n; q++) {
      const k = alike(apart[p * n + q]!)
      like[p]! += areas[q]! * k
      likeGroup[p]! += group[q]! * k
    }
  return Float64Array.from({ length: codes }, (_, code) => {
    const tone = tones.ofCode[code]!
    if (code === vesselCode) return 1 - BY_HALF * alike(apart[tone * n]!)
    // Leaves and bare stems are the ground, and are not looked for.
    if ((code - 1) % 4 !== 0) return 1
    const own = isFocal(code)
    const rest = all - (own ? focal : pixels[code]!)
    return rest > 0 ? Math.max(0, 1 - (LOST * (like[tone]! - (own ? likeGroup[tone]! : pixels[code]!))) / rest) : 1
  })
}

/** The same distances, with cloth and room as the ground of all but the vessel, which stands on the cloth. */
const beforeRoom = (apart: Float64Array, { labs }: Tones): Float64Array => {
  const n = labs.length
  const out = apart.slice()
  for (let p = 1; p < n - 1; p++) out[p * n] = offGrounds(apart[p * n]!, distance(labs[p]!, ROOM))
  return out
}

export const lookAt = (engine: Engine): Seen => {
  const { resolved, frame, layers } = engine
  const tones = tonesOf(resolved)
  const codes = tones.ofCode.length
  const seen: Seen = {
    pixels: new Float64Array(codes),
    byWay: [],
    contrastByWay: [],
    pullByWay: [],
    unlike: new Float64Array(codes),
    codes,
    vesselCode: codeOfVessel(resolved.stems.length),
    tones,
    runs: runsFor(engine),
  }
  const { grid, side, middle } = frame
  const cellPixels = (side / CELLS / grid.mm) ** 2
  const columns = cellsAlong(0, side, SIDE / 2, grid.mm)
  const rows = cellsAlong(middle, side, grid.zeroRow, grid.mm)
  const size = tones.labs.length * CELL_COUNT
  const apart = distancesOf(tones.labs)
  const scratch = {
    apart: beforeRoom(apart, tones),
    figure: figureOf(seen, apart),
    area: new Float64Array(size),
    field: new Float64Array(size),
  }
  for (let way = 0; way < WAYS; way++) {
    const layer = layers[way % HALF_WAYS]!
    const owner = way < HALF_WAYS ? layer.owner : layer.back!.owner
    findRuns(owner, columns, rows, seen.vesselCode, seen.runs[way]!)
    weigh(seen.runs[way]!, cellPixels, scratch, seen)
  }
  const above = countPixels(layers[HALF_WAYS]!.owner, seen)
  for (let code = 0; code < codes; code++) seen.pixels[code]! += above[code]!
  seen.unlike = unlikeness(seen, apart, resolved)
  for (const pull of seen.pullByWay) for (let code = 0; code < codes; code++) pull[code]! *= seen.unlike[code]!
  return seen
}

let alone: Layer | null = null
const silhouettes = new WeakMap<StemCurve, { mm: number; zeroRow: number; pixels: number[] }>()

/** Pixels of a stem's bloom were nothing in front of it, each way round. `place`: the stem's place in the resolved list. */
export const ownSilhouette = (engine: Engine, place: number): number[] => {
  const { grid } = engine.frame
  const { curve } = engine.resolved.stems[place]!
  const before = silhouettes.get(curve)
  if (before && before.mm === grid.mm && before.zeroRow === grid.zeroRow) return before.pixels
  alone ??= createLayer(SIDE * SIDE, false, true)
  const { parts } = engine.ready[place]!
  const blooms: number[] = []
  for (let o = 0; o < parts.length; o += PART_STRIDE)
    if (parts[o + 1] === 0) blooms.push(...parts.subarray(o, o + PART_STRIDE))
  const bloom = Float64Array.from(blooms)
  const pixels: number[] = []
  // Only the rows that the bloom reaches are wiped and counted.
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (let o = 0; o < bloom.length; o += PART_STRIDE) {
    const [from, to] = reachAlong(bloom, o, [0, 0, 1])
    low = Math.min(low, from)
    high = Math.max(high, to)
  }
  const first = SIDE * Math.max(0, Math.floor(low / grid.mm + grid.zeroRow) - 1)
  const end = SIDE * Math.min(SIDE, Math.ceil(high / grid.mm + grid.zeroRow) + 1)
  for (let way = 0; way < HALF_WAYS; way++) {
    alone.mass!.fill(0, first, Math.max(first, end))
    splatParts(alone, grid, viewAxes({ turn: turnOf(way), pitch: 0 }), bloom, 0)
    let sum = 0
    for (let i = first; i < end; i++) sum += alone.mass![i]!
    pixels.push(sum)
  }
  const all = [...pixels, ...pixels]
  silhouettes.set(curve, { mm: grid.mm, zeroRow: grid.zeroRow, pixels: all })
  return all
}
