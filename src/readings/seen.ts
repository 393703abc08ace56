import {
  clearLayer,
  createLayer,
  type Layer,
  PART_STRIDE,
  type StemCurve,
  splatParts,
  VESSEL_PIXEL,
  viewAxes,
} from '../geometry/index.ts'
import { CELL_COUNT, CELLS, contrastField, placeOfCell } from './contrast.ts'
import type { Engine } from './engine.ts'
import { HALF_WAYS, SIDE, turnOf, WAYS } from './extents.ts'
import { codeOfVessel, type Tones, tonesOf } from './tones.ts'

/**
 * What is seen, by owner code (stem's place × 4 + kind + 1; the vessel's code is the last). Pixels are summed over the
 * twelve ways round and the plan; each view counts once.
 */
export interface Seen {
  pixels: Float64Array
  /** Pixels × contrast with the surround (Lab distance). */
  contrast: Float64Array
  /** Pixels × contrast × place. */
  pull: Float64Array
  /** The same pixels for each way round alone: way × code. */
  byWay: Float64Array[]
  codes: number
  vesselCode: number
  tones: Tones
}

/** Twelve columns or rows of cells laid over the pixels. */
const cellsAlong = (middle: number, side: number, zero: number, mm: number): Uint8Array =>
  Uint8Array.from({ length: SIDE }, (_, i) => {
    const at = ((i + 0.5 - zero) * mm - middle) / side + 0.5
    return Math.min(CELLS - 1, Math.max(0, Math.floor(at * CELLS)))
  })

/** Counts one picture and weighs its pixels; adds to `seen`. */
const count = (
  owner: Uint16Array,
  columns: Uint8Array,
  rows: Uint8Array,
  cellPixels: number,
  seen: Seen,
): Float64Array => {
  const { tones, vesselCode } = seen
  const area = new Float64Array(tones.labs.length * CELL_COUNT)
  const own = new Float64Array(seen.codes)
  const tone = tones.ofCode
  for (let r = 0; r < SIDE; r++) {
    const rowCell = rows[r]! * CELLS
    for (let i = r * SIDE, c = 0; c < SIDE; i++, c++) {
      const o = owner[i]!
      if (o === 0) continue
      const code = o === VESSEL_PIXEL ? vesselCode : o
      own[code]! += 1
      area[tone[code]! * CELL_COUNT + rowCell + columns[c]!]! += 1
    }
  }
  for (let i = 0; i < area.length; i++) area[i]! /= cellPixels
  const field = contrastField(tones.labs, area)
  for (let r = 0; r < SIDE; r++) {
    const rowCell = rows[r]! * CELLS
    for (let i = r * SIDE, c = 0; c < SIDE; i++, c++) {
      const o = owner[i]!
      if (o === 0) continue
      const code = o === VESSEL_PIXEL ? vesselCode : o
      const cell = rowCell + columns[c]!
      const s = field[tone[code]! * CELL_COUNT + cell]!
      seen.contrast[code]! += s
      seen.pull[code]! += s * placeOfCell(cell)
    }
  }
  for (let code = 0; code < own.length; code++) seen.pixels[code]! += own[code]!
  return own
}

export const lookAt = (engine: Engine): Seen => {
  const { resolved, frame, layers } = engine
  const tones = tonesOf(resolved)
  const codes = tones.ofCode.length
  const seen: Seen = {
    pixels: new Float64Array(codes),
    contrast: new Float64Array(codes),
    pull: new Float64Array(codes),
    byWay: [],
    codes,
    vesselCode: codeOfVessel(resolved.stems.length),
    tones,
  }
  const { grid, plan, side, middle } = frame
  const cellPixels = (side / CELLS / grid.mm) ** 2
  const columns = cellsAlong(0, side, SIDE / 2, grid.mm)
  const rows = cellsAlong(middle, side, grid.zeroRow, grid.mm)
  for (let way = 0; way < WAYS; way++) {
    const layer = layers[way % HALF_WAYS]!
    const owner = way < HALF_WAYS ? layer.owner : layer.back!.owner
    seen.byWay.push(count(owner, columns, rows, cellPixels, seen))
  }
  count(layers[HALF_WAYS]!.owner, columns, cellsAlong(0, side, plan.zeroRow, plan.mm), cellPixels, seen)
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
  for (let way = 0; way < HALF_WAYS; way++) {
    clearLayer(alone)
    splatParts(alone, grid, viewAxes({ turn: turnOf(way), pitch: 0 }), bloom, 0)
    let sum = 0
    for (const m of alone.mass!) sum += m
    pixels.push(sum)
  }
  const all = [...pixels, ...pixels]
  silhouettes.set(curve, { mm: grid.mm, zeroRow: grid.zeroRow, pixels: all })
  return all
}
