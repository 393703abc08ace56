import { createLayer, type Layer, PART_STRIDE, reachAlong, type StemCurve, splatParts } from '../geometry/index.ts'
import { CELL_COUNT, CELLS, contrastField, createSurround, placeOfCell, type Surround } from './contrast.ts'
import type { Engine } from './engine.ts'
import { type Frame, HALF_WAYS, SIDE, SIDE_AXES, WAYS } from './extents.ts'
import { type Cells, cellsOf, clearRuns, createRuns, follow, type Runs } from './runs.ts'
import { codeOfVessel, type Tones, tonesOf } from './tones.ts'
import { type Likeness, likenessOf, unlikeness } from './unlike.ts'

/**
 * What is seen, by owner code (stem's place × 4 + kind + 1; the vessel's code is the last). Pixels are summed over the
 * twelve ways round and the plan; each view counts once. Good until the engine's next look: the arrays are used again, and
 * may be longer than there are codes.
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
  /** What the twelve pictures are made of, and the plan. */
  runs: readonly Runs[]
}

/** One way round, kept from look to look: what has not changed is not weighed again. */
interface Picture {
  runs: Runs
  surround: Surround
  contrast: Float64Array
  /** Pixels × contrast × place × unbrokenness, and the same × unlikeness. */
  drawn: Float64Array
  pull: Float64Array
}

interface Memory {
  pictures: Picture[]
  plan: Runs
  likeness: Likeness | null
  pixels: Float64Array
  unlike: Float64Array
  /** What the pictures were taken apart by. */
  tones: Tones | null
  frame: Frame | null
  cells: Cells | null
}

const createMemory = (): Memory => ({
  pictures: Array.from({ length: WAYS }, () => ({
    runs: createRuns(),
    surround: createSurround(),
    contrast: new Float64Array(0),
    drawn: new Float64Array(0),
    pull: new Float64Array(0),
  })),
  plan: createRuns(),
  likeness: null,
  pixels: new Float64Array(0),
  unlike: new Float64Array(0),
  tones: null,
  frame: null,
  cells: null,
})

/** One for each engine, used again for every arrangement. */
const memories = new WeakMap<Engine, Memory>()
const memoryOf = (engine: Engine): Memory => {
  const known = memories.get(engine) ?? createMemory()
  memories.set(engine, known)
  return known
}

/** Half as many again as are wanted, so that a few stems more find room. */
const roomFor = (codes: number): Float64Array => new Float64Array(Math.ceil(1.5 * codes))

const beginAnew = (memory: Memory, codes: number, colours: number): void => {
  if (memory.pixels.length < codes) {
    memory.pixels = roomFor(codes)
    memory.unlike = roomFor(codes)
    for (const picture of memory.pictures) {
      picture.contrast = roomFor(codes)
      picture.drawn = roomFor(codes)
      picture.pull = roomFor(codes)
    }
  }
  for (const picture of memory.pictures) clearRuns(picture.runs, codes, colours)
  clearRuns(memory.plan, codes, colours)
}

/** Is the grid of cells where it was? */
const sameCells = (a: Frame | null, b: Frame): boolean =>
  a !== null &&
  a.side === b.side &&
  a.middle === b.middle &&
  a.grid.mm === b.grid.mm &&
  a.grid.zeroRow === b.grid.zeroRow

// Colour × cell, for one way round at a time.
let area = new Float64Array(0)
let field = new Float64Array(0)

/**
 * Weighs the pixels of one way round. What is one patch counts whole, a scatter of florets or leaflets by the length of
 * its pieces: it reads as a texture (ours; that compact colours stand out is in Perazzi et al., Saliency Filters, CVPR
 * 2012).
 */
const weigh = (picture: Picture, cellPixels: number, { ofCode, labs }: Tones, { apart, figure }: Likeness): void => {
  const { runs, contrast, drawn } = picture
  const size = labs.length * CELL_COUNT
  if (area.length < size) {
    area = new Float64Array(size)
    field = new Float64Array(size)
  }
  const perCell = 1 / cellPixels
  const perWidth = 1 / Math.sqrt(cellPixels)
  for (let i = 0; i < size; i++) area[i] = runs.area[i]! * perCell
  contrastField(apart, area, figure, field, picture.surround)
  contrast.fill(0)
  drawn.fill(0)
  for (let r = 0; r < SIDE; r++)
    for (let k = r * SIDE, end = k + runs.inRow[r]!; k < end; k++) {
      const code = runs.code[k]!
      const cell = runs.cell[k]!
      const s = runs.length[k]! * field[ofCode[code]! * CELL_COUNT + cell]!
      contrast[code]! += s
      drawn[code]! += s * placeOfCell(cell) * runs.length[k]! * perWidth
    }
}

/** Brings the memory up to what the engine looks at. */
export const lookAt = (engine: Engine): Seen => {
  const { resolved, frame, layers } = engine
  const memory = memoryOf(engine)
  const { pictures, plan } = memory
  const tones = tonesOf(resolved)
  const codes = tones.ofCode.length
  const vesselCode = codeOfVessel(resolved.stems.length)
  const anew = tones !== memory.tones || !sameCells(memory.frame, frame)
  if (anew) {
    beginAnew(memory, codes, tones.labs.length)
    memory.cells = cellsOf(frame)
    if (tones !== memory.tones) memory.likeness = likenessOf(tones, vesselCode)
    memory.tones = tones
  }
  memory.frame = frame
  const cells = memory.cells!
  const likeness = memory.likeness!
  const { pixels, unlike } = memory
  const cellPixels = (frame.side / CELLS / frame.grid.mm) ** 2
  for (let way = 0; way < WAYS; way++) {
    const layer = layers[way % HALF_WAYS]!
    const owner = way < HALF_WAYS ? layer.owner : layer.back!.owner
    if (follow(owner, cells, vesselCode, tones.ofCode, pictures[way]!.runs) || anew)
      weigh(pictures[way]!, cellPixels, tones, likeness)
  }
  follow(layers[HALF_WAYS]!.owner, cells, vesselCode, tones.ofCode, plan)
  for (let code = 0; code < codes; code++) {
    let sum = plan.own[code]!
    for (let way = 0; way < WAYS; way++) sum += pictures[way]!.runs.own[code]!
    pixels[code] = sum
  }
  unlikeness(pixels, tones, vesselCode, likeness, resolved, unlike)
  for (let way = 0; way < WAYS; way++) {
    const { drawn, pull } = pictures[way]!
    for (let code = 0; code < codes; code++) pull[code] = drawn[code]! * unlike[code]!
  }
  return {
    pixels,
    byWay: pictures.map((p) => p.runs.own),
    contrastByWay: pictures.map((p) => p.contrast),
    unlike,
    pullByWay: pictures.map((p) => p.pull),
    codes,
    vesselCode,
    tones,
    runs: pictures.map((p) => p.runs),
  }
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
  let count = 0
  for (let o = 0; o < parts.length; o += PART_STRIDE) if (parts[o + 1] === 0) count += 1
  const bloom = new Float64Array(count * PART_STRIDE)
  for (let o = 0, to = 0; o < parts.length; o += PART_STRIDE) {
    if (parts[o + 1] !== 0) continue
    bloom.set(parts.subarray(o, o + PART_STRIDE), to)
    to += PART_STRIDE
  }
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
    splatParts(alone, grid, SIDE_AXES[way]!, bloom, 0)
    let sum = 0
    for (let i = first; i < end; i++) sum += alone.mass![i]!
    pixels.push(sum)
  }
  const all = [...pixels, ...pixels]
  silhouettes.set(curve, { mm: grid.mm, zeroRow: grid.zeroRow, pixels: all })
  return all
}
